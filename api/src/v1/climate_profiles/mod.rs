//! `/v1/climate-profiles`: a climate from a daily record.
//!
//! - [`request`] the record as JSON, or its place beside a CSV file
//! - [`build`] from a record to a profile, with every fault at its line or place
//! - [`answer`] the answer as it is sent
//! - `doubts` how it was read, how sure frost dates are, what looks wrong
//! - `words` what is known of the climate now, and what is not
//! - [`make`] `POST /v1/climate-profiles`

pub mod answer;
pub mod build;
mod doubts;
pub mod make;
pub mod request;
mod words;

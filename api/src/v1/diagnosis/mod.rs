//! `/v1/diagnosis`: what the signs may show, what to look at next, and what to do.
//!
//! - [`request`] the question
//! - [`answer`] the answer as it is sent
//! - [`diagnose`] `POST /v1/diagnosis`

pub mod answer;
pub mod diagnose;
pub mod request;

//! `/v1/advice`: what to do now, in what order, how much, and why.
//!
//! - [`request`] the question

pub mod request;

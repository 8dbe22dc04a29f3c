//! `/v1/rules`: what stands behind a piece of advice.
//!
//! - [`answer`] a rule as it is sent
//! - [`read`] `GET /v1/rules/{id}`

pub mod answer;
pub mod read;

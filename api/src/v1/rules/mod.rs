//! `/v1/rules`: what stands behind a piece of advice.
//!
//! - [`answer`] a rule as it is sent
//! - [`read`] `GET /v1/rules/{id}`
//! - [`why_not`] `POST /v1/rules/{id}/why-not`, [`why_not_answer`] its answer

pub mod answer;
pub mod read;
pub mod why_not;
pub mod why_not_answer;

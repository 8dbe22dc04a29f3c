//! `/v1/season`: the season of a climate on a day.
//!
//! - [`request`] the question
//! - [`answer`] the answer as it is sent
//! - [`compute`] `POST /v1/season`, [`get`] `GET /v1/season`

pub mod answer;
pub mod compute;
pub mod get;
pub mod request;

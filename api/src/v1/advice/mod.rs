//! `/v1/advice`: what to do now, in what order, how much, and why.
//!
//! - [`request`] the question
//! - [`answer`] the answer as it is sent, with [`task`], [`amount`], [`held`] and [`heard`], and [`words`], the fixed words in it
//! - `face` how much of it is shown, in which units
//! - [`reply`] from the one to the other, [`given`] an answer kept for whoever asks the same
//! - [`give`] `POST /v1/advice`, [`get`] `GET /v1/advice`
//! - `example` the example of the document

pub mod amount;
pub mod answer;
mod example;
mod face;
pub mod get;
pub mod give;
pub mod given;
pub mod heard;
pub mod held;
pub mod reply;
pub mod request;
pub mod task;
pub mod words;

//! `POST /v1/replay`: an answer given again, from what its reader kept.
//!
//! - `asking` what is put down while an answer is given, [`recalled`] what the recall text of an answer holds, and how it is written
//! - [`mod@reference`] what can be read over the telephone
//! - [`decided`] what was decided, in short, and in which rules two decisions differ
//! - [`request`], [`answer`] what is sent
//! - [`again`] from the one to the other
//! - [`give`] the call

pub mod again;
pub mod answer;
pub(crate) mod asking;
pub mod decided;
pub mod give;
pub mod recalled;
pub mod reference;
pub mod request;

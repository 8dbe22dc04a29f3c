//! Scenarios: a question with its expected answer, run against the set that they stand beside; and the changes of a rule that
//! they would notice.
//!
//! - `run` one scenario, or all of them
//! - `expected` what differs from the answer, in words
//! - [`mutate`] one change of an entry at a time, and whether any scenario differs then

mod expected;
pub mod mutate;
mod run;

pub use run::{Outcome, question, run, run_all, with_weather};

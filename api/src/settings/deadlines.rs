//! How long a request may take.

use std::time::Duration;

use clap::Args;

const HEAD_MS: u64 = 5_000;
const BODY_MS: u64 = 10_000;
const ANSWER_MS: u64 = 20_000;
const STOP_S: u64 = 10;

/// How long a request may take. The time for the answer includes that for the body.
#[derive(Args, Clone, Debug)]
pub struct Deadlines {
    /// Time for the head of a request to arrive, in milliseconds
    #[arg(long, env = "LAMMAS_HEAD_MS", value_name = "MS", default_value_t = HEAD_MS)]
    pub head_ms: u64,
    /// Time for the body to arrive, in milliseconds
    #[arg(long, env = "LAMMAS_BODY_MS", value_name = "MS", default_value_t = BODY_MS)]
    pub body_ms: u64,
    /// Time from the head to the answer, in milliseconds
    #[arg(long, env = "LAMMAS_ANSWER_MS", value_name = "MS", default_value_t = ANSWER_MS)]
    pub answer_ms: u64,
    /// Time that requests under way are given when the server stops, in seconds
    #[arg(long, env = "LAMMAS_STOP_S", value_name = "S", default_value_t = STOP_S)]
    pub stop_s: u64,
}

impl Deadlines {
    pub(crate) fn head(&self) -> Duration {
        Duration::from_millis(self.head_ms)
    }

    pub(crate) fn body(&self) -> Duration {
        Duration::from_millis(self.body_ms)
    }

    pub(crate) fn answer(&self) -> Duration {
        Duration::from_millis(self.answer_ms)
    }
}

impl Default for Deadlines {
    fn default() -> Self {
        Self { head_ms: HEAD_MS, body_ms: BODY_MS, answer_ms: ANSWER_MS, stop_s: STOP_S }
    }
}

//! The exit codes that scripts can use.

use std::process::ExitCode;

use crate::sets::FaultySet;

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Exit {
    /// All is well.
    Well = 0,
    /// It looked and found something wrong: a check that failed, a rule set with faults.
    Found = 1,
    /// It was called wrongly or given bad input.
    BadInput = 2,
    /// It broke.
    Broke = 3,
}

/// Marks an error as the caller's: wrong arguments or bad input.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub struct BadInput(pub String);

/// Marks an error as something that was found wrong.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub struct Found(pub String);

impl Exit {
    /// The code of an error: a rule set with faults, the caller's fault, or ours.
    #[must_use]
    pub fn of(error: &anyhow::Error) -> Self {
        if error.downcast_ref::<FaultySet>().is_some() || error.downcast_ref::<Found>().is_some() {
            Self::Found
        } else if error.downcast_ref::<BadInput>().is_some() {
            Self::BadInput
        } else {
            Self::Broke
        }
    }

    /// As a process gives it back.
    #[must_use]
    pub fn code(self) -> ExitCode {
        ExitCode::from(self as u8)
    }
}

//! Why something at the desk is not done.

use crate::store::StoreError;

/// Why something is not done.
#[derive(Debug, thiserror::Error)]
pub enum NotDone {
    /// What was asked for is not there, or can't be as it was said.
    #[error("{0}")]
    Wrong(String),
    /// Nothing has this name.
    #[error("{0}")]
    Missing(String),
    /// Somebody else was faster: what there is now.
    #[error("{told}")]
    Changed {
        /// The revision that is there.
        revision: i64,
        /// For people.
        told: String,
    },
    /// The set does not pass the gate.
    #[error("{0}")]
    Refused(String),
    /// This process may not, or can't, sign.
    #[error("{0}")]
    Unsigned(String),
    /// The store failed.
    #[error(transparent)]
    Store(#[from] StoreError),
}

//! From a draft to what is served: judged, signed, told in the audit trail, undone in one step, held back at once.
//!
//! A release is the files as they were written and, on top of them, what is held back. The effective files are worked out
//! from both by [`held`], so that a hold can only make the advice safer and never touches what a reviewer saw. Everything that a
//! release changes is one [`crate::store::Transaction`]: killed at any step, the old one stands or the new one.
//!
//! - [`desk`] the store with its keys, where the work is done
//! - [`signing`] the key that signs and those that are trusted, [`statement`] what is signed of a release
//! - [`trail`] the audit trail is written, [`verify`] and examined
//! - [`gate`] what a set must pass, [`held`] what is held back
//! - [`drafts`], [`publish`], [`hold_back`], [`schedule`], [`wall`] the work itself
//! - [`problem`] why something is not done

pub mod desk;
pub mod drafts;
pub mod gate;
pub mod held;
pub mod hold_back;
pub mod problem;
pub mod publish;
pub mod schedule;
pub mod signing;
pub mod statement;
pub mod trail;
pub mod verify;
pub mod wall;

pub use desk::Desk;
pub use problem::NotDone;

//! A node takes releases from the store, tests each before it serves it, and keeps a signed copy on its own disk.
//!
//! It looks twice a second, and at once where the store tells it. A release whose signature, hash, check or scenarios don't
//! hold is refused: the old one goes on being served, `/health/ready` and the log say so. No request waits for
//! the store.
//!
//! - [`node`] the thread that does this
//! - [`copy`] the last signed copy
//! - [`state`] what a node says about itself

pub mod copy;
pub mod node;
pub mod state;

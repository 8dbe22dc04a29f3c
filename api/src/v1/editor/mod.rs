//! The editors' calls: drafts, releases, what is held back. They need a store and a key.
//!
//! - `caller` who calls, settled before the body is read
//! - `once` writes with an Idempotency-Key, `matching` writes with If-Match
//! - `told` why something is not done, as a problem
//! - [`wire`] what is sent and answered
//! - [`drafts`] drafts come in, are read, changed and checked
//! - [`release`] they are published; releases are undone and listed
//! - [`hold_back`] something is held back at once

mod caller;
pub mod drafts;
pub mod hold_back;
mod matching;
mod once;
pub mod release;
mod told;
pub mod wire;

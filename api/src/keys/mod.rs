//! Keys of programs: who may do what at the editors' calls.
//!
//! - [`secret`] the text of a key: prefix, public id, secret, checksum
//! - [`scope`] what a key may do
//! - [`desk`] keys are made, found, revoked

pub mod desk;
pub mod scope;
pub mod secret;

pub use scope::Scope;

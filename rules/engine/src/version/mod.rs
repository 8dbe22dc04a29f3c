//! Versions: the canonical form and its hashes.

pub mod canonical;
pub mod digest;
pub mod hash;

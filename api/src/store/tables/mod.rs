//! What is read and written, a file a table. The statements are the same on both back ends; the story in `tests/store`
//! runs every one of them on each.

pub mod answered;
pub mod audit;
pub mod climates;
pub mod documents;
pub mod drafts;
pub mod held_back;
pub mod keys;
pub mod product_maps;
pub mod releases;
pub mod schedules;
pub mod sets;
pub mod weather;

use sha2::{Digest, Sha256};

/// SHA-256 in hexadecimal.
#[must_use]
pub fn sha256(bytes: &[u8]) -> String {
    lammas_engine::version::hash::of_bytes(bytes)
}

/// A running SHA-256 over parts, each with its length before it: no two lists of parts have the same.
#[must_use]
pub fn sha256_of_parts(parts: &[&str]) -> String {
    let mut all = Sha256::new();
    for part in parts {
        all.update((part.len() as u64).to_be_bytes());
        all.update(part.as_bytes());
    }
    all.finalize().iter().fold(String::with_capacity(64), |mut out, byte| {
        use std::fmt::Write as _;
        let _ = write!(out, "{byte:02x}");
        out
    })
}

//! The digest of an answer: what was asked, of which sets, under which decision version.

use serde_json::{Value, json};

use super::hash;

/// Raised when any golden answer changes.
pub const DECISION_VERSION: u32 = 1;

/// SHA-256 over the canonical form of the question, the hashes of the sets in layer order and the decision version.
#[must_use]
pub fn of(asked: &Value, sets: &[&str]) -> String {
    hash::of_value(&json!({"asked": asked, "rule_sets": sets, "decision_version": DECISION_VERSION}))
}

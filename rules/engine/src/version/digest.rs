//! The digest of an answer: what was asked, of which sets, under which decision version.

use serde_json::{Value, json};

use super::hash;
use crate::compile::set::Set;
use crate::question::Question;

/// Raised when any golden answer changes.
pub const DECISION_VERSION: u32 = 1;

/// The digest of a question to a set.
#[must_use]
pub fn of_question(question: &Question, set: &Set) -> String {
    let sets: Vec<&str> = set.layers.iter().map(|layer| layer.sha256.as_str()).collect();
    of(&question.asked, &sets, question.climate.estimated.as_ref().map(|estimated| estimated.grid_sha256.as_str()))
}

/// SHA-256 over the canonical form of the question, the hashes of the sets in layer order, the hash of the climate grid
/// where the climate was estimated from it, and the decision version.
#[must_use]
pub fn of(asked: &Value, sets: &[&str], climate_grid: Option<&str>) -> String {
    let mut whole = json!({"asked": asked, "rule_sets": sets, "decision_version": DECISION_VERSION});
    if let (Some(grid), Some(members)) = (climate_grid, whole.as_object_mut()) {
        members.insert("climate_grid".to_owned(), json!(grid));
    }
    hash::of_value(&whole)
}

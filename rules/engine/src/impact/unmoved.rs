//! Plants of which no answer can change, so that nobody has to be asked.
//!
//! What is decided of a plant hangs on its rules in their order, on the vocabularies, and on rules of other plants only where
//! the history names one. Where all of that is written alike in both sets, both decide the same. New words are enough to have
//! the plant asked: this looks for what is surely the same, not for what differs.

use serde::Serialize;
use serde_json::Value as Json;

use crate::compile::set::Set;
use crate::pack::{Filed, RuleEntry};
use crate::question::said::Said;

/// Whether everything but the rules is written alike in both sets, in the same order.
#[must_use]
pub fn has_the_same_words(before: &Set, after: &Set) -> bool {
    words(before) == words(after)
}

fn words(set: &Set) -> [Json; 11] {
    fn all<T: Serialize>(entries: &[Filed<T>]) -> Json {
        serde_json::to_value(entries).unwrap_or_default()
    }
    let pack = &set.pack;
    [
        serde_json::to_value(&pack.header.languages).unwrap_or_default(),
        all(&pack.jobs),
        all(&pack.classes),
        all(&pack.stages),
        all(&pack.outlooks),
        all(&pack.signs),
        all(&pack.cautions),
        all(&pack.sources),
        all(&pack.materials),
        all(&pack.problems),
        all(&pack.plants),
    ]
}

/// Whether the rules of a plant, and those that these questions name as done, are written alike in both sets, in the same
/// order.
#[must_use]
pub fn has_the_same_rules<'q>(
    plant: &str,
    questions: impl Iterator<Item = &'q Said>,
    before: &Set,
    after: &Set,
) -> bool {
    let mut named: Vec<&str> =
        questions.flat_map(|said| said.history.iter().flatten()).filter_map(|work| work.rule.as_deref()).collect();
    named.sort_unstable();
    named.dedup();
    rules(before, plant) == rules(after, plant) && named.iter().all(|rule| one(before, rule) == one(after, rule))
}

fn rules(set: &Set, plant: &str) -> Option<Vec<Json>> {
    let book = set.plants.get(usize::from(set.names.plants.number(plant)?))?;
    let entry = |rule: u32| set.pack.rules.get(rule as usize).map(written);
    book.rules.iter().map(|rule| entry(rule.rule)).collect()
}

fn one(set: &Set, rule: &str) -> Option<Json> {
    set.pack.rules.get(set.names.rules.wide(rule)? as usize).map(written)
}

fn written(filed: &Filed<RuleEntry>) -> Json {
    serde_json::to_value(&filed.entry).unwrap_or_default()
}

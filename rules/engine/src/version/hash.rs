//! SHA-256 over canonical forms.

use std::fmt::Write as _;

use serde::Serialize;
use serde_json::Value;
use sha2::{Digest, Sha256};

use super::canonical;
use crate::pack::{Filed, Pack};

/// SHA-256 of a text, in hexadecimal.
#[must_use]
pub fn of_text(text: &str) -> String {
    of_bytes(text.as_bytes())
}

/// SHA-256 of bytes, in hexadecimal.
#[must_use]
pub fn of_bytes(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold(String::with_capacity(64), |mut out, byte| {
        let _ = write!(out, "{byte:02x}");
        out
    })
}

/// SHA-256 over the canonical form of a value.
#[must_use]
pub fn of_value(value: &Value) -> String {
    of_text(&canonical::text(value))
}

/// The hash of a set: over its entries sorted by kind and id; files, order and comments do not count.
#[must_use]
pub fn of_pack(pack: &Pack) -> String {
    of_value(&Value::Object(all_entries(pack)))
}

/// The hash of what a set means: as [`of_pack`], without name, version and title of the set, and with neither sources nor
/// notes. Of a text only that it is there counts, not what it says: a text that is only said in a case makes a case.
#[must_use]
pub fn of_meaning(pack: &Pack) -> String {
    let mut all = all_entries(pack);
    all.remove("header");
    all.remove("sources");
    // Other words are no other meaning.
    if let Some(Value::Array(changes)) = all.get_mut("changes") {
        changes.retain(|change| change.get("what").and_then(|what| what.get("reword")).is_none());
    }
    let mut whole = Value::Object(all);
    only_meaning(&mut whole);
    of_value(&whole)
}

/// Fields that say where something comes from, or are for other editors.
const NO_MEANING: [&str; 4] = ["sources", "notes", "plain", "expects"];
/// Fields that hold words for people: a text in each language, or a list of texts.
const WORDS: [&str; 18] = [
    "title",
    "name",
    "names",
    "about",
    "look",
    "words",
    "text",
    "because",
    "what",
    "ask",
    "early",
    "late",
    "never",
    "why",
    "steps",
    "analysis",
    "professional",
    "review",
];

/// Takes sources and notes out, and leaves `true` of each text.
fn only_meaning(value: &mut Value) {
    match value {
        Value::Array(items) => items.iter_mut().for_each(only_meaning),
        Value::Object(map) => {
            map.retain(|key, _| !NO_MEANING.contains(&key.as_str()));
            for (key, item) in map.iter_mut() {
                // `never` is a list of signs in a problem, `what` an outlook in what may be expected: no texts.
                if WORDS.contains(&key.as_str()) && item.is_object() {
                    *item = Value::Bool(true);
                } else {
                    only_meaning(item);
                }
            }
        }
        _ => {}
    }
}

fn all_entries(pack: &Pack) -> serde_json::Map<String, Value> {
    let mut all = serde_json::Map::new();
    all.insert("header".to_owned(), serde_json::to_value(&pack.header).unwrap_or_default());
    for (kind, entries) in [
        ("jobs", sorted(&pack.jobs)),
        ("classes", sorted(&pack.classes)),
        ("stages", sorted(&pack.stages)),
        ("outlooks", sorted(&pack.outlooks)),
        ("signs", sorted(&pack.signs)),
        ("cautions", sorted(&pack.cautions)),
        ("sources", sorted(&pack.sources)),
        ("materials", sorted(&pack.materials)),
        ("problems", sorted(&pack.problems)),
        ("plants", sorted(&pack.plants)),
        ("rules", sorted(&pack.rules)),
    ] {
        all.insert(kind.to_owned(), entries);
    }
    if !pack.changes.is_empty() {
        let key = |value: &Value| [text_of(value, "kind"), text_of(value, "id")].map(str::to_owned);
        let mut changes: Vec<Value> =
            pack.changes.iter().map(|change| serde_json::to_value(&change.entry).unwrap_or_default()).collect();
        changes.sort_by_cached_key(|change| (key(change), change.to_string()));
        all.insert("changes".to_owned(), Value::Array(changes));
    }
    all
}

fn sorted<T: Serialize>(entries: &[Filed<T>]) -> Value {
    let mut values: Vec<Value> = entries.iter().map(|e| serde_json::to_value(&e.entry).unwrap_or_default()).collect();
    values.sort_by(|a, b| id(a).cmp(id(b)));
    Value::Array(values)
}

fn id(value: &Value) -> &str {
    text_of(value, "id")
}

fn text_of<'v>(value: &'v Value, field: &str) -> &'v str {
    value.get(field).and_then(Value::as_str).unwrap_or_default()
}

/// The hash by which several sets in layers are known: over those of the sets, lowest first.
#[must_use]
pub fn of_layers<'h>(sets: impl Iterator<Item = &'h str>) -> String {
    of_value(&Value::Array(sets.map(|sha256| Value::String(sha256.to_owned())).collect()))
}

//! A rule set as it is written: one type for each kind of entry, with the place of whatever a fault may have to point at.

pub mod climate;
pub mod expression;
pub mod layer;
pub mod material;
pub mod plant;
pub mod problem;
pub mod rule;
pub mod scenario;
pub mod shapes;
pub mod word;

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

pub use climate::ClimateEntry;
pub use expression::{At, Expression};
pub use material::MaterialEntry;
pub use plant::PlantEntry;
pub use problem::ProblemEntry;
pub use rule::RuleEntry;
pub use word::{CautionEntry, SignEntry, SourceEntry, WordEntry};

use crate::text::{Language, Text};

/// An entry and the file it stands in.
#[derive(Clone, Debug, Serialize)]
pub struct Filed<T> {
    /// Path inside the pack.
    #[serde(skip)]
    pub file: Arc<str>,
    /// The entry.
    #[serde(flatten)]
    pub entry: T,
}

/// `pack.yaml`.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Header {
    /// Name of the set: `core`.
    pub name: At<String>,
    /// Calendar version: `2026.11.1`.
    pub version: At<String>,
    /// Languages in which every text must be there; the first is the one shown when nothing else fits.
    pub languages: Vec<Language>,
    /// Title for people.
    pub title: Text,
    /// The sets that it is laid over, lowest first; none: it stands by itself.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub over: Vec<At<String>>,
    /// When it was published, where no store records it. No part of the content, and so of no hash.
    #[serde(default, skip_serializing)]
    pub published: Option<chrono::DateTime<chrono::Utc>>,
    /// Who has looked at it.
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub review: Text,
    /// Findings of plain words that are left as they are in the whole set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plain: Option<rule::PlainEntry>,
}

/// A whole set as written.
#[derive(Clone, Debug)]
pub struct Pack {
    /// `pack.yaml`.
    pub header: Header,
    /// Kinds of work.
    pub jobs: Vec<Filed<WordEntry>>,
    /// Classes of materials.
    pub classes: Vec<Filed<WordEntry>>,
    /// Stages of plants.
    pub stages: Vec<Filed<WordEntry>>,
    /// What may be expected of a work.
    pub outlooks: Vec<Filed<WordEntry>>,
    /// What can be seen on a plant.
    pub signs: Vec<Filed<SignEntry>>,
    /// Cautions.
    pub cautions: Vec<Filed<CautionEntry>>,
    /// Sources.
    pub sources: Vec<Filed<SourceEntry>>,
    /// Materials.
    pub materials: Vec<Filed<MaterialEntry>>,
    /// Problems.
    pub problems: Vec<Filed<ProblemEntry>>,
    /// Plants.
    pub plants: Vec<Filed<PlantEntry>>,
    /// Rules, guards and notes.
    pub rules: Vec<Filed<RuleEntry>>,
    /// Climates of the scenarios.
    pub climates: Vec<Filed<ClimateEntry>>,
    /// Scenarios.
    pub scenarios: Vec<Filed<scenario::ScenarioEntry>>,
    /// What it says of entries of the sets below it.
    pub changes: layer::Changes,
    /// How several sets became this one; empty for a set by itself.
    pub laid: layer::Laid,
    /// What stands before the path of its files: nothing, or the name of the set and a slash.
    pub root: String,
    /// The text of each file, for the places of faults.
    pub files: BTreeMap<String, Arc<str>>,
}

impl Pack {
    /// Whether a scalar stands in quotes: its first column is then the quote's.
    #[must_use]
    pub fn is_quoted<T>(&self, file: &str, at: &At<T>) -> bool {
        let line = usize::try_from(at.referenced.line()).unwrap_or(0);
        let column = usize::try_from(at.referenced.column()).unwrap_or(0);
        self.files
            .get(file)
            .and_then(|text| text.lines().nth(line.checked_sub(1)?))
            .and_then(|text| text.chars().nth(column.checked_sub(1)?))
            .is_some_and(|c| c == '"' || c == '\'')
    }
}

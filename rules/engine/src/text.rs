//! Texts in the languages of the pack.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

/// A language by its code, as the pack declares it: `en`, `es`.
pub type Language = String;

/// One text in every language of the pack.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Text(pub BTreeMap<Language, String>);

impl Text {
    /// The text in `language`; else in English; else in whichever language there is.
    #[must_use]
    pub fn get(&self, language: &str) -> &str {
        self.0.get(language).or_else(|| self.0.get("en")).or_else(|| self.0.values().next()).map_or("", String::as_str)
    }

    /// No language at all.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

/// A list of texts in every language of the pack: steps, lay words.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Texts(pub BTreeMap<Language, Vec<String>>);

impl Texts {
    /// The list in `language`; else in English; else in whichever language there is.
    #[must_use]
    pub fn get(&self, language: &str) -> &[String] {
        self.0.get(language).or_else(|| self.0.get("en")).or_else(|| self.0.values().next()).map_or(&[], Vec::as_slice)
    }

    /// No language at all.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

//! What a set says of the sets below it: the words `replace`, `reword`, `tighten`, `withhold`.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::material::MaximumEntry;
use super::rule::{ApartEntry, HoldEntry, OutsideEntry, RepeatEntry};
use super::{At, Filed};
use crate::fault::Place;
use crate::text::{Text, Texts};

/// The kinds of entries that a set above may speak of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "the names are the kinds")]
pub enum EntryKind {
    Job,
    Class,
    Stage,
    Outlook,
    Sign,
    Caution,
    Source,
    Material,
    Problem,
    Plant,
    Rule,
}

impl EntryKind {
    /// What it is called.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Job => "job",
            Self::Class => "class",
            Self::Stage => "stage",
            Self::Outlook => "outlook",
            Self::Sign => "sign",
            Self::Caution => "caution",
            Self::Source => "source",
            Self::Material => "material",
            Self::Problem => "problem",
            Self::Plant => "plant",
            Self::Rule => "rule",
        }
    }
}

/// Why an entry below is spoken of, and on what grounds.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Grounds {
    /// The reason; of a rule that is withheld it is what the answer says.
    #[serde(skip_serializing_if = "Text::is_empty")]
    pub because: Text,
    /// The hash of the entry below as it was when this was written.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expects: Option<At<String>>,
    /// Whether it may take safety away.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub loosen: bool,
    /// Who has looked at that.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub reviewed_by: Vec<String>,
}

/// `reword: ID`: other texts, and nothing else.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "the names are the fields of the entries that have them")]
pub struct RewordEntry {
    /// The entry below.
    #[serde(skip_serializing)]
    pub reword: At<String>,
    #[serde(default, skip_serializing)]
    pub expects: Option<At<String>>,
    #[serde(default, skip_serializing)]
    pub because: Text,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub name: Text,
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub names: BTreeMap<String, Vec<String>>,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub about: Text,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub look: Text,
    #[serde(default, skip_serializing_if = "Texts::is_empty")]
    pub words: Texts,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub text: Text,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub analysis: Text,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub title: Text,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub why: Text,
    #[serde(default, skip_serializing_if = "Texts::is_empty")]
    pub steps: Texts,
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub professional: Text,
    #[serde(default)]
    pub outside: OutsideEntry,
}

/// `tighten: ID`: more holds, cautions and separations, lower maxima, longer intervals, and nothing else.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "the names are the fields of the entries that have them")]
pub struct TightenEntry {
    /// The entry below.
    #[serde(skip_serializing)]
    pub tighten: At<String>,
    #[serde(default, skip_serializing)]
    pub expects: Option<At<String>>,
    #[serde(default, skip_serializing)]
    pub because: Text,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hold: Vec<HoldEntry>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<At<String>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub keep_apart: Vec<ApartEntry>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub maximum: Vec<MaximumEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub repeat: Option<RepeatEntry>,
}

/// `withhold: ID`: where it would come, it is held.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WithholdEntry {
    /// The rule below.
    #[serde(skip_serializing)]
    pub withhold: At<String>,
    /// The hash of the entry below as it was; may be left out: whatever it says, it is withheld.
    #[serde(default, skip_serializing)]
    pub expects: Option<At<String>>,
    /// What the answer says.
    #[serde(default, skip_serializing)]
    pub because: Text,
}

/// What is said of an entry below.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum What {
    /// Another entry in its place, which stands among those of the set.
    Replace,
    /// Other words.
    Reword(Box<RewordEntry>),
    /// More care.
    Tighten(Box<TightenEntry>),
    /// It is held.
    Withhold,
}

impl What {
    /// The word in the file.
    #[must_use]
    pub const fn word(&self) -> &'static str {
        match self {
            Self::Replace => "replace",
            Self::Reword(_) => "reword",
            Self::Tighten(_) => "tighten",
            Self::Withhold => "withhold",
        }
    }
}

/// What a set says of one entry of the sets below it.
#[derive(Clone, Debug, Serialize)]
pub struct Change {
    /// The kind of the entry.
    pub kind: EntryKind,
    /// Its id.
    pub id: At<String>,
    /// Why.
    pub grounds: Grounds,
    /// What.
    pub what: What,
}

/// One set of those that were laid over each other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layer {
    /// Its name.
    pub name: String,
    /// Its calendar version.
    pub version: String,
    /// SHA-256 over its canonical form.
    pub sha256: String,
}

/// Which set speaks in a rule: by their numbers among the layers, the lowest is 0.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Spoken {
    /// The one that gave it its present meaning.
    pub by: usize,
    /// Those that reworded or tightened it since.
    pub also: Vec<usize>,
}

/// An entry that a set above changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Touched {
    /// Where the entry begins.
    pub entry: Place,
    /// Where it is spoken of above.
    pub by: Place,
    /// With which word.
    pub word: &'static str,
}

/// How several sets became one. Empty for a set that stands by itself.
#[derive(Clone, Debug, Default)]
pub struct Laid {
    /// The sets, lowest first.
    pub layers: Vec<Layer>,
    /// Rules in which another set than the lowest speaks.
    pub spoken: BTreeMap<String, Spoken>,
    /// Rules that are withheld, and why.
    pub withheld: BTreeMap<String, Text>,
    /// Entries that a set above changed.
    pub touched: Vec<Touched>,
}

/// Changes and the files they stand in.
pub type Changes = Vec<Filed<Change>>;

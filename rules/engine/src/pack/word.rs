//! Words of the controlled vocabularies.

use serde::{Deserialize, Serialize};

use super::{At, Expression};
use crate::text::{Text, Texts};

/// A job, a class, a stage, an outlook: an id and its name.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WordEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Its name.
    pub name: Text,
    /// What is meant by it.
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub about: Text,
}

/// Where on the plant a sign is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "the names are the places")]
pub enum Where {
    ShootTip,
    LeafUpper,
    LeafUnder,
    Bud,
    Flower,
    Fruit,
    Stem,
    Crown,
    Root,
    Soil,
    WholePlant,
}

/// Whether a sign is seen at a glance.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Seen {
    /// At a glance.
    Plain,
    /// On a close look only.
    Hidden,
}

/// Something that can be seen on a plant, or that happened to it.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SignEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Where it is seen.
    #[serde(rename = "where")]
    pub place: Where,
    /// Plain or hidden.
    pub seen: Seen,
    /// Whether it tells of an emergency: it is then heard for every plant, also for one that is unknown or not told.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub emergency: bool,
    /// Its name.
    pub name: Text,
    /// How to look.
    pub look: Text,
    /// Lay words for it.
    #[serde(default, skip_serializing_if = "Texts::is_empty")]
    pub words: Texts,
}

/// Whom or what a caution protects.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "the names are the kinds")]
pub enum CautionKind {
    Person,
    Bees,
    Pets,
    Waterway,
    Plant,
    Law,
    Stain,
    Food,
    HeatStress,
}

/// A caution.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CautionEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Whom it protects.
    pub kind: CautionKind,
    /// Left out only when this is known to be true.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unless: Option<Expression>,
    /// What is said.
    pub text: Text,
}

/// Where a piece of knowledge comes from.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SourceEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Title.
    pub title: String,
    /// Publisher.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub publisher: Option<String>,
    /// Year.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub year: Option<u16>,
    /// `page read in search excerpt`, `from memory`, `common practice`.
    pub how_read: String,
    /// When somebody should look at it again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub review_by: Option<chrono::NaiveDate>,
}

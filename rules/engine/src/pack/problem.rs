//! Problems: pests, diseases, disorders.

use serde::{Deserialize, Serialize};

use super::shapes::AllOr;
use super::{At, Expression};
use crate::text::Text;

/// What a problem is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ProblemKind {
    /// An animal.
    Pest,
    /// A fungus, bacterium or virus.
    Disease,
    /// Weather, soil, water, salt, a want of something.
    Disorder,
}

/// How regularly a sign comes with the problem.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProblemSigns {
    /// With every case.
    #[serde(default)]
    pub always: Vec<At<String>>,
    /// With most.
    #[serde(default)]
    pub often: Vec<At<String>>,
    /// With some.
    #[serde(default)]
    pub sometimes: Vec<At<String>>,
    /// With none: it speaks against it.
    #[serde(default)]
    pub never: Vec<At<String>>,
}

/// Groups of materials by how they work. Who treats again takes another group, or those that are left are hardy.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ResistanceGroups {
    /// Against insects and mites: codes of the Insecticide Resistance Action Committee, such as `4A`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub irac: Vec<At<String>>,
    /// Against fungi: codes of the Fungicide Resistance Action Committee, such as `M04`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub frac: Vec<At<String>>,
}

impl ResistanceGroups {
    /// Whether none is told.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.irac.is_empty() && self.frac.is_empty()
    }
}

/// A problem.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProblemEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Pest, disease or disorder.
    pub kind: ProblemKind,
    /// Plants that get it.
    pub plants: AllOr,
    /// Its name.
    pub name: Text,
    /// What it is, in two sentences.
    pub about: Text,
    /// Its signs.
    pub signs: ProblemSigns,
    /// What favours it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub favours: Vec<Expression>,
    /// When it is worth acting.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub threshold: Option<Expression>,
    /// 0 cosmetic .. 3 plant lost.
    pub impact: u8,
    /// The groups of the materials that are used against it.
    #[serde(default, skip_serializing_if = "ResistanceGroups::is_empty")]
    pub resistance: ResistanceGroups,
    /// Sources.
    #[serde(default)]
    pub sources: Vec<At<String>>,
}

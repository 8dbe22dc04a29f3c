//! Materials: what is spread, sprayed or laid.

use serde::{Deserialize, Serialize};

use super::At;
use super::rule::ApartEntry;
use crate::text::Text;

/// How dangerous a material is, and so who may say how much.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hazard {
    /// Compost, mulch, water.
    None,
    /// Plant foods and soil amendments.
    Low,
    /// A pest or disease material: the amount is the label's.
    Label,
    /// Not for home use, or for licensed hands only.
    Restricted,
}

/// What a maximum is counted on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// An area: `10 g/m²`.
    Area,
    /// A plant: `60 g`.
    Plant,
    /// A litre of spray or drench: `4 g`.
    Litre,
}

/// The most of it.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MaximumEntry {
    /// What it is counted on.
    pub per: Per,
    /// A number with its unit.
    pub value: At<String>,
}

/// A material.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MaterialEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Classes it belongs to.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub classes: Vec<At<String>>,
    /// Its generic name.
    pub name: Text,
    /// What is in it.
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub analysis: Text,
    /// How dangerous it is.
    pub hazard: Hazard,
    /// The most of it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub maximum: Vec<MaximumEntry>,
    /// What it is kept apart from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub keep_apart: Vec<ApartEntry>,
    /// Cautions of every work with it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<At<String>>,
    /// Sources.
    #[serde(default)]
    pub sources: Vec<At<String>>,
}

//! Plants: names, traits, stages, water.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{At, Expression};
use crate::text::Text;

/// One value of a trait.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TraitValue {
    /// Kebab-case.
    pub id: At<String>,
    /// Its name.
    pub name: Text,
    /// What customers call a plant of this kind, by language, and `scientific`: a lemon tree is a citrus of this kind.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub names: BTreeMap<String, Vec<String>>,
}

/// A way in which plants of one kind differ.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TraitEntry {
    /// The short name used in `where`.
    pub id: At<String>,
    /// What it can be.
    pub values: Vec<TraitValue>,
    /// What is assumed when it is not said; left out: unknown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub usual: Option<At<String>>,
    /// How it is asked.
    pub ask: Text,
}

/// A stage and the marker that it begins at.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StageBegins {
    /// The stage.
    pub stage: At<String>,
    /// `M ± duration [else …]`.
    pub begins: At<String>,
}

/// Typical size of a grown plant.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SizeEntry {
    /// Height with its unit.
    pub height: At<String>,
    /// Width of the crown with its unit.
    pub canopy_diameter: At<String>,
    /// Years until it is grown; younger plants are in proportion, but never under a quarter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grown_after: Option<At<String>>,
}

/// How it drinks.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WaterEntry {
    /// Share of the reference evapotranspiration.
    pub factor: f64,
    /// Depth that is watered.
    pub root_depth: At<String>,
    /// Share of the available water that may be used before the next soak.
    pub depletion: f64,
}

/// Where a plant asks for nothing for half a year or longer, and why.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct QuietEntry {
    /// In which climates.
    #[serde(rename = "where")]
    pub place: Expression,
    /// Why nothing opens for so long.
    pub because: Text,
}

/// A plant.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlantEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Its name.
    pub name: Text,
    /// Other names, per language and `scientific`.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub names: BTreeMap<String, Vec<String>>,
    /// Its traits.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub traits: Vec<TraitEntry>,
    /// Its stages in order.
    #[serde(default)]
    pub stages: Vec<At<String>>,
    /// The stages in which it is in leaf.
    #[serde(default)]
    pub in_leaf: Vec<At<String>>,
    /// When each stage begins.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stage_model: Vec<StageBegins>,
    /// Its size.
    pub size: SizeEntry,
    /// How it drinks.
    pub water: WaterEntry,
    /// Whether it is eaten.
    #[serde(default)]
    pub food_use: bool,
    /// Where it is grown; left out: everywhere.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grown: Option<Expression>,
    /// Where it is quiet for half a year or longer.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub quiet: Vec<QuietEntry>,
}

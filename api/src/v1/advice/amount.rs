//! An amount, as it is sent.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::words::AmountBasis;

/// An amount.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceAmount {
    /// What the number says.
    pub what: String,
    /// The number, rounded for show; none where it can't be reckoned.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub value: Option<f64>,
    /// Its unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub unit: Option<String>,
    /// The same in the United States' units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub us: Option<AdviceMeasure>,
    /// How it was found.
    pub basis: AmountBasis,
    /// The quantity that was reckoned: `POST /v1/quantities/{name}` reckons it too.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub quantity: Option<String>,
    /// What is usual.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub typical: Option<AdviceRange>,
    /// Facts without which it can't be reckoned.
    pub needs: Vec<String>,
    /// Whether the material's maximum capped it.
    pub capped: bool,
    /// Why it could not be reckoned, or what was taken for granted.
    pub remarks: Vec<String>,
}

/// A value with its unit.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceMeasure {
    /// Rounded for show.
    pub value: f64,
    /// Its unit.
    pub unit: String,
}

/// A usual range.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceRange {
    /// The least.
    pub min: f64,
    /// The most.
    pub max: f64,
    /// The unit.
    pub unit: String,
    /// The same in the United States' units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub us: Option<AdviceUsRange>,
}

/// A usual range in the United States' units.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceUsRange {
    /// The least.
    pub min: f64,
    /// The most.
    pub max: f64,
    /// The unit.
    pub unit: String,
}

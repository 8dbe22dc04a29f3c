//! How good a climate is that was estimated from coordinates.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::question::choices::choices;

choices! {
    /// How far an estimated climate may be trusted.
    ClimateGrade {
        Good "good" "As good as such an estimate is.",
        Fair "fair" "Something makes it worse.",
        Poor "poor" "Not to be trusted without better numbers.",
    }
    /// Why the elevation is asked for.
    ElevationMatters {
        RoughGround "rough-ground" "The ground around differs much in height.",
        NearEdge "near-edge" "Something said of the day would be another within the likely error of its dates.",
    }
}

/// How good an estimated climate is: mean errors, measured against weather records.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateError {
    /// How far it may be trusted.
    pub grade: ClimateGrade,
    /// Why it is not better.
    pub doubts: Vec<ClimateDoubt>,
    /// What would be better.
    pub better: String,
    /// Mean error of a month's mean temperature, K.
    pub tmean_k: f64,
    /// Mean error of a month's minimum or maximum, K.
    pub extremes_k: f64,
    /// Mean error of a month's rain, mm; left out where no rain is counted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub rain_mm: Option<f64>,
    /// Mean error of a frost date, days; left out where there are none to be told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub frost_days: Option<f64>,
    /// Mean error of the mean annual extreme minimum, K.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub extreme_min_k: Option<f64>,
    /// Mean error of a month's reference evapotranspiration, mm a day.
    pub et0_mm_day: f64,
    /// The elevation asked for, where it was not said and the ground is rough or the day near an edge: no fact that a rule
    /// reads, so that it does not stand among the `questions`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub ask: Option<ClimateElevationAsked>,
}

/// The elevation asked for, and what it narrows.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateElevationAsked {
    /// Where the number goes: a JSON pointer (RFC 6901) into the request.
    pub pointer: String,
    /// The question in plain words.
    pub text: String,
    /// How to find out.
    pub look: String,
    /// The unit of the number.
    pub unit: String,
    /// The least that can be said.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// Why it is asked.
    pub because: ElevationMatters,
    /// What it narrows, in words.
    pub narrows: String,
    /// Mean error of a month's mean temperature that is left, K.
    pub tmean_k: f64,
    /// Mean error of a frost date that is left, days.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub frost_days: Option<f64>,
    /// Mean error of the mean annual extreme minimum that is left, K.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub extreme_min_k: Option<f64>,
}

/// One reason for doubt.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateDoubt {
    /// Its name.
    pub id: String,
    /// In words.
    pub text: String,
}

//! How a climate differs from another, in an answer.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::question::choices::choices;
use super::question::date::DayOfYear;
use super::season::answer::SeasonMarkerState;

choices! {
    /// What became of a marker.
    MarkerChange {
        Moved "moved" "It comes on another day.",
        Came "came" "It comes here and not there.",
        Went "went" "It comes there and not here.",
        Changed "changed" "It comes neither there nor here, for different reasons.",
    }
}

/// How the climate differs from the one that was named beside the differences.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateDiffering {
    /// SHA-256 of the content of the climate from which it differs.
    #[schema(pattern = "^[0-9a-f]{64}$")]
    pub from_sha256: String,
    /// The differences that were taken.
    pub taken: Vec<DifferenceTaken>,
    /// Markers that moved, came or went.
    pub markers: Vec<MarkerMoved>,
    /// How many more of them there are: an answer in short names those of its season alone.
    pub markers_more: u32,
}

/// A difference that was taken.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DifferenceTaken {
    /// As the request names it.
    pub id: String,
    /// In words.
    pub text: String,
}

/// A marker that is not what it is in the other climate.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MarkerMoved {
    /// As rules write it.
    pub name: String,
    /// In words.
    pub words: String,
    /// What became of it.
    pub change: MarkerChange,
    /// Its state there.
    pub from_state: SeasonMarkerState,
    /// Its day there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub from: Option<DayOfYear>,
    /// Its state here.
    pub to_state: SeasonMarkerState,
    /// Its day here.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub to: Option<DayOfYear>,
    /// Days from there to here; negative is earlier.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub days: Option<i32>,
    /// What became of it, in words.
    pub text: String,
}

//! The season as it is sent: the same members as the engine's own.

use serde::{Deserialize, Serialize};
use serde_json::Value;
use utoipa::ToSchema;

use crate::v1::advice::task::AdviceSource;
use crate::v1::advice::words::FactOrigin;
use crate::v1::climate_differences::ClimateDiffering;
use crate::v1::climate_error::ClimateError;
use crate::v1::question::choices::choices;
use crate::v1::question::date::Date;
use crate::v1::weather::AnswerWeather;

choices! {
    /// Half of the year.
    SeasonHalf {
        Warming "warming" "It is getting warmer.",
        Cooling "cooling" "It is getting cooler.",
        Even "even" "The year has no halves.",
    }
    /// The state of a marker.
    SeasonMarkerState {
        Seasonal "seasonal" "It comes each year, on a day.",
        Never "never" "Its season never comes.",
        Always "always" "Its season never ends.",
        Even "even" "The year is too even to have it.",
        Unknown "unknown" "It can't be told.",
    }
    /// How reference evapotranspiration is reckoned.
    SeasonEtMethod {
        PenmanMonteith "penman-monteith" "FAO-56 Penman-Monteith.",
        HargreavesSamani "hargreaves-samani" "Hargreaves-Samani, where only temperatures are known.",
    }
    /// What had to be taken by FAO-56's rules.
    SeasonEtInput {
        Elevation "elevation" "The elevation.",
        Humidity "humidity" "The humidity.",
        Wind "wind" "The wind.",
        Radiation "radiation" "The radiation.",
    }
}

/// The season on a day, in short.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonInBrief {
    /// Half of the year.
    pub half: SeasonHalf,
    /// Normal minimum, °C.
    pub tmin_c: f64,
    /// Normal maximum, °C.
    pub tmax_c: f64,
    /// Reference evapotranspiration, mm a day.
    pub et0_mm_day: f64,
    /// How that was reckoned.
    pub et0_method: SeasonEt,
    /// Daylength, h.
    pub daylength_h: f64,
    /// Warmth over 5 °C still to come before frost or before growth stops, °Cd.
    pub heat_left_cd: f64,
    /// Share of years with frost, %; left out where an estimate can't tell.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub frost_chance_pct: Option<f64>,
    /// The markers that matter most, each with its occurrence nearest to the day.
    pub markers: Vec<SeasonMarker>,
}

/// A marker: a date of the year at hand that rules hang on.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonMarker {
    /// As rules write it.
    pub name: String,
    /// In words.
    pub words: String,
    /// Whether it comes.
    pub state: SeasonMarkerState,
    /// Its occurrence nearest to the day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub nearest: Option<Date>,
    /// Days from the day to it; negative when it is past.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub days: Option<i32>,
    /// Where it comes from.
    pub origin: FactOrigin,
    /// Its likely error, days.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub likely_error_days: Option<f64>,
    /// A remark, such as that frost comes in some years only.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub remark: Option<String>,
    /// How it is computed; not in every answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub formula: Option<String>,
}

/// How reference evapotranspiration was reckoned.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonEt {
    /// The method.
    pub method: SeasonEtMethod,
    /// Inputs that were not given and were taken by FAO-56's rules.
    pub assumed: Vec<SeasonEtInput>,
}

/// The whole season on a day.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonAnswer {
    /// The day.
    pub date: Date,
    /// Half of the year.
    pub half: SeasonHalf,
    /// Normal minimum, °C.
    pub tmin_c: f64,
    /// Normal maximum, °C.
    pub tmax_c: f64,
    /// Reference evapotranspiration, mm a day.
    pub et0_mm_day: f64,
    /// How that was reckoned.
    pub et0_method: SeasonEt,
    /// Daylength, h.
    pub daylength_h: f64,
    /// Warmth over 5 °C still to come before frost or before growth stops, °Cd.
    pub heat_left_cd: f64,
    /// Share of years with frost, %; left out where an estimate can't tell.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub frost_chance_pct: Option<f64>,
    /// Every marker, with its occurrence nearest to the day and how it is computed.
    pub markers: Vec<SeasonMarker>,
    /// Every fact of the season, as rules read it.
    pub facts: Vec<SeasonFactShown>,
    /// Hardiness half zone, by the mean of each year's lowest temperature; none where frost can't be told.
    #[schema(pattern = "^([1-9]|1[0-3])[ab]$", example = "8a")]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardiness_zone: Option<String>,
    /// Heat zone, by the yearly number of days above 30 °C.
    #[schema(minimum = 1, maximum = 12)]
    pub heat_zone: u8,
    /// Largest difference between the daily curve and a monthly mean, K.
    pub curve_error_k: f64,
    /// SHA-256 of the climate's content.
    #[schema(pattern = "^[0-9a-f]{64}$")]
    pub climate_sha256: String,
    /// Where the climate comes from.
    pub climate_origin: FactOrigin,
    /// How the climate differs from the one that the question names, if it was said so, with every marker that moved.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub climate_differences: Option<ClimateDiffering>,
    /// How good the climate is, if it was estimated from coordinates.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub climate_error: Option<ClimateError>,
    /// Where the climate comes from, if it was estimated: the notice that has to be shown with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub climate_sources: Option<Vec<AdviceSource>>,
    /// What became of the forecast, if there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub forecast: Option<String>,
    /// The weather behind it, if there is any: kept for the registered climate, or brought by the request.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub weather: Option<AnswerWeather>,
    /// Where that weather does not count: why, and what is taken in its place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub weather_note: Option<String>,
    /// What tells the days around this one, from two weeks before it to as far as a forecast may reach, as runs of days
    /// in order.
    pub days: Vec<SeasonDays>,
}

/// Days in a row whose temperatures are told by the same.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonDays {
    /// The first.
    pub from: Date,
    /// The last.
    pub to: Date,
    /// Measured, forecast, or worked out from the normals.
    pub origin: FactOrigin,
}

/// A fact of the season.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonFactShown {
    /// As rules write it.
    pub name: String,
    /// What it is called.
    pub words: String,
    /// Its value; `null` when it is not known.
    pub value: Value,
    /// Its unit; empty if it has none.
    pub unit: String,
    /// Where it comes from.
    pub origin: FactOrigin,
}

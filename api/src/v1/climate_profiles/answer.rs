//! A profile as it is sent.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::request::RecordUnits;
use crate::v1::question::choices::choices;
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::date::Date;

choices! {
    /// What of a climate is spoken of.
    ProfilePart {
        Temperature "temperature" "Its temperatures.",
        Frost "frost" "Its frost dates and its coldest night.",
        Rain "rain" "Its rain.",
        Evaporation "evaporation" "What water evaporates: humidity, wind, radiation.",
        Place "place" "Where it is.",
        RecentWeather "recent-weather" "The last days of the record.",
    }
    /// How a record was written.
    RecordLayout {
        Json "json" "JSON, whose members name their units.",
        Plain "plain" "CSV, whose columns name their units.",
        Station "station" "A station export in CSV: `STATION`, `DATE`, `TMAX`, `TMIN`, `PRCP`.",
    }
    /// What looks wrong in a record, though each value by itself is possible.
    RecordSuspicion {
        Stuck "stuck" "A value that stayed the same for 7 recorded days or more.",
        Unit "unit" "Values that look as if they were in another unit.",
        Declared "declared" "Values that do not look like the unit that was declared.",
    }
}

/// A climate from a daily record.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileAnswer {
    /// The climate, as it can be put into `climate` of a question.
    pub climate: ClimateGiven,
    /// SHA-256 of its content, as an answer that stands on it will name it.
    #[schema(pattern = "^[0-9a-f]{64}$")]
    pub climate_sha256: String,
    /// How the record was written, and in which units it was read.
    pub layout: ProfileLayout,
    /// How complete the record is, and what looks wrong in it.
    pub quality: ProfileQuality,
    /// How sure the frost dates are that were counted; left out where there are too few seasons with frost.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub frost_error: Option<ProfileFrostError>,
    /// What was made of it.
    pub known: Vec<ProfileRemark>,
    /// What it does not tell, and what becomes of that.
    pub unknown: Vec<ProfileRemark>,
    /// Columns of a CSV file that were not read.
    pub ignored_columns: Vec<String>,
}

/// How complete a record is.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileQuality {
    /// Its first day.
    pub first: Date,
    /// Its last day.
    pub last: Date,
    /// Years from the one to the other, to a tenth.
    pub years: f64,
    /// Days from the one to the other.
    pub days: u32,
    /// Days with both temperatures.
    pub recorded_days: u32,
    /// Days with rain read, zero included.
    pub rain_days: u32,
    /// Days in a row without both temperatures, longest first, at most 50.
    pub gaps: Vec<ProfileGap>,
    /// How many of them there are.
    pub gap_count: u32,
    /// Cold halves of a year that are recorded on 90 % of their days: those in which frost is counted.
    pub frost_seasons: u16,
    /// Calendar years with nine tenths of both extremes: those in which yearly figures are counted.
    pub years_used: Vec<i32>,
    /// What looks wrong, the longest first, at most some 20. Nothing of it was changed or left out.
    pub suspicions: Vec<ProfileSuspicion>,
    /// How many there are.
    pub suspicion_count: u32,
}

/// How a record was written, and in which units it was read.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileLayout {
    /// How it was written.
    pub form: RecordLayout,
    /// The station, where it is named.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub station: Option<String>,
    /// In which units a station export was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub units: Option<RecordUnits>,
    /// Whether these were declared; else they were detected from the values.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub units_declared: Option<bool>,
    /// All that in words.
    pub words: String,
}

/// How sure frost dates are that were counted: nine of ten runs of as many years would give dates within so many days.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileFrostError {
    /// Share of such runs, %.
    pub level_pct: u8,
    /// Of the last frost.
    pub last: ProfileFrostDays,
    /// Of the first.
    pub first: ProfileFrostDays,
    /// How it is reckoned, and after whom.
    pub method: String,
}

/// Days either side of the dates by which 10, 50 and 90 % of years have had that frost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileFrostDays {
    /// 10 %.
    pub early_days: u16,
    /// 50 %.
    pub median_days: u16,
    /// 90 %.
    pub late_days: u16,
}

/// Something that looks wrong in a record.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileSuspicion {
    /// What.
    pub kind: RecordSuspicion,
    /// In words.
    pub words: String,
    /// The first day of it, where it has days.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub first: Option<Date>,
    /// The last.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub last: Option<Date>,
}

/// Days in a row without both temperatures.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileGap {
    /// The first of them.
    pub first: Date,
    /// The last of them.
    pub last: Date,
    /// How many.
    pub days: u32,
}

/// A remark on a part of a climate.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileRemark {
    /// The part.
    pub about: ProfilePart,
    /// The remark.
    pub words: String,
}

//! A profile as it is sent.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

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
    /// How complete the record is.
    pub quality: ProfileQuality,
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

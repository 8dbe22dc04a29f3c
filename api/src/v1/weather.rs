//! The weather behind an answer.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::question::choices::choices;
use super::question::date::{Date, Instant};

choices! {
    /// Where the weather behind an answer comes from.
    WeatherFrom {
        Registered "registered" "It is kept for the registered climate.",
        Request "request" "It came with the request.",
    }
}

/// The weather behind an answer.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AnswerWeather {
    /// Where it comes from.
    pub from: WeatherFrom,
    /// SHA-256 of its content, where it is kept for a registered climate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, pattern = "^[0-9a-f]{64}$")]
    pub sha256: Option<String>,
    /// The moment at which it was issued, where it is kept for a registered climate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub issued: Option<Instant>,
    /// The date at the place on which it was issued; left out where a request brings observed days alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub issued_on: Option<Date>,
    /// The days that were observed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub observed: Option<AnswerWeatherSpan>,
    /// The days that were forecast.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub forecast: Option<AnswerWeatherSpan>,
    /// Whether it counts. Kept weather counts for 36 hours after its issue, at noon of a date that is asked about, else
    /// now; a forecast in a request for 3 days after its day of issue. Observed days in a request always count.
    pub used: bool,
    /// Why it does not count.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub why: Option<String>,
}

/// Days from one to another.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AnswerWeatherSpan {
    /// The first.
    pub from: Date,
    /// The last.
    pub to: Date,
    /// How many there are; some between may be missing.
    pub days: u16,
}

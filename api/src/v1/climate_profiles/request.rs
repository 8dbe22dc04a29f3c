//! A daily record.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::v1::question::choices::{Language, choices};
use crate::v1::question::date::Date;

choices! {
    /// The units of a station export.
    RecordUnits {
        Metric "metric" "°C and mm.",
        Tenths "tenths" "Tenths of °C and of mm, as whole numbers.",
    }
}

/// A daily record and its place.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileRequest {
    /// Degrees, south negative. Here or in the query.
    #[schema(minimum = -90, maximum = 90)]
    pub latitude: Option<f64>,
    /// Degrees, west negative.
    #[schema(minimum = -180, maximum = 180)]
    pub longitude: Option<f64>,
    /// Metres above the sea.
    #[schema(minimum = -500, maximum = 9000)]
    pub elevation_m: Option<f64>,
    /// At most so many of the record's last days go into the climate as recent weather; 400 when left out.
    #[schema(minimum = 0, maximum = 400)]
    pub recent_days: Option<u16>,
    /// The language of the answer; else the header `accept-language` decides.
    pub language: Option<Language>,
    /// The days, in any order, gaps allowed: a year or more, at most 200 years.
    #[schema(max_items = 73050)]
    pub days: Vec<ProfileDay>,
}

/// A day of a record; what was not read is left out or `null`.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileDay {
    /// The day.
    pub date: Date,
    /// Lowest temperature, °C.
    #[schema(minimum = -90, maximum = 60)]
    pub tmin_c: Option<f64>,
    /// Highest temperature, °C.
    #[schema(minimum = -90, maximum = 60)]
    pub tmax_c: Option<f64>,
    /// Rain, snow and hail as water, mm.
    #[schema(minimum = 0, maximum = 2000)]
    pub precip_mm: Option<f64>,
}

/// The place of a record that is sent as CSV, and how it is answered. Beside JSON what stands in both must be the same.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, utoipa::IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct ProfileQuery {
    /// Degrees, south negative.
    #[param(required = false, nullable = false, minimum = -90, maximum = 90, example = 40.4)]
    pub latitude: Option<f64>,
    /// Degrees, west negative.
    #[param(required = false, nullable = false, minimum = -180, maximum = 180, example = -101.7)]
    pub longitude: Option<f64>,
    /// Metres above the sea.
    #[param(required = false, nullable = false, minimum = -500, maximum = 9000, example = 1000)]
    pub elevation_m: Option<f64>,
    /// At most so many of the record's last days go into the climate as recent weather; 400 when left out.
    #[param(required = false, nullable = false, minimum = 0, maximum = 400, example = 0)]
    pub recent_days: Option<u16>,
    /// The units of a station export (CSV with `STATION`, `DATE`, `TMAX`, `TMIN`, `PRCP`); detected from its values, and
    /// said, when left out. Other records name their units, which are `metric`.
    #[param(required = false, nullable = false, example = "metric")]
    pub units: Option<RecordUnits>,
    /// The language of the answer; else the header `accept-language` decides.
    #[param(required = false, nullable = false, example = "en")]
    pub language: Option<Language>,
}

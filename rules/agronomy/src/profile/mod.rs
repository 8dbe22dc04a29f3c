//! The climate profile: what is known of a place before any season is computed.

mod check;
mod differences;
mod estimate_basis;
mod fault;
mod frost_dates;
mod limits;
mod normals;
mod weather;

use serde::Serialize;

pub use differences::{Differences, differences};
pub use estimate_basis::EstimateBasis;
pub use fault::ProfileFault;
pub use frost_dates::{CountedFrost, FrostTriple, GivenFrost};
pub use limits::Limits;
pub use normals::{Humidity, Monthly, Normals, Radiation};
pub use weather::{DailyWeather, Forecast};

use crate::origin::Origin;

/// What is known of the climate of a place: the one input of a season.
///
/// Plain data; [`Profile::check`] says what is wrong with it. Everything that hangs on rain is
/// unknown while `normals.rain_mm` is missing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Profile {
    /// Latitude, degrees, north positive, -90 to 90.
    pub latitude_deg: f64,
    /// Longitude, degrees, east positive, -180 to 180.
    pub longitude_deg: Option<f64>,
    /// Height above the sea, m, -500 to 9000.
    pub elevation_m: Option<f64>,
    /// Whether the sea is near; it sets the radiation coefficient of FAO-56 eq 50. Missing: inland.
    pub coastal: Option<bool>,
    /// Monthly normals.
    pub normals: Normals,
    /// Frost dates that the caller knows of. They win over everything else.
    pub frost: Option<GivenFrost>,
    /// Frost dates counted from a daily record. They win over those from normals.
    pub counted_frost: Option<CountedFrost>,
    /// Mean annual extreme minimum, °C, -90 to 40.
    pub extreme_min_c: Option<f64>,
    /// Mean number of days a year with a maximum above 30 °C, counted from a daily record, 0 to 366.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_days_a_year: Option<f64>,
    /// Standard deviation of the daily minimum about the smooth year, K, each month, 0.1 to 20.
    pub tmin_sd_k: Option<Monthly>,
    /// Whether that spread was estimated (from the surroundings of the place) and not measured. Frost
    /// dates are then less sure.
    pub tmin_sd_estimated: bool,
    /// Recent daily records, in order of days, at most 400.
    pub observations: Vec<DailyWeather>,
    /// The forecast.
    pub forecast: Option<Forecast>,
    /// Where the normals come from: given, measured (from a daily record) or estimated (from
    /// coordinates).
    pub origin: Origin,
    /// What an estimate from coordinates stands on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub estimate: Option<EstimateBasis>,
}

impl Profile {
    /// Most recent daily records that a profile may carry.
    pub const MOST_OBSERVATIONS: usize = 400;
    /// Most days that a forecast may have.
    pub const MOST_FORECAST_DAYS: usize = 16;

    /// A profile of which only latitude and temperatures are known.
    #[must_use]
    pub fn of_temperatures(latitude_deg: f64, tmin_c: Monthly, tmax_c: Monthly) -> Self {
        Self {
            latitude_deg,
            longitude_deg: None,
            elevation_m: None,
            coastal: None,
            normals: Normals { tmin_c, tmax_c, rain_mm: None, humidity: None, wind_ms: None, radiation: None },
            frost: None,
            counted_frost: None,
            extreme_min_c: None,
            heat_days_a_year: None,
            tmin_sd_k: None,
            tmin_sd_estimated: false,
            observations: Vec::new(),
            forecast: None,
            origin: Origin::Given,
            estimate: None,
        }
    }
}

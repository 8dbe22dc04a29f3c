//! Monthly normals.

use serde::Serialize;

/// Twelve monthly values, January first, in both hemispheres.
pub type Monthly = [f64; 12];

/// Monthly normals of a place.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Normals {
    /// Mean daily minimum, °C.
    pub tmin_c: Monthly,
    /// Mean daily maximum, °C, not below the minimum.
    pub tmax_c: Monthly,
    /// Rain of the month, mm.
    pub rain_mm: Option<Monthly>,
    /// Humidity of the air.
    pub humidity: Option<Humidity>,
    /// Wind at 2 m above the ground, m/s.
    pub wind_ms: Option<Monthly>,
    /// Sunshine or solar radiation.
    pub radiation: Option<Radiation>,
}

/// Humidity of the air, as it is known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Humidity {
    /// Mean relative humidity, %.
    RhMean(Monthly),
    /// Mean dew point, °C.
    DewPoint(Monthly),
}

/// What the sun gives, as it is known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Radiation {
    /// Hours of bright sunshine a day.
    SunshineHours(Monthly),
    /// Solar radiation, MJ/m² a day.
    SolarMj(Monthly),
}

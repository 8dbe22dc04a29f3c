//! The weather of single days: recorded or forecast.

use serde::Serialize;

use crate::calendar::Day;

/// The weather of one day; what was not read is missing.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DailyWeather {
    /// The day.
    pub day: Day,
    /// Lowest temperature, °C.
    pub tmin_c: Option<f64>,
    /// Highest temperature, °C, not below the lowest.
    pub tmax_c: Option<f64>,
    /// Rain, mm.
    pub rain_mm: Option<f64>,
    /// Mean relative humidity, %.
    pub rh_pct: Option<f64>,
    /// Mean wind at 2 m, m/s.
    pub wind_ms: Option<f64>,
}

impl DailyWeather {
    /// A day of which nothing is known yet.
    #[must_use]
    pub fn unknown(day: Day) -> Self {
        Self { day, tmin_c: None, tmax_c: None, rain_mm: None, rh_pct: None, wind_ms: None }
    }

    /// Half the sum of minimum and maximum, °C, when both are known.
    #[must_use]
    pub fn tmean_c(&self) -> Option<f64> {
        Some((self.tmin_c? + self.tmax_c?) / 2.0)
    }
}

/// A weather forecast.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Forecast {
    /// The day on which it was issued.
    pub issued: Day,
    /// Its days, in order, at most 16, from the day of issue on.
    pub days: Vec<DailyWeather>,
}

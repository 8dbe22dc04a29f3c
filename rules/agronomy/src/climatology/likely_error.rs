//! By how much an estimate is likely to be off.

use serde::Serialize;

/// Mean error of half the range of the day, K: half of 1.57.
const HALF_RANGE_K: f64 = 0.785;

/// Mean absolute errors of an estimate. Measured against daily records and station normals: temperature at 76 places and
/// 49 Alpine stations, rain at 63, frost and extremes at 89, evapotranspiration at 11.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LikelyErrors {
    /// Of a month's mean temperature, K.
    pub tmean_k: f64,
    /// Of a month's mean minimum or maximum, K: that of the mean and of half the daily range, as independent.
    pub extremes_k: f64,
    /// Of the rain of a month, mm; none where the rain is left out.
    pub rain_mm: Option<f64>,
    /// Of a frost date, days; none where there are none to be told.
    pub frost_days: Option<f64>,
    /// Of the mean annual extreme minimum, K.
    pub extreme_min_k: Option<f64>,
    /// Of a month's reference evapotranspiration, mm/day.
    pub et0_mm_day: f64,
}

impl LikelyErrors {
    /// By the spread of the heights around (m), whether the elevation was said, and what could be told at all.
    #[must_use]
    pub fn of(spread_m: f64, elevation_said: bool, rain_told: bool, cold_told: bool) -> Self {
        let by_spread = |[flat, hilly, steep, alpine]: [f64; 4]| match spread_m {
            spread if spread < 150.0 => flat,
            spread if spread < 400.0 => hilly,
            spread if spread < 800.0 => steep,
            _ => alpine,
        };
        let (tmean_k, frost_days, extreme_min_k, et0_mm_day) = if elevation_said {
            (by_spread([0.9, 1.3, 1.3, 1.2]), 12.0, 3.1, 0.33)
        } else {
            (by_spread([0.87, 1.9, 2.0, 2.6]), 15.0, 3.3, 0.34)
        };
        Self {
            tmean_k,
            extremes_k: (tmean_k * tmean_k + HALF_RANGE_K * HALF_RANGE_K).sqrt(),
            rain_mm: rain_told.then_some(21.0),
            frost_days: cold_told.then_some(frost_days),
            extreme_min_k: cold_told.then_some(extreme_min_k),
            et0_mm_day,
        }
    }
}

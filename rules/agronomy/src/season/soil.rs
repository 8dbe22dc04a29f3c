//! Soil temperature.

use std::f64::consts::TAU;

use super::Season;
use crate::calendar::Day;
use crate::origin::Origin;
use crate::profile::DailyWeather;

/// Depth, m.
const DEPTH_M: f64 = 0.10;
/// Thermal diffusivity of soil, m²/day: 5e-7 m²/s (from memory, a middling moist soil).
const DIFFUSIVITY_M2_D: f64 = 0.043;
/// Days of records that the running mean looks back over; older ones weigh under 0.3 % (own choice).
const LOOK_BACK_DAYS: i32 = 21;
/// Share of these days, in tenths, that must be recorded (own choice).
const ENOUGH_TENTHS: usize = 8;
/// Share by which the soil follows the air each day (own choice).
const FOLLOWS: f64 = 0.25;

impl Season {
    /// Soil temperature at 10 cm, °C.
    ///
    /// From the records where at least 80 % of the 21 days before the day are there (`Measured`): a
    /// running mean `S += 0.25 (tmean - S)` over them, started at the curve's value; a day that is
    /// missing takes the curve's mean. Else from the curve: each harmonic k of the mean temperature
    /// damped by `exp(-z/D)` and delayed by `z/D`, `D = sqrt(2 a / w)`, w its angular frequency per
    /// day: the solution of the heat equation for a wave at the surface.
    #[must_use]
    pub fn soil_10cm_c(&self, day: Day) -> (f64, Origin) {
        let soil = self.soil.get_or_init(|| {
            self.tmean.damped([1.0, 2.0, 3.0].map(|k| {
                let per_day_rad = k * TAU / 365.0;
                DEPTH_M / (2.0 * DIFFUSIVITY_M2_D / per_day_rad).sqrt()
            }))
        });
        let from = day - LOOK_BACK_DAYS;
        let recorded = self.observations.between(from, day);
        let known = recorded.iter().filter(|weather| weather.tmean_c().is_some()).count();
        if known * 10 < LOOK_BACK_DAYS.unsigned_abs() as usize * ENOUGH_TENTHS {
            return (soil.at(day.climate_day()), self.curve_origin);
        }
        let mut soil_c = soil.at(from.climate_day());
        let mut recorded = recorded.iter().peekable();
        for ahead in 0..LOOK_BACK_DAYS {
            let day = from + ahead;
            let weather = recorded.next_if(|weather| weather.day == day);
            let air_c = weather.and_then(DailyWeather::tmean_c).unwrap_or_else(|| self.tmean_c.at(day.climate_day()));
            soil_c += FOLLOWS * (air_c - soil_c);
        }
        (soil_c, Origin::Measured)
    }
}

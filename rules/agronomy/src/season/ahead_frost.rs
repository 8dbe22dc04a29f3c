//! Whether a cold night lies ahead.

use super::Season;
use crate::calendar::Day;
use crate::frost::{SPELL_FACTOR, night_chance};
use crate::origin::Origin;

/// Share of years with such a night from which on it is reckoned with.
const OFTEN: f64 = 0.1;

impl Season {
    /// Whether a minimum at or below a temperature (°C) lies within a day and the `days - 1` days after
    /// it.
    ///
    /// True with origin `Forecast` when a forecast day says so; false with origin `Forecast` when the
    /// forecast covers all days and none does. For the days without a forecast it is true when 10 % or
    /// more of years have such a night in them (`Computed`, or `Estimated`).
    #[must_use]
    pub fn frost_ahead(&self, temp_c: f64, days: u16, on: Day) -> (bool, Origin) {
        let forecast = self.usable_forecast(on);
        let mut sum = 0.0;
        let mut foretold_days = 0;
        for ahead in 0..days {
            let day = on + i32::from(ahead);
            let foretold_c = forecast.and_then(|forecast| forecast.on(day)).and_then(|weather| weather.tmin_c);
            if let Some(tmin_c) = foretold_c {
                if tmin_c <= temp_c {
                    return (true, Origin::Forecast);
                }
                foretold_days += 1;
            } else {
                let day = day.climate_day();
                sum += night_chance(temp_c, self.tmin_c.at(day), self.spread_k.at(day));
            }
        }
        if days > 0 && foretold_days == days {
            return (false, Origin::Forecast);
        }
        (-libm::expm1(-SPELL_FACTOR * sum) >= OFTEN, self.curve_origin)
    }
}

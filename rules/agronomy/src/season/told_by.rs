//! Which days are recorded, which are forecast, and which are the normals'.

use super::Season;
use crate::calendar::Day;
use crate::origin::Origin;
use crate::profile::DailyWeather;

impl Season {
    /// What tells the temperatures of a day when `on` is asked about: before it a record (`Measured`), from it on a
    /// forecast that may be used (`Forecast`); else the curve (`Computed`, or `Estimated`).
    #[must_use]
    pub fn told_by(&self, day: Day, on: Day) -> Origin {
        let (days, told) = if day < on {
            (Some(&self.observations), Origin::Measured)
        } else {
            (self.usable_forecast(on), Origin::Forecast)
        };
        let tmean_c = days.and_then(|days| days.on(day)).and_then(DailyWeather::tmean_c);
        if tmean_c.is_some() { told } else { self.curve_origin }
    }

    /// The first and the last recorded day; none without records.
    #[must_use]
    pub fn recorded(&self) -> Option<(Day, Day)> {
        self.observations.extent()
    }

    /// The day of issue of the forecast, its first and its last day; none without one. It may be one that is not used.
    #[must_use]
    pub fn foretold(&self) -> Option<(Day, Day, Day)> {
        let (issued, days) = self.forecast.as_ref()?;
        let (first, last) = days.extent()?;
        Some((*issued, first, last))
    }
}

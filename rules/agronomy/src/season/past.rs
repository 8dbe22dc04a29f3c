//! The days before a day.

use super::Season;
use super::tally::Tally;
use crate::calendar::Day;
use crate::curve::{Aggregate, Series};
use crate::origin::Origin;
use crate::profile::DailyWeather;

/// Share of days, in tenths, that must be recorded for a record to speak.
const ENOUGH_TENTHS: u32 = 8;

impl Season {
    /// The recorded days before a day, in order, as this site has them.
    #[must_use]
    pub fn days_recorded(&self, before: Day) -> &[DailyWeather] {
        let first = self.observations.extent().map_or(before, |(first, _)| first);
        self.observations.between(first, before)
    }

    /// A value over the `days` days before a day, the day itself not counted.
    ///
    /// From the records where at least 80 % of these days are there (`Measured`): over the recorded
    /// days, a sum scaled up to all of them. Else from the curve (`Computed`, or `Estimated`). None
    /// for no days at all, and where neither is known.
    #[must_use]
    pub fn past(&self, aggregate: Aggregate, series: Series, days: u16, on: Day) -> Option<(f64, Origin)> {
        let count = u32::from(days);
        let from = on - i32::from(days);
        let mut tally = Tally::new();
        for weather in self.observations.between(from, on) {
            if let Some(value) = self.read(series, weather) {
                tally.add(value);
            }
        }
        if tally.count > 0 && tally.count * 10 >= count * ENOUGH_TENTHS {
            return Some((tally.of(aggregate, count)?, Origin::Measured));
        }
        let mut tally = Tally::new();
        for back in (1..=i32::from(days)).rev() {
            tally.add(self.curve(series, (on - back).climate_day())?);
        }
        Some((tally.of(aggregate, count)?, self.curve_origin))
    }
}

//! A day and the days after it.

use super::Season;
use super::tally::Tally;
use super::weather_days::WeatherDays;
use crate::calendar::Day;
use crate::curve::{Aggregate, Series};
use crate::origin::Origin;
use crate::profile::DailyWeather;

/// A forecast issued more days before the day asked than this counts as not there.
const STALE_AFTER_DAYS: i32 = 3;

/// What becomes of the forecast when a day is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ForecastState {
    /// The profile has none.
    None,
    /// It is used.
    Used,
    /// It is not used: it was issued this many days before the day asked, more than 3.
    Stale {
        /// Days from its issue to the day asked.
        days_old: i32,
    },
    /// It is not used: it was issued after the day asked.
    FromTheFuture,
}

impl Season {
    /// What becomes of the forecast when this day is asked about.
    #[must_use]
    pub fn forecast_state(&self, on: Day) -> ForecastState {
        match &self.forecast {
            None => ForecastState::None,
            Some((issued, _)) => match on - *issued {
                days_old if days_old < 0 => ForecastState::FromTheFuture,
                days_old if days_old > STALE_AFTER_DAYS => ForecastState::Stale { days_old },
                _ => ForecastState::Used,
            },
        }
    }

    /// The forecast, if it may be used on this day.
    pub(super) fn usable_forecast(&self, on: Day) -> Option<&WeatherDays> {
        match (&self.forecast, self.forecast_state(on)) {
            (Some((_, days)), ForecastState::Used) => Some(days),
            _ => None,
        }
    }

    /// The forecast days from a day on, in order, as this site has them; none where the forecast may not be used on
    /// this day.
    #[must_use]
    pub fn days_foretold(&self, from: Day) -> &[DailyWeather] {
        let days = self.usable_forecast(from).and_then(|days| Some(days.between(from, days.extent()?.1 + 1)));
        days.unwrap_or_default()
    }

    /// A value over a day and the `days - 1` days after it: the forecast for the days that it has, the
    /// curve for the others.
    ///
    /// The origin is `Forecast` when the value is the forecast's doing: a minimum or maximum that a
    /// forecast day decides (or ties), a mean or sum of which at least half the days are forecast. Else
    /// it is `Computed`, or `Estimated`. None for no days at all, and where neither is known.
    #[must_use]
    pub fn ahead(&self, aggregate: Aggregate, series: Series, days: u16, on: Day) -> Option<(f64, Origin)> {
        let forecast = self.usable_forecast(on);
        let mut all = Tally::new();
        let mut told = Tally::new();
        for ahead in 0..i32::from(days) {
            let day = on + ahead;
            let foretold =
                forecast.and_then(|forecast| forecast.on(day)).and_then(|weather| self.read(series, weather));
            let value = match foretold {
                Some(value) => {
                    told.add(value);
                    value
                }
                None => self.curve(series, day.climate_day())?,
            };
            all.add(value);
        }
        let count = u32::from(days);
        let value = all.of(aggregate, count)?;
        let decided = match aggregate {
            Aggregate::Min => told.of(aggregate, count).is_some_and(|told| told <= value),
            Aggregate::Max => told.of(aggregate, count).is_some_and(|told| told >= value),
            Aggregate::Mean | Aggregate::Sum => told.count > 0 && told.count * 2 >= count,
        };
        Some((value, if decided { Origin::Forecast } else { self.curve_origin }))
    }
}

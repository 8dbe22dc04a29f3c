//! Weather by day, in order.

use crate::calendar::Day;
use crate::profile::DailyWeather;

/// Days of weather in order, each at most once.
#[derive(Clone, Debug)]
pub(super) struct WeatherDays(Vec<DailyWeather>);

impl WeatherDays {
    /// Every minimum counts `lower_k` less.
    pub(super) fn new(days: &[DailyWeather], lower_k: f64) -> Self {
        let shifted =
            |weather: &DailyWeather| DailyWeather { tmin_c: weather.tmin_c.map(|tmin_c| tmin_c - lower_k), ..*weather };
        Self(days.iter().map(shifted).collect())
    }

    /// The days from `from` to the day before `to`.
    pub(super) fn between(&self, from: Day, to: Day) -> &[DailyWeather] {
        let start = self.0.partition_point(|weather| weather.day < from);
        let end = self.0.partition_point(|weather| weather.day < to);
        self.0.get(start..end).unwrap_or_default()
    }

    /// The first and the last day.
    pub(super) fn extent(&self) -> Option<(Day, Day)> {
        Some((self.0.first()?.day, self.0.last()?.day))
    }

    /// One day.
    pub(super) fn on(&self, day: Day) -> Option<&DailyWeather> {
        self.between(day, day + 1).first()
    }
}

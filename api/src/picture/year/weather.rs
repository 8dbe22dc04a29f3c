//! The days of the drawn year that were observed, and those that are forecast: what the season reads of them on the day.

use std::collections::BTreeMap;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::profile::DailyWeather;

use super::Year;
use super::span::Span;

/// Days over which single rains are added up, to stand beside the usual rain of a week.
const WEEK: i32 = 7;

/// Days of weather in the drawn year.
#[derive(Debug, Default)]
pub(super) struct Weather {
    /// Observed: before the day.
    pub(super) observed: Vec<DailyWeather>,
    /// Forecast: from the day on, where the forecast is used.
    pub(super) foretold: Vec<DailyWeather>,
    /// Rain of the seven days up to a day of the year, mm, where all seven are known.
    pub(super) seven_days_mm: BTreeMap<Day, f64>,
}

impl Weather {
    pub(super) fn of(year: &Year<'_>, span: Span) -> Self {
        let season = &year.climate.season;
        let (recorded, foretold) = (season.days_recorded(year.day), season.days_foretold(year.day));
        let rain_mm: BTreeMap<Day, f64> =
            recorded.iter().chain(foretold).filter_map(|weather| Some((weather.day, weather.rain_mm?))).collect();
        let sum_to = |day: Day| (0..WEEK).map(|before| rain_mm.get(&(day - before))).sum::<Option<f64>>();
        let seven_days_mm =
            rain_mm.keys().filter(|day| span.has(**day)).filter_map(|day| Some((*day, sum_to(*day)?))).collect();
        let drawn = |days: &[DailyWeather]| days.iter().filter(|weather| span.has(weather.day)).copied().collect();
        Self { observed: drawn(recorded), foretold: drawn(foretold), seven_days_mm }
    }
}

/// Lowest and highest temperature of a day; the one that is known stands for both.
pub(super) fn range_c(weather: &DailyWeather) -> Option<(f64, f64)> {
    match (weather.tmin_c, weather.tmax_c) {
        (Some(low), Some(high)) => Some((low, high)),
        (Some(only), None) | (None, Some(only)) => Some((only, only)),
        (None, None) => None,
    }
}

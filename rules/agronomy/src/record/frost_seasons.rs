//! Frost dates counted in the seasons of a record.

use super::quantile::quantile_type_8;
use crate::calendar::{ClimateDay, Day};
use crate::frost::{KILLING_C, Turning};
use crate::profile::{CountedFrost, DailyWeather, FrostTriple};

/// Seasons that frost must have been looked for in before their quantiles mean anything.
const LEAST_SEASONS: usize = 8;
/// Days of the cold half: the coldest day and a quarter of a year on either side.
const HALF_AROUND_DAYS: i32 = 91;
/// Share of these days, in tenths, that must be recorded.
const ENOUGH_TENTHS: i32 = 9;

/// One season of a record, from a warmest day to the day before the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrostSeason {
    /// Its first day.
    pub start: Day,
    /// First day with a minimum at or below 0 °C.
    pub first: Option<Day>,
    /// Last day with a minimum at or below 0 °C.
    pub last: Option<Day>,
    /// First day with a minimum at or below -2.2 °C.
    pub first_killing: Option<Day>,
    /// Last day with a minimum at or below -2.2 °C.
    pub last_killing: Option<Day>,
    /// Lowest minimum, °C.
    pub extreme_min_c: f64,
}

/// The seasons of a record (days in order) whose cold half is recorded on at least 90 % of its days.
#[must_use]
pub fn frost_seasons(days: &[DailyWeather], turning: Turning) -> Vec<FrostSeason> {
    let (Some(first), Some(last)) = (days.first(), days.last()) else {
        return Vec::new();
    };
    (first.day.year() - 1..=last.day.year())
        .filter_map(|year| {
            let start = turning.warmest.in_year(year);
            let next = turning.warmest.in_year(year + 1);
            let coldest = start + i32::from(turning.coldest.days_after(turning.warmest));
            let (from, to) = (coldest - HALF_AROUND_DAYS, coldest + HALF_AROUND_DAYS + 1);
            let recorded = within(days, from, to).iter().filter(|weather| weather.tmin_c.is_some()).count();
            let enough = i32::try_from(recorded).unwrap_or(0) * 10 >= (to - from) * ENOUGH_TENTHS;
            enough.then(|| season(within(days, start, next), start))
        })
        .collect()
}

fn within(days: &[DailyWeather], from: Day, to: Day) -> &[DailyWeather] {
    let start = days.partition_point(|weather| weather.day < from);
    let end = days.partition_point(|weather| weather.day < to);
    days.get(start..end).unwrap_or_default()
}

fn season(days: &[DailyWeather], start: Day) -> FrostSeason {
    let mut season = FrostSeason {
        start,
        first: None,
        last: None,
        first_killing: None,
        last_killing: None,
        extreme_min_c: f64::INFINITY,
    };
    for weather in days {
        let Some(tmin_c) = weather.tmin_c else {
            continue;
        };
        season.extreme_min_c = season.extreme_min_c.min(tmin_c);
        if tmin_c <= 0.0 {
            season.first.get_or_insert(weather.day);
            season.last = Some(weather.day);
        }
        if tmin_c <= KILLING_C {
            season.first_killing.get_or_insert(weather.day);
            season.last_killing = Some(weather.day);
        }
    }
    season
}

/// Frost dates of 8 seasons or more; none of fewer.
///
/// Quantiles by definition 8 of Hyndman and Fan over *all* seasons: one without frost counts as earlier
/// than any last and later than any first frost. A date that hangs on such a season does not exist. To
/// the nearest day.
#[must_use]
pub fn count_frost(seasons: &[FrostSeason], turning: Turning) -> Option<CountedFrost> {
    if seasons.len() < LEAST_SEASONS {
        return None;
    }
    let quantile = |pick: fn(&FrostSeason) -> Option<Day>, without: f64, share: f64| {
        let mut offsets: Vec<f64> = seasons
            .iter()
            .map(|season| pick(season).map_or(without, |day| f64::from(day.climate_day().days_after(turning.warmest))))
            .collect();
        offsets.sort_by(f64::total_cmp);
        let offset = quantile_type_8(&offsets, share)?;
        // offsets lie in 0 to 364
        Some(turning.warmest.plus(libm::round(offset) as i32))
    };
    let last = |pick, share| quantile(pick, f64::NEG_INFINITY, share);
    let first = |pick, share| quantile(pick, f64::INFINITY, share);
    let share_with = |pick: fn(&FrostSeason) -> Option<Day>| {
        seasons.iter().filter(|season| pick(season).is_some()).count() as f64 / seasons.len() as f64
    };
    let triple =
        |day: &dyn Fn(f64) -> Option<ClimateDay>| FrostTriple { early: day(0.1), median: day(0.5), late: day(0.9) };
    Some(CountedFrost {
        seasons: u16::try_from(seasons.len()).unwrap_or(u16::MAX),
        share_with_frost: share_with(|season| season.first),
        share_with_killing_frost: share_with(|season| season.first_killing),
        last: triple(&|share| last(|season| season.last, share)),
        first: triple(&|share| first(|season| season.first, share)),
        last_killing: last(|season| season.last_killing, 0.5),
        first_killing: first(|season| season.first_killing, 0.5),
    })
}

/// Mean of the lowest minima of 8 seasons or more, °C; none of fewer.
pub(super) fn mean_extreme_min_c(seasons: &[FrostSeason]) -> Option<f64> {
    if seasons.len() < LEAST_SEASONS {
        return None;
    }
    let mut sum = 0.0;
    for season in seasons {
        sum += season.extreme_min_c;
    }
    let mean = sum / seasons.len() as f64;
    mean.is_finite().then_some(mean)
}

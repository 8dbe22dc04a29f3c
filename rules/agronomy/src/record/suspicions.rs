//! What looks wrong in a record, though each value by itself is possible.

use serde::Serialize;

use crate::calendar::Day;
use crate::profile::DailyWeather;

/// The same value on so many recorded days in a row is a stuck instrument (own choice: in five records of 4 to 12
/// years no minimum or maximum came more than 5 times in a row).
const STUCK_DAYS: u32 = 7;
/// Of each kind so many are listed at most.
const MOST_LISTED: usize = 20;
/// A mean daily maximum over a whole year above this is not in °C, °C: the hottest places have some 38.
const WARMEST_YEAR_C: f64 = 42.0;
/// More rain a year than this is in another unit, mm: the wettest places have some 12 m.
const WETTEST_YEAR_MM: f64 = 13_000.0;

/// Which extreme.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Extreme {
    /// The minimum.
    Tmin,
    /// The maximum.
    Tmax,
}

/// A value that stayed the same.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Stuck {
    /// Which.
    pub of: Extreme,
    /// The value, °C.
    pub value_c: f64,
    /// First day.
    pub first: Day,
    /// Last day.
    pub last: Day,
    /// Recorded days with it.
    pub days: u32,
}

/// Values that look as if they were in another unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum UnitSuspicion {
    /// Temperatures are too high for °C: °F, or tenths of °C.
    TooWarm,
    /// Rain is too much for mm: tenths of mm.
    TooWet,
}

/// What looks wrong in a record. Nothing of it is changed or left out.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Suspicions {
    /// Days whose maximum lies below the minimum, at most 20.
    pub swapped: Vec<Day>,
    /// How many such days there are.
    pub swapped_count: u32,
    /// Values that stayed the same for 7 recorded days or more, at most 20.
    pub stuck: Vec<Stuck>,
    /// How many such runs there are.
    pub stuck_count: u32,
    /// Values that look as if they were in another unit.
    pub units: Vec<UnitSuspicion>,
}

/// What looks wrong in the days of a record, in order. A record that [`super::Record`] took has no swapped extremes:
/// ask with the rows as read to have all of them named at once.
#[must_use]
pub fn suspicions(days: &[DailyWeather]) -> Suspicions {
    let mut found = Suspicions::default();
    for weather in days {
        if weather.tmin_c.zip(weather.tmax_c).is_some_and(|(tmin_c, tmax_c)| tmax_c < tmin_c) {
            found.swapped_count += 1;
            if found.swapped.len() < MOST_LISTED {
                found.swapped.push(weather.day);
            }
        }
    }
    let mut stuck = stuck(days, Extreme::Tmin, |weather| weather.tmin_c);
    stuck.extend(self::stuck(days, Extreme::Tmax, |weather| weather.tmax_c));
    stuck.sort_by_key(|run| (std::cmp::Reverse(run.days), run.first));
    found.stuck_count = u32::try_from(stuck.len()).unwrap_or(u32::MAX);
    stuck.truncate(MOST_LISTED);
    found.stuck = stuck;

    let mean = |value: fn(&DailyWeather) -> Option<f64>| {
        let (mut sum, mut count) = (0.0, 0_u32);
        for value in days.iter().filter_map(value) {
            sum += value;
            count += 1;
        }
        (count >= 365).then(|| sum / f64::from(count))
    };
    if mean(|weather| weather.tmax_c).is_some_and(|mean_c| mean_c > WARMEST_YEAR_C) {
        found.units.push(UnitSuspicion::TooWarm);
    }
    if mean(|weather| weather.rain_mm).is_some_and(|mean_mm| mean_mm * 365.0 > WETTEST_YEAR_MM) {
        found.units.push(UnitSuspicion::TooWet);
    }
    found
}

fn stuck(days: &[DailyWeather], of: Extreme, value: fn(&DailyWeather) -> Option<f64>) -> Vec<Stuck> {
    let mut runs: Vec<Stuck> = Vec::new();
    let mut run: Option<Stuck> = None;
    for weather in days {
        let Some(value_c) = value(weather) else { continue };
        match &mut run {
            Some(same) if same.value_c.total_cmp(&value_c).is_eq() => {
                same.last = weather.day;
                same.days += 1;
            }
            other => {
                runs.extend(other.filter(|run| run.days >= STUCK_DAYS));
                *other = Some(Stuck { of, value_c, first: weather.day, last: weather.day, days: 1 });
            }
        }
    }
    runs.extend(run.filter(|run| run.days >= STUCK_DAYS));
    runs
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(days: i32, tmin_c: impl Fn(i32) -> f64, tmax_c: f64, rain_mm: f64) -> Vec<DailyWeather> {
        (0..days)
            .map(|ahead| DailyWeather {
                tmin_c: Some(tmin_c(ahead)),
                tmax_c: Some(tmax_c + f64::from(ahead % 3)),
                rain_mm: Some(rain_mm),
                ..DailyWeather::unknown(Day::from_ce(739_000) + ahead)
            })
            .collect()
    }

    #[test]
    fn a_stuck_instrument_is_found_and_six_equal_days_are_not() {
        let stuck_for = |length: i32| {
            suspicions(&record(
                60,
                |ahead| if (10..10 + length).contains(&ahead) { 4.2 } else { f64::from(ahead % 2) },
                20.0,
                0.0,
            ))
        };
        assert_eq!(stuck_for(6).stuck_count, 0);
        let found = stuck_for(7);
        assert_eq!((found.stuck_count, found.stuck[0].days, found.stuck[0].of), (1, 7, Extreme::Tmin));
        assert_eq!(found.stuck[0].last - found.stuck[0].first, 6);
    }

    #[test]
    fn swapped_extremes_are_counted_and_the_first_named() {
        let found = suspicions(&record(50, |ahead| if ahead < 30 { 40.0 } else { f64::from(ahead % 2) }, 20.0, 0.0));
        assert_eq!((found.swapped_count, found.swapped.len()), (30, 20));
    }

    #[test]
    fn another_unit_is_suspected_of_a_whole_year_only() {
        let fahrenheit = |days| suspicions(&record(days, |ahead| 40.0 + f64::from(ahead % 2), 60.0, 30.0)).units.len();
        assert_eq!((fahrenheit(364), fahrenheit(365)), (0, 1));
        assert_eq!(suspicions(&record(400, |ahead| f64::from(ahead % 2), 15.0, 40.0)).units, [UnitSuspicion::TooWet]);
        assert!(suspicions(&record(400, |ahead| f64::from(ahead % 2), 15.0, 3.0)).units.is_empty());
    }
}

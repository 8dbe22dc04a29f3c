//! Last spring and first autumn frost of each year of a record, by months: as frost tables are made.

use chrono::{Datelike, NaiveDate};

use crate::calendar::Day;
use crate::profile::DailyWeather;

/// Share of the days of a season, in tenths, that must be recorded.
const ENOUGH_TENTHS: i32 = 9;

/// Which twelve months make a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum YearRule {
    /// January to December: spring is January to June, autumn July to December.
    CalendarYear,
    /// July to June: spring is July to December, autumn January to June.
    JulyToJune,
}

impl YearRule {
    fn season_of(self, year: i32) -> Option<[NaiveDate; 3]> {
        let first_of = |year: i32, month: u32| NaiveDate::from_ymd_opt(year, month, 1);
        Some(match self {
            Self::CalendarYear => [first_of(year, 1)?, first_of(year, 7)?, first_of(year + 1, 1)?],
            Self::JulyToJune => [first_of(year, 7)?, first_of(year + 1, 1)?, first_of(year + 1, 7)?],
        })
    }
}

/// Frost of one season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrostYear {
    /// The year in which it starts.
    pub season: i32,
    /// Last day of its spring at or below the threshold.
    pub last_spring: Option<NaiveDate>,
    /// First day of its autumn at or below the threshold.
    pub first_autumn: Option<NaiveDate>,
}

impl FrostYear {
    /// Days from the last spring frost to the first autumn frost.
    #[must_use]
    pub fn frost_free_days(&self) -> Option<i64> {
        Some((self.first_autumn? - self.last_spring?).num_days())
    }

    /// Day of the year, from 1, of the last spring frost.
    #[must_use]
    pub fn last_spring_day(&self) -> Option<u32> {
        self.last_spring.map(|date| date.ordinal())
    }

    /// Day of the year, from 1, of the first autumn frost.
    #[must_use]
    pub fn first_autumn_day(&self) -> Option<u32> {
        self.first_autumn.map(|date| date.ordinal())
    }
}

/// The seasons of a record (days in order) with nine tenths of their minima, and the frost of each: days with a
/// minimum at or below the threshold, °C.
#[must_use]
pub fn frost_years(days: &[DailyWeather], threshold_c: f64, rule: YearRule) -> Vec<FrostYear> {
    let (Some(first), Some(last)) = (days.first(), days.last()) else {
        return Vec::new();
    };
    let seasons = (first.day.year() - 1)..=last.day.year();
    seasons.filter_map(|season| frost_year(days, threshold_c, season, rule.season_of(season)?)).collect()
}

fn frost_year(
    days: &[DailyWeather],
    threshold_c: f64,
    season: i32,
    [start, turn, end]: [NaiveDate; 3],
) -> Option<FrostYear> {
    let within = |from: NaiveDate, to: NaiveDate| {
        let start = days.partition_point(|weather| weather.day < Day::from_date(from));
        let end = days.partition_point(|weather| weather.day < Day::from_date(to));
        days.get(start..end).unwrap_or_default()
    };
    let recorded = within(start, end).iter().filter(|weather| weather.tmin_c.is_some()).count();
    let length = Day::from_date(end) - Day::from_date(start);
    if i32::try_from(recorded).unwrap_or(0) * 10 < length * ENOUGH_TENTHS {
        return None;
    }
    let frost = |weather: &&DailyWeather| weather.tmin_c.is_some_and(|tmin_c| tmin_c <= threshold_c);
    Some(FrostYear {
        season,
        last_spring: within(start, turn).iter().rfind(frost).map(|weather| weather.day.date()),
        first_autumn: within(turn, end).iter().find(frost).map(|weather| weather.day.date()),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(from: &str, to: &str, frosts: &[&str]) -> Vec<DailyWeather> {
        let date = |text: &str| Day::from_date(text.parse().unwrap());
        let frosts: Vec<Day> = frosts.iter().map(|text| date(text)).collect();
        (0..=date(to) - date(from))
            .map(|ahead| {
                let day = date(from) + ahead;
                let tmin_c = if frosts.contains(&day) { 0.0 } else { 4.0 };
                DailyWeather { tmin_c: Some(tmin_c), ..DailyWeather::unknown(day) }
            })
            .collect()
    }

    #[test]
    fn a_season_belongs_to_the_year_in_which_it_starts() {
        let days = record("2024-01-01", "2025-12-31", &["2024-08-20", "2025-06-11", "2025-07-02", "2025-11-30"]);
        let south = frost_years(&days, 0.0, YearRule::JulyToJune);
        assert_eq!(south.len(), 1);
        assert_eq!((south[0].season, south[0].frost_free_days()), (2024, Some(295)));
        let north = frost_years(&days, 0.0, YearRule::CalendarYear);
        assert_eq!((north[0].last_spring, north[0].first_autumn_day()), (None, Some(233)));
        assert_eq!((north[1].last_spring_day(), north[1].first_autumn_day()), (Some(162), Some(183)));
        assert!(frost_years(&days, -0.1, YearRule::CalendarYear).iter().all(|year| year.first_autumn.is_none()));
    }
}

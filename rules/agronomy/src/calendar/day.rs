//! A real day, with 29 February where there is one.

use std::ops::{Add, Sub};

use chrono::{Datelike, NaiveDate};
use serde::{Serialize, Serializer};

use super::climate_day::ClimateDay;

/// A day of the Gregorian calendar as a number: 1 is 1 January of year 1. All its arithmetic is on
/// whole numbers and allocates nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(i32);

/// The first date that questions may be asked about.
pub const FIRST_DATE: Day = Day::from_ce(days_before_year(1900) + 1);
/// The last date that questions may be asked about.
pub const LAST_DATE: Day = Day::from_ce(days_before_year(2201));

/// A date that lies outside the supported years.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("date `{date}` lies outside 1900-01-01 to 2200-12-31")]
pub struct DateOutside {
    /// The date that was given.
    pub date: NaiveDate,
}

/// Days of a cycle of 400 years.
const CYCLE: i32 = 146_097;

pub(super) const fn is_leap(year: i32) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

/// Days from the start of year 1 to the end of the year before this one. Years are held within
/// plus and minus 5 million, so that the days fit their type.
pub(super) const fn days_before_year(year: i32) -> i32 {
    let full = if year > 5_000_000 {
        4_999_999
    } else if year < -5_000_000 {
        -5_000_001
    } else {
        year - 1
    };
    full * 365 + full.div_euclid(4) - full.div_euclid(100) + full.div_euclid(400)
}

impl Day {
    /// The day with this number, counted from 1 January of year 1 (which is 1).
    #[must_use]
    pub const fn from_ce(number: i32) -> Self {
        Self(number)
    }

    /// Days from the common era; 1 January of year 1 is 1.
    #[must_use]
    pub const fn number(self) -> i32 {
        self.0
    }

    /// The day of a date.
    #[must_use]
    pub fn from_date(date: NaiveDate) -> Self {
        Self(date.num_days_from_ce())
    }

    /// The day of a date within [`FIRST_DATE`] and [`LAST_DATE`].
    ///
    /// # Errors
    /// The date lies outside 1900-01-01 to 2200-12-31.
    pub fn supported(date: NaiveDate) -> Result<Self, DateOutside> {
        let day = Self::from_date(date);
        if day.is_supported() { Ok(day) } else { Err(DateOutside { date }) }
    }

    /// Whether the day lies within [`FIRST_DATE`] and [`LAST_DATE`].
    #[must_use]
    pub const fn is_supported(self) -> bool {
        self.0 >= FIRST_DATE.0 && self.0 <= LAST_DATE.0
    }

    /// The date. Beyond the years that a date can hold (some 262,000 either way) it is the last
    /// that can be held.
    #[must_use]
    pub fn date(self) -> NaiveDate {
        NaiveDate::from_num_days_from_ce_opt(self.0).unwrap_or(if self.0 < 0 { NaiveDate::MIN } else { NaiveDate::MAX })
    }

    /// Year, and the day within it from 0 (1 January).
    const fn year_and_index(self) -> (i32, i32) {
        let days = self.0.saturating_sub(1);
        let cycle = days.div_euclid(CYCLE);
        let day_of_cycle = days.rem_euclid(CYCLE);
        // Each divisor ends on the last day of a 4-, 100- and 400-year run, where the leap days lie.
        let year_of_cycle =
            (day_of_cycle - day_of_cycle / 1_460 + day_of_cycle / 36_524 - day_of_cycle / 146_096) / 365;
        let before = year_of_cycle * 365 + year_of_cycle / 4 - year_of_cycle / 100;
        (cycle * 400 + year_of_cycle + 1, day_of_cycle - before)
    }

    /// The year.
    #[must_use]
    pub const fn year(self) -> i32 {
        self.year_and_index().0
    }

    /// The day of the climate year whose values this day takes.
    #[must_use]
    pub const fn climate_day(self) -> ClimateDay {
        let (year, index) = self.year_and_index();
        let leap_day_passed = if is_leap(year) && index > 58 { 1 } else { 0 };
        ClimateDay::around(index - leap_day_passed)
    }
}

impl Add<i32> for Day {
    type Output = Self;

    fn add(self, days: i32) -> Self {
        Self(self.0.saturating_add(days))
    }
}

impl Sub<i32> for Day {
    type Output = Self;

    fn sub(self, days: i32) -> Self {
        Self(self.0.saturating_sub(days))
    }
}

impl Sub for Day {
    type Output = i32;

    fn sub(self, earlier: Self) -> i32 {
        self.0.saturating_sub(earlier.0)
    }
}

impl Serialize for Day {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.date().serialize(serializer)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ymd(year: i32, month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(year, month, day).unwrap()
    }

    // The calendar of the chrono library is the second opinion for all of these.
    #[test]
    fn every_day_of_400_years_round_trips() {
        let mut date = ymd(1850, 1, 1);
        while date < ymd(2250, 1, 1) {
            let day = Day::from_date(date);
            assert_eq!(day.date(), date);
            assert_eq!(day.year(), date.year());
            let climate_day = day.climate_day();
            let in_month = if (date.month(), date.day()) == (2, 29) { 28 } else { date.day() };
            assert_eq!(
                (u32::from(climate_day.month()), u32::from(climate_day.day_of_month())),
                (date.month(), in_month)
            );
            if (date.month(), date.day()) != (2, 29) {
                assert_eq!(climate_day.in_year(date.year()), day);
            }
            date = date.succ_opt().unwrap();
        }
    }

    #[test]
    fn years_before_the_common_era_and_far_ones_agree_with_the_second_opinion() {
        for year in [-2000, -401, -400, -5, -4, -1, 0, 1, 4, 100, 400, 9999, 200_000] {
            for (month, day) in [(1, 1), (2, 28), (3, 1), (12, 31)] {
                let date = ymd(year, month, day);
                assert_eq!(Day::from_date(date).year(), year);
                let climate_day = ClimateDay::from_month_day(month, day).unwrap();
                assert_eq!(climate_day.in_year(year), Day::from_date(date));
                assert_eq!(Day::from_date(date).climate_day(), climate_day);
            }
        }
    }

    #[test]
    fn supported_years_are_1900_to_2200() {
        assert_eq!(FIRST_DATE.date(), ymd(1900, 1, 1));
        assert_eq!(LAST_DATE.date(), ymd(2200, 12, 31));
        assert!(Day::supported(ymd(2200, 12, 31)).is_ok());
        let fault = Day::supported(ymd(1899, 12, 31)).unwrap_err();
        assert_eq!(fault.to_string(), "date `1899-12-31` lies outside 1900-01-01 to 2200-12-31");
        assert!(Day::supported(ymd(2201, 1, 1)).is_err());
    }

    #[test]
    fn days_add_and_subtract_without_overflow() {
        let day = Day::from_date(ymd(2024, 2, 28));
        assert_eq!((day + 2).date(), ymd(2024, 3, 1));
        assert_eq!((day + 2) - day, 2);
        assert_eq!((day - 59).date(), ymd(2023, 12, 31));
        for far in [Day::from_ce(i32::MAX), Day::from_ce(i32::MIN)] {
            let _ = (far + i32::MAX, far - i32::MAX, far.date(), far.year(), far.climate_day());
            let _ = far - Day::from_ce(1);
        }
        for year in [i32::MIN, i32::MAX] {
            let _ = ClimateDay::around(200).in_year(year);
        }
    }
}

//! A day of the climate year.

use std::fmt;
use std::str::FromStr;

use serde::{Serialize, Serializer};

use super::day::{Day, days_before_year, is_leap};
use super::month_table::{DAYS_IN_MONTH, MONTH_STARTS, month_of};

/// A day of the climate year, which has 365 days: index 0 is 1 January, 364 is 31 December.
/// 29 February has none of its own and takes the values of 28 February.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ClimateDay(u16);

/// Text or numbers that are no day of the year.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("`{text}` is no day of the year, expected month and day such as `04-12`")]
pub struct MonthDayFault {
    /// What was given.
    pub text: String,
}

impl ClimateDay {
    /// Days of the climate year.
    pub const COUNT: u16 = 365;

    /// The day with this index, 0 (1 January) to 364 (31 December).
    #[must_use]
    pub const fn new(index: u16) -> Option<Self> {
        if index < Self::COUNT { Some(Self(index)) } else { None }
    }

    /// The day that lies `index` days after 1 January, counted round the year in both directions.
    #[must_use]
    pub const fn around(index: i32) -> Self {
        // The remainder lies in 0..365, so the narrowing keeps it whole.
        Self(index.rem_euclid(Self::COUNT as i32) as u16)
    }

    /// Month 1 to 12 and day of that month; 29 February gives 28 February.
    #[must_use]
    pub fn from_month_day(month: u32, day: u32) -> Option<Self> {
        let at = usize::try_from(month.checked_sub(1)?).ok()?;
        let start = *MONTH_STARTS.get(at)?;
        let length = u32::from(*DAYS_IN_MONTH.get(at)?);
        let day = if month == 2 && day == 29 { 28 } else { day };
        if day == 0 || day > length {
            return None;
        }
        Self::new(start + u16::try_from(day - 1).ok()?)
    }

    /// All 365 days, 1 January first.
    pub fn all() -> impl ExactSizeIterator<Item = Self> + DoubleEndedIterator {
        (0..Self::COUNT).map(Self)
    }

    /// Index 0 to 364.
    #[must_use]
    pub const fn index(self) -> usize {
        self.0 as usize
    }

    /// Day of a year without 29 February, 1 to 365: what formulas of the sun ask for.
    #[must_use]
    pub const fn day_of_year(self) -> u16 {
        self.0 + 1
    }

    /// Month, 1 to 12.
    #[must_use]
    pub fn month(self) -> u8 {
        u8::try_from(self.month_index() + 1).unwrap_or(12)
    }

    /// Month as a place in a table of twelve, 0 to 11.
    #[must_use]
    pub fn month_index(self) -> usize {
        month_of(self.0)
    }

    /// Day of the month, 1 to 31.
    #[must_use]
    pub fn day_of_month(self) -> u8 {
        let start = MONTH_STARTS.get(self.month_index()).copied().unwrap_or_default();
        u8::try_from(self.0 - start + 1).unwrap_or(31)
    }

    /// The day `days` later (earlier if negative), counted round the year.
    #[must_use]
    pub const fn plus(self, days: i32) -> Self {
        Self::around(self.0 as i32 + days.rem_euclid(Self::COUNT as i32))
    }

    /// Days from `earlier` forward to this day, 0 to 364.
    #[must_use]
    pub const fn days_after(self, earlier: Self) -> u16 {
        Self::around(self.0 as i32 - earlier.0 as i32).0
    }

    /// Days from `other` to this day by the shorter way: -182 to 182, negative when this day lies
    /// before the other.
    #[must_use]
    pub const fn days_from(self, other: Self) -> i32 {
        let forward = self.days_after(other) as i32;
        if forward > 182 { forward - Self::COUNT as i32 } else { forward }
    }

    /// The same month and day in a year.
    #[must_use]
    pub const fn in_year(self, year: i32) -> Day {
        let leap = if is_leap(year) && self.0 > 58 { 1 } else { 0 };
        Day::from_ce(days_before_year(year) + self.0 as i32 + leap + 1)
    }
}

impl fmt::Display for ClimateDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}-{:02}", self.month(), self.day_of_month())
    }
}

impl FromStr for ClimateDay {
    type Err = MonthDayFault;

    /// Reads `MM-DD`, two digits each.
    fn from_str(text: &str) -> Result<Self, MonthDayFault> {
        let digits = |part: &str| {
            (part.len() == 2 && part.bytes().all(|b| b.is_ascii_digit())).then(|| part.parse::<u32>().ok()).flatten()
        };
        text.split_once('-')
            .and_then(|(month, day)| Self::from_month_day(digits(month)?, digits(day)?))
            .ok_or_else(|| MonthDayFault { text: text.chars().take(40).collect() })
    }
}

impl Serialize for ClimateDay {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_day_of_the_climate_year_is_its_month_and_day_and_back() {
        for day in ClimateDay::all() {
            let again = ClimateDay::from_month_day(day.month().into(), day.day_of_month().into());
            assert_eq!(again, Some(day));
            assert_eq!(day.to_string().parse(), Ok(day));
            assert_eq!(usize::from(day.day_of_year()), day.index() + 1);
        }
    }

    #[test]
    fn the_29th_of_february_is_the_28th() {
        assert_eq!(ClimateDay::from_month_day(2, 29), ClimateDay::from_month_day(2, 28));
        assert_eq!(ClimateDay::from_month_day(2, 30), None);
        assert_eq!(ClimateDay::from_month_day(13, 1), None);
        assert_eq!(ClimateDay::from_month_day(0, 1), None);
        assert_eq!(ClimateDay::from_month_day(1, 0), None);
    }

    #[test]
    fn going_round_the_year_comes_back() {
        for day in ClimateDay::all() {
            for by in [-730, -365, -1, 0, 1, 200, 365, 1000] {
                let there = day.plus(by);
                assert_eq!(there.plus(-by), day);
                assert_eq!(i32::from(there.days_after(day)), by.rem_euclid(365));
            }
            assert_eq!(day.plus(182).days_from(day), 182);
            assert_eq!(day.plus(183).days_from(day), -182);
        }
    }

    #[test]
    fn a_wrong_day_of_the_year_is_quoted() {
        for text in ["4-12", "04/12", "02-30", "", "04-12-01", "+4-12"] {
            let fault = text.parse::<ClimateDay>().unwrap_err();
            assert_eq!(
                fault.to_string(),
                format!("`{text}` is no day of the year, expected month and day such as `04-12`")
            );
        }
    }
}

//! The weeks of a year.

use lammas_agronomy::calendar::{ClimateDay, Day};
use serde::{Serialize, Serializer};

/// Weeks that are looked at: 1 begins on 1 January, 52 on 24 December.
pub const WEEKS: u8 = 52;

/// The year in which they are looked at: markers stand on the same month and day in every year.
pub const YEAR: i32 = 2025;

/// The day on which a week is asked about: its fourth, from 4 January on.
#[must_use]
pub const fn day(week: u8) -> Day {
    ClimateDay::around(7 * (week as i32 - 1) + 3).in_year(YEAR)
}

/// The week of a day, in whichever year; the last days of a year belong to its last week.
#[must_use]
pub fn week_of(day: Day) -> u8 {
    u8::try_from(day.climate_day().index() / 7 + 1).unwrap_or(WEEKS).min(WEEKS)
}

/// Some weeks of a year.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Weeks(u64);

impl Weeks {
    /// Puts a week, 1 to 52, among them.
    pub fn put(&mut self, week: u8) {
        self.0 |= 1_u64.checked_shl(u32::from(week)).unwrap_or(0);
    }

    /// Whether a week is among them.
    #[must_use]
    pub fn has(self, week: u8) -> bool {
        self.0.checked_shr(u32::from(week)).unwrap_or(0) & 1 == 1
    }

    /// Those of both.
    #[must_use]
    pub const fn and_those(self, others: Self) -> Self {
        Self(self.0 | others.0)
    }

    /// How many they are.
    #[must_use]
    pub const fn count(self) -> u32 {
        self.0.count_ones()
    }

    /// Each, in order.
    pub fn each(self) -> impl Iterator<Item = u8> {
        (1..=WEEKS).filter(move |week| self.has(*week))
    }

    /// Runs of weeks, first and last; one over New Year is one run and comes last.
    #[must_use]
    pub fn runs(self) -> Vec<(u8, u8)> {
        let mut runs: Vec<(u8, u8)> = Vec::new();
        for week in self.each() {
            match runs.last_mut() {
                Some((_, last)) if *last + 1 == week => *last = week,
                _ => runs.push((week, week)),
            }
        }
        if runs.len() > 1 && self.has(1) && self.has(WEEKS) {
            let (_, end) = runs.remove(0);
            if let Some((_, last)) = runs.last_mut() {
                *last = end;
            }
        }
        runs
    }

    /// As people write it: `weeks 32–36, 40`, `week 5`, `all year`.
    #[must_use]
    pub fn words(self) -> String {
        if self.count() == u32::from(WEEKS) {
            return "all year".to_owned();
        }
        let run =
            |(first, last): &(u8, u8)| if first == last { first.to_string() } else { format!("{first}–{last}") };
        let runs: Vec<String> = self.runs().iter().map(run).collect();
        format!("{} {}", if self.count() == 1 { "week" } else { "weeks" }, runs.join(", "))
    }
}

impl Serialize for Weeks {
    /// Runs of first and last.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.runs().serialize(serializer)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weeks(list: &[u8]) -> Weeks {
        let mut weeks = Weeks::default();
        list.iter().for_each(|week| weeks.put(*week));
        weeks
    }

    #[test]
    fn a_week_is_asked_about_on_its_fourth_day() {
        let dates: Vec<String> = [1, 2, 9, 52].map(|week| day(week).date().to_string()).to_vec();
        assert_eq!(dates, ["2025-01-04", "2025-01-11", "2025-03-01", "2025-12-27"]);
        assert!((1..=WEEKS).all(|week| week_of(day(week)) == week));
        assert_eq!(week_of(day(52) + 4), 52, "31 December");
    }

    #[test]
    fn weeks_are_told_in_runs_and_new_year_does_not_cut_one() {
        assert_eq!(weeks(&[32, 33, 34, 40]).words(), "weeks 32–34, 40");
        assert_eq!(weeks(&[1, 2, 30, 51, 52]).runs(), [(30, 30), (51, 2)]);
        assert_eq!(weeks(&[7]).words(), "week 7");
        assert_eq!(weeks(&(1..=WEEKS).collect::<Vec<u8>>()).words(), "all year");
    }
}

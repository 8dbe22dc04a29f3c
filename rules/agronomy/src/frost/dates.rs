//! The frost dates of a climate.

use super::cold_nights::{ColdNights, Turning};
use crate::calendar::ClimateDay;
use crate::curve::Row;
use crate::profile::{CountedFrost, FrostTriple};

/// Frost that kills soft growth, °C: 28 °F (common practice).
pub const KILLING_C: f64 = -2.2;

/// Shares of years that the three dates of a triple stand for.
const SHARES: [f64; 3] = [0.1, 0.5, 0.9];

/// Frost dates, and the share of years that has frost at all. A missing date does not exist.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrostDates {
    /// Share of years with a minimum of 0 °C or less, 0 to 1.
    pub chance: f64,
    /// Share of years with a minimum of -2.2 °C or less, 0 to 1.
    pub killing_chance: f64,
    /// Last minimum of 0 °C or less in the cold half.
    pub last: FrostTriple,
    /// First minimum of 0 °C or less.
    pub first: FrostTriple,
    /// Median of the last minimum of -2.2 °C or less.
    pub last_killing: Option<ClimateDay>,
    /// Median of the first minimum of -2.2 °C or less.
    pub first_killing: Option<ClimateDay>,
}

impl FrostDates {
    /// From the mean (°C) and the spread (K) of the daily minimum; not yet in pairs.
    #[must_use]
    pub fn from_normals(tmin_c: &Row, spread_k: &Row, turning: Turning) -> Self {
        let frost = ColdNights::new(0.0, tmin_c, spread_k, turning);
        let killing = ColdNights::new(KILLING_C, tmin_c, spread_k, turning);
        Self {
            chance: frost.chance(),
            killing_chance: killing.chance(),
            last: FrostTriple::of_days(SHARES.map(|share| frost.last(share))),
            first: FrostTriple::of_days(SHARES.map(|share| frost.first(share))),
            last_killing: killing.last(0.5),
            first_killing: killing.first(0.5),
        }
    }

    /// Those counted from a record; not yet in pairs.
    #[must_use]
    pub fn counted(counted: &CountedFrost) -> Self {
        Self {
            chance: counted.share_with_frost,
            killing_chance: counted.share_with_killing_frost,
            last: counted.last,
            first: counted.first,
            last_killing: counted.last_killing,
            first_killing: counted.first_killing,
        }
    }

    /// Keeps only the dates that exist in pairs: the latest last with the earliest first frost where
    /// 10 % of years or more have frost, the medians from 50 %, the earliest last with the latest first
    /// from 90 %; and none whose other half is missing. (Else a place with light frost gets a first
    /// frost but no last one.)
    #[must_use]
    pub fn paired(mut self) -> Self {
        keep_pair(self.chance >= 0.1, &mut self.last.late, &mut self.first.early);
        keep_pair(self.chance >= 0.5, &mut self.last.median, &mut self.first.median);
        keep_pair(self.chance >= 0.9, &mut self.last.early, &mut self.first.late);
        keep_pair(self.killing_chance >= 0.5, &mut self.last_killing, &mut self.first_killing);
        self
    }
}

fn keep_pair(often: bool, last: &mut Option<ClimateDay>, first: &mut Option<ClimateDay>) {
    if !often || last.is_none() || first.is_none() {
        *last = None;
        *first = None;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Option<ClimateDay> {
        Some(text.parse().unwrap())
    }

    fn dates(chance: f64) -> FrostDates {
        FrostDates {
            chance,
            killing_chance: 0.0,
            last: FrostTriple { early: None, median: day("01-25"), late: day("02-15") },
            first: FrostTriple { early: day("12-02"), median: day("12-19"), late: day("01-13") },
            last_killing: None,
            first_killing: day("12-30"),
        }
    }

    #[test]
    fn a_first_frost_without_its_last_one_does_not_exist() {
        let paired = dates(0.97).paired();
        assert_eq!((paired.last.early, paired.first.late), (None, None));
        assert_eq!((paired.last_killing, paired.first_killing), (None, None));
        assert_eq!((paired.last.median, paired.first.median), (day("01-25"), day("12-19")));
    }

    #[test]
    fn dates_exist_only_in_as_many_years_as_they_speak_of() {
        let rare = dates(0.3).paired();
        assert_eq!((rare.last.median, rare.first.median), (None, None));
        assert_eq!((rare.last.late, rare.first.early), (day("02-15"), day("12-02")));
        let never = dates(0.05).paired();
        assert_eq!((never.last.late, never.first.early), (None, None));
    }
}

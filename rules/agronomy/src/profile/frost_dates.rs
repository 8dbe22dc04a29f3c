//! Frost dates that are known from outside the curve.

use serde::Serialize;

use crate::calendar::ClimateDay;

/// Days by which 10, 50 and 90 % of years have had a frost date.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct FrostTriple {
    /// 10 % of years.
    pub early: Option<ClimateDay>,
    /// 50 % of years.
    pub median: Option<ClimateDay>,
    /// 90 % of years.
    pub late: Option<ClimateDay>,
}

impl FrostTriple {
    /// The three in order, early first.
    #[must_use]
    pub fn days(&self) -> [Option<ClimateDay>; 3] {
        [self.early, self.median, self.late]
    }

    /// The triple of three days, early first.
    #[must_use]
    pub fn of_days([early, median, late]: [Option<ClimateDay>; 3]) -> Self {
        Self { early, median, late }
    }
}

/// Frost dates that the caller knows of: days with a minimum of 0 °C or less. Each is optional; those
/// of one triple stand in order and within half a year.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct GivenFrost {
    /// The last frost of the cold half of the year.
    pub last: FrostTriple,
    /// The first frost.
    pub first: FrostTriple,
}

/// Frost counted from a daily record. A date that is missing is known not to exist.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CountedFrost {
    /// Seasons that were counted, 8 or more.
    pub seasons: u16,
    /// Share of these seasons with a day at or below 0 °C, 0 to 1.
    pub share_with_frost: f64,
    /// Share of these seasons with a day at or below -2.2 °C, 0 to 1.
    pub share_with_killing_frost: f64,
    /// The last frost of the season.
    pub last: FrostTriple,
    /// The first frost of the season.
    pub first: FrostTriple,
    /// Median of the last day at or below -2.2 °C.
    pub last_killing: Option<ClimateDay>,
    /// Median of the first day at or below -2.2 °C.
    pub first_killing: Option<ClimateDay>,
}

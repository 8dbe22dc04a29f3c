//! The chance of a cold night, summed over a part of the year.

use std::f64::consts::FRAC_1_SQRT_2;

use crate::calendar::ClimateDay;
use crate::curve::{Harmonics, Row};

/// What one night counts in a sum of nightly chances. Cold nights come in spells: in a Gaussian series
/// whose neighbouring days go with each other at 0.7, a cold night is the last of its spell in 0.44 to
/// 0.61 of cases at nightly chances of 0.2 to 0.05 (bivariate normal); 0.5 to 0.6 do equally well on
/// the counted frost dates of 89 stations.
pub const SPELL_FACTOR: f64 = 0.55;

/// Nights warmer than this many standard deviations above the threshold are never cold: the chance is
/// below 1e-15.
const NEVER_BELOW: f64 = -8.0;

/// The turning points of the year, by the first harmonic of the daily minimum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turning {
    /// The day of its lowest point.
    pub coldest: ClimateDay,
    /// The day of its highest point; half a year away.
    pub warmest: ClimateDay,
}

impl Turning {
    /// The turning points of a smooth year of the daily minimum.
    #[must_use]
    pub fn of(tmin: &Harmonics) -> Self {
        let warmest = tmin.peak();
        Self { coldest: warmest.plus(182), warmest }
    }

    /// Days of the half from the coldest to the warmest day, both counted.
    fn warming_days(self) -> u16 {
        self.warmest.days_after(self.coldest) + 1
    }

    /// Days of the half from the warmest to the coldest day, both counted.
    fn cooling_days(self) -> u16 {
        self.coldest.days_after(self.warmest) + 1
    }
}

/// Chance that a night whose minimum has this mean and spread is at or below a threshold, 0 to 1.
pub(crate) fn night_chance(threshold_c: f64, mean_c: f64, spread_k: f64) -> f64 {
    let z = (threshold_c - mean_c) / spread_k;
    if z < NEVER_BELOW {
        return 0.0;
    }
    0.5 * libm::erfc(-z * FRAC_1_SQRT_2)
}

/// Nights at or below a threshold: what each day of the year adds to the sum from which chances are
/// taken.
#[derive(Clone, Debug)]
pub struct ColdNights {
    weights: Row,
    total: f64,
    turning: Turning,
}

impl ColdNights {
    /// From the mean and the spread (above 0) of the daily minimum on each day.
    #[must_use]
    pub fn new(threshold_c: f64, tmin_c: &Row, spread_k: &Row, turning: Turning) -> Self {
        let weights = Row::from_fn(|day| SPELL_FACTOR * night_chance(threshold_c, tmin_c.at(day), spread_k.at(day)));
        let mut total = 0.0;
        for weight in weights.values() {
            total += weight;
        }
        Self { weights, total, turning }
    }

    /// Share of years with any such night, 0 to 1.
    #[must_use]
    pub fn chance(&self) -> f64 {
        -libm::expm1(-self.total)
    }

    /// The day by which this share of years (above 0, below 1) has had the last such night of its cold
    /// half; none where that share of years has no such night after midwinter.
    ///
    /// `F(d) = exp(-0.55 sum over the days after d up to the warmest)`; the first day from the coldest
    /// on with F at or above the share.
    #[must_use]
    pub fn last(&self, share: f64) -> Option<ClimateDay> {
        // F >= share where the sum that is left is at most this
        let left_at_most = -libm::log(share);
        let days = i32::from(self.turning.warming_days());
        let mut left = 0.0;
        for back in 0..days {
            // `left` is what comes after this day; once the day's own weight takes it past the limit,
            // the day before has too much to come, and this is the first day that has not
            let day = self.turning.warmest.plus(-back);
            left += self.weights.at(day);
            if left > left_at_most {
                return Some(day);
            }
        }
        None
    }

    /// The day by which this share of years (above 0, below 1) has had its first such night; none
    /// where it has not come by midwinter.
    ///
    /// `F(d) = 1 - exp(-0.55 sum over the days from the warmest to d)`.
    #[must_use]
    pub fn first(&self, share: f64) -> Option<ClimateDay> {
        let reached_at = -libm::log1p(-share);
        let mut sum = 0.0;
        for ahead in 0..i32::from(self.turning.cooling_days()) {
            let day = self.turning.warmest.plus(ahead);
            sum += self.weights.at(day);
            if sum >= reached_at {
                return Some(day);
            }
        }
        None
    }
}

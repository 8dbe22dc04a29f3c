//! Values of several days made into one.

use crate::curve::Aggregate;

/// A running count of values.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tally {
    pub(super) count: u32,
    sum: f64,
    min: f64,
    max: f64,
}

impl Tally {
    pub(super) fn new() -> Self {
        Self { count: 0, sum: 0.0, min: f64::INFINITY, max: f64::NEG_INFINITY }
    }

    pub(super) fn add(&mut self, value: f64) {
        self.count += 1;
        self.sum += value;
        self.min = self.min.min(value);
        self.max = self.max.max(value);
    }

    /// The aggregate over `days` days, of which those counted were known: a sum is scaled up to all of
    /// them. None when none was.
    pub(super) fn of(&self, aggregate: Aggregate, days: u32) -> Option<f64> {
        if self.count == 0 {
            return None;
        }
        let mean = self.sum / f64::from(self.count);
        Some(match aggregate {
            Aggregate::Mean => mean,
            Aggregate::Min => self.min,
            Aggregate::Max => self.max,
            Aggregate::Sum if self.count == days => self.sum,
            Aggregate::Sum => mean * f64::from(days),
        })
    }
}

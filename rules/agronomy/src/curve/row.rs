//! One value for each day of the climate year.

use crate::calendar::{ClimateDay, DAYS_IN_MONTH};

/// Sums that differ by less than this are the same: what adding up in another order may change.
pub(crate) const SAME: f64 = 1e-9;

/// One value for each of the 365 days of the climate year.
#[derive(Clone, Debug, PartialEq)]
pub struct Row([f64; 365]);

impl Row {
    /// The row with this value on each day.
    #[must_use]
    pub fn from_fn(mut value: impl FnMut(ClimateDay) -> f64) -> Self {
        let mut days = [0.0; 365];
        for (slot, day) in days.iter_mut().zip(ClimateDay::all()) {
            *slot = value(day);
        }
        Self(days)
    }

    /// The value on a day.
    #[must_use]
    pub fn at(&self, day: ClimateDay) -> f64 {
        // A climate day lies below 365 by construction, so the other arm is never taken.
        self.0.get(day.index()).copied().unwrap_or_default()
    }

    /// The values from 1 January to 31 December.
    pub fn values(&self) -> impl ExactSizeIterator<Item = f64> + DoubleEndedIterator + '_ {
        self.0.iter().copied()
    }

    /// Smallest and largest value.
    #[must_use]
    pub fn extent(&self) -> (f64, f64) {
        self.values().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
    }

    /// Sum over `days` days from `first` on, round the year, in the order of the days.
    #[must_use]
    pub fn sum_from(&self, first: ClimateDay, days: u16) -> f64 {
        let mut sum = 0.0;
        let mut left = usize::from(days);
        let mut from = first.index();
        while left > 0 {
            for value in self.0.iter().skip(from).take(left) {
                sum += value;
                left -= 1;
            }
            from = 0;
        }
        sum
    }

    /// For each day the sum over the `days` days from that day on, round the year.
    #[must_use]
    pub fn running_sums(&self, days: u16) -> Self {
        let mut sum = self.sum_from(ClimateDay::around(0), days);
        Self::from_fn(|first| {
            let here = sum;
            sum += self.at(first.plus(days.into())) - self.at(first);
            here
        })
    }

    /// A row on which each month's value is spread evenly over its days: the days of a month add up to
    /// it, and none is below 0 if no month is.
    #[must_use]
    pub fn spread_evenly(monthly: &[f64; 12]) -> Self {
        let mut row = [0.0; 365];
        let mut days_left = row.iter_mut();
        for (value, days) in monthly.iter().zip(DAYS_IN_MONTH) {
            for day in days_left.by_ref().take(days.into()) {
                *day = value / f64::from(days);
            }
        }
        Self(row)
    }

    /// Mean of each month.
    #[must_use]
    pub fn monthly_means(&self) -> [f64; 12] {
        let mut means = [0.0; 12];
        let mut values = self.values();
        for (mean, days) in means.iter_mut().zip(DAYS_IN_MONTH) {
            let mut sum = 0.0;
            for value in values.by_ref().take(days.into()) {
                sum += value;
            }
            *mean = sum / f64::from(days);
        }
        means
    }

    /// The first day of the `days`-day run with the largest sum; the earliest on a tie.
    #[must_use]
    pub fn highest_run(&self, days: u16) -> ClimateDay {
        let sums = self.running_sums(days);
        let mut best = (ClimateDay::around(0), f64::NEG_INFINITY);
        for day in ClimateDay::all() {
            if sums.at(day) > best.1 + SAME {
                best = (day, sums.at(day));
            }
        }
        best.0
    }

    /// The first day of the `days`-day run with the smallest sum; the earliest on a tie.
    #[must_use]
    pub fn lowest_run(&self, days: u16) -> ClimateDay {
        Self::from_fn(|day| -self.at(day)).highest_run(days)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_run_round_the_year() {
        let row = Row::from_fn(|day| f64::from(day.day_of_year()));
        assert_eq!(row.sum_from(ClimateDay::around(363), 4).to_bits(), 732_f64.to_bits());
        assert_eq!(row.extent(), (1.0, 365.0));
        assert_eq!(row.highest_run(7), ClimateDay::around(358));
        assert_eq!(row.lowest_run(7), ClimateDay::around(0));
        assert_eq!(row.monthly_means()[0].to_bits(), 16_f64.to_bits());
    }
}

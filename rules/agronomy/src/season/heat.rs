//! Warmth collected and warmth still to come.

use super::Season;
use crate::calendar::{ClimateDay, Day};
use crate::curve::Row;
use crate::degree_days::{Cutoff, Thresholds, single_sine};
use crate::marker::{Marker, Share};
use crate::origin::Origin;

/// Temperature above which the warmth that is left counts, °C.
const HEAT_LEFT_BASE_C: f64 = 5.0;
/// Days within which a sum of warmth is reached or not at all.
const WITHIN_DAYS: i32 = 365;
/// Share of days, in tenths, that must be recorded for a sum to count as measured.
const MEASURED_TENTHS: i64 = 8;

impl Season {
    /// Warmth of one day above a base, °C d: single sine through the recorded minimum and maximum where
    /// both are there, else through the curve's.
    fn heat_of(&self, day: Day, thresholds: Thresholds) -> f64 {
        let recorded = self.observations.on(day).and_then(|weather| weather.tmin_c.zip(weather.tmax_c));
        let (tmin_c, tmax_c) = recorded.unwrap_or_else(|| {
            let day = day.climate_day();
            (self.tmin_c.at(day), self.tmax_c.at(day))
        });
        single_sine(tmin_c, tmax_c, thresholds)
    }

    /// Warmth collected from a day up to the day before another, °C d: single sine above the base, with
    /// a horizontal cut-off at the upper temperature if there is one (°C, above the base); from the
    /// records where they are there, else from the curve. 0 when `to` is not after `from`. The forecast
    /// is not read.
    #[must_use]
    pub fn heat_sum(&self, base_c: f64, upper_c: Option<f64>, from: Day, to: Day) -> f64 {
        let thresholds = Thresholds { lower_c: base_c, upper_c: upper_c.map(|upper_c| (upper_c, Cutoff::Horizontal)) };
        let mut sum = 0.0;
        for ahead in 0..(to - from).max(0) {
            sum += self.heat_of(from + ahead, thresholds);
        }
        sum
    }

    /// Origin of [`Self::heat_sum`] over the same days: measured when at least 80 % of them were
    /// recorded.
    #[must_use]
    pub fn heat_sum_origin(&self, from: Day, to: Day) -> Origin {
        let days = i64::from(to - from);
        let recorded = self.observations.between(from, to).iter().filter(|weather| weather.tmean_c().is_some()).count();
        let recorded = i64::try_from(recorded).unwrap_or(i64::MAX / 10);
        if days > 0 && recorded * 10 >= days * MEASURED_TENTHS { Origin::Measured } else { self.curve_origin }
    }

    /// The first day on which [`Self::heat_sum`] from a day on has reached a sum (°C d) above a base
    /// (°C): the day after the one that brought it. Within 365 days; none otherwise.
    #[must_use]
    pub fn heat_reached(&self, sum_cd: f64, base_c: f64, from: Day) -> Option<Day> {
        let thresholds = Thresholds::above(base_c);
        let mut sum = 0.0;
        for ahead in 0..=WITHIN_DAYS {
            if sum >= sum_cd {
                return Some(from + ahead);
            }
            sum += self.heat_of(from + ahead, thresholds);
        }
        None
    }

    /// Warmth still to come before frost or before growth stops, °C d above 5 °C by the curve of the
    /// mean temperature.
    ///
    /// The sum from the day to the day before the earlier of the next `first_frost.median` and the next
    /// `growing.end`, at most 365 days. 0 from `first_frost.median` up to the day before
    /// `last_frost.median`, and from `growing.end` up to the day before `growing.start`: else it would
    /// jump to next year's warmth after the first frost.
    #[must_use]
    pub fn heat_left_cd(&self, day: Day) -> f64 {
        self.heat_left_cd.get_or_init(|| Box::new(self.heat_left_row())).at(day.climate_day())
    }

    fn heat_left_row(&self) -> Row {
        let day_of = |marker: Marker| self.marker(marker).day();
        let first_frost = day_of(Marker::FirstFrost(Share::Median));
        let last_frost = day_of(Marker::LastFrost(Share::Median));
        let growing_end = day_of(Marker::GrowingEnd);
        let growing_start = day_of(Marker::GrowingStart);
        let heat = Row::from_fn(|day| (self.tmean_c.at(day) - HEAT_LEFT_BASE_C).max(0.0));
        // Where the first frost falls on the day of the last one there is no day between them.
        let resting = |day: ClimateDay, from: Option<ClimateDay>, to: Option<ClimateDay>| {
            from.zip(to).is_some_and(|(from, to)| from == to || day.days_after(from) < to.days_after(from))
        };
        Row::from_fn(|day| {
            if resting(day, first_frost, last_frost) || resting(day, growing_end, growing_start) {
                return 0.0;
            }
            let days = [first_frost, growing_end]
                .into_iter()
                .flatten()
                .map(|end| end.days_after(day))
                .min()
                .unwrap_or(ClimateDay::COUNT);
            heat.sum_from(day, days)
        })
    }
}

//! The smooth year: a mean and three harmonics through twelve monthly means.

use std::f64::consts::TAU;
use std::sync::LazyLock;

use super::row::Row;
use crate::calendar::{ClimateDay, DAYS_IN_MONTH, month_value};

/// Cosines and sines of the first three harmonics at one point of the year.
#[derive(Clone, Copy, Debug)]
struct Waves {
    cos: [f64; 3],
    sin: [f64; 3],
}

impl Waves {
    fn at(year_angle_rad: f64) -> Self {
        let mut waves = Self { cos: [0.0; 3], sin: [0.0; 3] };
        for ((cos, sin), k) in waves.cos.iter_mut().zip(&mut waves.sin).zip([1.0, 2.0, 3.0]) {
            *cos = libm::cos(k * year_angle_rad);
            *sin = libm::sin(k * year_angle_rad);
        }
        waves
    }
}

/// Waves at noon of each climate day. Every season uses the same ones, so they are worked out once.
static DAYS: LazyLock<Vec<Waves>> = LazyLock::new(|| {
    ClimateDay::all().map(|day| Waves::at(TAU * (f64::from(day.day_of_year()) - 0.5) / 365.0)).collect()
});

/// Waves in the middle of twelve equal months.
static MONTHS: LazyLock<Vec<Waves>> =
    LazyLock::new(|| (0..12).map(|month| Waves::at(TAU * (f64::from(month) + 0.5) / 12.0)).collect());

/// `sin(pi u)/(pi u)` at k/12: how much a monthly mean flattens harmonic k.
static FLATTENING: LazyLock<[f64; 3]> = LazyLock::new(|| {
    [1.0, 2.0, 3.0].map(|k: f64| {
        let half_width_rad = TAU / 2.0 * k / 12.0;
        libm::sin(half_width_rad) / half_width_rad
    })
});

/// A smooth year: a mean and three harmonics.
///
/// The harmonics are those of the twelve monthly means, each divided by `sinc(k/12)`, so that the
/// mean of the curve over a month is again the monthly mean as far as three harmonics can carry it
/// (standard Fourier analysis of a step function; for equal months).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Harmonics {
    mean: f64,
    cos: [f64; 3],
    sin: [f64; 3],
}

impl Harmonics {
    /// The smooth year of twelve monthly means, January first, in any unit.
    #[must_use]
    pub fn of_months(monthly: &[f64; 12]) -> Self {
        let mut mean = 0.0;
        let mut cos = [0.0; 3];
        let mut sin = [0.0; 3];
        for (value, waves) in monthly.iter().zip(MONTHS.iter()) {
            mean += value / 12.0;
            for (sum, wave) in cos.iter_mut().zip(waves.cos) {
                *sum += value * wave / 6.0;
            }
            for (sum, wave) in sin.iter_mut().zip(waves.sin) {
                *sum += value * wave / 6.0;
            }
        }
        for ((cos, sin), flattening) in cos.iter_mut().zip(&mut sin).zip(*FLATTENING) {
            *cos /= flattening;
            *sin /= flattening;
        }
        Self { mean, cos, sin }
    }

    /// Half the sum of two smooth years.
    #[must_use]
    pub fn halfway(&self, other: &Self) -> Self {
        let half = |a: [f64; 3], b: [f64; 3]| {
            let mut sum = a;
            for (a, b) in sum.iter_mut().zip(b) {
                *a = (*a + b) / 2.0;
            }
            sum
        };
        Self { mean: (self.mean + other.mean) / 2.0, cos: half(self.cos, other.cos), sin: half(self.sin, other.sin) }
    }

    fn through(&self, waves: &Waves) -> f64 {
        let [c1, c2, c3] = self.cos;
        let [s1, s2, s3] = self.sin;
        let [x1, x2, x3] = waves.cos;
        let [y1, y2, y3] = waves.sin;
        self.mean + c1 * x1 + s1 * y1 + c2 * x2 + s2 * y2 + c3 * x3 + s3 * y3
    }

    /// The value at noon of a climate day.
    #[must_use]
    pub fn at(&self, day: ClimateDay) -> f64 {
        // There is a wave for each climate day, so the mean never stands in for one.
        DAYS.get(day.index()).map_or(self.mean, |waves| self.through(waves))
    }

    /// The value on every day.
    #[must_use]
    pub fn row(&self) -> Row {
        let mut waves = DAYS.iter();
        Row::from_fn(|_| waves.next().map_or(self.mean, |waves| self.through(waves)))
    }

    /// Height of the first harmonic above the mean.
    #[must_use]
    pub fn amplitude(&self) -> f64 {
        let ([c1, ..], [s1, ..]) = (self.cos, self.sin);
        (c1 * c1 + s1 * s1).sqrt()
    }

    /// The day on which the first harmonic is highest. On a year without seasons it is some day.
    #[must_use]
    pub fn peak(&self) -> ClimateDay {
        let ([c1, ..], [s1, ..]) = (self.cos, self.sin);
        let days = libm::atan2(s1, c1) / TAU * 365.0 - 0.5;
        // Within plus and minus 183, so the whole part fits.
        ClimateDay::around(libm::round(days) as i32)
    }

    /// Slope of the first harmonic at noon of a day, per day.
    #[must_use]
    pub fn slope(&self, day: ClimateDay) -> f64 {
        let ([c1, ..], [s1, ..]) = (self.cos, self.sin);
        DAYS.get(day.index()).map_or(0.0, |waves| {
            let ([x1, ..], [y1, ..]) = (waves.cos, waves.sin);
            (s1 * x1 - c1 * y1) * TAU / 365.0
        })
    }

    /// The same year at a depth into which each wave k comes damped by `exp(-lags[k])` and delayed
    /// by `lags[k]` radians of its own period.
    #[must_use]
    pub fn damped(&self, lags_rad: [f64; 3]) -> Self {
        let mut deep = *self;
        for ((cos, sin), lag) in deep.cos.iter_mut().zip(&mut deep.sin).zip(lags_rad) {
            let (a, b) = (*cos, *sin);
            let (turn_cos, turn_sin) = (libm::cos(lag), libm::sin(lag));
            let damping = libm::exp(-lag);
            *cos = damping * (a * turn_cos - b * turn_sin);
            *sin = damping * (a * turn_sin + b * turn_cos);
        }
        deep
    }
}

/// By how much the means of the curve's months differ from the monthly values at most: what three
/// harmonics cannot carry of twelve free values.
pub(crate) fn largest_residual(curve: &Row, monthly: &[f64; 12]) -> f64 {
    let mut largest: f64 = 0.0;
    for (month, mean) in curve.monthly_means().iter().enumerate().take(DAYS_IN_MONTH.len()) {
        largest = largest.max((mean - month_value(monthly, month)).abs());
    }
    largest
}

#[cfg(test)]
mod tests {
    use super::*;

    const SMOOTH: [f64; 12] = [2.0, 3.1, 6.0, 9.2, 13.0, 16.1, 17.9, 17.4, 14.5, 10.7, 6.4, 3.3];

    #[test]
    fn a_smooth_year_keeps_its_monthly_means() {
        let row = Harmonics::of_months(&SMOOTH).row();
        assert!(largest_residual(&row, &SMOOTH) < 0.3, "{}", largest_residual(&row, &SMOOTH));
    }

    #[test]
    fn one_day_and_the_whole_row_agree() {
        let year = Harmonics::of_months(&SMOOTH);
        let row = year.row();
        for day in ClimateDay::all() {
            assert_eq!(row.at(day).to_bits(), year.at(day).to_bits());
        }
    }

    #[test]
    fn the_slope_changes_its_sign_at_the_peak() {
        let year = Harmonics::of_months(&SMOOTH);
        assert!(year.slope(year.peak().plus(-2)) > 0.0);
        assert!(year.slope(year.peak().plus(2)) < 0.0);
        assert!(year.slope(year.peak().plus(184)) > 0.0);
        assert!((5.0..9.0).contains(&year.amplitude()));
    }

    #[test]
    fn depth_makes_the_year_flatter_and_later() {
        let air = Harmonics::of_months(&SMOOTH);
        let soil = air.damped([0.5, 0.7, 0.9]);
        assert!(soil.amplitude() < air.amplitude());
        // half a radian of a year is 365 / (4 pi) days
        let later = soil.peak().days_from(air.peak());
        assert!((28..=30).contains(&later), "{later}");
    }

    #[test]
    fn a_flat_year_stays_flat() {
        let (low, high) = Harmonics::of_months(&[7.0; 12]).row().extent();
        assert!((low - 7.0).abs() < 1e-12 && (high - 7.0).abs() < 1e-12);
    }
}

//! Degree days summed over a run of days.

use super::{Thresholds, average_method1, average_method2, double_sine, double_triangle, single_sine, single_triangle};

/// The way a day's degree days are reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Method {
    /// Half the sum first, then the base.
    AverageMethod1,
    /// The extremes lifted to the base first.
    AverageMethod2,
    /// One sine a day.
    SingleSine,
    /// Two half sines a day.
    DoubleSine,
    /// One triangle a day.
    SingleTriangle,
    /// Two triangles a day.
    DoubleTriangle,
}

impl Method {
    /// Degree days of one day in C d. Without a next minimum the double methods fall back to this
    /// day's own.
    #[must_use]
    pub fn day(self, tmin_c: f64, tmax_c: f64, next_tmin_c: Option<f64>, thresholds: Thresholds) -> f64 {
        let next_c = next_tmin_c.unwrap_or(tmin_c);
        match self {
            Self::AverageMethod1 => average_method1(tmin_c, tmax_c, thresholds),
            Self::AverageMethod2 => average_method2(tmin_c, tmax_c, thresholds),
            Self::SingleSine => single_sine(tmin_c, tmax_c, thresholds),
            Self::DoubleSine => double_sine(tmin_c, tmax_c, next_c, thresholds),
            Self::SingleTriangle => single_triangle(tmin_c, tmax_c, thresholds),
            Self::DoubleTriangle => double_triangle(tmin_c, tmax_c, next_c, thresholds),
        }
    }
}

/// Sum in C d over consecutive days given as (tmin, tmax) in C, in order. `after_c` is the minimum of
/// the day after the last, for the double methods.
#[must_use]
pub fn sum_over(method: Method, days_c: &[(f64, f64)], after_c: Option<f64>, thresholds: Thresholds) -> f64 {
    let next_minima = days_c.iter().skip(1).map(|day| Some(day.0)).chain(core::iter::once(after_c));
    days_c
        .iter()
        .zip(next_minima)
        .map(|(&(tmin_c, tmax_c), next_c)| method.day(tmin_c, tmax_c, next_c, thresholds))
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_day_leans_on_the_night_after_it() {
        let thresholds = Thresholds::above(10.0);
        let days = [(5.0, 20.0), (9.0, 24.0)];
        let expected = double_sine(5.0, 20.0, 9.0, thresholds) + double_sine(9.0, 24.0, 12.0, thresholds);
        assert!((sum_over(Method::DoubleSine, &days, Some(12.0), thresholds) - expected).abs() < 1e-12);
    }
}

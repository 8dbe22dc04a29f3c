//! The season in which a curve stays at or above a threshold.

use super::runs::{SHORTEST_DAYS, longest, runs};
use super::span::Span;
use crate::calendar::ClimateDay;
use crate::curve::Row;

/// A temperature that stays this near to the threshold all year makes no seasons, K (own choice).
pub(crate) const EVEN_BAND_K: f64 = 2.0;

/// The season in which a curve is at or above a threshold: gaps under 21 days are filled and the
/// longest run is taken, the earlier start on a tie.
///
/// `Even` when the curve stays within `even_band` of the threshold all year, `Never` when the run is
/// under 21 days, `Always` when the rest of the year is. A band of `None` is for curves for which
/// there is no such thing.
#[must_use]
pub fn crossing(curve: &Row, threshold: f64, even_band: Option<f64>) -> Span {
    let (low, high) = curve.extent();
    if even_band.is_some_and(|band| low >= threshold - band && high <= threshold + band) {
        return Span::Even;
    }
    let Some(run) = longest(&runs(|day| curve.at(day) >= threshold)) else {
        return Span::Never;
    };
    if run.days < SHORTEST_DAYS {
        Span::Never
    } else if ClimateDay::COUNT - run.days < SHORTEST_DAYS {
        Span::Always
    } else {
        Span::Seasonal { start: run.start, end: run.end() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A year that rises and falls once between two values, lowest on 1 January.
    fn triangle(low: f64, high: f64) -> Row {
        Row::from_fn(|day| {
            let from_new_year = f64::from(day.days_from(ClimateDay::around(0)).abs());
            low + (high - low) * from_new_year / 182.0
        })
    }

    #[test]
    fn a_season_starts_on_its_first_day_and_ends_on_the_day_after() {
        let year = triangle(0.0, 18.2);
        let span = crossing(&year, 5.0, Some(EVEN_BAND_K));
        let start = ClimateDay::around(50);
        assert_eq!(span, Span::Seasonal { start, end: ClimateDay::around(316) });
        assert!(year.at(start) >= 5.0 && year.at(start.plus(-1)) < 5.0);
    }

    #[test]
    fn a_curve_that_grazes_the_threshold_makes_no_season() {
        assert_eq!(crossing(&triangle(0.0, 18.2), 17.3, Some(EVEN_BAND_K)), Span::Never);
        assert_eq!(crossing(&triangle(0.0, 18.2), 0.9, Some(EVEN_BAND_K)), Span::Always);
        assert_eq!(crossing(&triangle(3.5, 6.5), 5.0, Some(EVEN_BAND_K)), Span::Even);
        assert_eq!(crossing(&triangle(-9.0, 1.0), 5.0, Some(EVEN_BAND_K)), Span::Never);
        assert_eq!(crossing(&triangle(9.0, 21.0), 5.0, Some(EVEN_BAND_K)), Span::Always);
    }
}

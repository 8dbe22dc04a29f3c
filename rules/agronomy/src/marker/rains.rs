//! The rains: the wet part of the year, and a second one where there are two.

use super::runs::{Run, longest, runs};
use super::span::Span;
use crate::calendar::ClimateDay;
use crate::curve::{Row, SAME};

/// Days around a day over which rain is summed.
const DAYS_AROUND: u16 = 31;
/// Rain of those days at and above which it is wet, mm (own choice).
const WET_MM: f64 = 60.0;
/// Rain of those days below which it is dry; a year that never is has no rains to speak of, mm.
const DRY_MM: f64 = 30.0;
/// Length of second rains and their distance from the first on both sides, at least, days.
const SECOND_DAYS: u16 = 45;

/// The rains and the second rains, from the mean rain of each day in mm.
///
/// Wet is a day around which 31 days bring 60 mm or more; gaps under 21 days are filled; the longest
/// run is the rains, the next longest the second rains if it has 45 days or more and lies 45 days away
/// on both sides. `Never` when no day is wet, `Even` when every 31 days bring 30 mm, `Always` when the
/// gaps that are left are all filled.
#[must_use]
pub fn rains(rain_mm: &Row) -> (Span, Span) {
    let half = i32::from(DAYS_AROUND / 2);
    let from_here = rain_mm.running_sums(DAYS_AROUND);
    let around = |day: ClimateDay| from_here.at(day.plus(-half));
    let (low, high) = from_here.extent();
    if high < WET_MM - SAME {
        return (Span::Never, Span::Never);
    }
    if low >= DRY_MM - SAME {
        return (Span::Even, Span::Never);
    }
    let wet = runs(|day| around(day) >= WET_MM - SAME);
    let Some(first) = longest(&wet) else {
        return (Span::Never, Span::Never);
    };
    if first.days == ClimateDay::COUNT {
        return (Span::Always, Span::Never);
    }
    let rest: Vec<Run> = wet.into_iter().filter(|run| *run != first).collect();
    let second = longest(&rest).filter(|second| {
        second.days >= SECOND_DAYS
            && second.start.days_after(first.end()) >= SECOND_DAYS
            && first.start.days_after(second.end()) >= SECOND_DAYS
    });
    (span(first), second.map_or(Span::Never, span))
}

fn span(run: Run) -> Span {
    Span::Seasonal { start: run.start, end: run.end() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calendar::{DAYS_IN_MONTH, month_value};

    fn of_months(monthly_mm: [f64; 12]) -> (Span, Span) {
        rains(&Row::from_fn(|day| {
            month_value(&monthly_mm, day.month_index()) / f64::from(DAYS_IN_MONTH[day.month_index()])
        }))
    }

    #[test]
    fn a_monsoon_has_one_season_of_rains() {
        let (first, second) = of_months([2.0, 5.0, 8.0, 20.0, 90.0, 250.0, 300.0, 280.0, 180.0, 70.0, 15.0, 3.0]);
        let Span::Seasonal { start, end } = first else { panic!("{first:?}") };
        assert!((4..=5).contains(&start.month()) && (10..=11).contains(&end.month()), "{first:?}");
        assert_eq!(second, Span::Never);
    }

    #[test]
    fn two_rains_far_enough_apart_are_two() {
        let (first, second) = of_months([10.0, 10.0, 90.0, 180.0, 120.0, 20.0, 10.0, 10.0, 20.0, 100.0, 130.0, 40.0]);
        let (Span::Seasonal { start, .. }, Span::Seasonal { start: later, .. }) = (first, second) else {
            panic!("{first:?} {second:?}")
        };
        assert!(start.month() <= 3 && later.month() >= 9, "{first:?} {second:?}");
    }

    #[test]
    fn too_dry_and_too_even_years_have_no_rains() {
        assert_eq!(of_months([20.0; 12]), (Span::Never, Span::Never));
        assert_eq!(of_months([70.0; 12]), (Span::Even, Span::Never));
    }
}

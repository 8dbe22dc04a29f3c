//! Certainty of a task: how well the facts are known that it read, and how near the day lies to a side of its window.

use lammas_agronomy::origin::Origin;

use crate::compile::rule::PlantRule;
use crate::compile::term::{MarkerAt, MarkerRef};
use crate::decide::moment::Moment;
use crate::decide::window::State;
use crate::rank::weakest_origin;

/// high, medium, low.
#[must_use]
pub fn of(rule: &PlantRule, window: &State, moment: &Moment<'_>) -> &'static str {
    let origin = weakest_origin(rule, moment);
    if origin == Some(Origin::Assumed) || is_near_a_side(rule, window, moment) {
        return "low";
    }
    match origin {
        None | Some(Origin::Given | Origin::Measured | Origin::Forecast) => "high",
        Some(_) => "medium",
    }
}

/// Whether the day lies within a side's likely error of that side.
#[must_use]
pub fn is_near_a_side(rule: &PlantRule, window: &State, moment: &Moment<'_>) -> bool {
    let State::Open(occurrence) = window else { return false };
    let error = |side: fn(&crate::compile::window::Window) -> Option<&crate::compile::window::Side>| {
        rule.windows.iter().filter_map(side).flatten().filter_map(|at| likely_error(at, moment)).fold(0.0, f64::max)
    };
    let (opening, closing) = (error(|w| w.opens.as_ref()), error(|w| w.closes.as_ref()));
    f64::from(moment.day - occurrence.opens) < opening || f64::from(occurrence.closes - moment.day) < closing
}

fn likely_error(at: &MarkerAt, moment: &Moment<'_>) -> Option<f64> {
    match at.marker {
        // Crossings of a threshold have no published error.
        MarkerRef::Season(marker) if marker.index().is_some() => {
            moment.question.climate.season.marker_error_days(marker)
        }
        _ => None,
    }
}

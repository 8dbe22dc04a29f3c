//! Certainty of a task: how well the facts are known that it read, and how near the day lies to a side of its window.

use super::words::is_spanish;
use crate::compile::rule::PlantRule;
use crate::compile::term::{MarkerAt, MarkerRef};
use crate::compile::window::{Side, Window};
use crate::decide::moment::Moment;
use crate::decide::outcome::Verdict;
use crate::decide::window::State;
use crate::rank::Score;

/// high, medium, low.
#[must_use]
pub fn of(rule: &PlantRule, verdict: &Verdict, moment: &Moment<'_>) -> &'static str {
    match verdict.score.certainty {
        Score::ASSUMED => "low",
        _ if is_near_a_side(rule, &verdict.window, moment) => "low",
        Score::KNOWN => "high",
        _ => "medium",
    }
}

/// Whether the day lies within a side's likely error of that side.
#[must_use]
pub fn is_near_a_side(rule: &PlantRule, window: &State, moment: &Moment<'_>) -> bool {
    let State::Open(occurrence) = window else { return false };
    let [opening, closing] = side_errors(rule, moment);
    f64::from(moment.day - occurrence.opens) < opening || f64::from(occurrence.closes - moment.day) < closing
}

/// Why the certainty is low, where that is because the climate was estimated and the day lies within the likely error of
/// a side of the window.
#[must_use]
pub fn because_of_a_side(rule: &PlantRule, window: &State, moment: &Moment<'_>, language: &str) -> Option<String> {
    let State::Open(occurrence) = window else { return None };
    moment.question.climate.estimated.as_ref()?;
    let [opening, closing] = side_errors(rule, moment);
    let near = |days: i32, error: f64| f64::from(days) < error;
    let (closes, days) =
        match (near(moment.day - occurrence.opens, opening), near(occurrence.closes - moment.day, closing)) {
            (_, true) => (true, closing),
            (true, false) => (false, opening),
            (false, false) => return None,
        };
    Some(match (closes, is_spanish(language)) {
        (false, false) => format!(
            "The day on which this begins was estimated from coordinates and may be off by some {days} days; today lies within that."
        ),
        (true, false) => format!(
            "The day on which this ends was estimated from coordinates and may be off by some {days} days; today lies within that."
        ),
        (false, true) => format!(
            "El día en que esto empieza se estimó por las coordenadas y puede errar unos {days} días; hoy está dentro de ese margen."
        ),
        (true, true) => format!(
            "El día en que esto acaba se estimó por las coordenadas y puede errar unos {days} días; hoy está dentro de ese margen."
        ),
    })
}

/// The likely errors of what a window's opening and closing hang on, days.
fn side_errors(rule: &PlantRule, moment: &Moment<'_>) -> [f64; 2] {
    let error = |side: fn(&Window) -> Option<&Side>| {
        rule.windows.iter().filter_map(side).flatten().filter_map(|at| likely_error(at, moment)).fold(0.0, f64::max)
    };
    [error(|w| w.opens.as_ref()), error(|w| w.closes.as_ref())]
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

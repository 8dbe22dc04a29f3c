//! A window as it is shown: its days, and the markers that they hang on.

use lammas_agronomy::calendar::Day;

use super::answer::{Basis, WindowShown};
use super::words;
use crate::compile::rule::PlantRule;
use crate::compile::window::Side;
use crate::decide::marker_dates::{self, Absence, Dates};
use crate::decide::moment::Moment;
use crate::decide::window::State;

/// The window of a rule.
#[must_use]
pub fn shown(rule: &PlantRule, state: &State, moment: &Moment<'_>, language: &str) -> WindowShown {
    let (opens, best, closes) = match state {
        State::Open(o) => (Some(o.opens), Some(o.best), Some(o.closes)),
        _ => (None, None, None),
    };
    let mut basis = Vec::new();
    for window in &rule.windows {
        for (name, side) in [("opens", &window.opens), ("best", &window.best), ("closes", &window.closes)] {
            basis.extend(side.as_ref().and_then(|side| one(name, side, moment, language)));
        }
    }
    WindowShown {
        all_year: *state == State::AllYear,
        opens: opens.map(Day::date),
        best: best.map(Day::date),
        closes: closes.map(Day::date),
        basis,
    }
}

fn one(name: &'static str, side: &Side, moment: &Moment<'_>, language: &str) -> Option<Basis> {
    let mut last = None;
    for at in side {
        let dates = marker_dates::of(&at.marker, moment);
        let state = match &dates {
            Dates::Days(_) => dates.nearest(moment.day).map(|day| day.date().to_string()).unwrap_or_default(),
            Dates::Absent(Absence::Never) => "never".to_owned(),
            Dates::Absent(Absence::Always) => "always".to_owned(),
            Dates::Unknown => "unknown".to_owned(),
        };
        last = Some(Basis { side: name, marker: at.text.clone(), words: words::marker(&at.text, language), state });
        if !matches!(dates, Dates::Absent(_)) {
            break;
        }
    }
    last
}

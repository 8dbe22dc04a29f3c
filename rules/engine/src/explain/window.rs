//! A window as it is shown: its days, and the markers that they hang on.

use lammas_agronomy::calendar::Day;

use super::answer::{Basis, WindowShown};
use super::voice::Voice;
use crate::compile::rule::PlantRule;
use crate::compile::window::Side;
use crate::decide::marker_dates::{self, Absence, Dates};
use crate::decide::moment::Moment;
use crate::decide::window::State;

/// The window of a rule, by its number among the plant's; a full one says what it hangs on.
#[must_use]
pub fn shown<'a>(at: u32, rule: &'a PlantRule, state: &State, full: bool, voice: Voice<'_, 'a>) -> WindowShown<'a> {
    let (opens, best, closes) = match state {
        State::Open(o) => (Some(o.opens), Some(o.best), Some(o.closes)),
        _ => (None, None, None),
    };
    WindowShown {
        all_year: *state == State::AllYear,
        opens: opens.map(Day::date),
        best: best.map(Day::date),
        closes: closes.map(Day::date),
        basis: full.then(|| basis(at, rule, voice)),
    }
}

fn basis<'a>(at: u32, rule: &'a PlantRule, voice: Voice<'_, 'a>) -> Vec<Basis<'a>> {
    let words = voice.own(at).map(|own| own.sides.as_slice()).unwrap_or_default();
    let sides = rule.windows.iter().flat_map(|window| {
        [("opens", &window.opens), ("best", &window.best), ("closes", &window.closes)]
            .into_iter()
            .filter_map(|(name, side)| Some((name, side.as_ref()?)))
    });
    sides.zip(words).filter_map(|((name, side), words)| one(name, side, words, voice.moment)).collect()
}

/// The first marker that is not absent, or the last.
fn one<'a>(name: &'static str, side: &'a Side, words: &'a [String], moment: &Moment<'_>) -> Option<Basis<'a>> {
    let mut last = None;
    for (at, words) in side.iter().zip(words) {
        let dates = marker_dates::of(&at.marker, moment);
        let state = match &dates {
            Dates::Days(_) => dates.nearest(moment.day).map(|day| day.date().to_string()).unwrap_or_default(),
            Dates::Absent(Absence::Never) => "never".to_owned(),
            Dates::Absent(Absence::Always) => "always".to_owned(),
            Dates::Unknown => "unknown".to_owned(),
        };
        last = Some(Basis { side: name, marker: &at.text, words, state });
        if !matches!(dates, Dates::Absent(_)) {
            break;
        }
    }
    last
}

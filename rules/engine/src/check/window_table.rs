//! Every window of a set in every reference climate: the table that the checks of windows read, and that people may.

use super::reference::{day, places, question};
use crate::compile::book::PlantBook;
use crate::compile::rule::PlantRule;
use crate::compile::set::Set;
use crate::decide::moment::Moment;
use crate::decide::truth::{Curve, judge};
use crate::decide::window::{Found, occurrences};
use crate::fact::value::Truth;
use crate::fault::Place;
use crate::pack::expression::place;

/// What becomes of a window in a climate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindowState {
    /// It does not open.
    Never,
    /// It is open for so many days, in its longest occurrence.
    Days(i32),
    /// It is open on all days.
    AllYear,
    /// It hangs on what only the caller knows.
    Unknown,
}

/// One window in one climate.
#[derive(Clone, Debug)]
pub struct WindowRow<'a> {
    /// The rule's number among the rules of the set.
    pub rule: u32,
    /// Which of the rule's windows, from 0.
    pub window: usize,
    /// The plant.
    pub plant: &'a str,
    /// The reference climate.
    pub climate: &'a str,
    /// What becomes of it.
    pub state: WindowState,
}

/// Every window of every rule, for each plant in each reference climate in which the plant is grown.
#[must_use]
pub fn window_table(set: &Set) -> Vec<WindowRow<'_>> {
    let mut out = Vec::new();
    each(set, &mut |book, rule, moment, climate| {
        for (window, compiled) in rule.windows.iter().enumerate() {
            let state = match occurrences(compiled, moment) {
                Found::AllYear => WindowState::AllYear,
                Found::Unknown => WindowState::Unknown,
                Found::Some(list) => {
                    let longest = list.iter().map(|occurrence| occurrence.closes - occurrence.opens + 1).max();
                    longest.map_or(WindowState::Never, WindowState::Days)
                }
            };
            out.push(WindowRow { rule: rule.rule, window, plant: &book.id, climate, state });
        }
    });
    out
}

/// Calls `visit` for every rule with a window, plant by plant and climate by climate.
pub(super) fn each<'a>(set: &'a Set, visit: &mut dyn FnMut(&'a PlantBook, &'a PlantRule, &Moment<'_>, &'static str)) {
    for book in &set.plants {
        for climate in places() {
            let question = question(set, book, climate);
            let moment = Moment::new(set, book, &question, day());
            let grown = book.grown.as_ref().is_none_or(|grown| judge(grown, &moment, Curve::Counts) != Truth::False);
            for rule in book.rules.iter().filter(|rule| grown && !rule.windows.is_empty()) {
                visit(book, rule, &moment, &climate.name);
            }
        }
    }
}

/// Where a window of a rule stands, and the rule's id.
pub(super) fn place_of(set: &Set, rule: u32, window: usize) -> Option<(Place, &str)> {
    let filed = set.pack.rules.get(rule as usize)?;
    let entry = filed.entry.window.0.get(window)?;
    let side = entry.opens.as_ref().or(entry.closes.as_ref())?;
    Some((place(&filed.file, side), &filed.entry.id.value))
}

/// The rows of each window, put together over plants and climates, in the order of the rules.
pub(super) fn by_window<'t, 'a>(rows: &'t [WindowRow<'a>]) -> Vec<((u32, usize), Vec<&'t WindowRow<'a>>)> {
    let mut groups: std::collections::BTreeMap<(u32, usize), Vec<&WindowRow<'a>>> = std::collections::BTreeMap::new();
    for row in rows {
        groups.entry((row.rule, row.window)).or_default().push(row);
    }
    groups.into_iter().collect()
}

//! What a set has to say of a plant at a place in a week.

use std::collections::BTreeSet;

use lammas_agronomy::calendar::Day;

use crate::compile::set::Set;
use crate::decide::decision::Decision;
use crate::decide::moment::Moment;
use crate::decide::outcome::Outcome;
use crate::decide::window::{self, State};
use crate::pack::rule::{Evidence, Kind};

/// A cell, as it comes together condition by condition: rules by their numbers in the set.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cell {
    /// Tasks that are advised under at least one condition.
    pub applies: BTreeSet<u32>,
    /// Notes.
    pub noted: BTreeSet<u32>,
    /// Rules that are held, or to be left alone.
    pub held: BTreeSet<u32>,
    /// Rules that hang on something not told.
    pub depends: BTreeSet<u32>,
    /// Scenarios that ask there.
    pub scenarios: u16,
    /// Tasks for somebody who tells nothing: so many of those advised.
    pub untold: u16,
    /// Where there are none of these: the next window of a task that opens, and its rule.
    pub next_opening: Option<(Day, u32)>,
}

impl Cell {
    /// Adds what was decided where nothing is told.
    pub(super) fn add_untold(&mut self, decision: &Decision, moment: &Moment<'_>) {
        self.add(decision, moment.set);
        self.untold = u16::try_from(self.applies.len()).unwrap_or(u16::MAX);
        self.next_opening = if self.untold == 0 { next_opening(moment) } else { None };
    }

    /// Adds what was decided under a condition.
    pub fn add(&mut self, decision: &Decision, set: &Set) {
        for verdict in &decision.verdicts {
            let is_task = set.rules.get(verdict.rule as usize).is_some_and(|info| info.kind == Kind::Task);
            match &verdict.outcome {
                Outcome::No => continue,
                Outcome::Applies if is_task => self.applies.insert(verdict.rule),
                Outcome::Applies => self.noted.insert(verdict.rule),
                Outcome::Held(_) => self.held.insert(verdict.rule),
                Outcome::Depends { .. } => self.depends.insert(verdict.rule),
            };
        }
    }

    /// Whether no task is advised, whatever is told.
    #[must_use]
    pub fn is_nothing_due(&self) -> bool {
        self.applies.is_empty()
    }

    /// Whether nothing at all is said: nothing advised, noted, held or asked for.
    #[must_use]
    pub fn is_silent(&self) -> bool {
        self.applies.is_empty() && self.noted.is_empty() && self.held.is_empty() && self.depends.is_empty()
    }

    /// The weakest evidence among the tasks that are advised.
    #[must_use]
    pub fn weakest(&self, set: &Set) -> Option<Evidence> {
        self.applies.iter().filter_map(|rule| set.rules.get(*rule as usize)).map(|info| info.evidence).max()
    }
}

/// The window of a task of the plant that opens next, as an answer of that moment names it.
fn next_opening(moment: &Moment<'_>) -> Option<(Day, u32)> {
    let is_task = |rule: u32| moment.set.rules.get(rule as usize).is_some_and(|info| info.kind == Kind::Task);
    let rules = moment.book.rules.iter().zip(0..).filter(|(rule, _)| is_task(rule.rule));
    rules
        .filter_map(|(rule, at)| match window::of_rule(at, moment) {
            State::Closed { next: Some(next), .. } => Some((next, rule.rule)),
            _ => None,
        })
        .min()
}

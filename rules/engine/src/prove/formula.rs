//! What must be so for a rule to be there, to be held or not to be there: formulas over tests, windows and problems.
//!
//! All facts are taken as known: what nobody said is another question.

use crate::compile::book::PlantBook;
use crate::compile::rule::{JobKind, PlantRule};
use crate::compile::set::Set;
use crate::compile::term::Condition;

/// A formula; negation stands at its leaves only.
#[derive(Clone, Debug)]
pub(crate) enum Formula {
    /// An atom is so, or is not so.
    Atom(u32, bool),
    /// The windows of a rule, by its number among the plant's, are open or closed.
    Window(u32, bool),
    /// The plant has a problem, or has it not.
    Problem(u16, bool),
    /// All; of none: always.
    All(Vec<Formula>),
    /// Any; of none: never.
    Any(Vec<Formula>),
}

/// A condition is true, or false.
#[must_use]
pub(crate) fn is(condition: &Condition, so: bool) -> Formula {
    let parts = |parts: &[Condition]| parts.iter().map(|part| is(part, so)).collect();
    match condition {
        Condition::Always if so => Formula::All(Vec::new()),
        Condition::Always => Formula::Any(Vec::new()),
        Condition::Atom(atom) => Formula::Atom(*atom, so),
        Condition::Not(inner) => is(inner, !so),
        Condition::And(list) if so => Formula::All(parts(list)),
        Condition::Or(list) if !so => Formula::All(parts(list)),
        Condition::And(list) | Condition::Or(list) => Formula::Any(parts(list)),
    }
}

/// The formulas of a plant's rules.
#[derive(Clone, Copy)]
pub(crate) struct Rules<'s> {
    pub(crate) set: &'s Set,
    pub(crate) book: &'s PlantBook,
}

impl<'s> Rules<'s> {
    fn rule(self, at: u32) -> Option<&'s PlantRule> {
        self.book.rules.get(at as usize)
    }

    /// Whom it is for, its condition and its problem: all but the season.
    #[must_use]
    pub(crate) fn condition(self, at: u32, so: bool) -> Formula {
        let Some(rule) = self.rule(at) else { return Formula::Any(Vec::new()) };
        let mut parts = vec![is(&rule.whom, so), is(&rule.when, so)];
        if let Some(problem) = rule.problem {
            parts.push(Formula::Problem(problem, so));
            let treats = self
                .set
                .rules
                .get(rule.rule as usize)
                .is_some_and(|info| info.job_kind == JobKind::Treat && info.is_hazardous());
            let threshold = self.book.problems.iter().find(|p| p.problem == problem).and_then(|p| p.threshold.as_ref());
            parts.extend(threshold.filter(|_| treats).map(|threshold| is(threshold, so)));
        }
        if so { Formula::All(parts) } else { Formula::Any(parts) }
    }

    /// The same and the season.
    #[must_use]
    pub(crate) fn asked_for(self, at: u32, so: bool) -> Formula {
        let mut parts = vec![self.condition(at, so)];
        if self.rule(at).is_some_and(|rule| !rule.windows.is_empty()) {
            parts.push(Formula::Window(at, so));
        }
        if so { Formula::All(parts) } else { Formula::Any(parts) }
    }

    /// A hold of a rule holds it, or does not.
    #[must_use]
    pub(crate) fn holds(self, at: u32, hold: usize, so: bool) -> Formula {
        let hold = self.rule(at).and_then(|rule| rule.holds.get(hold));
        hold.map_or(Formula::Any(Vec::new()), |hold| is(&hold.condition, so))
    }

    /// It is there, and neither its own holds nor guards stop it; or that is not so.
    #[must_use]
    pub(crate) fn applies(self, at: u32, so: bool) -> Formula {
        let mut parts = vec![self.asked_for(at, so)];
        if let Some(rule) = self.rule(at) {
            parts.extend((0..rule.holds.len()).map(|hold| self.holds(at, hold, !so)));
            parts.extend(rule.guards.iter().map(|guard| self.asked_for(*guard, !so)));
        }
        if so { Formula::All(parts) } else { Formula::Any(parts) }
    }
}

//! Proving a set: contradictions, rules that never come, and what others hide, each shown by a question that anybody can
//! ask, or by a certificate of what was judged.
//!
//! - `ground` the reference climates and the days of a year
//! - `formula` what must be so for a rule to be there, held or not there
//! - `plan`, `search` a place, a day and facts that make a formula true, or none
//! - `request`, `confirm` a case as a question, and the engine's word on it
//! - `proof` witnesses and certificates
//! - the findings: `contradiction`, `never_true`, `never_due`, `never_applies`, `masked`, `duplicate`, `reckoned`

pub mod confirm;
mod contradiction;
mod duplicate;
mod everywhere;
mod formula;
mod ground;
mod masked;
pub(crate) mod meaning;
mod never_applies;
mod never_due;
mod never_true;
mod plan;
mod proof;
mod reckoned;
mod request;
mod search;
mod settled;

use std::cell::{Cell, RefCell};

pub use proof::{Certificate, SCOPE, Witness};

use crate::compile::set::Set;
use crate::fault::{Fault, in_order};
use ground::Ground;
use search::Found;

pub(crate) use contradiction::look as contradiction;
pub(crate) use duplicate::look as duplicate;
pub(crate) use masked::look as masked;
pub(crate) use never_applies::look as never_applies;
pub(crate) use never_due::look as never_due;
pub(crate) use never_true::look as never_true;
pub(crate) use reckoned::look as reckoned;

/// The cases of the findings, for the tests of all checks.
#[cfg(test)]
pub(crate) const CASES: [crate::check::cases::Case; 7] = [
    never_true::CASE,
    never_due::CASE,
    never_applies::CASE,
    contradiction::CASE,
    masked::CASE,
    duplicate::CASE,
    reckoned::CASE,
];

/// What was proven of a set.
#[derive(Clone, Debug, Default, serde::Serialize)]
pub struct Proven {
    /// What was found, in order of its places.
    #[serde(skip)]
    pub faults: Vec<Fault>,
    /// Searches that were run.
    pub searches: u64,
    /// What could not be decided: it may be so or not.
    pub undecided: Vec<Undecided>,
}

/// A question that the search left open.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
pub struct Undecided {
    /// The code of the finding that it would be.
    pub code: &'static str,
    /// The rules.
    pub rules: Vec<String>,
}

/// A set to be proven, with the ground of each of its plants.
pub struct Prover<'s> {
    pub(crate) set: &'s Set,
    grounds: Vec<Ground<'s>>,
    /// For each rule of the set the plants it is for, and its number among their rules.
    stands: Vec<Vec<(usize, u32)>>,
    searches: Cell<u64>,
    undecided: RefCell<Vec<Undecided>>,
}

impl<'s> Prover<'s> {
    fn of(set: &'s Set) -> Self {
        let mut stands: Vec<Vec<(usize, u32)>> = set.rules.iter().map(|_| Vec::new()).collect();
        for (plant, book) in set.plants.iter().enumerate() {
            for (at, rule) in (0_u32..).zip(&book.rules) {
                if let Some(list) = stands.get_mut(rule.rule as usize) {
                    list.push((plant, at));
                }
            }
        }
        let grounds = set.plants.iter().map(|book| Ground::of(set, book)).collect();
        Self { set, grounds, stands, searches: Cell::new(0), undecided: RefCell::default() }
    }

    /// Counts a search, and what it left open.
    fn note(&self, found: Found, code: &'static str, rules: &[&str]) {
        self.searches.set(self.searches.get() + 1);
        if found == Found::Undecided {
            let rules = rules.iter().map(|id| (*id).to_owned()).collect();
            self.undecided.borrow_mut().push(Undecided { code, rules });
        }
    }
}

/// Proves a set: every finding, with its witness or certificate.
#[must_use]
pub fn prove(set: &Set) -> Proven {
    let prover = Prover::of(set);
    let mut faults = Vec::new();
    for check in crate::check::CHECKS {
        if let crate::check::Look::AtProof(look) = check.look {
            look(&prover, &mut faults);
        }
    }
    let mut undecided = prover.undecided.into_inner();
    undecided.sort();
    undecided.dedup();
    Proven { faults: in_order(faults), searches: prover.searches.get(), undecided }
}

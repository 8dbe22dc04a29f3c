//! A formula of a rule, looked for in all plants that the rule is for.

use super::Prover;
use super::formula::{Formula, Rules};
use super::ground::{DAYS, Ground};
use super::proof::{Certificate, SCOPE};
use super::search::{Aim, Found, Search};

impl<'s> Prover<'s> {
    /// The plants that a rule is for, with its number among their rules.
    pub(super) fn stands(&self, rule: u32) -> impl Iterator<Item = (&Ground<'s>, u32)> {
        let list = self.stands.get(rule as usize).map(Vec::as_slice).unwrap_or_default();
        list.iter().filter_map(|(plant, at)| Some((self.grounds.get(*plant)?, *at)))
    }

    /// The ground of each plant.
    pub(super) fn grounds(&self) -> &[Ground<'s>] {
        &self.grounds
    }

    /// Whether a formula of a rule can be true for any of its plants. For a rule without plants nothing is said.
    pub(super) fn anywhere(&self, rule: u32, formula: impl Fn(Rules<'s>, u32) -> Formula) -> Found {
        let mut cells = 0_u64;
        let mut undecided = false;
        let mut stands = false;
        for (ground, at) in self.stands(rule) {
            stands = true;
            let formula = formula(ground.rules(), at);
            match Search::of(ground, Aim::Certificate, &formula).is_possible() {
                Found::Yes => return Found::Yes,
                Found::No { cells: own } => cells = cells.saturating_add(own),
                Found::Undecided => undecided = true,
            }
        }
        if undecided || !stands { Found::Undecided } else { Found::No { cells } }
    }
}

impl<'s> Ground<'s> {
    /// The rules of its plant.
    pub(super) const fn rules(&self) -> Rules<'s> {
        Rules { set: self.set, book: self.book }
    }
}

/// A certificate over all reference climates.
pub(super) fn certificate(claim: impl Into<String>, cells: u64) -> Certificate {
    Certificate {
        claim: claim.into(),
        climates: crate::check::reference::places().len(),
        days: DAYS,
        cells,
        scope: SCOPE,
    }
}

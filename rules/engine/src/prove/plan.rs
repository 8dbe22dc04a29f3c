//! A formula made ready for the search: what the caller tells in cells, what the ground settles in one piece.

use super::formula::Formula;
use super::ground::{Ground, Settled};
use super::search::Aim;
use crate::check::samples::samples;
use crate::compile::term::Test;
use crate::fact::value::{Truth, Value};

/// The most cells of a term.
const MOST_CELLS: usize = 128;

/// A part of a formula, ready to be searched.
pub(super) enum Part {
    /// Days that the ground settles.
    Ground(Formula),
    /// Cells of one term, by its number among those of the search.
    Cells(usize, u128),
    Window(u32, bool),
    Problem(u16, bool),
    All(Vec<Part>),
    Any(Vec<Part>),
}

/// A formula, ready to be searched.
pub(super) struct Plan {
    pub(super) root: Part,
    /// The terms that the caller tells, each with a value for each of its cells.
    pub(super) terms: Vec<(u32, Vec<Value>)>,
    /// Whether one of them has more cells than can be told apart.
    pub(super) overflow: bool,
}

impl Plan {
    /// The plan of a search for a formula.
    pub(super) fn of(ground: &Ground<'_>, aim: Aim, formula: &Formula) -> Self {
        let mut maker = Maker { ground, aim, terms: Vec::new(), overflow: false };
        maker.gather(formula);
        Self { root: maker.part(formula), terms: maker.terms, overflow: maker.overflow }
    }
}

struct Maker<'g, 's> {
    ground: &'g Ground<'s>,
    aim: Aim,
    terms: Vec<(u32, Vec<Value>)>,
    overflow: bool,
}

impl Maker<'_, '_> {
    fn is_ground(&self, settled: Settled) -> bool {
        settled == Settled::Ground || (settled == Settled::Usually && self.aim == Aim::Witness)
    }

    fn probe_is_ground(&self, probe: u32) -> bool {
        self.is_ground(self.ground.settled.get(probe as usize).copied().unwrap_or(Settled::Free))
    }

    fn probe(&self, atom: u32) -> Option<u32> {
        self.ground.book.atoms.get(atom as usize).map(|atom| atom.probe)
    }

    /// Lists the terms that the caller tells, each with a value for each of its cells.
    fn gather(&mut self, formula: &Formula) {
        let mut atoms = Vec::new();
        walk(formula, &mut |leaf| {
            if let Formula::Atom(atom, _) = leaf {
                atoms.push(*atom);
            }
        });
        atoms.sort_unstable();
        atoms.dedup();
        let mut probes: Vec<u32> = atoms.iter().filter_map(|atom| self.probe(*atom)).collect();
        probes.sort_unstable();
        probes.dedup();
        probes.retain(|probe| !self.probe_is_ground(*probe));
        for probe in probes {
            let Some(term) = self.ground.book.probes.get(probe as usize) else { continue };
            let own = atoms.iter().filter_map(|atom| self.ground.book.atoms.get(*atom as usize));
            let tests: Vec<&Test> = own.filter(|atom| atom.probe == probe).map(|atom| &atom.test).collect();
            let mut values: Vec<Value> = Vec::new();
            for value in samples(term, &tests, self.ground.book, self.ground.set) {
                // Two values of which every test says the same are one cell.
                let same = |known: &Value| tests.iter().all(|test| test.of(*known) == test.of(value));
                if !values.iter().any(same) {
                    values.push(value);
                }
            }
            self.overflow |= values.len() > MOST_CELLS;
            values.truncate(MOST_CELLS);
            self.terms.push((probe, values));
        }
    }

    fn part(&self, formula: &Formula) -> Part {
        if let Some(part) = self.settled_whole(formula) {
            return part;
        }
        match formula {
            Formula::All(list) => Part::All(list.iter().map(|part| self.part(part)).collect()),
            Formula::Any(list) => Part::Any(list.iter().map(|part| self.part(part)).collect()),
            Formula::Window(rule, open) => Part::Window(self.ground.first_with_window(*rule), *open),
            Formula::Problem(problem, had) => Part::Problem(*problem, *had),
            // An atom is settled whole.
            Formula::Atom(..) => Part::All(Vec::new()),
        }
    }

    /// A formula over the ground alone, or over one term alone, as one part.
    fn settled_whole(&self, formula: &Formula) -> Option<Part> {
        let mut probes: Vec<Option<u32>> = Vec::new();
        let mut other = false;
        walk(formula, &mut |leaf| match leaf {
            Formula::Atom(atom, _) => {
                let probe = self.probe(*atom).filter(|probe| !self.probe_is_ground(*probe));
                if !probes.contains(&probe) {
                    probes.push(probe);
                }
            }
            Formula::Window(rule, _) if self.is_ground(self.ground.window_settled(*rule)) => {
                if !probes.contains(&None) {
                    probes.push(None);
                }
            }
            Formula::Window(..) | Formula::Problem(..) => other = true,
            Formula::All(_) | Formula::Any(_) => {}
        });
        if other {
            return None;
        }
        match probes.as_slice() {
            [None] | [] => Some(Part::Ground(formula.clone())),
            [Some(probe)] => {
                let (at, (_, values)) = self.terms.iter().enumerate().find(|(_, (own, _))| own == probe)?;
                let mut cells = 0_u128;
                for (cell, value) in values.iter().enumerate() {
                    cells |= u128::from(self.holds(formula, *value)) << cell;
                }
                Some(Part::Cells(at, cells))
            }
            _ => None,
        }
    }

    /// Whether a formula over one term holds for a value of it.
    fn holds(&self, formula: &Formula, value: Value) -> bool {
        match formula {
            Formula::Atom(atom, so) => {
                let atom = self.ground.book.atoms.get(*atom as usize);
                atom.is_some_and(|atom| atom.test.of(value) == Truth::known(*so))
            }
            Formula::All(list) => list.iter().all(|part| self.holds(part, value)),
            Formula::Any(list) => list.iter().any(|part| self.holds(part, value)),
            Formula::Window(..) | Formula::Problem(..) => false,
        }
    }
}

/// Calls `visit` for every leaf.
fn walk<'f>(formula: &'f Formula, visit: &mut impl FnMut(&'f Formula)) {
    match formula {
        Formula::All(list) | Formula::Any(list) => list.iter().for_each(|part| walk(part, visit)),
        leaf => visit(leaf),
    }
}

//! The search for a place, a day and facts that make a formula true.
//!
//! What the caller tells is cut into cells at the thresholds that the formula reads; of each term the cells that are still
//! possible are kept, of each place the days that are. Parts that must all be so narrow both; only between parts of which
//! one is enough it is branched. Terms count as independent of each other, so that more seems possible than is: where
//! nothing is found there is nothing; what is found is a candidate, and the engine has the last word.

use super::formula::Formula;
use super::ground::{ALL_DAYS, DAYS, Days, Ground, both, either};
use super::plan::{Part, Plan};
use crate::fact::value::Value;

/// The most steps of a search in one place.
const MOST_STEPS: u32 = 20_000;

/// How much is taken as settled by the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Aim {
    /// To find a case: what a record could change stands as the normals have it, and the plant is grown there.
    Witness,
    /// To show that there is none: what a record or the caller could change may be anything, anywhere.
    Certificate,
}

/// What came of a search.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Found {
    /// A case that was accepted.
    Yes,
    /// None, after so many cells were judged.
    No {
        /// Places × days × cells of the terms, as far as a number holds them.
        cells: u64,
    },
    /// It was not decided: too many steps, too many cells of a term, or a case that was not accepted.
    Undecided,
}

/// A case: a place, its days, the cells of each term.
#[derive(Clone, Debug)]
pub(crate) struct Case {
    pub(crate) spot: usize,
    pub(crate) days: Days,
    /// The terms with what they may be.
    pub(crate) terms: Vec<(u32, Vec<Value>)>,
    /// Windows that hang on the caller, open or closed.
    pub(crate) windows: Vec<(u32, bool)>,
    pub(crate) problems: Vec<(u16, bool)>,
}

impl Case {
    /// A day of the case: in the middle of its first stretch, or of its last.
    #[must_use]
    pub(crate) fn day(&self, last: bool) -> usize {
        let is_in = |at: usize| self.days.get(at / 64).is_some_and(|word| word >> (at % 64) & 1 == 1);
        let mut stretches: Vec<(usize, usize)> = Vec::new();
        for at in (0..DAYS).filter(|at| is_in(*at)) {
            match stretches.last_mut().filter(|(_, end)| *end + 1 == at) {
                Some((_, end)) => *end = at,
                None => stretches.push((at, at)),
            }
        }
        let stretch = if last { stretches.last() } else { stretches.first() };
        stretch.map_or(0, |(begin, end)| (begin + end) / 2)
    }
}

#[derive(Clone)]
struct State {
    days: Days,
    cells: Vec<u128>,
    windows: Vec<(u32, bool)>,
    problems: Vec<(u16, bool)>,
}

/// A search for one formula.
pub(crate) struct Search<'g, 's> {
    ground: &'g Ground<'s>,
    aim: Aim,
    plan: Plan,
}

/// Whether a candidate is what was looked for.
pub(crate) type Accept<'a> = dyn FnMut(&Case) -> bool + 'a;

impl<'g, 's> Search<'g, 's> {
    /// A search for a formula.
    #[must_use]
    pub(crate) fn of(ground: &'g Ground<'s>, aim: Aim, formula: &Formula) -> Self {
        Self { ground, aim, plan: Plan::of(ground, aim, formula) }
    }

    /// The days at a place on which a formula over the ground holds.
    fn days(&self, formula: &Formula, spot: usize) -> Days {
        let side = |row: super::ground::Row, so: bool| if so { row.so } else { row.not };
        match formula {
            Formula::Atom(atom, so) => side(self.ground.row(spot, *atom), *so),
            Formula::Window(rule, open) => side(self.ground.window(spot, *rule), *open),
            Formula::Problem(..) => Days::default(),
            Formula::All(list) => {
                let mut days = ALL_DAYS;
                for part in list {
                    days = both(days, self.days(part, spot));
                    if days == Days::default() {
                        break;
                    }
                }
                days
            }
            Formula::Any(list) => list.iter().fold(Days::default(), |days, part| either(days, self.days(part, spot))),
        }
    }

    /// Looks everywhere until a candidate is accepted.
    #[must_use]
    pub(crate) fn run(&self, accept: &mut Accept<'_>) -> Found {
        if self.plan.overflow {
            return Found::Undecided;
        }
        let cells = self
            .plan
            .terms
            .iter()
            .fold(1_u64, |all, (_, values)| all.saturating_mul(u64::try_from(values.len()).unwrap_or(u64::MAX)));
        let start = State {
            days: ALL_DAYS,
            cells: self.plan.terms.iter().map(|(_, values)| every(values.len())).collect(),
            windows: Vec::new(),
            problems: Vec::new(),
        };
        let places = self.ground.places();
        let whole = cells.saturating_mul(u64::try_from(places * DAYS).unwrap_or(u64::MAX));
        // First as if every day were every season: what the caller's facts alone forbid need not be looked at in each place.
        let mut run = Run { search: self, spot: None, steps: MOST_STEPS, refused: false };
        if !run.solve(vec![&self.plan.root], Vec::new(), start.clone(), &mut |_| true) && run.steps > 0 {
            return Found::No { cells: whole };
        }
        let mut undecided = false;
        for spot in (0..places).filter(|spot| self.aim == Aim::Certificate || self.ground.is_grown(*spot)) {
            let mut run = Run { search: self, spot: Some(spot), steps: MOST_STEPS, refused: false };
            if run.solve(vec![&self.plan.root], Vec::new(), start.clone(), accept) {
                return Found::Yes;
            }
            undecided |= run.steps == 0 || run.refused;
        }
        if undecided { Found::Undecided } else { Found::No { cells: whole } }
    }

    /// Whether there is a candidate at all.
    #[must_use]
    pub(crate) fn is_possible(&self) -> Found {
        self.run(&mut |_| true)
    }
}

/// One place of a search.
struct Run<'r, 'g, 's> {
    search: &'r Search<'g, 's>,
    /// None: the ground forbids nothing.
    spot: Option<usize>,
    steps: u32,
    /// Whether a candidate was not accepted.
    refused: bool,
}

impl<'r> Run<'r, '_, '_> {
    /// Narrows a state by a part that is no choice; false: nothing is left.
    fn narrow(&self, part: &Part, state: &mut State) -> bool {
        fn put<K: PartialEq + Copy>(list: &mut Vec<(K, bool)>, key: K, value: bool) -> bool {
            match list.iter().find(|(known, _)| *known == key) {
                Some((_, known)) => *known == value,
                None => {
                    list.push((key, value));
                    true
                }
            }
        }
        match part {
            Part::Ground(formula) => {
                if let Some(spot) = self.spot {
                    state.days = both(state.days, self.search.days(formula, spot));
                }
                state.days != Days::default()
            }
            Part::Cells(at, cells) => state.cells.get_mut(*at).is_some_and(|left| {
                *left &= cells;
                *left != 0
            }),
            Part::Window(rule, open) => put(&mut state.windows, *rule, *open),
            Part::Problem(problem, had) => put(&mut state.problems, *problem, *had),
            Part::All(_) | Part::Any(_) => true,
        }
    }

    /// Whether a part says nothing that the state does not say already.
    fn is_so(&self, part: &Part, state: &State) -> bool {
        match part {
            Part::Cells(at, cells) => state.cells.get(*at).is_some_and(|left| left & !cells == 0),
            Part::Window(rule, open) => state.windows.contains(&(*rule, *open)),
            Part::Problem(problem, had) => state.problems.contains(&(*problem, *had)),
            Part::Ground(formula) => {
                self.spot.is_some_and(|spot| both(state.days, self.search.days(formula, spot)) == state.days)
            }
            Part::All(list) => list.iter().all(|part| self.is_so(part, state)),
            Part::Any(list) => list.iter().any(|part| self.is_so(part, state)),
        }
    }

    /// Whether a part can't be, as far as is seen at once.
    fn is_out(&self, part: &Part, state: &State) -> bool {
        match part {
            Part::All(list) => list.iter().any(|part| self.is_out(part, state)),
            Part::Any(list) => list.iter().all(|part| self.is_out(part, state)),
            Part::Cells(at, cells) => state.cells.get(*at).is_none_or(|left| left & cells == 0),
            Part::Window(rule, open) => state.windows.contains(&(*rule, !*open)),
            Part::Problem(problem, had) => state.problems.contains(&(*problem, !*had)),
            Part::Ground(formula) => {
                self.spot.is_some_and(|spot| both(state.days, self.search.days(formula, spot)) == Days::default())
            }
        }
    }

    fn solve(
        &mut self,
        mut stack: Vec<&'r Part>,
        mut choices: Vec<&'r [Part]>,
        mut state: State,
        accept: &mut Accept<'_>,
    ) -> bool {
        loop {
            while let Some(part) = stack.pop() {
                if self.steps == 0 {
                    return false;
                }
                self.steps -= 1;
                match part {
                    Part::All(list) => stack.extend(list),
                    Part::Any(list) => choices.push(list),
                    other => {
                        if !self.narrow(other, &mut state) {
                            return false;
                        }
                    }
                }
            }
            // A choice that is made already is none; one of which a single part is left is no choice.
            let mut left: Vec<&[Part]> = Vec::new();
            for list in std::mem::take(&mut choices) {
                if list.iter().any(|part| self.is_so(part, &state)) {
                    continue;
                }
                let mut open = list.iter().filter(|part| !self.is_out(part, &state));
                match (open.next(), open.next()) {
                    (None, _) => return false,
                    (Some(only), None) => stack.push(only),
                    _ => left.push(list),
                }
            }
            choices = left;
            if stack.is_empty() {
                break;
            }
        }
        choices.sort_by_key(|list| std::cmp::Reverse(list.len()));
        let Some(choice) = choices.pop() else { return self.leaf(&state, accept) };
        for part in choice {
            if !self.is_out(part, &state) && self.solve(vec![part], choices.clone(), state.clone(), accept) {
                return true;
            }
        }
        false
    }

    fn leaf(&mut self, state: &State, accept: &mut Accept<'_>) -> bool {
        let terms = self.search.plan.terms.iter().zip(&state.cells).map(|((probe, values), cells)| {
            let left = values.iter().enumerate().filter(|(cell, _)| cells >> cell & 1 == 1).map(|(_, value)| *value);
            (*probe, left.collect())
        });
        let case = Case {
            spot: self.spot.unwrap_or(0),
            days: state.days,
            terms: terms.collect(),
            windows: state.windows.clone(),
            problems: state.problems.clone(),
        };
        let accepted = accept(&case);
        self.refused |= !accepted;
        accepted
    }
}

/// So many bits.
fn every(cells: usize) -> u128 {
    u32::try_from(cells).ok().and_then(|cells| 1_u128.checked_shl(cells)).map_or(u128::MAX, |next| next - 1)
}

//! What of a plant moves from day to day, and what each rule can be moved by.
//!
//! Most facts stay as they are while the days go by; others follow the climate, the same for everybody who asks of that
//! climate; a few follow what the caller told: an age, a work done. Whoever looks ahead has to look only where something
//! moves.

use super::book::{ProblemInfo, StageInfo};
use super::rule::{PlantRule, RuleInfo};
use super::term::{Atom, Condition, MarkerRef, Term};
use super::window::Window;
use crate::fact::catalogue::{Fact, Giver};

/// What makes something move.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Moves {
    /// Nothing.
    Never,
    /// The climate alone.
    Climate,
    /// The climate, unless the caller tells the stage.
    Stage,
    /// What the caller tells.
    Caller,
}

/// What moves, of one plant.
#[derive(Clone, Debug, Default)]
pub struct Moving {
    /// Of each term.
    pub terms: Vec<Moves>,
    /// The windows of each rule.
    pub windows: Vec<Moves>,
    /// The atoms that follow the climate, term by term.
    pub rows: Vec<Row>,
    /// The row of an atom and its place in it.
    pub row_of: Vec<Option<(u32, u32)>>,
    /// The row of a term.
    pub row_of_term: Vec<Option<u32>>,
    /// What can move each rule.
    pub stirs: Vec<Stirs>,
}

/// The atoms of one term that follows the climate.
#[derive(Clone, Debug)]
pub struct Row {
    /// The term.
    pub probe: u32,
    /// Its atoms.
    pub atoms: Vec<u32>,
}

/// What can move a rule from day to day: atoms, and rules with windows, its own and its guards'.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stirs {
    /// Atoms that follow the climate.
    pub atoms: Vec<u32>,
    /// Windows that follow the climate.
    pub windows: Vec<u32>,
    /// Atoms that follow the stage or what the caller tells.
    pub told_atoms: Vec<u32>,
    /// Windows that do.
    pub told_windows: Vec<u32>,
    /// So many days after a work something may be due again.
    pub days: Vec<u16>,
}

impl Moving {
    /// What moves, of a plant's terms, tests and rules.
    #[must_use]
    pub fn of(
        terms: &[Term],
        atoms: &[Atom],
        rules: &[PlantRule],
        infos: &[RuleInfo],
        stages: &[StageInfo],
        problems: &[ProblemInfo],
    ) -> Self {
        let stage = stage_model(stages);
        let terms_move: Vec<Moves> = terms.iter().map(|term| of_term(term, stage)).collect();
        let windows = rules.iter().map(|rule| rule.windows.iter().map(|w| of_window(w, stage)).max());
        let windows: Vec<Moves> = windows.map(|moves| moves.unwrap_or(Moves::Never)).collect();
        let mut rows: Vec<Row> = Vec::new();
        let mut row_of = vec![None; atoms.len()];
        let mut row_of_term = vec![None; terms.len()];
        for (probe, _) in terms_move.iter().enumerate().filter(|(_, m)| matches!(m, Moves::Climate | Moves::Stage)) {
            let own = (0_u32..).zip(atoms).filter(|(_, atom)| atom.probe as usize == probe).map(|(at, _)| at);
            let row = Row { probe: u32::try_from(probe).unwrap_or(u32::MAX), atoms: own.collect() };
            let number = u32::try_from(rows.len()).unwrap_or(u32::MAX);
            for (place, atom) in (0_u32..).zip(&row.atoms) {
                if let Some(slot) = row_of.get_mut(*atom as usize) {
                    *slot = Some((number, place));
                }
            }
            if let Some(slot) = row_of_term.get_mut(probe) {
                *slot = Some(number);
            }
            rows.push(row);
        }
        let mut moving = Self { terms: terms_move, windows, rows, row_of, row_of_term, stirs: Vec::new() };
        moving.stirs = rules.iter().map(|rule| moving.stirs_of(rule, rules, infos, problems, atoms, terms)).collect();
        moving
    }

    fn stirs_of(
        &self,
        rule: &PlantRule,
        rules: &[PlantRule],
        infos: &[RuleInfo],
        problems: &[ProblemInfo],
        atoms: &[Atom],
        terms: &[Term],
    ) -> Stirs {
        let mut stirs = Stirs::default();
        let guards = rule.guards.iter().filter_map(|guard| rules.get(*guard as usize));
        let mut read = |condition: &Condition| {
            condition.atoms(&mut |number| {
                let Some(atom) = atoms.get(number as usize) else { return };
                match self.terms.get(atom.probe as usize) {
                    None | Some(Moves::Never) => {}
                    Some(Moves::Climate) => stirs.atoms.push(number),
                    Some(Moves::Stage | Moves::Caller) => stirs.told_atoms.push(number),
                }
                if let Some(term) = terms.get(atom.probe as usize) {
                    term.walk(&mut |term| {
                        if let Term::Done(_, days) | Term::Count(_, days) = term {
                            stirs.days.push(*days);
                        }
                    });
                }
            });
        };
        for one in std::iter::once(rule).chain(guards) {
            read(&one.whom);
            read(&one.when);
            one.holds.iter().for_each(|hold| read(&hold.condition));
            // How likely a cause is hangs on all others.
            for problem in problems.iter().filter(|_| one.problem.is_some()) {
                problem.favours.iter().chain(&problem.threshold).for_each(&mut read);
            }
            let number = rules.iter().position(|other| std::ptr::eq(other, one));
            let Some(number) = number.and_then(|n| u32::try_from(n).ok()).filter(|_| !one.windows.is_empty()) else {
                continue;
            };
            match self.windows.get(number as usize) {
                None | Some(Moves::Never) => {}
                Some(Moves::Climate) => stirs.windows.push(number),
                Some(Moves::Stage | Moves::Caller) => stirs.told_windows.push(number),
            }
        }
        if let Some(info) = infos.get(rule.rule as usize) {
            stirs.days.extend(info.repeat.every.into_iter().flat_map(|(least, most)| [least, most]));
            stirs.days.extend(info.repeat.at_most.map(|(_, within)| within));
            stirs.days.extend(info.apart.iter().map(|apart| apart.days));
            stirs.days.extend(info.after.iter().map(|(_, days)| *days));
            stirs.days.extend(info.alternate.map(|(_, gap, _)| gap));
        }
        for list in [&mut stirs.atoms, &mut stirs.windows, &mut stirs.told_atoms, &mut stirs.told_windows] {
            list.sort_unstable();
            list.dedup();
        }
        stirs.days.sort_unstable();
        stirs.days.dedup();
        stirs
    }
}

/// What moves a stage that the plant's model finds.
fn stage_model(stages: &[StageInfo]) -> Moves {
    let markers = stages.iter().flat_map(|stage| &stage.begins).map(|at| &at.marker);
    match markers.map(|marker| of_marker(marker, Moves::Caller)).max() {
        None | Some(Moves::Never | Moves::Climate) => Moves::Stage,
        Some(other) => other,
    }
}

fn of_marker(marker: &MarkerRef, stage: Moves) -> Moves {
    match marker {
        MarkerRef::Season(_) | MarkerRef::ChillReached(_) => Moves::Climate,
        MarkerRef::HeatReached { from, .. } => of_marker(&from.marker, stage),
        MarkerRef::Stage(_) => stage,
        MarkerRef::Planted | MarkerRef::Last(_) | MarkerRef::Since(_) | MarkerRef::HarvestWait | MarkerRef::Today => {
            Moves::Caller
        }
    }
}

fn of_window(window: &Window, stage: Moves) -> Moves {
    let sides = [&window.opens, &window.best, &window.closes].into_iter().flatten().flatten();
    sides.map(|at| of_marker(&at.marker, stage)).max().unwrap_or(Moves::Never)
}

fn of_term(term: &Term, stage: Moves) -> Moves {
    let mut moves = Moves::Never;
    term.walk(&mut |term| {
        moves = moves.max(match term {
            Term::Fact(fact) => of_fact(*fact, stage),
            Term::Done(..) | Term::Count(..) => Moves::Caller,
            Term::Past(..) | Term::Ahead(..) | Term::FrostAhead(..) => Moves::Climate,
            Term::HeatSum { from: at, .. } | Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => {
                of_marker(&at.marker, stage).max(Moves::Climate)
            }
            _ => Moves::Never,
        });
    });
    moves
}

fn of_fact(fact: Fact, stage: Moves) -> Moves {
    match fact {
        Fact::PlantAge | Fact::WaterNeed | Fact::WaterInterval | Fact::WaterDepletion => Moves::Caller,
        Fact::PlantStage | Fact::PlantStageSince | Fact::PlantInLeaf => stage,
        other => match other.entry().giver {
            Giver::Season => Moves::Climate,
            Giver::Caller | Giver::Plant => Moves::Never,
            Giver::History => Moves::Caller,
        },
    }
}

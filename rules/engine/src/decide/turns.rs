//! Turns: the days on which something that a rule hangs on may be another than on the day before.
//!
//! Between two turns every outcome is the same, all else equal, so whoever looks ahead has to decide again only on these
//! days. A turn too many costs time; one too few would be an error, and a test judges every day to see that there is none.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;

use super::almanac::{Almanac, Block};
use super::moment::Moment;
use super::window;
use crate::compile::book::PlantBook;
use crate::compile::moves::Moves;
use crate::compile::term::{MarkerRef, Term};
use crate::fact::catalogue::{Fact, Giver};
use crate::fact::value::{Truth, Value};
use crate::question::Question;

/// So many days after a spray it no longer bears on the harvest.
const HARVEST_DAYS: u16 = 60;

/// The turns of some rules.
#[derive(Debug)]
pub struct Turns {
    /// The rules: what they hang on in the climate stands in the almanac.
    rules: Vec<u32>,
    /// Atoms that follow a stage which nobody told.
    rows: Vec<(u32, u32)>,
    /// Atoms that have to be read.
    read: Vec<u32>,
    /// Rules with windows that hang on more than the climate.
    windows: Vec<u32>,
    /// Days on which works done may come to bear, or no longer.
    works: Vec<Day>,
}

/// Which way it is looked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Ahead,
    Back,
}

impl Turns {
    /// The turns of these rules, by their numbers among the plant's.
    #[must_use]
    pub fn of(rules: Vec<u32>, moment: &Moment<'_>) -> Self {
        let (book, question) = (moment.book, moment.question);
        let mut turns = Self { rules, rows: Vec::new(), read: Vec::new(), windows: Vec::new(), works: Vec::new() };
        let stirs = |rule: &u32| book.moving.stirs.get(*rule as usize);
        for stirs in turns.rules.iter().filter_map(stirs) {
            turns.windows.extend(&stirs.told_windows);
            for atom in &stirs.told_atoms {
                let Some(probe) = book.atoms.get(*atom as usize).map(|atom| atom.probe) else { continue };
                let row = book.moving.row_of.get(*atom as usize).copied().flatten();
                match (of_term(probe, moment), row) {
                    (Moves::Climate | Moves::Stage, Some(row)) => turns.rows.push(row),
                    _ if book.probes.get(probe as usize).is_some_and(|term| stays(term, question)) => {}
                    _ => turns.read.push(*atom),
                }
            }
        }
        for list in [&mut turns.read, &mut turns.windows] {
            list.sort_unstable();
            list.dedup();
        }
        turns.rows.sort_unstable();
        turns.rows.dedup();
        if let Some(works) = question.history.as_ref().filter(|works| !works.is_empty()) {
            let mut days: Vec<u16> = vec![0, HARVEST_DAYS];
            days.extend(works.iter().filter_map(|done| done.label_days_to_harvest));
            days.extend(turns.rules.iter().filter_map(stirs).flat_map(|stirs| &stirs.days));
            days.sort_unstable();
            days.dedup();
            for done in works {
                turns.works.extend(days.iter().flat_map(|days| {
                    let due = done.day + i32::from(*days);
                    [due, due + 1]
                }));
            }
        }
        turns
    }

    /// The first turn after the day of `there`, up to `last`; the day after `last` if there is none.
    #[must_use]
    pub fn next(&self, there: &mut Moment<'_>, last: Day) -> Day {
        let day = there.day;
        if last <= day {
            return last + 1;
        }
        let almanac = Arc::clone(there.almanac());
        if day == almanac.last {
            return day + 1;
        }
        let end = last.min(almanac.last);
        // What is looked at last needs to look no further than what was found.
        let mut turn = self.works.iter().copied().filter(|t| *t > day && *t <= end).min().unwrap_or(end + 1);
        for rule in &self.rules {
            turn = almanac.next_turn(*rule, day, turn, there).unwrap_or(turn);
        }
        self.of_windows(there, &almanac, &mut |t| {
            if t > day && t < turn {
                turn = t;
            }
        });
        for row in &self.rows {
            turn = ahead(*row, day, turn, &almanac, there);
        }
        self.by_reading(there, turn, Way::Ahead).unwrap_or(turn)
    }

    /// The last day before that of `there`, from `first` on, which a turn follows; the day before `first` if there is none.
    #[must_use]
    pub fn previous(&self, there: &mut Moment<'_>, first: Day) -> Day {
        let day = there.day;
        if first >= day {
            return first - 1;
        }
        let almanac = Arc::clone(there.almanac());
        if day == almanac.first {
            return day - 1;
        }
        let end = first.max(almanac.first);
        let mut before = self.works.iter().map(|t| *t - 1).filter(|t| *t < day && *t >= end).max().unwrap_or(end - 1);
        for rule in &self.rules {
            before = almanac.last_turn(*rule, day, before + 1, there).map_or(before, |turn| turn - 1);
        }
        self.of_windows(there, &almanac, &mut |t| {
            if t <= day && t > before + 1 {
                before = t - 1;
            }
        });
        for row in &self.rows {
            before = back(*row, day, before, &almanac, there);
        }
        self.by_reading(there, before, Way::Back).unwrap_or(before)
    }

    fn of_windows(&self, there: &Moment<'_>, almanac: &Almanac, visit: &mut impl FnMut(Day)) {
        for at in &self.windows {
            let Some(rule) = there.book.rules.get(*at as usize) else { continue };
            let moves = there.book.moving.windows.get(*at as usize).copied().unwrap_or(Moves::Never);
            if there.follows(moves) == Moves::Caller {
                window::joined(&rule.windows, there).turns(visit);
                // A window that hangs on the day itself moves with it.
                if rule.windows.iter().any(names_today) {
                    visit(there.day + 1);
                    visit(there.day);
                }
            } else {
                let work_out = || window::joined(&rule.windows, there);
                almanac.windows(*at, work_out).into_iter().for_each(|joined| joined.turns(visit));
            }
        }
    }

    /// Reads the atoms that have no row, day by day, as far as `end`; the day on which one is another.
    fn by_reading(&self, there: &mut Moment<'_>, end: Day, way: Way) -> Option<Day> {
        if self.read.is_empty() {
            return None;
        }
        let day = there.day;
        let said = |at: &Moment<'_>| -> Vec<(Truth, bool)> { self.read.iter().map(|atom| at.atom(*atom)).collect() };
        let now = said(there);
        let mut other = day;
        let found = loop {
            other = if way == Way::Ahead { other + 1 } else { other - 1 };
            if other == end {
                break None;
            }
            there.move_to(other);
            if self.read.iter().zip(&now).any(|(atom, now)| there.atom(*atom) != *now) {
                break Some(other);
            }
        };
        there.move_to(day);
        found
    }
}

/// What makes a term move for this question.
fn of_term(probe: u32, moment: &Moment<'_>) -> Moves {
    moment.follows(moment.book.moving.terms.get(probe as usize).copied().unwrap_or(Moves::Never))
}

/// Whether a term that hangs on what the caller tells stays as it is, or moves only with the works done.
fn stays(term: &Term, question: &Question) -> bool {
    let mut stays = true;
    term.walk(&mut |term| {
        stays &= match term {
            Term::Fact(Fact::PlantAge) => question.planted.is_none(),
            // What nobody told is modelled, and so moves.
            Term::Fact(fact @ (Fact::PlantStage | Fact::PlantInLeaf)) => question.given(*fact).value.is_there(),
            Term::Fact(Fact::PlantStageSince) => {
                question.stage_since.is_some() || question.given(Fact::PlantStage).value.is_there()
            }
            Term::Fact(fact) => fact.entry().giver != Giver::Season,
            Term::Done(..) | Term::Count(..) => true,
            Term::HeatSum { from: at, .. } | Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => {
                marker_stays(&at.marker, question)
            }
            Term::Past(..) | Term::Ahead(..) | Term::FrostAhead(..) => false,
            _ => true,
        };
    });
    stays
}

/// Whether a marker has no day for this question, whatever the day.
fn marker_stays(marker: &MarkerRef, question: &Question) -> bool {
    let no_works = question.history.as_ref().is_none_or(Vec::is_empty);
    match marker {
        MarkerRef::Planted => question.planted.is_none(),
        MarkerRef::Last(_) | MarkerRef::HarvestWait => no_works,
        MarkerRef::Since(sign) => question.signs.get(usize::from(*sign)).is_none_or(|sign| sign.since.is_none()),
        MarkerRef::HeatReached { from, .. } => marker_stays(&from.marker, question),
        MarkerRef::Season(_) | MarkerRef::ChillReached(_) | MarkerRef::Stage(_) | MarkerRef::Today => false,
    }
}

fn names_today(window: &crate::compile::window::Window) -> bool {
    fn is_today(marker: &MarkerRef) -> bool {
        match marker {
            MarkerRef::Today => true,
            MarkerRef::HeatReached { from, .. } => is_today(&from.marker),
            _ => false,
        }
    }
    let sides = [&window.opens, &window.best, &window.closes].into_iter().flatten().flatten();
    sides.map(|at| &at.marker).any(is_today)
}

/// The first day after `day` and before `end` on which an atom says something else; else `end`.
fn ahead(row: (u32, u32), day: Day, end: Day, almanac: &Arc<Almanac>, moment: &Moment<'_>) -> Day {
    let (block, begins) = almanac.block(row, day, moment);
    let at = day - begins;
    let later = u64::MAX.checked_shl(u32::try_from(at + 1).unwrap_or(64)).unwrap_or(0);
    let now = at_bits(block, at);
    let found = against(block, now) & later;
    if found != 0 {
        return end.min(begins + i32::try_from(found.trailing_zeros()).unwrap_or(0));
    }
    let mut begins = begins + super::almanac::BLOCK;
    while begins < end {
        let (block, _) = almanac.block(row, begins, moment);
        let found = against(block, now);
        if found != 0 {
            return end.min(begins + i32::try_from(found.trailing_zeros()).unwrap_or(0));
        }
        begins = begins + super::almanac::BLOCK;
    }
    end
}

/// The last day before `day` and after `end` on which an atom says something else; else `end`.
fn back(row: (u32, u32), day: Day, end: Day, almanac: &Arc<Almanac>, moment: &Moment<'_>) -> Day {
    let (block, begins) = almanac.block(row, day, moment);
    let at = day - begins;
    let now = at_bits(block, at);
    let found = against(block, now) & !u64::MAX.checked_shl(u32::try_from(at).unwrap_or(0)).unwrap_or(0);
    let last = |found: u64, begins: Day| begins + (63 - i32::try_from(found.leading_zeros()).unwrap_or(0));
    if found != 0 {
        return end.max(last(found, begins));
    }
    let mut begins = begins;
    while begins - 1 > end {
        begins = begins - super::almanac::BLOCK;
        let (block, _) = almanac.block(row, begins, moment);
        let found = against(block, now);
        if found != 0 {
            return end.max(last(found, begins));
        }
    }
    end
}

/// What a block says on one of its days.
fn at_bits(block: Block, at: i32) -> [bool; 3] {
    [block.so, block.not, block.curve].map(|bits| bits >> at & 1 == 1)
}

/// The days of a block on which it says something else than this.
fn against(block: Block, [so, not, curve]: [bool; 3]) -> u64 {
    let like = |bits: u64, now: bool| if now { !bits } else { bits };
    like(block.so, so) | like(block.not, not) | like(block.curve, curve)
}

/// The rules that may come out on some day, whatever moves: a rule that what stays makes false is out.
#[must_use]
pub fn candidates(moment: &Moment<'_>) -> Vec<u32> {
    let (book, question): (&PlantBook, &Question) = (moment.book, moment.question);
    let still = |probe: u32| {
        let moves = of_term(probe, moment);
        let term = book.probes.get(probe as usize);
        let no_works = question.history.as_ref().is_none_or(Vec::is_empty);
        let of_works = term.is_some_and(|term| {
            let mut found = false;
            term.walk(&mut |term| found |= matches!(term, Term::Done(..) | Term::Count(..)));
            found
        });
        moves == Moves::Never
            || moves == Moves::Caller && term.is_some_and(|term| stays(term, question)) && (no_works || !of_works)
    };
    let value = |probe: u32| -> Option<Value> { still(probe).then(|| moment.value(probe)) };
    book.sieve.possible_whatever(value).into_iter().filter_map(|at| u32::try_from(at).ok()).collect()
}

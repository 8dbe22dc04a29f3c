//! The almanac: what a year of a climate makes of a plant's windows and tests, worked out once for all who ask.
//!
//! It holds nothing of any caller. Everything in it is worked out when it is first asked for; the climate keeps it.

use std::sync::{Arc, OnceLock};

use lammas_agronomy::calendar::{ClimateDay, Day};

use super::moment::Moment;
use super::read;
use super::window::{self, Joined};
use crate::compile::book::PlantBook;
use crate::compile::moves::{Moves, Row};
use crate::compile::set::Set;
use crate::compile::sieve::set_bits;
use crate::fact::value::{Reading, Truth};

/// Days of a block.
pub const BLOCK: i32 = 64;
/// Blocks of a year.
const BLOCKS: usize = 6;

/// Days of a year, at most.
const DAYS: usize = 366;

/// What a test says on the days of a block, a bit a day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Block {
    /// It is so.
    pub so: u64,
    /// It is not so.
    pub not: u64,
    /// That rests on the curve of the normals, for a fact of the day.
    pub curve: u64,
}

impl Block {
    /// A block before this one after which nothing turns on its first day.
    const fn turned(self) -> Self {
        Self { so: self.so << 63, not: self.not << 63, curve: self.curve << 63 }
    }
}

/// A year of a climate for a plant.
#[derive(Debug)]
pub struct Almanac {
    set: String,
    plant: u16,
    /// The first day of its year.
    pub first: Day,
    /// The last.
    pub last: Day,
    windows: Vec<OnceLock<Joined>>,
    /// For each term that follows the climate and each block, its atoms.
    rows: Vec<OnceLock<Box<[Block]>>>,
    /// For each rule and each block, the days on which something may be another than on the day before.
    turns: Vec<OnceLock<Box<[Day]>>>,
    /// For each day that was asked for, the readings of the terms that follow the climate, and of those that follow the
    /// stage where nobody told it.
    days: Vec<[OnceLock<Box<[Reading]>>; 2]>,
}

impl Almanac {
    /// An empty almanac for the year of a day.
    #[must_use]
    pub fn new(set: &Set, book: &PlantBook, day: Day) -> Self {
        let first = ClimateDay::around(0).in_year(day.year());
        Self {
            set: set.sha256.clone(),
            plant: book.plant,
            first,
            last: ClimateDay::around(0).in_year(day.year() + 1) - 1,
            windows: book.rules.iter().map(|_| OnceLock::new()).collect(),
            rows: (0..book.moving.rows.len() * BLOCKS).map(|_| OnceLock::new()).collect(),
            turns: (0..book.rules.len() * BLOCKS).map(|_| OnceLock::new()).collect(),
            days: (0..DAYS).map(|_| [OnceLock::new(), OnceLock::new()]).collect(),
        }
    }

    /// Whether it is this plant's, of this set, for the year of this day.
    #[must_use]
    pub fn is_for(&self, set: &Set, book: &PlantBook, day: Day) -> bool {
        self.first <= day && day <= self.last && self.plant == book.plant && self.set == set.sha256
    }

    /// The windows of a rule.
    pub fn windows(&self, rule: u32, work_out: impl FnOnce() -> Joined) -> Option<&Joined> {
        self.windows.get(rule as usize).map(|kept| kept.get_or_init(work_out))
    }

    /// The reading on a day of a term that follows the climate, or a stage that nobody told, by its row.
    #[must_use]
    pub fn reading(&self, row: u32, moves: Moves, day: Day, moment: &Moment<'_>) -> Option<Reading> {
        let [climate, stage] = self.days.get(usize::try_from(day - self.first).ok()?)?;
        let kept = if moves == Moves::Climate { climate } else { stage };
        let readings = kept.get_or_init(|| {
            let reading = |row: &Row| {
                let follows = moment.book.moving.terms.get(row.probe as usize).filter(|own| **own == moves);
                let term = follows.and_then(|_| moment.book.probes.get(row.probe as usize));
                term.map_or(Reading::UNKNOWN, |term| read::term(term, moment))
            };
            moment.book.moving.rows.iter().map(reading).collect()
        });
        readings.get(row as usize).copied()
    }

    /// The first day after `day`, before `end` and in this year, on which what a rule hangs on in the climate may turn.
    #[must_use]
    pub fn next_turn(&self, rule: u32, day: Day, end: Day, moment: &Moment<'_>) -> Option<Day> {
        let mut from = day;
        while from < end {
            let (turns, begins) = self.turns(rule, from, moment);
            let found = turns.get(turns.partition_point(|turn| *turn <= day)).copied();
            if found.is_some() {
                return found.filter(|turn| *turn < end);
            }
            from = begins + BLOCK;
        }
        None
    }

    /// The last such day up to `day` and after `end`.
    #[must_use]
    pub fn last_turn(&self, rule: u32, day: Day, end: Day, moment: &Moment<'_>) -> Option<Day> {
        let mut until = day;
        while until > end && until >= self.first {
            let (turns, begins) = self.turns(rule, until, moment);
            let at = turns.partition_point(|turn| *turn <= day);
            if let Some(found) = at.checked_sub(1).and_then(|at| turns.get(at)) {
                return Some(*found).filter(|turn| *turn > end);
            }
            until = begins - 1;
        }
        None
    }

    /// The turns of a rule in the block of a day, and the first day of that block.
    fn turns(&self, rule: u32, day: Day, moment: &Moment<'_>) -> (&[Day], Day) {
        let number = (day - self.first).max(0) / BLOCK;
        let begins = self.first + number * BLOCK;
        let at = rule as usize * BLOCKS + usize::try_from(number).unwrap_or(0);
        let kept = self.turns.get(at).map(|kept| kept.get_or_init(|| self.turns_of(rule, begins, moment)));
        (kept.map(|turns| &**turns).unwrap_or_default(), begins)
    }

    fn turns_of(&self, rule: u32, begins: Day, moment: &Moment<'_>) -> Box<[Day]> {
        let Some(stirs) = moment.book.moving.stirs.get(rule as usize) else { return Box::default() };
        let mut bits = 0_u64;
        for atom in &stirs.atoms {
            let Some(row) = moment.book.moving.row_of.get(*atom as usize).copied().flatten() else { continue };
            let (block, _) = self.block(row, begins, moment);
            let before = if begins > self.first { self.block(row, begins - 1, moment).0 } else { block.turned() };
            let moved = |bits: u64, before: u64| bits ^ (bits << 1 | before >> 63);
            bits |= moved(block.so, before.so) | moved(block.not, before.not) | moved(block.curve, before.curve);
        }
        for at in &stirs.windows {
            let Some(written) = moment.book.rules.get(*at as usize) else { continue };
            let joined = self.windows(*at, || window::joined(&written.windows, moment));
            joined.into_iter().for_each(|joined| {
                joined.turns(&mut |turn| {
                    if turn >= begins && turn < begins + BLOCK {
                        bits |= 1 << (turn - begins);
                    }
                });
            });
        }
        set_bits(&[bits]).filter_map(|at| i32::try_from(at).ok()).map(|at| begins + at).collect()
    }

    /// What an atom that follows the climate says on the days of the block of a day, and the first day of that block.
    #[must_use]
    pub fn block(&self, (row, place): (u32, u32), day: Day, moment: &Moment<'_>) -> (Block, Day) {
        let number = (day - self.first).max(0) / BLOCK;
        let begins = self.first + number * BLOCK;
        let at = row as usize * BLOCKS + usize::try_from(number).unwrap_or(0);
        let kept = self.rows.get(at).map(|kept| kept.get_or_init(|| fill(row, begins, moment)));
        (kept.and_then(|block| block.get(place as usize)).copied().unwrap_or_default(), begins)
    }
}

/// The atoms of a term on the days of a block.
fn fill(row: u32, begins: Day, moment: &Moment<'_>) -> Box<[Block]> {
    let Some(row) = moment.book.moving.rows.get(row as usize) else { return Box::default() };
    let mut blocks = vec![Block::default(); row.atoms.len()];
    let mut there = Moment::new(moment.set, moment.book, moment.question, begins);
    for at in 0..BLOCK {
        there.move_to(begins + at);
        for (block, atom) in blocks.iter_mut().zip(&row.atoms) {
            let (truth, only_curve) = there.atom(*atom);
            let bit = 1 << at;
            match truth {
                Truth::True => block.so |= bit,
                Truth::False => block.not |= bit,
                Truth::Unknown => {}
            }
            if only_curve {
                block.curve |= bit;
            }
        }
    }
    blocks.into_boxed_slice()
}

/// Almanacs that a climate keeps: the oldest goes when there are too many.
#[derive(Debug, Default)]
pub struct Almanacs(std::sync::Mutex<Vec<Arc<Almanac>>>);

impl Almanacs {
    /// How many are kept.
    pub const MOST: usize = 8;

    /// The almanac of a plant for the year of a day.
    #[must_use]
    pub fn get(&self, set: &Set, book: &PlantBook, day: Day) -> Arc<Almanac> {
        let mut kept = self.0.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
        if let Some(found) = kept.iter().find(|almanac| almanac.is_for(set, book, day)) {
            return Arc::clone(found);
        }
        let made = Arc::new(Almanac::new(set, book, day));
        if kept.len() >= Self::MOST {
            kept.remove(0);
        }
        kept.push(Arc::clone(&made));
        made
    }
}

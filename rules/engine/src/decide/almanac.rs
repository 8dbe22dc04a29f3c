//! The almanac: what a year of a climate makes of a plant's windows and tests, worked out once for all who ask.
//!
//! It holds nothing of any caller. Everything in it is worked out when it is first asked for; the climate keeps it.

use std::sync::{Arc, OnceLock};

use lammas_agronomy::calendar::{ClimateDay, Day};

use super::moment::Moment;
use super::read;
use super::window::Joined;
use crate::compile::book::PlantBook;
use crate::compile::moves::Row;
use crate::compile::set::Set;
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
    /// For each day that was asked for, the readings of the terms that follow the climate.
    days: Vec<OnceLock<Box<[Reading]>>>,
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
            days: (0..DAYS).map(|_| OnceLock::new()).collect(),
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

    /// The reading of a term that follows the climate, by its row, on a day.
    #[must_use]
    pub fn reading(&self, row: u32, day: Day, moment: &Moment<'_>) -> Option<Reading> {
        let kept = self.days.get(usize::try_from(day - self.first).ok()?)?;
        let readings = kept.get_or_init(|| {
            let term = |row: &Row| moment.book.probes.get(row.probe as usize);
            let reading = |row: &Row| term(row).map_or(Reading::UNKNOWN, |term| read::term(term, moment));
            moment.book.moving.rows.iter().map(reading).collect()
        });
        readings.get(row as usize).copied()
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

//! The ground on which a set is proven: the reference climates, the days of a year, and what of the plant's terms they settle.

use std::cell::OnceCell;

use lammas_agronomy::calendar::{ClimateDay, Day};

use crate::check::reference::{Place, day, places, question};
use crate::compile::book::PlantBook;
use crate::compile::moves::Moves;
use crate::compile::set::Set;
use crate::compile::term::{MarkerAt, MarkerRef, Term};
use crate::decide::moment::Moment;
use crate::decide::read;
use crate::decide::truth::{Curve, judge};
use crate::decide::window::{self, Joined, State};
use crate::fact::catalogue::{Fact, Giver};
use crate::fact::value::Truth;
use crate::question::Question;

/// Days of the year that is judged.
pub(crate) const DAYS: usize = 365;
/// Every `STRIDE`th place comes next, so that the first few are far apart; it shares no factor with their number.
const STRIDE: usize = 23;

/// A bit a day.
pub(crate) type Days = [u64; 6];

/// Every day of the year.
pub(crate) const ALL_DAYS: Days = [u64::MAX, u64::MAX, u64::MAX, u64::MAX, u64::MAX, (1 << (DAYS - 320)) - 1];

/// The days in both.
#[must_use]
pub(crate) fn both(a: Days, b: Days) -> Days {
    let mut out = a;
    out.iter_mut().zip(b).for_each(|(word, other)| *word &= other);
    out
}

/// The days in either.
#[must_use]
pub(crate) fn either(a: Days, b: Days) -> Days {
    let mut out = a;
    out.iter_mut().zip(b).for_each(|(word, other)| *word |= other);
    out
}

fn put(days: &mut Days, at: usize) {
    if let Some(word) = days.get_mut(at / 64) {
        *word |= 1 << (at % 64);
    }
}

/// What settles a term.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Settled {
    /// The climate's normals and the day, or the plant itself.
    Ground,
    /// The same, unless a daily record or the caller says otherwise.
    Usually,
    /// The caller: any value that it can have.
    Free,
}

/// On which days something is so, and on which it is not; on the others nobody knows.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Row {
    pub(crate) so: Days,
    pub(crate) not: Days,
}

/// One place, as far as it was looked at.
struct Spot {
    place: &'static Place,
    question: Question,
    grown: OnceCell<bool>,
    rows: Vec<OnceCell<Row>>,
    windows: Vec<OnceCell<Row>>,
}

/// The ground for one plant of a set.
pub(crate) struct Ground<'s> {
    pub(crate) set: &'s Set,
    pub(crate) book: &'s PlantBook,
    /// What settles each term.
    pub(crate) settled: Vec<Settled>,
    spots: Vec<Spot>,
}

impl<'s> Ground<'s> {
    /// The ground, nothing of it looked at yet.
    #[must_use]
    pub(crate) fn of(set: &'s Set, book: &'s PlantBook) -> Self {
        let all = places();
        let spots = (0..all.len())
            .filter_map(|at| all.get(at * STRIDE % all.len()))
            .map(|place| Spot {
                place,
                question: question(set, book, place),
                grown: OnceCell::new(),
                rows: book.atoms.iter().map(|_| OnceCell::new()).collect(),
                windows: book.rules.iter().map(|_| OnceCell::new()).collect(),
            })
            .collect();
        Self { set, book, settled: book.probes.iter().map(settled).collect(), spots }
    }

    /// How many places there are.
    #[must_use]
    pub(crate) fn places(&self) -> usize {
        self.spots.len()
    }

    /// A place.
    #[must_use]
    pub(crate) fn place(&self, spot: usize) -> Option<&'static Place> {
        self.spots.get(spot).map(|spot| spot.place)
    }

    /// The day of a bit.
    #[must_use]
    pub(crate) fn day(at: usize) -> Day {
        first() + i32::try_from(at).unwrap_or(0)
    }

    /// Whether the plant is grown at a place.
    #[must_use]
    pub(crate) fn is_grown(&self, spot: usize) -> bool {
        self.spots.get(spot).is_some_and(|spot| {
            *spot.grown.get_or_init(|| {
                let moment = Moment::new(self.set, self.book, &spot.question, day());
                self.book.grown.as_ref().is_none_or(|grown| judge(grown, &moment, Curve::Counts) != Truth::False)
            })
        })
    }

    /// On which days an atom is so at a place.
    #[must_use]
    pub(crate) fn row(&self, spot: usize, atom: u32) -> Row {
        let Some((here, cell)) = self.spots.get(spot).and_then(|s| Some((s, s.rows.get(atom as usize)?))) else {
            return Row::default();
        };
        if let Some(row) = cell.get() {
            return *row;
        }
        self.fill(here, atom);
        cell.get().copied().unwrap_or_default()
    }

    /// Reads the term of an atom on every day, for all its atoms at once.
    fn fill(&self, spot: &Spot, atom: u32) {
        let Some(probe) = self.book.atoms.get(atom as usize).map(|atom| atom.probe) else { return };
        let Some(term) = self.book.probes.get(probe as usize) else { return };
        let own: Vec<usize> =
            self.book.atoms.iter().enumerate().filter(|(_, other)| other.probe == probe).map(|(at, _)| at).collect();
        let mut rows = vec![Row::default(); own.len()];
        let mut moment = Moment::without_memory(self.set, self.book, &spot.question, first());
        for at in 0..DAYS {
            moment.move_to(Self::day(at));
            let value = read::term(term, &moment).value;
            for (row, number) in rows.iter_mut().zip(&own) {
                match self.book.atoms.get(*number).map(|atom| atom.test.of(value)) {
                    Some(Truth::True) => put(&mut row.so, at),
                    Some(Truth::False) => put(&mut row.not, at),
                    Some(Truth::Unknown) | None => {}
                }
            }
        }
        for (row, number) in rows.into_iter().zip(own) {
            if let Some(cell) = spot.rows.get(number) {
                // It is empty, or holds the same.
                let _ = cell.set(row);
            }
        }
    }

    /// What settles the windows of a rule.
    #[must_use]
    pub(crate) fn window_settled(&self, rule: u32) -> Settled {
        match self.book.moving.windows.get(rule as usize) {
            None | Some(Moves::Never | Moves::Climate) => Settled::Ground,
            Some(Moves::Stage) if !self.book.stages.is_empty() => Settled::Usually,
            Some(Moves::Stage | Moves::Caller) => Settled::Free,
        }
    }

    /// The first rule with the same windows: whatever they hang on, they are open on the same days.
    #[must_use]
    pub(crate) fn first_with_window(&self, rule: u32) -> u32 {
        let own = self.book.rules.get(rule as usize).map(|rule| &rule.windows);
        let first = self.book.rules.iter().position(|other| Some(&other.windows) == own);
        first.and_then(|at| u32::try_from(at).ok()).unwrap_or(rule)
    }

    /// On which days the windows of a rule are open at a place.
    #[must_use]
    pub(crate) fn window(&self, spot: usize, rule: u32) -> Row {
        let Some((here, cell)) = self.spots.get(spot).and_then(|s| Some((s, s.windows.get(rule as usize)?))) else {
            return Row::default();
        };
        *cell.get_or_init(|| {
            let Some(written) = self.book.rules.get(rule as usize) else { return Row::default() };
            if written.windows.is_empty() {
                return Row { so: ALL_DAYS, not: Days::default() };
            }
            let moment = Moment::without_memory(self.set, self.book, &here.question, day());
            let joined: Joined = window::joined(&written.windows, &moment);
            let mut row = Row::default();
            for at in 0..DAYS {
                match joined.on(Self::day(at)) {
                    State::AllYear | State::Open(_) => put(&mut row.so, at),
                    State::Closed { .. } => put(&mut row.not, at),
                    State::Unknown => {}
                }
            }
            row
        })
    }
}

fn first() -> Day {
    ClimateDay::around(0).in_year(day().year())
}

/// What settles a term: the freest of what is in it.
fn settled(term: &Term) -> Settled {
    let mut most = Settled::Ground;
    term.walk(&mut |part| {
        most = most.max(match part {
            Term::Fact(fact) => of_fact(*fact),
            Term::Trait(_)
            | Term::Sign(_)
            | Term::Severity(_)
            | Term::Share(_)
            | Term::RegionIs(_)
            | Term::RegionFlag(_)
            | Term::Wants(_)
            | Term::Done(..)
            | Term::Count(..)
            | Term::Ahead(..)
            | Term::FrostAhead(..) => Settled::Free,
            Term::Past(..) => Settled::Usually,
            Term::HeatSum { from, .. } => Settled::Usually.max(of_marker(from)),
            Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => of_marker(at),
            _ => Settled::Ground,
        });
    });
    most
}

fn of_marker(at: &MarkerAt) -> Settled {
    match &at.marker {
        MarkerRef::Season(_) | MarkerRef::Today => Settled::Ground,
        MarkerRef::HeatReached { from, .. } => Settled::Usually.max(of_marker(from)),
        MarkerRef::ChillReached(_) | MarkerRef::Stage(_) => Settled::Usually,
        MarkerRef::Planted | MarkerRef::Last(_) | MarkerRef::Since(_) | MarkerRef::HarvestWait => Settled::Free,
    }
}

fn of_fact(fact: Fact) -> Settled {
    match fact {
        Fact::PlantType | Fact::PlantWaterFactor | Fact::PlantRootDepth | Fact::PlantDepletion => Settled::Ground,
        Fact::Soil10cm | Fact::ChillHours | Fact::ChillPortions | Fact::WaterNeed | Fact::WaterInterval => {
            Settled::Usually
        }
        Fact::WaterDepletion => Settled::Free,
        other => match other.entry().giver {
            Giver::Season | Giver::Plant => Settled::Ground,
            Giver::Caller | Giver::History => Settled::Free,
        },
    }
}

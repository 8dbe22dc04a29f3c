//! A moment: a question on a day, with every term worked out at most once.

use std::cell::{Cell, OnceCell};
use std::sync::Arc;

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::origin::Origin;

use super::almanac::Almanac;
use super::marker_dates::YEARS;
use super::read;
use crate::compile::book::PlantBook;
use crate::compile::moves::Moves;
use crate::compile::set::Set;
use crate::compile::source::Source;
use crate::compile::term::{Atom, Term};
use crate::fact::catalogue::{Entry, Fact};
use crate::fact::value::{Reading, Truth, Value};
use crate::question::Question;

/// A question on a day. The day may be another than the one asked: `look_again` and the validity look ahead.
#[derive(Debug)]
pub struct Moment<'a> {
    /// The set.
    pub set: &'a Set,
    /// The plant's part of it.
    pub book: &'a PlantBook,
    /// The question.
    pub question: &'a Question,
    /// The day.
    pub day: Day,
    years: Cell<Option<[(Day, bool); YEARS]>>,
    readings: Vec<Cell<Option<Reading>>>,
    stage: Cell<Option<Reading>>,
    almanac: OnceCell<Arc<Almanac>>,
    /// Whether the stage is told, so that it does not follow the climate.
    is_stage_told: bool,
    /// Whether this is still the day of the question: what others asked of that day too is not worked out again.
    is_first: bool,
}

impl<'a> Moment<'a> {
    /// The moment of a question.
    #[must_use]
    pub fn new(set: &'a Set, book: &'a PlantBook, question: &'a Question, day: Day) -> Self {
        Self::with_room(set, book, question, day, book.worked)
    }

    fn with_room(set: &'a Set, book: &'a PlantBook, question: &'a Question, day: Day, room: usize) -> Self {
        Self {
            set,
            book,
            question,
            day,
            years: Cell::new(None),
            readings: vec![Cell::new(None); room],
            stage: Cell::new(None),
            almanac: OnceCell::new(),
            is_stage_told: is_stage_told(question),
            is_first: true,
        }
    }

    /// The same without a memory: for who reads one term on many days.
    #[must_use]
    pub fn without_memory(set: &'a Set, book: &'a PlantBook, question: &'a Question, day: Day) -> Self {
        Self::with_room(set, book, question, day, 0)
    }

    /// The same question on another day; the memory is used again.
    pub fn move_to(&mut self, day: Day) {
        if day.year() != self.day.year() {
            self.years.set(None);
            self.almanac = OnceCell::new();
        }
        self.is_first = false;
        self.day = day;
        self.readings.iter().for_each(|cell| cell.set(None));
        self.stage.set(None);
    }

    /// What the year of the day makes of the plant in this climate.
    #[must_use]
    pub fn almanac(&self) -> &Arc<Almanac> {
        self.almanac.get_or_init(|| self.question.climate.almanacs.get(self.set, self.book, self.day))
    }

    /// What makes something move for this question: where the stage is told, it no longer follows the climate.
    #[must_use]
    pub const fn follows(&self, moves: Moves) -> Moves {
        match moves {
            Moves::Stage if self.is_stage_told => Moves::Caller,
            other => other,
        }
    }

    /// The reading of a term that follows the climate.
    fn of_the_climate(&self, probe: u32) -> Option<Reading> {
        let row = self.book.moving.row_of_term.get(probe as usize).copied().flatten().filter(|_| self.is_first)?;
        let moves = self.follows(self.book.moving.terms.get(probe as usize).copied()?);
        if moves == Moves::Caller {
            return None;
        }
        self.almanac().reading(row, moves, self.day, self)
    }

    /// A day of the climate year in each of the years around the day: a marker stands on the same month and day in all of them.
    #[must_use]
    pub fn in_years(&self, day: ClimateDay) -> [Option<Day>; YEARS] {
        let index = i32::from(day.day_of_year()) - 1;
        // From 1 March on a leap year is one day longer.
        let years = self.years.get().unwrap_or_else(|| years(self.day.year()));
        self.years.set(Some(years));
        years.map(|(first, leap)| Some(first + index + i32::from(leap && index > 58)))
    }

    /// What a term of the plant turns out to be, by its number.
    #[must_use]
    pub fn reading(&self, probe: u32) -> Reading {
        match self.book.sources.get(probe as usize) {
            Some(Source::Given(fact)) => self.question.given(*fact),
            Some(Source::Sign(_) | Source::Share(_)) => Reading::new(self.value(probe), Origin::Given),
            Some(Source::Worked(place)) => self.worked(probe, *place),
            None => Reading::UNKNOWN,
        }
    }

    fn worked(&self, probe: u32, place: u32) -> Reading {
        let Some(cell) = self.readings.get(place as usize) else { return Reading::UNKNOWN };
        if let Some(reading) = cell.get() {
            return reading;
        }
        let read = || self.book.probes.get(probe as usize).map_or(Reading::UNKNOWN, |term| read::term(term, self));
        let reading = self.of_the_climate(probe).unwrap_or_else(read);
        cell.set(Some(reading));
        reading
    }

    /// The value alone.
    #[must_use]
    pub fn value(&self, probe: u32) -> Value {
        self.book.sources.get(probe as usize).map_or(Value::Unknown, |source| self.value_at(*source, probe))
    }

    /// The value of a term where it is known already where that stands.
    #[must_use]
    #[inline]
    pub fn value_at(&self, source: Source, probe: u32) -> Value {
        let sign = |number: u16| self.question.signs.get(usize::from(number));
        match source {
            Source::Given(fact) => self.question.given.get(fact as usize).map_or(Value::Unknown, |r| r.value),
            Source::Sign(number) => match sign(number).map(|s| s.seen) {
                None | Some(Truth::Unknown) => Value::Unknown,
                Some(seen) => Value::Truth(seen == Truth::True),
            },
            Source::Share(number) => sign(number).and_then(|s| s.share_pct).map_or(Value::Unknown, Value::Number),
            Source::Worked(place) => self.worked(probe, place).value,
        }
    }

    /// What an atom says.
    #[must_use]
    pub fn truth(&self, number: u32) -> Truth {
        // Not remembered: the test of a value that was read is quicker than room for every atom of the plant.
        self.book.atoms.get(number as usize).map_or(Truth::Unknown, |atom| atom.test.of(self.value(atom.probe)))
    }

    /// What an atom says, and whether that rests on the curve of the normals for a fact of the day.
    #[must_use]
    pub fn atom(&self, number: u32) -> (Truth, bool) {
        let of = |atom: &Atom| self.is_only_the_curve(atom.probe);
        (self.truth(number), self.book.atoms.get(number as usize).is_some_and(of))
    }

    /// Whether a fact of the day is known only from the curve of the normals. In a sum each fact is looked at by itself:
    /// a forecast beside a normal is still a forecast.
    fn is_only_the_curve(&self, probe: u32) -> bool {
        self.book.of_the_day.get(probe as usize).copied().unwrap_or(false)
            && matches!(self.reading(probe).origin, Origin::Computed | Origin::Estimated)
            && (self.is_one_fact(probe)
                || self.any_fact(probe, |term, entry| {
                    entry.of_the_day && matches!(read::term(term, self).origin, Origin::Computed | Origin::Estimated)
                }))
    }

    fn is_one_fact(&self, probe: u32) -> bool {
        self.book.probes.get(probe as usize).is_some_and(|term| term.fact().is_some())
    }

    /// Whether an unknown term wants nothing but facts of the day.
    #[must_use]
    pub fn hangs_on_the_day(&self, probe: u32) -> bool {
        self.any_fact(probe, |_, entry| entry.of_the_day)
            && !self.any_fact(probe, |term, entry| !entry.of_the_day && read::term(term, self).value == Value::Unknown)
    }

    /// Whether a term asks for the region.
    #[must_use]
    pub fn is_region(&self, probe: u32) -> bool {
        matches!(self.book.probes.get(probe as usize), Some(Term::RegionIs(_)))
    }

    /// Whether one of the facts of a term that reads a fact of the day is such.
    fn any_fact(&self, probe: u32, is_such: impl Fn(&Term, &Entry) -> bool) -> bool {
        if !self.book.of_the_day.get(probe as usize).copied().unwrap_or(false) {
            return false;
        }
        let mut found = false;
        if let Some(term) = self.book.probes.get(probe as usize) {
            term.walk(&mut |term| found |= term.fact().is_some_and(|fact| is_such(term, fact.entry())));
        }
        found
    }

    /// The stage of the plant: given, else modelled, else unknown.
    #[must_use]
    pub fn stage(&self) -> Reading {
        if let Some(stage) = self.stage.get() {
            return stage;
        }
        let stage = super::stage::of(self);
        self.stage.set(Some(stage));
        stage
    }
}

/// Whether the caller told the stage, or what else it would be found by.
fn is_stage_told(question: &Question) -> bool {
    let is_told = |fact: Fact| question.given(fact).value.is_there();
    is_told(Fact::PlantStage) || is_told(Fact::PlantInLeaf) || question.stage_since.is_some()
}

/// The first day of each year around this one, and whether it is a leap year.
fn years(year: i32) -> [(Day, bool); YEARS] {
    let mut at = year - 3;
    let mut first = ClimateDay::around(0).in_year(at);
    [(); YEARS].map(|()| {
        at += 1;
        let next = ClimateDay::around(0).in_year(at);
        let year = (first, next - first == 366);
        first = next;
        year
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_of_the_climate_year_stands_in_each_year_where_the_calendar_puts_it() {
        for year in [1900, 1999, 2000, 2023, 2024, 2100, 2200] {
            for (at, (first, leap)) in years(year).into_iter().enumerate() {
                for day in ClimateDay::all() {
                    let index = i32::from(day.day_of_year()) - 1;
                    let expected = day.in_year(year - 3 + i32::try_from(at).unwrap());
                    assert_eq!(first + index + i32::from(leap && index > 58), expected);
                }
            }
        }
    }
}

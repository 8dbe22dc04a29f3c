//! Places where no window of a plant opens for half a year, and whether the plant's notes say why.

use crate::compile::set::Set;
use crate::decide::moment::Moment;
use crate::decide::quiet;
use crate::decide::truth::{Curve, judge};
use crate::fact::value::Truth;
use crate::question::said::{PlantSaid, Said};
use crate::question::understand::understand;
use crate::typical::places::Spot;
use crate::typical::weeks;

/// A long quiet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LongQuiet {
    /// Days without an opening; none: nothing ever opens.
    pub days: Option<i32>,
    /// Why, in the first language of the set; none: nobody has written it.
    pub because: Option<String>,
}

/// The long quiet of a plant at a place where it is grown; none: something opens in time.
#[must_use]
pub fn of(set: &Set, plant: &str, spot: &Spot) -> Option<LongQuiet> {
    let day = weeks::day(1);
    let said = Said {
        plant: PlantSaid { kind: plant.to_owned(), ..PlantSaid::default() },
        date: Some(day.date()),
        ..Said::default()
    };
    let question = understand(&said, set, spot.climate(false), None).ok()?;
    let book = set.plants.get(usize::from(question.plant))?;
    let moment = Moment::new(set, book, &question, day);
    if book.grown.as_ref().is_some_and(|grown| judge(grown, &moment, Curve::Counts) == Truth::False) {
        return None;
    }
    let days = quiet::longest_days(&moment);
    if days.is_some_and(|days| days <= quiet::LONG_DAYS) {
        return None;
    }
    let entry = &set.pack.plants.get(usize::from(book.plant))?.entry;
    let language = set.pack.header.languages.first().map_or("en", String::as_str);
    let note = quiet::because(&moment).and_then(|note| entry.quiet.get(note));
    Some(LongQuiet { days, because: note.map(|note| note.because.get(language).to_owned()) })
}

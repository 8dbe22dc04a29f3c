//! What a moved window does in the reference climates.

use lammas_agronomy::calendar::Day;

use super::window::Moved;
use super::{Kind, Sentence, Words};
use crate::check::{reference_day, reference_places, reference_question};
use crate::compile::book::PlantBook;
use crate::compile::set::Set;
use crate::decide::moment::Moment;
use crate::decide::truth::{Curve, judge};
use crate::decide::window::{Found, Occurrence, occurrences};
use crate::explain::number::plain;
use crate::fact::value::Truth;

/// Two openings or closings farther apart than this are of different years.
const HALF_YEAR: i32 = 182;

/// A year of a window in one place.
enum Year {
    Whole,
    Never,
    Unknown,
    Open(Occurrence),
}

/// Adds to the sentences of sides with other markers what that comes to.
pub(super) fn add(rule: &str, moved: &[Moved], words: Words<'_>, out: &mut [Sentence]) {
    if moved.is_empty() {
        return;
    }
    let Some((before, before_at)) = home(words.before, rule) else { return };
    let Some((after, after_at)) = home(words.after, words.now(rule)) else { return };
    for moved in moved {
        let mut tally = Tally::default();
        for place in reference_places() {
            let was = year(words.before, before, before_at, moved.windows.0, place);
            let is = year(words.after, after, after_at, moved.windows.1, place);
            if let (Some(was), Some(is)) = (was, is) {
                tally.count(&was, &is, moved.kind);
            }
        }
        if let (Some(text), Some(sentence)) = (tally.said(words), out.get_mut(moved.sentence)) {
            sentence.text.push_str(&text);
        }
    }
}

/// The first plant with the rule, and its number among the plant's rules.
fn home<'a>(set: &'a Set, rule: &str) -> Option<(&'a PlantBook, usize)> {
    let number = set.names.rules.wide(rule)?;
    set.plants.iter().find_map(|book| Some((book, book.rules.iter().position(|one| one.rule == number)?)))
}

/// None where the plant is not grown.
fn year(set: &Set, book: &PlantBook, rule: usize, window: usize, place: &crate::check::ReferencePlace) -> Option<Year> {
    let question = reference_question(set, book, place);
    let day = reference_day();
    let moment = Moment::new(set, book, &question, day);
    if book.grown.as_ref().is_some_and(|grown| judge(grown, &moment, Curve::Counts) == Truth::False) {
        return None;
    }
    Some(match occurrences(book.rules.get(rule)?.windows.get(window)?, &moment) {
        Found::AllYear => Year::Whole,
        Found::Unknown => Year::Unknown,
        Found::Some(list) => {
            let near = |occurrence: &&Occurrence| (occurrence.opens - day).abs();
            list.iter().min_by_key(near).map_or(Year::Never, |occurrence| Year::Open(*occurrence))
        }
    })
}

#[derive(Default)]
struct Tally {
    earlier: Vec<i32>,
    later: Vec<i32>,
    same: usize,
    lost: usize,
    gained: usize,
}

impl Tally {
    fn count(&mut self, was: &Year, is: &Year, kind: Kind) {
        match (was, is) {
            (Year::Open(was), Year::Open(is)) => {
                let side = |occurrence: &Occurrence| -> Day {
                    match kind {
                        Kind::OpensMoved => occurrence.opens,
                        Kind::BestMoved => occurrence.best,
                        _ => occurrence.closes,
                    }
                };
                let mut days = side(is) - side(was);
                // Around the turn of the year the nearest occurrence may be the one before or after.
                if days > HALF_YEAR {
                    days -= 365;
                } else if days < -HALF_YEAR {
                    days += 365;
                }
                match days {
                    0 => self.same += 1,
                    days if days < 0 => self.earlier.push(-days),
                    days => self.later.push(days),
                }
            }
            (Year::Never, Year::Open(_) | Year::Whole) => self.gained += 1,
            (Year::Open(_) | Year::Whole, Year::Never) => self.lost += 1,
            (Year::Unknown, _) | (_, Year::Unknown) => {}
            _ => self.same += 1,
        }
    }

    fn said(&self, words: Words<'_>) -> Option<String> {
        let mut said = Vec::new();
        let range = |days: &[i32]| {
            let (least, most) = (days.iter().min().copied()?, days.iter().max().copied()?);
            Some(match least == most {
                true => words.days(f64::from(least)),
                false => words.pick(
                    format!("{} to {}", plain(f64::from(least)), words_days(words, most)),
                    format!("{} a {}", plain(f64::from(least)), words_days(words, most)),
                ),
            })
        };
        if let Some(days) = range(&self.earlier) {
            let n = self.earlier.len();
            said.push(words.pick(format!("{days} earlier in {n}"), format!("{days} antes en {n}")));
        }
        if let Some(days) = range(&self.later) {
            let n = self.later.len();
            said.push(words.pick(format!("{days} later in {n}"), format!("{days} después en {n}")));
        }
        for (n, en, es) in [
            (self.same, "the same in", "igual en"),
            (self.lost, "no longer at all in", "ya nunca en"),
            (self.gained, "for the first time in", "por primera vez en"),
        ] {
            if n > 0 {
                said.push(words.pick(format!("{en} {n}"), format!("{es} {n}")));
            }
        }
        let changes = !(self.earlier.is_empty() && self.later.is_empty() && self.lost == 0 && self.gained == 0);
        (changes || self.same > 0).then(|| {
            let list = said.join(", ");
            words.pick(
                format!(" (of the reference climates: {list})"),
                format!(" (de los climas de referencia: {list})"),
            )
        })
    }
}

/// Days that are not turned into weeks: the other end of a range is in days.
fn words_days(words: Words<'_>, days: i32) -> String {
    words.pick(format!("{days} days"), format!("{days} días"))
}

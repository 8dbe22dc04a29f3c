//! Rules judged by their short form: by what the sieve left and marked.

use super::moment::Moment;
use super::outcome::{Outcome, Verdict};
use super::window::State;
use crate::compile::short::Short;
use crate::compile::sieve::{Mark, Sifted};
use crate::compile::source::Source;
use crate::fact::value::{Reading, Truth, Value};
use crate::rank;

/// What the conditions of the plant's rules leave at the moment.
#[must_use]
pub fn sift<'m>(moment: &'m Moment<'_>) -> Sifted<'m> {
    let question = moment.question;
    let marked = |reading: Reading| (reading.value, Mark::From(reading.origin));
    moment.book.sieve.sift(|source, probe| match source {
        Source::Given(fact) => marked(question.given(fact)),
        Source::Worked(_) => marked(moment.reading(probe)),
        Source::Share(_) => (moment.value_at(source, probe), Mark::None),
        Source::Sign(sign) => match question.signs.get(usize::from(sign)) {
            Some(state) if state.seen == Truth::True => (Value::Truth(true), Mark::Severity(rank::severity_of(state))),
            Some(state) if state.seen == Truth::False => (Value::Truth(false), Mark::None),
            _ => (Value::Unknown, Mark::None),
        },
    })
}

/// The verdict on a rule, by its number among the plant's, that stands alone and is true; `marks` are those of what it read.
pub fn proven(at: usize, short: &Short, marks: impl Iterator<Item = Mark>) -> Verdict {
    let mut severity = 0;
    let mut weakest = None;
    for mark in marks {
        match mark {
            Mark::None => {}
            Mark::From(origin) => weakest = weakest.max(Some(origin)),
            Mark::Severity(part) => severity = severity.max(part),
        }
    }
    Verdict {
        at: u32::try_from(at).unwrap_or(u32::MAX),
        rule: short.rule,
        outcome: Outcome::Applies,
        window: State::AllYear,
        check_first: Vec::new(),
        overdue: false,
        score: rank::sum(short.weights, 0, severity, weakest),
    }
}

//! Rules judged by their short form, as far as that goes.

use lammas_agronomy::origin::Origin;

use super::moment::Moment;
use super::outcome::{Outcome, Verdict};
use super::window::State;
use crate::compile::short::Literal;
use crate::compile::source::Source;
use crate::fact::value::Truth;
use crate::rank;

/// What the short form of a rule says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Judged {
    /// It is not there.
    No,
    /// It applies.
    Applies(Verdict),
    /// It must be judged in full; what its condition says, if that is known already.
    Open(Option<Truth>),
}

/// Judges a rule, by its number among the plant's, by its short form.
#[must_use]
pub fn judge(at: u32, moment: &Moment<'_>) -> Judged {
    let shorts = &moment.book.shorts;
    let Some(short) = shorts.rules.get(at as usize) else { return Judged::Open(None) };
    let literals = short.literals.and_then(|(begin, end)| shorts.literals.get(begin as usize..end as usize));
    let Some(literals) = literals else { return Judged::Open(None) };
    let mut all = Truth::True;
    for literal in literals {
        let truth = literal.test.of(moment.value_at(literal.source, literal.probe));
        all = all.and(if literal.so { truth } else { truth.not() });
        if all == Truth::False {
            return Judged::No;
        }
    }
    if all != Truth::True || !short.stands_alone {
        return Judged::Open(Some(all));
    }
    let severity = literals.iter().filter_map(|literal| severity(literal, moment)).max().unwrap_or(0);
    let weakest = literals.iter().map(|literal| origin(literal, moment)).max();
    Judged::Applies(Verdict {
        at,
        rule: short.rule,
        outcome: Outcome::Applies,
        window: State::AllYear,
        check_first: Vec::new(),
        overdue: false,
        score: rank::sum(short.weights, 0, severity, weakest),
    })
}

fn severity(literal: &Literal, moment: &Moment<'_>) -> Option<u8> {
    let Source::Sign(sign) = literal.source else { return None };
    moment.question.signs.get(usize::from(sign)).filter(|state| state.seen == Truth::True).map(rank::severity_of)
}

fn origin(literal: &Literal, moment: &Moment<'_>) -> Origin {
    match literal.source {
        Source::Given(fact) => moment.question.given.get(fact as usize).map_or(Origin::Given, |reading| reading.origin),
        Source::Sign(_) | Source::Share(_) => Origin::Given,
        Source::Worked(_) => moment.reading(literal.probe).origin,
    }
}

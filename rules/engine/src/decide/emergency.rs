//! Emergencies: someone or something is in danger. One task, who to call, and nothing ranks with it.

use std::cmp::Reverse;

use super::decision::verdict;
use super::moment::Moment;
use super::outcome::{Block, Outcome, Verdict};
use crate::pack::rule::Kind;

/// Lets the foremost emergency stand alone, and returns its rule's number in the set. What else would be done today is
/// held by it, another emergency first of all; what depends and what is only worth saying is left out.
pub fn foremost(verdicts: &mut Vec<Verdict>, moment: &Moment<'_>) -> Option<u32> {
    if moment.book.emergencies.is_empty() {
        return None;
    }
    let applies = |verdict: &&Verdict| is_emergency(verdict, moment) && verdict.outcome == Outcome::Applies;
    let first = verdicts.iter().filter(applies).min_by_key(|verdict| key(verdict, moment))?.rule;
    verdicts.retain_mut(|verdict| {
        let outcome = std::mem::replace(&mut verdict.outcome, Outcome::No);
        let then = if verdict.rule == first { Some(outcome) } else { before(first, verdict.rule, outcome, moment) };
        then.map(|then| verdict.outcome = then).is_some()
    });
    Some(first)
}

/// What becomes of another rule beside the foremost emergency; none: it is left out.
#[must_use]
pub fn before(first: u32, rule: u32, outcome: Outcome, moment: &Moment<'_>) -> Option<Outcome> {
    match outcome {
        Outcome::Applies => {
            let info = moment.set.rules.get(rule as usize)?;
            (info.kind != Kind::Know).then(|| Outcome::Held(vec![Block::Emergency(first)]))
        }
        Outcome::Held(_) => Some(outcome),
        Outcome::Depends { .. } | Outcome::No => None,
    }
}

/// The foremost emergency at a moment, by its rule's number in the set, without judging anything else.
#[must_use]
pub fn first(moment: &Moment<'_>) -> Option<u32> {
    let told = all(moment);
    told.iter().min_by_key(|verdict| key(verdict, moment)).map(|verdict| verdict.rule)
}

/// The emergencies that apply at a moment, without judging anything else.
#[must_use]
pub fn all(moment: &Moment<'_>) -> Vec<Verdict> {
    let judged = moment.book.emergencies.iter().filter_map(|at| verdict(*at, moment));
    judged.filter(|verdict| verdict.outcome == Outcome::Applies).collect()
}

fn is_emergency(verdict: &Verdict, moment: &Moment<'_>) -> bool {
    moment.set.rules.get(verdict.rule as usize).is_some_and(|info| info.emergency)
}

fn key<'a>(verdict: &Verdict, moment: &Moment<'a>) -> (Reverse<u8>, &'a str) {
    let id = moment.set.rules.get(verdict.rule as usize).map_or("", |info| info.id.as_str());
    (Reverse(verdict.score.total), id)
}

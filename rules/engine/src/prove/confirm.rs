//! The last word: a candidate is asked of the engine, as anybody would ask it, before it is told.

use serde_json::Value as Json;

use super::ground::Ground;
use super::proof::Witness;
use super::request::{self, Done};
use super::search::{Case, Found, Search};
use crate::compile::set::Set;
use crate::explain::answer::Answer;
use crate::explain::whole::{self, Extent};
use crate::question::said::Said;
use crate::scenario;

/// The most candidates that are asked for one finding.
const MOST_ASKED: usize = 40;

/// The answer to a request as the public interface gives it, looked at; none: it can't be asked.
pub fn ask<T>(set: &Set, request: &Json, look: impl FnOnce(&Answer<'_>) -> T) -> Option<T> {
    let said: Said = serde_json::from_value(request.clone()).ok()?;
    let question = scenario::question(set, &said).ok()?;
    let extent = Extent { most_depends: usize::MAX, ..Extent::STANDARD };
    whole::answer(set, &question, "en", extent).map(|answer| look(&answer))
}

/// Whether a rule is among the tasks or notes of an answer.
#[must_use]
pub fn is_there(answer: &Answer<'_>, rule: &str) -> bool {
    answer.tasks.iter().any(|task| task.id == rule) || answer.notes.iter().any(|note| note.id == rule)
}

/// Whether a rule is held for one of these reasons, by that rule where it is named.
#[must_use]
pub fn is_held(answer: &Answer<'_>, rule: &str, kinds: &[&str], by: Option<&str>) -> bool {
    answer.held.iter().any(|held| {
        held.id == rule
            && held.blocks.iter().any(|block| kinds.contains(&block.kind) && (by.is_none() || block.rule == by))
    })
}

/// Searches until the engine agrees with a candidate.
#[must_use]
pub(crate) fn witness(
    search: &Search<'_, '_>,
    ground: &Ground<'_>,
    due: &[u32],
    shows: &mut dyn FnMut(&Answer<'_>) -> Option<String>,
) -> (Found, Option<Witness>) {
    let waits = |rule: &u32| {
        let number = ground.book.rules.get(*rule as usize).map(|rule| rule.rule);
        let info = number.and_then(|number| ground.set.rules.get(number as usize));
        info.is_some_and(|info| info.after.iter().any(|(_, days)| *days > 0))
    };
    let histories = if due.iter().any(waits) { &[Done::AsAsked, Done::FirstThings][..] } else { &[Done::AsAsked] };
    let mut asked = 0;
    let mut found: Option<Witness> = None;
    let mut accept = |case: &Case| {
        let days = if case.day(false) == case.day(true) { &[false][..] } else { &[false, true] };
        for (last, done) in days.iter().flat_map(|last| histories.iter().map(move |done| (*last, *done))) {
            if asked >= MOST_ASKED {
                // Enough: the search ends as if it had found something, and nothing is told.
                return true;
            }
            asked += 1;
            let Some(body) = request::of(case, case.day(last), due, done, ground) else { continue };
            if let Some(Some(shown)) = ask(ground.set, &body, |answer| shows(answer)) {
                found = Some(Witness { request: body.to_string(), shows: shown });
                return true;
            }
        }
        false
    };
    let outcome = search.run(&mut accept);
    match (outcome, found) {
        (_, Some(witness)) => (Found::Yes, Some(witness)),
        (Found::Yes, None) => (Found::Undecided, None),
        (other, None) => (other, None),
    }
}

//! What is seen, what is wished, which problems are named.

use lammas_agronomy::calendar::Day;

use super::super::SignState;
use super::super::pointer::Trouble;
use super::super::said::{Said, SignSaid};
use super::facts::number;
use crate::compile::set::Set;
use crate::fact::catalogue::Fact;
use crate::fact::choices::SEVERITY;
use crate::fact::value::Truth;
use crate::pack::word::Seen;

/// The signs: listed ones are seen; with a list given, plain ones that are not listed are not; hidden ones only when the
/// caller looked closely or says so.
pub(super) fn signs(said: &Said, set: &Set, day: Day, troubles: &mut Vec<Trouble>) -> Vec<SignState> {
    let condition = said.condition.as_ref();
    let listed = condition.and_then(|c| c.signs.as_deref());
    let closely = condition.is_some_and(|c| c.looked_closely);
    let mut states: Vec<SignState> = set
        .pack
        .signs
        .iter()
        .map(|sign| SignState {
            // Whoever is in danger says so: nobody else is asked.
            seen: if sign.entry.emergency || (listed.is_some() && (closely || sign.entry.seen == Seen::Plain)) {
                Truth::False
            } else {
                Truth::Unknown
            },
            severity: None,
            share_pct: None,
            since: None,
        })
        .collect();
    for (at, id) in condition.map(|c| c.not_seen.as_slice()).unwrap_or_default().iter().enumerate() {
        match set.names.signs.number(id) {
            Some(sign) => {
                if let Some(state) = states.get_mut(usize::from(sign)) {
                    state.seen = Truth::False;
                }
            }
            None => troubles.push(Trouble::unknown(
                format!("/condition/not_seen/{at}"),
                "sign",
                id,
                set.names.signs.names(),
            )),
        }
    }
    for (at, entry) in listed.unwrap_or_default().iter().enumerate() {
        one(at, entry, set, day, &mut states, troubles);
    }
    states
}

fn one(at: usize, entry: &SignSaid, set: &Set, day: Day, states: &mut [SignState], troubles: &mut Vec<Trouble>) {
    let here = format!("/condition/signs/{at}");
    let severity = entry.severity.as_ref().and_then(|severity| {
        let found = SEVERITY.position(severity);
        if found.is_none() {
            troubles.push(Trouble::unknown(
                format!("{here}/severity"),
                "severity",
                severity,
                SEVERITY.values.iter().copied(),
            ));
        }
        found
    });
    let mut own = Vec::new();
    let share = number(Fact::Share, entry.share_pct, &mut own);
    troubles.extend(own.into_iter().map(|t| Trouble { pointer: format!("{here}/share_pct"), ..t }));
    let since = entry.since.map(Day::from_date);
    if since.is_some_and(|since| since > day) {
        troubles.push(Trouble::new(format!("{here}/since"), "lies after the date asked"));
    }
    if entry.sign.is_empty() {
        troubles.push(Trouble::new(format!("{here}/sign"), "the sign is missing"));
        return;
    }
    let Some(state) = set.names.signs.number(&entry.sign).and_then(|sign| states.get_mut(usize::from(sign))) else {
        troubles.push(Trouble::unknown(format!("{here}/sign"), "sign", &entry.sign, set.names.signs.names()));
        return;
    };
    // Of several entries of one sign the worst counts.
    state.seen = Truth::True;
    state.severity = state.severity.max(severity);
    state.share_pct = match (state.share_pct, share) {
        (Some(a), Some(b)) => Some(a.max(b)),
        (a, b) => a.or(b),
    };
    state.since = match (state.since, since) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    };
}

/// Problems that the caller names.
pub(super) fn problems(said: &Said, set: &Set, troubles: &mut Vec<Trouble>) -> Vec<u16> {
    let list = said.condition.as_ref().map(|c| c.problems.as_slice()).unwrap_or_default();
    ids(list, "/condition/problems", "problem", &set.names.problems, troubles)
}

/// Works of choice.
pub(super) fn wishes(said: &Said, set: &Set, troubles: &mut Vec<Trouble>) -> Vec<u16> {
    ids(&said.wishes, "/wishes", "job", &set.names.jobs, troubles)
}

fn ids(
    list: &[String],
    pointer: &str,
    what: &str,
    index: &crate::compile::names::Index,
    troubles: &mut Vec<Trouble>,
) -> Vec<u16> {
    let mut found: Vec<u16> = Vec::new();
    for (at, id) in list.iter().enumerate() {
        match index.number(id) {
            Some(number) => found.push(number),
            None => troubles.push(Trouble::unknown(format!("{pointer}/{at}"), what, id, index.names())),
        }
    }
    found.sort_unstable();
    found.dedup();
    found
}

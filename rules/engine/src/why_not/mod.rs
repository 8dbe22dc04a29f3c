//! Why is a rule not there, and what would it take?
//!
//! A rule that is asked for is *no*, *held* or *depends*. `obstacle` says which parts stand in its way and which
//! `lever`s of the request move each of them; `values` what a lever can be set to; `search` tries the fewest
//! changes first, by asking the changed question; `days` looks for the day where only that must change, or must change
//! too. [`edit`] is how a change is written: applied here, and handed out as a patch (RFC 6902). Nothing is returned that was not
//! applied to the question and decided anew with every rule of the plant.
//!
//! The climate and the place can't be changed by who asks; where they alone stand in the way, the answer is a day, or never.

pub mod answer;
mod days;
pub mod edit;
mod ground;
mod lever;
mod obstacle;
mod say;
mod search;
mod told;
mod values;

pub use days::FURTHEST;
pub use ground::{Ground, reached};
pub use lever::Lever;
pub use search::{Found, Reach, Way, smallest};
pub use values::Setting;

use answer::{Looked, WhyNot};

use crate::compile::set::Set;
use crate::decide::outcome::Outcome;
use crate::question::Question;
use crate::question::said::Said;

/// The most ways that are told.
const MOST_WAYS: usize = 5;

/// Why a rule, by its id, is not there, and what it would take; none: the set has no such rule.
#[must_use]
pub fn why_not<'a>(
    set: &'a Set,
    said: &Said,
    question: &'a Question,
    rule: &str,
    language: &str,
    reach: Reach,
) -> Option<WhyNot<'a>> {
    let number = set.names.rules.wide(rule)?;
    let Some(ground) = Ground::new(set, said, question, number) else {
        return say::not_for_this_plant(set, question, rule, language);
    };
    let outcome = ground.outcome();
    let mut ways = Vec::new();
    let (mut comes_on, mut complete) = (None, true);
    if !reached(&outcome) {
        let found = smallest(&ground, reach);
        complete = found.complete;
        let proven = |way: &Way| ground.after(&way.edits()).is_some_and(|then| ground.is_there_in_all(&then));
        ways.extend(found.ways.into_iter().filter(proven).map(|way| (None, way)).take(MOST_WAYS));
        comes_on = days::first(&ground);
        if let Some(day) = comes_on {
            // One change; facts of the day asked come before it only where there is one as well.
            let place = ways.iter().take_while(|(_, way)| way.settings.len() <= 1).count();
            ways.insert(place, (Some(day), Way { settings: Vec::new() }));
        }
        if ways.is_empty() {
            ways.extend(days::with_changes(&ground, reach).map(|(day, way)| (Some(day), way)));
        }
    }
    let looked = Looked { most_changes: reach.most_changes, days: FURTHEST, complete };
    say::shown(&ground, question, &outcome, &ways, comes_on, looked, language)
}

/// Every lever that bears on the rule of a ground in any way.
#[must_use]
pub fn levers(ground: &Ground<'_>) -> Vec<Lever> {
    obstacle::all(ground).into_iter().collect()
}

/// What a lever can be set to.
#[must_use]
pub fn settings(lever: &Lever, ground: &Ground<'_>) -> Vec<Setting> {
    values::of(lever, ground)
}

/// What an outcome is called.
#[must_use]
pub const fn outcome_name(outcome: &Outcome) -> &'static str {
    obstacle::name(outcome)
}

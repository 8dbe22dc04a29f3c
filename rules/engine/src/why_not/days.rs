//! When only the day must change, and when the day must change and something else with it.

use lammas_agronomy::calendar::Day;

use super::ground::Ground;
use super::obstacle::{self, Part};
use super::search::{self, Reach, Way};

/// How far ahead it is looked.
pub const FURTHEST: i32 = 400;
/// The most kinds of days that are searched for changes.
const MOST_KINDS: usize = 8;
/// The most facts that are changed together with the day: three changes with it.
const MOST_BESIDE: usize = 2;

/// The first later day, up to 400, on which the rule is there, all else equal.
#[must_use]
pub(super) fn first(ground: &Ground<'_>) -> Option<Day> {
    let today = ground.question.day;
    let mut moment = ground.moment(&ground.question);
    for ahead in 1..=FURTHEST {
        moment.move_to(today + ahead);
        if ground.is_there(&moment) && ground.on(moment.day).is_some_and(|then| then.is_there_in_all(&then.question)) {
            return Some(moment.day);
        }
    }
    None
}

/// The fewest changes on a later day, and the first such day. Of days on which the same things stand in the way the first
/// is looked at.
#[must_use]
pub(super) fn with_changes(ground: &Ground<'_>, reach: Reach) -> Option<(Day, Way)> {
    let today = ground.question.day;
    let mut moment = ground.moment(&ground.question);
    let mut kinds: Vec<(Vec<Part>, Day)> = Vec::new();
    for ahead in 1..=FURTHEST {
        moment.move_to(today + ahead);
        let parts = obstacle::parts(ground, &moment);
        if kinds.len() < MOST_KINDS && !obstacle::is_fixed(&parts) && kinds.iter().all(|(known, _)| *known != parts) {
            kinds.push((parts, moment.day));
        }
    }
    let share = Reach {
        most_changes: reach.most_changes.saturating_sub(1).min(MOST_BESIDE),
        most_tries: reach.most_tries / kinds.len().max(1),
    };
    let mut best: Option<(Day, Way)> = None;
    for (_, day) in kinds {
        let Some(then) = ground.on(day) else { continue };
        for way in search::smallest(&then, share).ways {
            let is_fewer = best.as_ref().is_none_or(|(_, known)| way.settings.len() < known.settings.len());
            if is_fewer && then.after(&way.edits()).is_some_and(|question| then.is_there_in_all(&question)) {
                best = Some((day, way));
            }
        }
    }
    best
}

//! The order of the tasks that apply.

use super::{Band, band};
use crate::decide::moment::Moment;
use crate::decide::outcome::Verdict;

/// Puts tasks in order: protection that can't wait first, then band, score, id; then each behind what must come before it.
pub fn put(tasks: &mut Vec<&Verdict>, moment: &Moment<'_>) {
    let infos = &moment.set.rules;
    let key = |verdict: &Verdict| {
        let info = infos.get(verdict.rule as usize);
        let band = info.map_or(Band::Later, |info| band(info, &verdict.window, moment));
        let protects = info.is_some_and(|info| info.job_kind.protects());
        (
            !(protects && band == Band::Now),
            band,
            std::cmp::Reverse(verdict.score.total),
            info.map_or("", |i| i.id.as_str()),
        )
    };
    tasks.sort_by_cached_key(|verdict| key(verdict));
    // From the top: a task that another, further down, must come before is put directly behind it.
    let mut at = 0;
    let mut moves = 0;
    while at < tasks.len() {
        let Some(task) = tasks.get(at) else { break };
        let firsts = infos.get(task.rule as usize).map(|info| info.after.as_slice()).unwrap_or_default();
        let last_first = tasks.iter().rposition(|other| firsts.iter().any(|(rule, _)| *rule == other.rule));
        match last_first {
            // The lists are acyclic; the count is a guard against a set that is not.
            Some(place) if place > at && moves < tasks.len() * tasks.len() => {
                let task = tasks.remove(at);
                tasks.insert(place, task);
                moves += 1;
            }
            _ => at += 1,
        }
    }
}

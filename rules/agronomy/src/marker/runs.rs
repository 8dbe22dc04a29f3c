//! Runs of days round the year.

use crate::calendar::ClimateDay;

/// Gaps shorter than this are filled, and seasons shorter than this do not count (own choice: a curve
/// that grazes a threshold makes no season).
pub(super) const SHORTEST_DAYS: u16 = 21;

/// A run of days, joined over New Year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Run {
    pub(super) start: ClimateDay,
    pub(super) days: u16,
}

impl Run {
    /// The first day after the run.
    pub(super) fn end(self) -> ClimateDay {
        self.start.plus(self.days.into())
    }
}

/// The runs of days on which `holds` is true, gaps under 21 days filled, by their starting day. A run
/// of 365 days is the whole year.
pub(super) fn runs(holds: impl Fn(ClimateDay) -> bool) -> Vec<Run> {
    let starts = |day: ClimateDay| holds(day) && !holds(day.plus(-1));
    let Some(first) = ClimateDay::all().find(|day| starts(*day)) else {
        let whole = Run { start: ClimateDay::around(0), days: ClimateDay::COUNT };
        return if holds(whole.start) { vec![whole] } else { Vec::new() };
    };

    let mut bare: Vec<Run> = Vec::new();
    let mut inside = false;
    for ahead in 0..i32::from(ClimateDay::COUNT) {
        let day = first.plus(ahead);
        let now = holds(day);
        match bare.last_mut() {
            Some(run) if now && inside => run.days += 1,
            _ if now => bare.push(Run { start: day, days: 1 }),
            _ => {}
        }
        inside = now;
    }
    join(bare)
}

/// Joins runs with less than 21 days between them, also over the turn of the year.
fn join(bare: Vec<Run>) -> Vec<Run> {
    let mut joined: Vec<Run> = Vec::new();
    for run in bare {
        match joined.last_mut() {
            Some(before) if run.start.days_after(before.end()) < SHORTEST_DAYS => {
                before.days += run.start.days_after(before.end()) + run.days;
            }
            _ => joined.push(run),
        }
    }
    let (Some(first), Some(last)) = (joined.first().copied(), joined.last().copied()) else {
        return joined;
    };
    let gap = first.start.days_after(last.end());
    if gap < SHORTEST_DAYS {
        joined.pop();
        if joined.is_empty() {
            // the only run meets itself
            return vec![Run { start: first.start, days: ClimateDay::COUNT }];
        }
        if let Some(front) = joined.first_mut() {
            *front = Run { start: last.start, days: last.days + gap + first.days };
        }
    }
    joined.sort_by_key(|run| run.start);
    joined
}

/// The longest run; the earliest start wins a tie.
pub(super) fn longest(runs: &[Run]) -> Option<Run> {
    runs.iter().copied().reduce(|best, run| if run.days > best.days { run } else { best })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(spans: &[(i32, i32)]) -> Vec<(usize, u16)> {
        runs(|day| spans.iter().any(|(from, to)| (*from..*to).contains(&(day.index() as i32))))
            .into_iter()
            .map(|run| (run.start.index(), run.days))
            .collect()
    }

    #[test]
    fn runs_are_joined_over_new_year() {
        assert_eq!(on(&[(0, 20), (340, 365)]), [(340, 45)]);
        assert_eq!(on(&[(10, 20), (340, 365)]), [(340, 45)]);
        assert_eq!(on(&[(0, 20), (340, 350)]), [(340, 45)]);
    }

    #[test]
    fn gaps_under_21_days_are_filled_and_longer_ones_are_not() {
        assert_eq!(on(&[(100, 110), (130, 150)]), [(100, 50)]);
        assert_eq!(on(&[(100, 110), (131, 150)]), [(100, 10), (131, 19)]);
        assert_eq!(on(&[(10, 355)]), [(10, 365)]);
        assert_eq!(on(&[(11, 355)]), [(11, 344)]);
    }

    #[test]
    fn a_whole_year_and_none_at_all_are_runs_too() {
        assert_eq!(on(&[(0, 365)]), [(0, 365)]);
        assert_eq!(on(&[]), []);
    }

    #[test]
    fn the_longest_run_is_the_earlier_of_two_alike() {
        let start = |index| ClimateDay::around(index);
        let two = [Run { start: start(50), days: 30 }, Run { start: start(200), days: 30 }];
        assert_eq!(longest(&two), Some(two[0]));
    }
}

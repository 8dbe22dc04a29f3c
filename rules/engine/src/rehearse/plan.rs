//! The weeks of a rehearsed year.
//!
//! A work is to be done in the first week in which it is due, and again when its repeat lets it come due while it still is; in
//! the weeks between it merely goes on. Works are put on days one after another: on a day of the week that is worked already
//! if they are due there and keep their distance from what they are kept apart from, else on the first day that does. So the
//! number of separate days is what somebody needs who puts work together where the rules let them. What does not fit into the
//! week for the distance waits, and is tried again in the next.

use lammas_agronomy::calendar::Day;

use super::days::{Before, Stretch};
use crate::compile::set::Set;
use crate::rank::Band;

/// Days of a week.
const WEEK: i32 = 7;

/// A week from the first day of the year that is rehearsed, or what is left of it at its end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Week {
    /// Its first day.
    pub first: Day,
    /// Its last day.
    pub last: Day,
    /// What is to be done, by day.
    pub works: Vec<Work>,
    /// On how many separate days.
    pub separate_days: usize,
    /// Tasks that were begun before and are still due: plant and rule.
    pub going_on: Vec<(usize, u32)>,
    /// What gets in each other's way.
    pub clashes: Vec<Clash>,
}

/// A work that is to be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Work {
    /// The plant, by its place in the basket.
    pub plant: usize,
    /// The rule.
    pub rule: u32,
    /// The day it is put on.
    pub day: Day,
    /// How soon, on the first day on which it is due.
    pub band: Band,
    /// Whether it is done again, as often as its repeat allows.
    pub again: bool,
}

/// A rule that would be due but for another of the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clash {
    /// The plant, by its place in the basket.
    pub plant: usize,
    /// The rule that has to wait.
    pub rule: u32,
    /// The rule that goes before, and the days between.
    pub before: Before,
    /// On how many days of the week.
    pub days: u16,
    /// Whether it found no day in this week.
    pub waits: bool,
}

impl Week {
    /// Whether nothing is due: nothing new, nothing that goes on, nothing that merely waits for another work.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.works.is_empty() && self.going_on.is_empty() && self.clashes.is_empty()
    }
}

/// A task of a week, or a rule that is held by one.
struct Due {
    rule: u32,
    band: Band,
    /// The days on which it may be done.
    days: Vec<Day>,
    before: Option<Before>,
}

/// What was done so far.
struct Done {
    plant: usize,
    rule: u32,
    /// The last day of the last week in which it was due.
    seen: Day,
    days: Vec<Day>,
}

/// The weeks of a year in which each plant has these stretches.
#[must_use]
pub fn weeks(plants: &[Vec<Stretch>], set: &Set) -> Vec<Week> {
    let Some(from) = plants.iter().flatten().map(|stretch| stretch.first).min() else { return Vec::new() };
    let Some(end) = plants.iter().flatten().map(|stretch| stretch.last).max() else { return Vec::new() };
    let mut done: Vec<Done> = Vec::new();
    let pairs: Vec<Vec<Pair>> = plants.iter().map(|year| pairs(year)).collect();
    let mut weeks = Vec::new();
    let mut first = from;
    while first <= end {
        let last = (first + (WEEK - 1)).min(end);
        weeks.push(week(first, last, plants, &pairs, set, &mut done));
        first = last + 1;
    }
    weeks
}

/// Two rules of a plant that hold each other at some time of the year, and the most days between them.
struct Pair {
    rules: [u32; 2],
    days: i32,
}

fn pairs(year: &[Stretch]) -> Vec<Pair> {
    let mut pairs: Vec<Pair> = Vec::new();
    let held = year.iter().flat_map(|stretch| &stretch.decided.held);
    for (rule, before) in held.filter_map(|(rule, before)| Some((*rule, (*before)?))) {
        let rules = [rule.min(before.rule), rule.max(before.rule)];
        match pairs.iter_mut().find(|pair| pair.rules == rules) {
            Some(pair) => pair.days = pair.days.max(before.days),
            None => pairs.push(Pair { rules, days: before.days }),
        }
    }
    pairs
}

fn week(first: Day, last: Day, plants: &[Vec<Stretch>], pairs: &[Vec<Pair>], set: &Set, done: &mut Vec<Done>) -> Week {
    let mut week = Week { first, last, works: Vec::new(), separate_days: 0, going_on: Vec::new(), clashes: Vec::new() };
    let mut worked: Vec<Day> = Vec::new();
    for (plant, year) in plants.iter().enumerate() {
        let pairs = pairs.get(plant).map(Vec::as_slice).unwrap_or_default();
        for due in due(year, first, last) {
            let known = done.iter().position(|d| d.plant == plant && d.rule == due.rule);
            let is_new = known.and_then(|at| done.get(at)).is_none_or(|d| d.days.is_empty() || d.seen < first - 1);
            let history = known.and_then(|at| done.get(at)).map(|d| d.days.as_slice()).unwrap_or_default();
            let open = |day: &Day| is_new || again(due.rule, *day, history, set);
            let free = |day: &Day| keeps_distance(plant, due.rule, *day, pairs, done);
            let fits: Vec<Day> = due.days.iter().copied().filter(|day| open(day) && free(day)).collect();
            let put = fits.iter().find(|day| worked.contains(day)).or(fits.first()).copied();
            match put {
                Some(day) => {
                    week.works.push(Work { plant, rule: due.rule, day, band: due.band, again: !is_new });
                    worked.push(day);
                }
                None if due.before.is_none() => week.going_on.push((plant, due.rule)),
                None => {}
            }
            if let Some(before) = due.before {
                let days = u16::try_from(due.days.len()).unwrap_or(u16::MAX);
                let waits = put.is_none() && due.days.iter().any(open);
                week.clashes.push(Clash { plant, rule: due.rule, before, days, waits });
            }
            remember(done, plant, due.rule, last, put);
        }
    }
    worked.sort_unstable();
    worked.dedup();
    week.separate_days = worked.len();
    week.works.sort_by_key(|work| work.day);
    week
}

/// The tasks of a plant in a week, in the order in which they are first due, then what they hold.
fn due(year: &[Stretch], first: Day, last: Day) -> Vec<Due> {
    let mut tasks: Vec<Due> = Vec::new();
    let mut held: Vec<Due> = Vec::new();
    for stretch in year.iter().filter(|stretch| stretch.first <= last && stretch.last >= first) {
        let (from, to) = (stretch.first.max(first), stretch.last.min(last));
        let days: Vec<Day> = (0..=to - from).map(|day| from + day).collect();
        let add = |list: &mut Vec<Due>, rule: u32, band: Band, before: Option<Before>| match list
            .iter_mut()
            .find(|due| due.rule == rule)
        {
            Some(due) => {
                due.days.extend(&days);
                due.before = longer(due.before, before);
            }
            None => list.push(Due { rule, band, days: days.clone(), before }),
        };
        for (rule, band) in &stretch.decided.tasks {
            add(&mut tasks, *rule, *band, None);
        }
        for (rule, before) in &stretch.decided.held {
            if before.is_some() {
                add(&mut held, *rule, Band::Later, *before);
            }
        }
    }
    // What is free on other days of the week is done then, and needs no distance from what held it on the rest.
    held.retain(|held| !tasks.iter().any(|task| task.rule == held.rule));
    tasks.extend(held);
    tasks
}

fn longer(one: Option<Before>, other: Option<Before>) -> Option<Before> {
    match (one, other) {
        (Some(a), Some(b)) => Some(if b.days > a.days { b } else { a }),
        (a, b) => a.or(b),
    }
}

/// Whether a repeat lets a work be done again on a day.
fn again(rule: u32, day: Day, history: &[Day], set: &Set) -> bool {
    let Some(repeat) = set.rules.get(rule as usize).map(|info| info.repeat) else { return false };
    let Some(((least, _), latest)) = repeat.every.zip(history.iter().max()) else { return false };
    let times = |(_, within): (u16, u16)| history.iter().filter(|done| **done > day - i32::from(within)).count();
    day - *latest >= i32::from(least) && repeat.at_most.is_none_or(|most| times(most) < usize::from(most.0))
}

/// Whether a day is far enough from whatever else was done of the plant.
fn keeps_distance(plant: usize, rule: u32, day: Day, pairs: &[Pair], done: &[Done]) -> bool {
    let others = pairs.iter().filter(|pair| pair.rules.contains(&rule)).filter_map(|pair| {
        let other = pair.rules.iter().find(|other| **other != rule)?;
        Some((done.iter().find(|d| d.plant == plant && d.rule == *other)?, pair.days))
    });
    others.flat_map(|(other, days)| other.days.iter().map(move |done| (*done, days))).all(|(done, days)| {
        let apart = day - done;
        apart.abs() >= days
    })
}

fn remember(done: &mut Vec<Done>, plant: usize, rule: u32, seen: Day, put: Option<Day>) {
    match done.iter_mut().find(|d| d.plant == plant && d.rule == rule) {
        Some(known) => {
            known.seen = seen;
            known.days.extend(put);
        }
        None => done.push(Done { plant, rule, seen, days: put.into_iter().collect() }),
    }
}

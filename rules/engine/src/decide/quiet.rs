//! Where no window of a plant opens for half a year or longer.

use lammas_agronomy::calendar::Day;

use super::moment::Moment;
use super::truth::{Curve, judge};
use super::window::{Found, occurrences};
use crate::fact::value::Truth;
use crate::pack::rule::Kind;

/// So many days without an opening are long: 26 weeks.
pub const LONG_DAYS: i32 = 182;
/// How far it is looked either way.
const YEAR: i32 = 366;

/// Which note of the plant says why it is quiet here; none: none does.
#[must_use]
pub fn because(moment: &Moment<'_>) -> Option<usize> {
    moment.book.quiet.iter().position(|place| judge(place, moment, Curve::Counts) == Truth::True)
}

/// The longest stretch without the opening of a task's window in the years around the day, in days; none: none opens.
#[must_use]
pub fn longest_days(moment: &Moment<'_>) -> Option<i32> {
    let is_work =
        |rule: u32| moment.set.rules.get(rule as usize).is_some_and(|info| info.kind == Kind::Task && !info.emergency);
    let windows = moment.book.rules.iter().filter(|rule| is_work(rule.rule)).flat_map(|rule| &rule.windows);
    let mut opens: Vec<Day> = windows
        .filter_map(|window| match occurrences(window, moment) {
            Found::Some(list) => Some(list),
            Found::AllYear | Found::Unknown => None,
        })
        .flatten()
        .map(|occurrence| occurrence.opens)
        .filter(|day| (*day - moment.day).abs() <= YEAR)
        .collect();
    opens.sort_unstable();
    opens.dedup();
    let first = *opens.first()?;
    let gaps = opens.iter().zip(opens.iter().skip(1)).map(|(one, next)| *next - *one);
    // What opens once a year opens again on the same day.
    let last = *opens.last()?;
    Some(gaps.max().unwrap_or(YEAR).max(YEAR - (last - first)))
}

//! Causes of what is seen: problems of the plant, ranked by their signs.

use super::moment::Moment;
use super::truth::{Curve, judge};
use crate::compile::book::ProblemInfo;
use crate::fact::value::Truth;

/// How likely a cause is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Likelihood {
    /// 5 points or more, and at least 3 ahead of the next.
    Likely,
    /// In between.
    Possible,
    /// Under 3 points.
    Unlikely,
}

/// A problem that the signs may show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cause {
    /// Its number.
    pub problem: u16,
    /// Its points.
    pub points: i32,
    /// How likely it is.
    pub likelihood: Likelihood,
}

fn seen(moment: &Moment<'_>, sign: u16) -> Truth {
    moment.question.signs.get(usize::from(sign)).map_or(Truth::Unknown, |s| s.seen)
}

fn points(problem: &ProblemInfo, moment: &Moment<'_>) -> i32 {
    let signs: i32 = problem
        .signs
        .iter()
        .map(|(sign, yes, no)| match seen(moment, *sign) {
            Truth::True => *yes,
            Truth::False => *no,
            Truth::Unknown => 0,
        })
        .sum();
    let weather: i32 = problem
        .favours
        .iter()
        .map(|condition| match judge(condition, moment, Curve::Counts) {
            Truth::True => 2,
            Truth::False => -2,
            Truth::Unknown => 0,
        })
        .sum();
    signs + weather
}

/// The causes that are shown: at least one leading sign is seen and the sum is positive; by sum, impact, id.
#[must_use]
pub fn rank(moment: &Moment<'_>) -> Vec<Cause> {
    let mut shown: Vec<(&ProblemInfo, i32)> = moment
        .book
        .problems
        .iter()
        .filter(|problem| problem.leading.iter().any(|sign| seen(moment, *sign) == Truth::True))
        .map(|problem| (problem, points(problem, moment)))
        .filter(|(_, points)| *points > 0)
        .collect();
    let id = |problem: &ProblemInfo| moment.set.names.problems.name(problem.problem).to_owned();
    shown.sort_by(|(a, x), (b, y)| y.cmp(x).then(b.impact.cmp(&a.impact)).then_with(|| id(a).cmp(&id(b))));
    shown
        .iter()
        .enumerate()
        .map(|(at, (problem, points))| {
            let next = shown.get(at + 1).map_or(0, |(_, points)| *points);
            let likelihood = if at == 0 && *points >= 5 && points - next >= 3 {
                Likelihood::Likely
            } else if *points < 3 {
                Likelihood::Unlikely
            } else {
                Likelihood::Possible
            };
            Cause { problem: problem.problem, points: *points, likelihood }
        })
        .collect()
}

/// Whether the plant has a problem, as far as a treatment asks: named by the caller or likely; unknown when possible.
#[must_use]
pub fn has(problem: u16, causes: &[Cause], moment: &Moment<'_>) -> Truth {
    if moment.question.problems.contains(&problem) {
        return Truth::True;
    }
    match causes.iter().find(|cause| cause.problem == problem).map(|cause| cause.likelihood) {
        Some(Likelihood::Likely) => Truth::True,
        Some(Likelihood::Possible) => Truth::Unknown,
        Some(Likelihood::Unlikely) | None => Truth::False,
    }
}

/// The sign that would separate the first four causes best: unknown now, the largest difference of points between them.
#[must_use]
pub fn look_next(causes: &[Cause], moment: &Moment<'_>) -> Option<u16> {
    let first: Vec<&ProblemInfo> = causes
        .iter()
        .take(4)
        .filter_map(|cause| moment.book.problems.iter().find(|p| p.problem == cause.problem))
        .collect();
    let mut best: Option<(i32, std::cmp::Reverse<u16>, u16)> = None;
    for (sign, ..) in first.iter().flat_map(|p| &p.signs) {
        if seen(moment, *sign) != Truth::Unknown {
            continue;
        }
        let worth = |p: &&ProblemInfo| p.signs.iter().find(|(s, ..)| s == sign).map_or(0, |(_, yes, no)| yes - no);
        let (most, least) = (first.iter().map(worth).max().unwrap_or(0), first.iter().map(worth).min().unwrap_or(0));
        let hidden = moment
            .set
            .pack
            .signs
            .get(usize::from(*sign))
            .is_some_and(|s| s.entry.seen == crate::pack::word::Seen::Hidden);
        // A close look costs twice a glance.
        let value = (most - least) * if hidden { 1 } else { 2 };
        let key = (value, std::cmp::Reverse(*sign), *sign);
        if value > 0 && best.is_none_or(|b| key > b) {
            best = Some(key);
        }
    }
    best.map(|(_, _, sign)| sign)
}

//! Causes of what is seen: problems of the plant, ranked by their signs.

use super::moment::Moment;
use super::truth::{Curve, judge};
use crate::compile::book::ProblemInfo;
use crate::compile::term::{Condition, Term};
use crate::fact::value::{Truth, Value};

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

/// Whether the weather of the season counts for and against causes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weather {
    /// It does.
    Counts,
    /// Nobody said where the plant stands: only what the caller gave counts.
    IsUnknown,
}

/// What speaks for or against a problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A sign, by its number.
    Sign(u16),
    /// What favours it, by its place in the problem's list.
    Favour(usize),
}

/// Everything that speaks for or against a problem: whether it is so, and the points that it makes.
pub fn marks<'a>(
    problem: &'a ProblemInfo,
    moment: &'a Moment<'_>,
    weather: Weather,
) -> impl Iterator<Item = (Mark, Truth, i32)> + 'a {
    let signs = problem.signs.iter().map(move |(sign, yes, no)| {
        let seen = seen(moment, *sign);
        (Mark::Sign(*sign), seen, weighed(seen, *yes, *no))
    });
    let favours = problem.favours.iter().enumerate().map(move |(place, condition)| {
        let is_so = judge_by(condition, moment, weather);
        (Mark::Favour(place), is_so, weighed(is_so, 2, -2))
    });
    signs.chain(favours)
}

const fn weighed(is_so: Truth, yes: i32, no: i32) -> i32 {
    match is_so {
        Truth::True => yes,
        Truth::False => no,
        Truth::Unknown => 0,
    }
}

fn points(problem: &ProblemInfo, moment: &Moment<'_>, weather: Weather) -> i32 {
    marks(problem, moment, weather).map(|(.., points)| points).sum()
}

/// What a condition says, with the weather or without it.
#[must_use]
pub fn judge_by(condition: &Condition, moment: &Moment<'_>, weather: Weather) -> Truth {
    match weather {
        Weather::Counts => judge(condition, moment, Curve::Counts),
        Weather::IsUnknown => judge_told(condition, moment),
    }
}

/// What a condition says where nothing is known but what the caller gave.
fn judge_told(condition: &Condition, moment: &Moment<'_>) -> Truth {
    match condition {
        Condition::Always => Truth::True,
        Condition::Atom(number) => {
            if is_told(*number, moment) {
                judge(condition, moment, Curve::Counts)
            } else {
                Truth::Unknown
            }
        }
        Condition::And(parts) => parts.iter().fold(Truth::True, |all, part| all.and(judge_told(part, moment))),
        Condition::Or(parts) => parts.iter().fold(Truth::False, |any, part| any.or(judge_told(part, moment))),
        Condition::Not(inner) => judge_told(inner, moment).not(),
    }
}

/// Whether an atom reads nothing but what the caller gives.
fn is_told(atom: u32, moment: &Moment<'_>) -> bool {
    let book = moment.book;
    let Some(term) = book.atoms.get(atom as usize).and_then(|atom| book.probes.get(atom.probe as usize)) else {
        return false;
    };
    let mut told = true;
    term.walk(&mut |part| {
        told &= match part {
            Term::Fact(fact) => moment.question.given(*fact).value != Value::Unknown,
            Term::Past(..) | Term::Ahead(..) | Term::FrostAhead(..) | Term::HeatSum { .. } => false,
            Term::Marker(_) | Term::DaysTo(_) | Term::DaysFrom(_) => false,
            _ => true,
        };
    });
    told
}

/// The causes that are shown: at least one leading sign is seen and the sum is positive; by sum, impact, id.
#[must_use]
pub fn rank(moment: &Moment<'_>) -> Vec<Cause> {
    rank_by(moment, Weather::Counts)
}

/// The same, with the weather or without it.
#[must_use]
pub fn rank_by(moment: &Moment<'_>, weather: Weather) -> Vec<Cause> {
    let mut shown: Vec<(&ProblemInfo, i32)> = moment
        .book
        .problems
        .iter()
        .filter(|problem| problem.leading.iter().any(|sign| seen(moment, *sign) == Truth::True))
        .map(|problem| (problem, points(problem, moment, weather)))
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

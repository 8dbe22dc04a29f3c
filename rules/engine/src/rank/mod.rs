//! Rank: a score of 0 to 100 in whole-number parts, a band, and an order.

pub mod order;

use lammas_agronomy::origin::Origin;
use serde::Serialize;

use crate::compile::rule::{PlantRule, RuleInfo};
use crate::compile::source::Source;
use crate::decide::moment::Moment;
use crate::decide::window::State;
use crate::fact::value::{Truth, Value};
use crate::pack::rule::{Evidence, Strength};
use crate::question::SignState;

/// A score and its parts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Score {
    /// The sum, kept in 0..=100.
    pub total: u8,
    /// Urgency of the rule: 0, 8, 16, 24.
    pub urgency: u8,
    /// Time: closing soon, best day reached, overdue.
    pub time: u8,
    /// Impact if missed: 0, 10, 20, 30.
    pub impact: u8,
    /// The worst severity among the signs that were read true: 0, 7, 13, 20.
    pub severity: u8,
    /// The weakest origin among the facts that were read: 10, 7, 4, 2.
    pub certainty: u8,
    /// Taken off for `consider` and `doubtful`, 10 each.
    pub minus: u8,
}

impl Score {
    /// The certainty where all that was read is given, measured or forecast.
    pub const KNOWN: u8 = 10;
    /// The certainty where something that was read is assumed.
    pub const ASSUMED: u8 = 2;
}

/// How soon.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Band {
    /// Today or tomorrow.
    Now,
    /// Within the week.
    ThisWeek,
    /// Within the month.
    ThisMonth,
    /// Later.
    Later,
}

impl Band {
    /// As it is written in answers.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Now => "now",
            Self::ThisWeek => "this-week",
            Self::ThisMonth => "this-month",
            Self::Later => "later",
        }
    }

    const fn one_later(self) -> Self {
        match self {
            Self::Now => Self::ThisWeek,
            Self::ThisWeek => Self::ThisMonth,
            Self::ThisMonth | Self::Later => Self::Later,
        }
    }
}

fn days_to_closing(window: &State, moment: &Moment<'_>) -> Option<i32> {
    match window {
        State::Open(occurrence) => Some(occurrence.closes - moment.day),
        _ => None,
    }
}

/// The worst severity among the signs that a rule read true, and the weakest origin among the facts that it read and that
/// are known; none if it read none.
fn read_by(rule: &PlantRule, moment: &Moment<'_>) -> (u8, Option<Origin>) {
    let (mut worst, mut weakest) = (0, None);
    for term in &rule.reads_terms {
        if let Some(Source::Sign(sign)) = moment.book.sources.get(*term as usize) {
            match moment.question.signs.get(usize::from(*sign)) {
                Some(state) if state.seen == Truth::True => worst = worst.max(severity_of(state)),
                Some(state) if state.seen == Truth::False => {}
                _ => continue,
            }
            weakest = weakest.max(Some(Origin::Given));
        } else {
            let reading = moment.reading(*term);
            if reading.value != Value::Unknown {
                weakest = weakest.max(Some(reading.origin));
            }
        }
    }
    (worst, weakest)
}

/// The part of a score for a sign that is seen.
#[must_use]
pub fn severity_of(sign: &SignState) -> u8 {
    match sign.severity {
        Some(0) => 7,
        Some(2) => 20,
        _ => 13,
    }
}

/// What the score of a rule begins with, whatever the day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Weights {
    /// Urgency of the rule: 0, 8, 16, 24.
    pub urgency: u8,
    /// Impact if missed: 0, 10, 20, 30.
    pub impact: u8,
    /// Taken off for `consider` and `doubtful`, 10 each.
    pub minus: u8,
}

impl Weights {
    /// The weights of a rule.
    #[must_use]
    pub fn of(info: &RuleInfo) -> Self {
        let minus = if info.strength == Strength::Consider { 10 } else { 0 }
            + if info.evidence == Evidence::Doubtful { 10 } else { 0 };
        Self { urgency: 8 * info.urgency, impact: 10 * info.impact, minus }
    }
}

/// The score that these parts make; `weakest` is the weakest origin among the facts that were read.
#[must_use]
pub fn sum(weights: Weights, time: u8, severity: u8, weakest: Option<Origin>) -> Score {
    let Weights { urgency, impact, minus } = weights;
    let certainty = match weakest {
        None | Some(Origin::Given | Origin::Measured | Origin::Forecast) => Score::KNOWN,
        Some(Origin::Computed) => 7,
        Some(Origin::Estimated) => 4,
        Some(Origin::Assumed) => Score::ASSUMED,
    };
    let sum = urgency + time + impact + severity + certainty;
    Score { total: sum.saturating_sub(minus).min(100), urgency, time, impact, severity, certainty, minus }
}

/// The score of a rule.
#[must_use]
pub fn score(rule: &PlantRule, info: &RuleInfo, window: &State, overdue: bool, moment: &Moment<'_>) -> Score {
    let closing = match days_to_closing(window, moment) {
        Some(..=3) => 16,
        Some(4..=7) => 12,
        Some(8..=14) => 9,
        Some(15..=28) => 5,
        _ => 0,
    };
    let best = match window {
        State::Open(occurrence) if moment.day >= occurrence.best => 6,
        _ => 0,
    };
    let time = closing.max(best).max(if overdue { 16 } else { 0 });
    let (severity, weakest) = read_by(rule, moment);
    sum(Weights::of(info), time, severity, weakest)
}

/// The band of a rule.
#[must_use]
pub fn band(info: &RuleInfo, window: &State, moment: &Moment<'_>) -> Band {
    let closing = days_to_closing(window, moment).unwrap_or(i32::MAX);
    let band = if info.urgency >= 3 || closing <= 2 {
        Band::Now
    } else if info.urgency == 2 || closing <= 9 {
        Band::ThisWeek
    } else if info.urgency == 1 || closing <= 34 {
        Band::ThisMonth
    } else {
        Band::Later
    };
    match window {
        State::Open(occurrence) if moment.day < occurrence.best && closing > 21 => band.one_later(),
        _ => band,
    }
}

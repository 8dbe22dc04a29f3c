//! What may be expected after a work: dates, reckoned like a marker, never a promise.

use lammas_agronomy::calendar::Day;

use super::answer::ExpectShown;
use super::phrases::RulePhrases;
use crate::compile::rule::{After, RuleInfo};
use crate::decide::moment::Moment;

/// Base of the heat sums of expectations, °C: the same as of the heat that is left.
const BASE_C: f64 = 5.0;

/// The expectations of a rule, counted from the day.
#[must_use]
pub fn of<'a>(info: &RuleInfo, phrases: &'a RulePhrases, moment: &Moment<'_>) -> Vec<ExpectShown<'a>> {
    info.expect
        .iter()
        .zip(&phrases.expect)
        .map(|((_, after), (what, name))| {
            let (from, until) = match after {
                After::Days(least, most) => (Some(moment.day + i32::from(*least)), Some(moment.day + i32::from(*most))),
                After::Heat(least, most) => {
                    let reached = |sum: f64| moment.question.climate.heat_reached(sum, BASE_C, moment.day);
                    (reached(*least), reached(*most))
                }
            };
            ExpectShown { what, name, from: from.map(Day::date), until: until.map(Day::date) }
        })
        .collect()
}

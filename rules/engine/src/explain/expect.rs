//! What may be expected after a work: dates, reckoned like a marker, never a promise.

use lammas_agronomy::calendar::Day;

use super::answer::ExpectShown;
use crate::compile::rule::{After, RuleInfo};
use crate::decide::moment::Moment;

/// Base of the heat sums of expectations, °C: the same as of the heat that is left.
const BASE_C: f64 = 5.0;

/// The expectations of a rule, counted from the day.
#[must_use]
pub fn of(info: &RuleInfo, moment: &Moment<'_>, language: &str) -> Vec<ExpectShown> {
    info.expect
        .iter()
        .filter_map(|(what, after)| {
            let outlook = moment.set.pack.outlooks.get(usize::from(*what))?;
            let (from, until) = match after {
                After::Days(least, most) => (Some(moment.day + i32::from(*least)), Some(moment.day + i32::from(*most))),
                After::Heat(least, most) => {
                    let reached = |sum: f64| moment.question.climate.heat_reached(sum, BASE_C, moment.day);
                    (reached(*least), reached(*most))
                }
            };
            Some(ExpectShown {
                what: outlook.entry.id.value.clone(),
                name: outlook.entry.name.get(language).to_owned(),
                from: from.map(Day::date),
                until: until.map(Day::date),
            })
        })
        .collect()
}

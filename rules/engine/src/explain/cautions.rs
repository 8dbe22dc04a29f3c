//! Cautions: those of the rule and of its materials, left out only where the caller said that there is nothing to protect.

use super::answer::CautionShown;
use crate::compile::rule::RuleInfo;
use crate::decide::moment::Moment;
use crate::decide::truth::{Curve, judge};
use crate::fact::value::Truth;

/// The cautions of a rule.
#[must_use]
pub fn of(info: &RuleInfo, moment: &Moment<'_>, language: &str) -> Vec<CautionShown> {
    info.cautions
        .iter()
        .filter(|number| !is_settled(**number, moment))
        .filter_map(|number| moment.set.pack.cautions.get(usize::from(*number)))
        .map(|caution| CautionShown {
            id: caution.entry.id.value.clone(),
            kind: caution.entry.kind,
            text: caution.entry.text.get(language).to_owned(),
        })
        .collect()
}

/// Whether its `unless` is known to be true.
fn is_settled(number: u16, moment: &Moment<'_>) -> bool {
    moment
        .book
        .cautions
        .iter()
        .find(|(caution, _)| *caution == number)
        .is_some_and(|(_, unless)| judge(unless, moment, Curve::Counts) == Truth::True)
}

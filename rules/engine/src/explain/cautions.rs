//! Cautions: those of the rule and of its materials, left out only where the caller said that there is nothing to protect.

use super::answer::CautionShown;
use super::phrases::RulePhrases;
use super::rendered::Rendered;
use crate::decide::moment::Moment;
use crate::decide::truth::{Curve, judge};
use crate::fact::value::Truth;

/// The cautions of a rule.
#[must_use]
pub fn of<'a>(phrases: &'a RulePhrases, moment: &Moment<'_>) -> Vec<&'a Rendered<CautionShown>> {
    phrases.cautions.iter().filter(|(number, _)| !is_settled(*number, moment)).map(|(_, caution)| caution).collect()
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

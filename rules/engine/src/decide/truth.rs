//! Conditions in three values.

use super::moment::Moment;
use crate::compile::term::Condition;
use crate::fact::value::Truth;

/// How facts of the day that are known only from the curve count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Curve {
    /// As they are.
    Counts,
    /// As if nobody knew.
    IsUnknown,
}

/// What a condition says.
#[must_use]
pub fn judge(condition: &Condition, moment: &Moment<'_>, curve: Curve) -> Truth {
    match condition {
        Condition::Always => Truth::True,
        Condition::Atom(number) => {
            if curve == Curve::Counts {
                return moment.truth(*number);
            }
            let (truth, only_curve) = moment.atom(*number);
            if only_curve { Truth::Unknown } else { truth }
        }
        Condition::And(parts) => {
            let mut all = Truth::True;
            for part in parts {
                all = all.and(judge(part, moment, curve));
                if all == Truth::False {
                    break;
                }
            }
            all
        }
        Condition::Or(parts) => {
            let mut any = Truth::False;
            for part in parts {
                any = any.or(judge(part, moment, curve));
                if any == Truth::True {
                    break;
                }
            }
            any
        }
        Condition::Not(inner) => judge(inner, moment, curve).not(),
    }
}

/// The atoms on which an unknown condition hangs: those that are unknown in parts that are unknown.
pub fn unknown_atoms(condition: &Condition, moment: &Moment<'_>, curve: Curve, visit: &mut impl FnMut(u32)) {
    if judge(condition, moment, curve) == Truth::Unknown {
        unknown_in(condition, moment, curve, visit);
    }
}

/// The same of a condition that is known to be unknown.
pub fn unknown_in(condition: &Condition, moment: &Moment<'_>, curve: Curve, visit: &mut impl FnMut(u32)) {
    match condition {
        Condition::Always => {}
        Condition::Atom(number) => visit(*number),
        Condition::And(parts) | Condition::Or(parts) => {
            for part in parts {
                unknown_atoms(part, moment, curve, visit);
            }
        }
        Condition::Not(inner) => unknown_in(inner, moment, curve, visit),
    }
}

/// The atoms that are known and bear on what a condition says: those of the parts that agree with the whole.
pub fn deciding_atoms(condition: &Condition, moment: &Moment<'_>, visit: &mut impl FnMut(u32)) {
    deciding(condition, judge(condition, moment, Curve::Counts), moment, visit);
}

/// The same of a condition that is known to be true.
pub fn atoms_of_true(condition: &Condition, moment: &Moment<'_>, visit: &mut impl FnMut(u32)) {
    deciding(condition, Truth::True, moment, visit);
}

/// The same where it is known what the condition says.
fn deciding(condition: &Condition, whole: Truth, moment: &Moment<'_>, visit: &mut impl FnMut(u32)) {
    match condition {
        Condition::Always => {}
        Condition::Atom(number) => {
            if whole != Truth::Unknown {
                visit(*number);
            }
        }
        // All parts of what is true agree with it, and of an `or` all that is false.
        Condition::And(parts) if whole == Truth::True => {
            for part in parts {
                deciding(part, whole, moment, visit);
            }
        }
        Condition::Or(parts) if whole == Truth::False => {
            for part in parts {
                deciding(part, whole, moment, visit);
            }
        }
        Condition::And(parts) | Condition::Or(parts) => {
            for part in parts {
                if judge(part, moment, Curve::Counts) == whole {
                    deciding(part, whole, moment, visit);
                }
            }
        }
        Condition::Not(inner) => deciding(inner, whole.not(), moment, visit),
    }
}

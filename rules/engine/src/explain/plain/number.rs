//! Literals with their unit.

use super::Plain;
use crate::explain::number::{plain, shown, to_us};
use crate::lang::ast::Literal;

/// `4 weeks`, `30 °C (86 °F)`.
pub(super) fn of(literal: &Literal, at: &Plain<'_>) -> String {
    let number = plain(literal.value);
    let Some(unit) = unit(literal, at) else { return number };
    match to_us(literal.value, &literal.unit) {
        Some((value, us)) => {
            let us = crate::explain::number::unit_words(us);
            format!("{number} {unit} ({} {us})", plain(shown(value)))
        }
        None => format!("{number} {unit}"),
    }
}

/// The unit as people write it; none where there is none.
fn unit<'a>(literal: &'a Literal, at: &Plain<'_>) -> Option<&'a str> {
    let one = (literal.value.abs() - 1.0).abs() < 1e-9;
    let many = |one_en, en, one_es, es| if one { at.pick(one_en, one_es) } else { at.pick(en, es) };
    Some(match literal.unit.as_str() {
        "" => return None,
        "h" => many("hour", "hours", "hora", "horas"),
        "day" | "days" => many("day", "days", "día", "días"),
        "week" | "weeks" => many("week", "weeks", "semana", "semanas"),
        "year" | "years" => many("year", "years", "año", "años"),
        "mm/day" => at.pick("mm a day", "mm al día"),
        other => other,
    })
}

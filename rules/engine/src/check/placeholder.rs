//! What stands in braces in a text: a fact that the rule reads, or a number that is shown in the reader's units.

use crate::lang::ast::{Expr, ExprKind};
use crate::lang::{parse, print};
use crate::unit::Unit;

/// One pair of braces in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Placeholder<'t> {
    /// A number with a unit: `36 °C`.
    Number(&'t str),
    /// Anything else that reads as a sum, and its one printed form.
    Fact(&'t str, String),
    /// What can't be read, and why.
    Unreadable(&'t str, String),
    /// A brace that has no partner.
    Lone(&'t str),
}

/// Every pair of braces of a text, in order.
#[must_use]
pub(super) fn all(text: &str) -> Vec<Placeholder<'_>> {
    let mut out = Vec::new();
    let mut rest = text;
    while let Some(open) = rest.find(['{', '}']) {
        let Some(from) = rest.get(open..) else { break };
        let inner = from.strip_prefix('{').and_then(|after| after.find(['{', '}']).map(|end| (after, end)));
        match inner {
            Some((after, end)) if after.get(end..).is_some_and(|tail| tail.starts_with('}')) => {
                out.push(read(after.get(..end).unwrap_or_default()));
                rest = after.get(end + 1..).unwrap_or_default();
            }
            _ => {
                out.push(Placeholder::Lone(from.get(..1).unwrap_or_default()));
                rest = from.get(1..).unwrap_or_default();
            }
        }
    }
    out
}

fn read(inner: &str) -> Placeholder<'_> {
    match parse::sum(inner) {
        Err(fault) => Placeholder::Unreadable(inner, fault.message),
        Ok(expr) => match number(&expr) {
            Some(unit) if Unit::find(unit).is_none() => Placeholder::Unreadable(inner, format!("`{unit}` is no unit")),
            Some(_) => Placeholder::Number(inner),
            None => Placeholder::Fact(inner, print::expr(&expr)),
        },
    }
}

/// The unit of a plain number, negative or not.
fn number(expr: &Expr) -> Option<&str> {
    match &expr.kind {
        ExprKind::Number(literal) => Some(&literal.unit),
        ExprKind::Negative(inner) => number(inner),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn braces_hold_numbers_facts_or_nothing_that_can_be_read() {
        use Placeholder::{Fact, Lone, Number, Unreadable};
        assert_eq!(all("over {36 °C} or {-2 °C}"), [Number("36 °C"), Number("-2 °C")]);
        assert_eq!(
            all("{ mean(tmax,7 days) } and {soil.ph}"),
            [Fact(" mean(tmax,7 days) ", "mean(tmax, 7 days)".to_owned()), Fact("soil.ph", "soil.ph".to_owned())]
        );
        assert_eq!(all("{}"), [Unreadable("", "the expression is empty".to_owned())]);
        assert_eq!(all("{3 turnips}"), [Unreadable("3 turnips", "`turnips` is no unit".to_owned())]);
        assert_eq!(all("a } b {soil.ph"), [Lone("}"), Lone("{")]);
        assert_eq!(all("{a {b}"), [Lone("{"), Fact("b", "b".to_owned())]);
        assert_eq!(all("nothing"), []);
    }
}

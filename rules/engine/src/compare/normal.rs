//! One form for each meaning of an expression, so far as that is cheap to see; and implications that are certain.
//!
//! Parts of `and` and `or` are flattened, sorted and said once (three-valued *and* and *or* are commutative, associative and
//! idempotent); `in` is an *or* of equalities; a number on the left goes to the right; literals are in the base unit of
//! what they measure. Nothing is ever negated: `not (a < b)` is not `a >= b`.

use crate::lang::ast::{Argument, Comparison, Expr, ExprKind, Literal, MarkerExpr, Span};
use crate::lang::{parse, print};
use crate::unit::{UNITS, Unit};

/// A condition in its normal form.
#[must_use]
pub fn condition(expr: &Expr) -> Expr {
    let kind = match &expr.kind {
        ExprKind::Or(parts) => joined(parts, true),
        ExprKind::And(parts) => joined(parts, false),
        ExprKind::Not(inner) => match condition(inner).kind {
            ExprKind::Not(twice) => return *twice,
            kind => ExprKind::Not(boxed(kind)),
        },
        ExprKind::Compare(left, comparison, right) => {
            let (left, right) = (condition(left), condition(right));
            match (&left.kind, &right.kind) {
                (ExprKind::Number(_), other) if !matches!(other, ExprKind::Number(_)) => {
                    ExprKind::Compare(Box::new(right), comparison.turned(), Box::new(left))
                }
                _ => ExprKind::Compare(Box::new(left), *comparison, Box::new(right)),
            }
        }
        ExprKind::In(left, items) => {
            let each: Vec<Expr> = items
                .iter()
                .map(|item| bare(ExprKind::Compare(left.clone(), Comparison::Equal, Box::new(item.clone()))))
                .collect();
            joined(&each, true)
        }
        ExprKind::SignsHas(sign, _) => ExprKind::SignsHas(sign.clone(), Span::default()),
        ExprKind::IsAbsent(inner) => ExprKind::IsAbsent(Box::new(condition(inner))),
        ExprKind::Number(literal) => ExprKind::Number(self::literal(literal)),
        ExprKind::Path(path) => ExprKind::Path(path.clone()),
        ExprKind::Call(name, arguments) => ExprKind::Call(name.clone(), arguments.iter().map(argument).collect()),
        ExprKind::Add(a, b) => ExprKind::Add(Box::new(condition(a)), Box::new(condition(b))),
        ExprKind::Subtract(a, b) => ExprKind::Subtract(Box::new(condition(a)), Box::new(condition(b))),
        ExprKind::Times(a, by) => ExprKind::Times(Box::new(condition(a)), *by),
        ExprKind::Over(a, by) => ExprKind::Over(Box::new(condition(a)), *by),
        ExprKind::Negative(inner) => match &inner.kind {
            ExprKind::Number(number) => {
                ExprKind::Number(literal(&Literal { value: -number.value, unit: number.unit.clone() }))
            }
            _ => ExprKind::Negative(Box::new(condition(inner))),
        },
    };
    bare(kind)
}

fn bare(kind: ExprKind) -> Expr {
    Expr { span: Span::default(), kind }
}

fn boxed(kind: ExprKind) -> Box<Expr> {
    Box::new(bare(kind))
}

fn joined(parts: &[Expr], any: bool) -> ExprKind {
    let mut flat = Vec::new();
    for part in parts {
        match (condition(part), any) {
            (Expr { kind: ExprKind::Or(inner), .. }, true) | (Expr { kind: ExprKind::And(inner), .. }, false) => {
                flat.extend(inner);
            }
            (part, _) => flat.push(part),
        }
    }
    flat.sort_by_cached_key(print::expr);
    flat.dedup_by(|a, b| a == b);
    match (flat.pop(), flat.is_empty()) {
        (Some(only), true) => only.kind,
        (last, _) => {
            flat.extend(last);
            if any { ExprKind::Or(flat) } else { ExprKind::And(flat) }
        }
    }
}

fn argument(argument: &Argument) -> Argument {
    match argument {
        Argument::Value(value) => Argument::Value(condition(value)),
        Argument::From(marker) => Argument::From(self::marker(marker)),
        Argument::Within(within, _) => Argument::Within(literal(within), Span::default()),
    }
}

fn marker(written: &MarkerExpr) -> MarkerExpr {
    MarkerExpr {
        span: Span::default(),
        marker: Box::new(condition(&written.marker)),
        offset: written
            .offset
            .as_ref()
            .map(|(offset, _)| (literal(offset), Span::default()))
            .filter(|(offset, _)| offset.value != 0.0),
    }
}

/// A literal in the base unit of what it measures, to nine places.
#[must_use]
pub fn literal(written: &Literal) -> Literal {
    let unit = Unit::find(&written.unit);
    let base = unit.and_then(|unit| UNITS.iter().find(|base| base.dimension == unit.dimension));
    match (unit, base) {
        (Some(unit), Some(base)) => {
            Literal { value: (unit.convert(written.value, base) * 1e9).round() / 1e9, unit: base.symbol.to_owned() }
        }
        _ => written.clone(),
    }
}

/// The text of a condition in its normal form; the text itself where it can't be read.
#[must_use]
pub fn text(written: &str) -> String {
    parse::condition(written).map_or_else(|_| written.to_owned(), |expr| print::expr(&condition(&expr)))
}

/// The markers of a side with their offsets in days.
#[must_use]
pub fn side(written: &str) -> Vec<(String, f64)> {
    let Ok(side) = parse::side(written) else { return vec![(written.to_owned(), 0.0)] };
    let one = |choice: &MarkerExpr| {
        let normal = marker(choice);
        (print::expr(&normal.marker), normal.offset.map_or(0.0, |(offset, _)| offset.value))
    };
    side.choices.iter().map(one).collect()
}

/// A value of any field: a side, a condition, a number with its unit, or a word.
#[must_use]
pub fn value(written: &str) -> String {
    match parse::sum(written) {
        Ok(sum) => print::expr(&condition(&sum)),
        Err(_) if parse::side(written).is_ok() => {
            side(written).iter().map(|(marker, days)| format!("{marker} {days}")).collect::<Vec<_>>().join(" else ")
        }
        Err(_) => match parse::after(written) {
            Ok(after) => {
                let of = |value| print::literal(&literal(&Literal { value, unit: after.unit.clone() }));
                format!("{}..{}", of(after.from), of(after.to))
            }
            Err(_) => text(written),
        },
    }
}

/// Whether one condition, in its normal form, is certain to imply another: wherever the first is true, so is the second.
/// No condition is always true.
#[must_use]
pub fn implies(first: Option<&Expr>, second: Option<&Expr>) -> bool {
    match (first, second) {
        (_, None) => true,
        (None, Some(_)) => false,
        (Some(first), Some(second)) => certain(first, second),
    }
}

fn certain(first: &Expr, second: &Expr) -> bool {
    if first == second {
        return true;
    }
    match (&first.kind, &second.kind) {
        (_, ExprKind::And(parts)) => parts.iter().all(|part| certain(first, part)),
        (ExprKind::Or(parts), _) => parts.iter().all(|part| certain(part, second)),
        (ExprKind::And(parts), _) if parts.iter().any(|part| certain(part, second)) => true,
        (_, ExprKind::Or(parts)) => parts.iter().any(|part| certain(first, part)),
        (ExprKind::Compare(a, one, x), ExprKind::Compare(b, other, y)) if a == b => match (&x.kind, &y.kind) {
            (ExprKind::Number(x), ExprKind::Number(y)) if x.unit == y.unit => bounded(*one, x.value, *other, y.value),
            _ => false,
        },
        _ => false,
    }
}

/// Whether `t one x` implies `t other y`.
fn bounded(one: Comparison, x: f64, other: Comparison, y: f64) -> bool {
    use Comparison::{AtLeast, AtMost, Equal, Less, More, Unequal};
    match (one, other) {
        (Less, Less | AtMost) | (AtMost, AtMost) => x <= y,
        (AtMost | Equal, Less) => x < y,
        (More, More | AtLeast) | (AtLeast, AtLeast) => x >= y,
        (AtLeast | Equal, More) => x > y,
        (Equal, AtMost) => x <= y,
        (Equal, AtLeast) => x >= y,
        (Equal, Unequal) => x.total_cmp(&y).is_ne(),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(written: &str) -> Expr {
        condition(&parse::condition(written).unwrap())
    }

    #[test]
    fn one_meaning_has_one_form() {
        for (one, other) in [
            ("tmax > 30 °C and site.mulched", "site.mulched and tmax > 86 °F"),
            ("weeks_to(first_frost.median) < 8 weeks", "56 days > weeks_to(first_frost.median)"),
            ("plant.stage in {bloom, flush}", "plant.stage = flush or plant.stage = bloom"),
            ("(site.mulched and tmax > 30 °C) and (rain > 1 mm)", "site.mulched and tmax > 30 °C and rain > 1 mm"),
            ("not (not site.mulched)", "site.mulched"),
            ("frost_ahead(28 °F, 1 week)", "frost_ahead(-2.222222222 °C, 7 days)"),
        ] {
            assert_eq!(print::expr(&of(one)), print::expr(&of(other)), "{one}");
        }
        for (one, other) in [
            ("not (tmax > 30 °C)", "tmax <= 30 °C"),
            ("site.mulched and tmax > 30 °C", "site.mulched or tmax > 30 °C"),
            ("plant.stage != bloom", "not (plant.stage = bloom)"),
        ] {
            assert_ne!(print::expr(&of(one)), print::expr(&of(other)), "{one}");
        }
    }

    #[test]
    fn what_is_certain_is_seen_and_nothing_else() {
        for (first, second, so) in [
            ("tmax > 35 °C", "tmax > 30 °C", true),
            ("tmax > 30 °C", "tmax >= 30 °C", true),
            ("tmax >= 30 °C", "tmax > 30 °C", false),
            ("tmax > 30 °C", "tmin > 20 °C", false),
            ("tmax > 35 °C and site.mulched", "tmax > 30 °C", true),
            ("tmax > 35 °C", "tmax > 30 °C or site.mulched", true),
            ("tmax > 35 °C or site.mulched", "tmax > 30 °C", false),
            ("signs has aphids", "signs has aphids or signs has mites", true),
            ("not (tmax > 30 °C)", "tmax <= 30 °C", false),
        ] {
            assert_eq!(implies(Some(&of(first)), Some(&of(second))), so, "{first} => {second}");
        }
        assert!(implies(Some(&of("site.mulched")), None) && !implies(None, Some(&of("site.mulched"))));
    }
}

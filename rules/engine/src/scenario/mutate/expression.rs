//! Conditions with one change.

use super::Operator::{self, *};
use super::literal::steps;
use crate::lang::ast::{Argument, Comparison, Expr, ExprKind};

/// A condition and what was done to it.
pub(super) type Variant = (Operator, Expr);

/// Every condition that is this one with one change; the whole of it is never dropped here.
pub(super) fn variants(expr: &Expr) -> Vec<Variant> {
    match &expr.kind {
        ExprKind::And(parts) => {
            let mut out = listed(parts, &ExprKind::And, PartDropped);
            out.push((AndOrExchanged, of(expr, ExprKind::Or(parts.clone()))));
            out
        }
        ExprKind::Or(parts) => {
            let mut out = listed(parts, &ExprKind::Or, AlternativeDropped);
            out.push((AndOrExchanged, of(expr, ExprKind::And(parts.clone()))));
            out
        }
        ExprKind::Not(inner) => {
            let within = variants(inner).into_iter();
            let mut out: Vec<Variant> =
                within.map(|(operator, inner)| (operator, of(expr, ExprKind::Not(Box::new(inner))))).collect();
            out.push((NegationDropped, (**inner).clone()));
            out
        }
        ExprKind::Compare(left, comparison, right) => {
            let rebuilt = |left: Expr, comparison, right: Expr| {
                of(expr, ExprKind::Compare(Box::new(left), comparison, Box::new(right)))
            };
            let mut out = vec![(ComparisonTurned, rebuilt((**left).clone(), turned(*comparison), (**right).clone()))];
            for (operator, left) in numbers(left) {
                out.push((operator, rebuilt(left, *comparison, (**right).clone())));
            }
            for (operator, right) in numbers(right) {
                out.push((operator, rebuilt((**left).clone(), *comparison, right)));
            }
            out
        }
        ExprKind::In(left, items) if items.len() > 1 => {
            let without = |at: usize| {
                let left_over =
                    items.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, item)| item.clone());
                (AlternativeDropped, of(expr, ExprKind::In(left.clone(), left_over.collect())))
            };
            (0..items.len()).map(without).collect()
        }
        ExprKind::Call(..) => numbers(expr),
        _ => Vec::new(),
    }
}

fn of(expr: &Expr, kind: ExprKind) -> Expr {
    Expr { span: expr.span, kind }
}

fn listed(parts: &[Expr], join: &dyn Fn(Vec<Expr>) -> ExprKind, dropped: Operator) -> Vec<Variant> {
    let mut out = Vec::new();
    for (at, part) in parts.iter().enumerate() {
        let is_sign = matches!(part.kind, ExprKind::SignsHas(..));
        let mut others: Vec<Expr> =
            parts.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, part)| part.clone()).collect();
        let left_over = match (others.len(), others.pop()) {
            (1, Some(only)) => only,
            (_, last) => {
                others.extend(last);
                of(part, join(others))
            }
        };
        out.push((if is_sign { SignDropped } else { dropped }, left_over));
        for (operator, part) in variants(part) {
            let mut parts = parts.to_vec();
            if let Some(slot) = parts.get_mut(at) {
                *slot = part;
            }
            let span = parts.first().map(|part| part.span).unwrap_or_default();
            out.push((operator, Expr { span, kind: join(parts) }));
        }
    }
    out
}

const fn turned(comparison: Comparison) -> Comparison {
    match comparison {
        Comparison::Equal => Comparison::Unequal,
        Comparison::Unequal => Comparison::Equal,
        Comparison::Less => Comparison::More,
        Comparison::AtMost => Comparison::AtLeast,
        Comparison::More => Comparison::Less,
        Comparison::AtLeast => Comparison::AtMost,
    }
}

/// A sum with one of its numbers moved. Of the arguments of calls those count that are thresholds by themselves: the days
/// within which something was done, the temperature of a frost ahead.
fn numbers(expr: &Expr) -> Vec<Variant> {
    let again = |inner: &Expr, rebuild: &dyn Fn(Box<Expr>) -> ExprKind| -> Vec<Variant> {
        numbers(inner).into_iter().map(|(operator, inner)| (operator, of(expr, rebuild(Box::new(inner))))).collect()
    };
    match &expr.kind {
        ExprKind::Number(number) => {
            let [lower, higher] = steps(number);
            let moved = [(ThresholdLowered, lower), (ThresholdRaised, higher)];
            moved.into_iter().map(|(operator, number)| (operator, of(expr, ExprKind::Number(number)))).collect()
        }
        ExprKind::Negative(inner) => again(inner, &ExprKind::Negative),
        ExprKind::Times(inner, by) => again(inner, &|inner| ExprKind::Times(inner, *by)),
        ExprKind::Over(inner, by) => again(inner, &|inner| ExprKind::Over(inner, *by)),
        ExprKind::Add(a, b) => {
            let mut out = again(a, &|a| ExprKind::Add(a, b.clone()));
            out.extend(again(b, &|b| ExprKind::Add(a.clone(), b)));
            out
        }
        ExprKind::Subtract(a, b) => {
            let mut out = again(a, &|a| ExprKind::Subtract(a, b.clone()));
            out.extend(again(b, &|b| ExprKind::Subtract(a.clone(), b)));
            out
        }
        ExprKind::Call(name, arguments) => {
            let mut out = Vec::new();
            for (at, argument) in arguments.iter().enumerate() {
                let moved: Vec<(Operator, Argument)> = match argument {
                    Argument::Within(within, span) => {
                        let [lower, higher] = steps(within);
                        vec![
                            (ThresholdLowered, Argument::Within(lower, *span)),
                            (ThresholdRaised, Argument::Within(higher, *span)),
                        ]
                    }
                    Argument::Value(value) if name == "frost_ahead" && at == 0 => {
                        numbers(value).into_iter().map(|(operator, value)| (operator, Argument::Value(value))).collect()
                    }
                    _ => Vec::new(),
                };
                for (operator, argument) in moved {
                    let mut arguments = arguments.clone();
                    if let Some(slot) = arguments.get_mut(at) {
                        *slot = argument;
                    }
                    out.push((operator, of(expr, ExprKind::Call(name.clone(), arguments))));
                }
            }
            out
        }
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lang::{parse, print};

    #[test]
    fn every_change_is_one_change() {
        let whole = parse::condition("signs has aphids and (tmax > 30 °C or not done(oil, within 14 days))").unwrap();
        let made: Vec<(Operator, String)> =
            variants(&whole).iter().map(|(operator, expr)| (*operator, print::expr(expr))).collect();
        let expected = [
            (SignDropped, "tmax > 30 °C or not done(oil, within 14 days)"),
            (PartDropped, "signs has aphids"),
            (AlternativeDropped, "signs has aphids and not done(oil, within 14 days)"),
            (ComparisonTurned, "signs has aphids and (tmax < 30 °C or not done(oil, within 14 days))"),
            (ThresholdLowered, "signs has aphids and (tmax > 28 °C or not done(oil, within 14 days))"),
            (ThresholdRaised, "signs has aphids and (tmax > 32 °C or not done(oil, within 14 days))"),
            (AlternativeDropped, "signs has aphids and tmax > 30 °C"),
            (ThresholdLowered, "signs has aphids and (tmax > 30 °C or not done(oil, within 10 days))"),
            (ThresholdRaised, "signs has aphids and (tmax > 30 °C or not done(oil, within 18 days))"),
            (NegationDropped, "signs has aphids and (tmax > 30 °C or done(oil, within 14 days))"),
            (AndOrExchanged, "signs has aphids and (tmax > 30 °C and not done(oil, within 14 days))"),
            (AndOrExchanged, "signs has aphids or (tmax > 30 °C or not done(oil, within 14 days))"),
        ];
        let expected: Vec<(Operator, String)> = expected.iter().map(|(o, text)| (*o, (*text).to_owned())).collect();
        assert_eq!(made, expected);
    }
}

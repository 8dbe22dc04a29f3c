//! What a rule reads, in the printed form of expressions: its texts may quote these and nothing else.

use std::collections::BTreeSet;

use crate::lang::ast::{Argument, Expr, ExprKind, MarkerExpr};
use crate::lang::{parse, print};
use crate::pack::rule::RuleEntry;

/// Every fact, marker and sum of facts in the rule's conditions, windows and amounts.
#[must_use]
pub(super) fn read_by(rule: &RuleEntry) -> BTreeSet<String> {
    let mut out = BTreeSet::new();
    let conditions = rule.whom.traits.iter().chain(&rule.when).chain(rule.hold.iter().map(|hold| &hold.condition));
    for condition in conditions {
        if let Ok(expr) = parse::condition(condition.text()) {
            walk(&expr, &mut out);
        }
    }
    for window in &rule.window.0 {
        for side in [&window.opens, &window.best, &window.closes].into_iter().flatten() {
            if let Ok(side) = parse::side(&side.value) {
                side.choices.iter().for_each(|choice| marker(choice, &mut out));
            }
        }
    }
    for input in rule.amount.iter().flat_map(|amount| amount.inputs.values()) {
        if let Ok(expr) = parse::sum(&input.value) {
            walk(&expr, &mut out);
        }
    }
    out
}

fn marker(of: &MarkerExpr, out: &mut BTreeSet<String>) {
    out.insert(print::marker(of));
    walk(&of.marker, out);
}

fn walk(expr: &Expr, out: &mut BTreeSet<String>) {
    match &expr.kind {
        ExprKind::Or(parts) | ExprKind::And(parts) => parts.iter().for_each(|part| walk(part, out)),
        ExprKind::Not(inner) | ExprKind::IsAbsent(inner) | ExprKind::Negative(inner) => walk(inner, out),
        // The right side of a comparison may be a choice: a word that is no fact. It does no harm here.
        ExprKind::Compare(left, _, right) => {
            walk(left, out);
            walk(right, out);
        }
        ExprKind::In(left, _) => walk(left, out),
        ExprKind::SignsHas(..) | ExprKind::Number(_) => {}
        ExprKind::Path(path) => {
            out.insert(path.clone());
        }
        ExprKind::Call(_, arguments) => {
            out.insert(print::expr(expr));
            for argument in arguments {
                if let Argument::From(from) = argument {
                    marker(from, out);
                }
                // `weeks_to(first_frost.median)` reads the marker as well.
                if let Argument::Value(inner @ Expr { kind: ExprKind::Path(path), .. }) = argument
                    && path.contains('.')
                {
                    walk(inner, out);
                }
            }
        }
        ExprKind::Add(left, right) | ExprKind::Subtract(left, right) => {
            out.insert(print::expr(expr));
            walk(left, out);
            walk(right, out);
        }
        ExprKind::Times(left, _) | ExprKind::Over(left, _) => {
            out.insert(print::expr(expr));
            walk(left, out);
        }
    }
}

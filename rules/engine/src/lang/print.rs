//! A tree back into text: one way to write each expression, so that equal conditions are equal texts.

use std::fmt::Write as _;

use super::ast::{Argument, Expr, ExprKind, Literal, MarkerExpr};

/// The expression in its one printed form.
#[must_use]
pub fn expr(e: &Expr) -> String {
    let mut out = String::new();
    write(e, 0, &mut out);
    out
}

/// A number with its unit.
#[must_use]
pub fn literal(l: &Literal) -> String {
    if l.unit.is_empty() { format!("{}", l.value) } else { format!("{} {}", l.value, l.unit) }
}

fn strength(kind: &ExprKind) -> u8 {
    match kind {
        ExprKind::Or(_) => 1,
        ExprKind::And(_) => 2,
        ExprKind::Not(_) => 3,
        ExprKind::Compare(..) | ExprKind::In(..) | ExprKind::IsAbsent(_) | ExprKind::SignsHas(..) => 4,
        ExprKind::Add(..) | ExprKind::Subtract(..) => 5,
        ExprKind::Times(..) | ExprKind::Over(..) => 6,
        _ => 7,
    }
}

fn write(e: &Expr, at_least: u8, out: &mut String) {
    let own = strength(&e.kind);
    if own < at_least {
        out.push('(');
        write(e, 0, out);
        out.push(')');
        return;
    }
    match &e.kind {
        ExprKind::Or(parts) => list(parts, " or ", 3, out),
        ExprKind::And(parts) => list(parts, " and ", 3, out),
        ExprKind::Not(inner) => {
            out.push_str("not ");
            write(inner, 4, out);
        }
        ExprKind::Compare(left, comparison, right) => {
            write(left, 5, out);
            let _ = write!(out, " {} ", comparison.symbol());
            write(right, 5, out);
        }
        ExprKind::In(left, items) => {
            write(left, 5, out);
            out.push_str(" in {");
            list(items, ", ", 7, out);
            out.push('}');
        }
        ExprKind::SignsHas(sign, _) => {
            let _ = write!(out, "signs has {sign}");
        }
        ExprKind::IsAbsent(inner) => {
            write(inner, 5, out);
            out.push_str(" is absent");
        }
        ExprKind::Number(number) => out.push_str(&literal(number)),
        ExprKind::Path(path) => out.push_str(path),
        ExprKind::Call(path, arguments) => {
            let _ = write!(out, "{path}(");
            for (i, argument) in arguments.iter().enumerate() {
                if i > 0 {
                    out.push_str(", ");
                }
                match argument {
                    Argument::Value(value) => write(value, 5, out),
                    Argument::From(marker) => {
                        let _ = write!(out, "from {}", self::marker(marker));
                    }
                    Argument::Within(number, _) => {
                        let _ = write!(out, "within {}", literal(number));
                    }
                }
            }
            out.push(')');
        }
        ExprKind::Add(left, right) => pair(left, " + ", right, out),
        ExprKind::Subtract(left, right) => pair(left, " - ", right, out),
        ExprKind::Times(left, number) => {
            write(left, 6, out);
            let _ = write!(out, " * {number}");
        }
        ExprKind::Over(left, number) => {
            write(left, 6, out);
            let _ = write!(out, " / {number}");
        }
        ExprKind::Negative(inner) => {
            out.push('-');
            write(inner, 7, out);
        }
    }
}

fn pair(left: &Expr, join: &str, right: &Expr, out: &mut String) {
    write(left, 5, out);
    out.push_str(join);
    write(right, 6, out);
}

fn list(parts: &[Expr], join: &str, at_least: u8, out: &mut String) {
    for (i, part) in parts.iter().enumerate() {
        if i > 0 {
            out.push_str(join);
        }
        write(part, at_least, out);
    }
}

/// `M ± duration`.
#[must_use]
pub fn marker(m: &MarkerExpr) -> String {
    let mut out = expr(&m.marker);
    if let Some((offset, _)) = &m.offset {
        let sign = if offset.value < 0.0 { '-' } else { '+' };
        let _ = write!(out, " {sign} {}", literal(&Literal { value: offset.value.abs(), unit: offset.unit.clone() }));
    }
    out
}

//! Conditions: the parsed tree, three values, what was read, and what is missing.

use lammas_agronomy::origin::Origin;
use lammas_engine::fact::value::Truth;
use lammas_engine::lang::ast::{Comparison, Expr, ExprKind};
use lammas_engine::unit::Unit;

use super::value::{self, Read, Value};
use super::world::World;

/// Whether a fact of the day counts that is known only from the curve of the normals.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Curve {
    Counts,
    IsUnknown,
}

/// Where names mean something: in `where`, traits have short names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Names {
    Short,
    Full,
}

fn three(truth: Option<bool>) -> Truth {
    truth.map_or(Truth::Unknown, |yes| if yes { Truth::True } else { Truth::False })
}

impl World<'_> {
    pub(crate) fn truth(&self, expr: &Expr, names: Names, curve: Curve) -> Truth {
        match &expr.kind {
            ExprKind::Or(parts) => {
                let truths: Vec<Truth> = parts.iter().map(|part| self.truth(part, names, curve)).collect();
                if truths.contains(&Truth::True) {
                    Truth::True
                } else if truths.contains(&Truth::Unknown) {
                    Truth::Unknown
                } else {
                    Truth::False
                }
            }
            ExprKind::And(parts) => {
                let truths: Vec<Truth> = parts.iter().map(|part| self.truth(part, names, curve)).collect();
                if truths.contains(&Truth::False) {
                    Truth::False
                } else if truths.contains(&Truth::Unknown) {
                    Truth::Unknown
                } else {
                    Truth::True
                }
            }
            ExprKind::Not(inner) => match self.truth(inner, names, curve) {
                Truth::True => Truth::False,
                Truth::False => Truth::True,
                Truth::Unknown => Truth::Unknown,
            },
            _ => self.leaf(expr, names, curve).0,
        }
    }

    /// A part that is joined by nothing: its truth, and the facts that it looks at.
    fn leaf(&self, expr: &Expr, names: Names, curve: Curve) -> (Truth, Vec<Read>) {
        let mut reads = Vec::new();
        let mut sum = |expr: &Expr| self.sum(expr, names, curve, &mut reads);
        let truth = match &expr.kind {
            ExprKind::Compare(left, comparison, right) => {
                let (left, right) = (sum(left), sum(right));
                three(value::compare(&left, *comparison, &right))
            }
            ExprKind::In(left, items) => {
                let left = sum(left);
                match left {
                    Value::Unknown => Truth::Unknown,
                    Value::Absent => Truth::False,
                    _ => three(Some(items.iter().any(|item| {
                        let item = self.sum(item, names, curve, &mut Vec::new());
                        value::compare(&left, Comparison::Equal, &item) == Some(true)
                    }))),
                }
            }
            ExprKind::IsAbsent(inner) => match sum(inner) {
                Value::Unknown => Truth::Unknown,
                Value::Absent => Truth::True,
                _ => Truth::False,
            },
            ExprKind::SignsHas(sign, _) => {
                let read = self.sign(sign);
                let truth = match read.0 {
                    Value::Yes(yes) => three(Some(yes)),
                    _ => Truth::Unknown,
                };
                reads.push(read.1);
                truth
            }
            ExprKind::Path(_) | ExprKind::Call(..) => match sum(expr) {
                Value::Yes(yes) => three(Some(yes)),
                Value::Unknown => Truth::Unknown,
                Value::Absent => Truth::False,
                other => panic!("{other:?} is no truth"),
            },
            other => panic!("{other:?} is no condition"),
        };
        // A region may be known, and yet too coarsely.
        if truth == Truth::Unknown && reads.iter().all(|read| read.known) {
            reads.iter_mut().for_each(|read| read.known = false);
        }
        (truth, reads)
    }

    fn sum(&self, expr: &Expr, names: Names, curve: Curve, reads: &mut Vec<Read>) -> Value {
        match &expr.kind {
            ExprKind::Number(literal) => Value::of(literal.value, &literal.unit),
            ExprKind::Negative(inner) => match &inner.kind {
                ExprKind::Number(literal) => Value::of(-literal.value, &literal.unit),
                other => panic!("a minus before {other:?}"),
            },
            ExprKind::Add(a, b) => {
                let (a, b) = (self.sum(a, names, curve, reads), self.sum(b, names, curve, reads));
                value::add(&a, &b, 1.0)
            }
            ExprKind::Subtract(a, b) => {
                let (a, b) = (self.sum(a, names, curve, reads), self.sum(b, names, curve, reads));
                value::add(&a, &b, -1.0)
            }
            ExprKind::Times(a, factor) => scaled(self.sum(a, names, curve, reads), *factor),
            ExprKind::Over(a, divisor) => scaled(self.sum(a, names, curve, reads), 1.0 / divisor),
            ExprKind::Path(name) => match self.path(name, names) {
                Some(found) => looked_at(found, curve, reads),
                None => Value::Word(name.clone()),
            },
            ExprKind::Call(name, arguments) => {
                let (value, mut read) = self.call(name, arguments);
                // With its arguments, so that it can be seen what it was asked about.
                read.written = lammas_engine::lang::print::expr(expr);
                looked_at((value, read), curve, reads)
            }
            other => panic!("{other:?} is no sum"),
        }
    }

    /// Every fact that is named anywhere in the condition.
    pub(crate) fn reads(&self, expr: &Expr, names: Names, out: &mut Vec<Read>) {
        match &expr.kind {
            ExprKind::Or(parts) | ExprKind::And(parts) => parts.iter().for_each(|part| self.reads(part, names, out)),
            ExprKind::Not(inner) => self.reads(inner, names, out),
            _ => out.extend(self.leaf(expr, names, Curve::Counts).1),
        }
    }

    /// The facts for want of which the condition is unknown.
    pub(crate) fn missing(&self, expr: &Expr, names: Names, curve: Curve, out: &mut Vec<Read>) {
        if self.truth(expr, names, curve) != Truth::Unknown {
            return;
        }
        match &expr.kind {
            ExprKind::Or(parts) | ExprKind::And(parts) => {
                parts.iter().for_each(|part| self.missing(part, names, curve, out));
            }
            ExprKind::Not(inner) => self.missing(inner, names, curve, out),
            _ => out.extend(self.leaf(expr, names, curve).1.into_iter().filter(|read| !read.known)),
        }
    }
}

/// Notes a fact as read. A fact of the day that only the curve knows may count as unknown.
fn looked_at((value, mut read): (Value, Read), curve: Curve, reads: &mut Vec<Read>) -> Value {
    let only_the_curve = read.of_the_day && matches!(read.origin, Origin::Computed | Origin::Estimated);
    let value = if only_the_curve && curve == Curve::IsUnknown { Value::Unknown } else { value };
    read.known = value != Value::Unknown;
    reads.push(read);
    value
}

fn scaled(value: Value, factor: f64) -> Value {
    match value {
        Value::Number(number, dimension) => Value::Number(number * factor, dimension),
        same => same,
    }
}

/// A duration in whole days.
pub(crate) fn days(literal: &lammas_engine::lang::ast::Literal) -> i32 {
    value::whole(value::base(literal.value, Unit::find(&literal.unit).unwrap()))
}

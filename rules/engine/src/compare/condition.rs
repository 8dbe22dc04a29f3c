//! Conditions: narrower, wider or other, and which part of them.

use super::{Kind, Sentence, Words, normal};
use crate::explain::plain::Plain;
use crate::lang::ast::{Expr, ExprKind};
use crate::lang::{parse, print};
use crate::pack::Expression;

/// How two conditions stand to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Relation {
    Same,
    Narrower,
    Wider,
    Other,
}

/// A condition as written, with its normal form.
#[derive(Clone, Debug)]
pub(super) struct Read {
    pub(super) written: Expr,
    pub(super) normal: Expr,
}

/// Reads a condition; none: there is none, or it can't be read, which a compiled set does not have.
pub(super) fn read(written: Option<&Expression>) -> Option<Read> {
    let written = parse::condition(written?.text()).ok()?;
    Some(Read { normal: normal::condition(&written), written })
}

pub(super) fn relation(before: Option<&Read>, after: Option<&Read>) -> Relation {
    let (b, a) = (before.map(|read| &read.normal), after.map(|read| &read.normal));
    if b == a {
        return Relation::Same;
    }
    match (normal::implies(a, b), normal::implies(b, a)) {
        (true, true) => Relation::Same,
        (true, false) => Relation::Narrower,
        (false, true) => Relation::Wider,
        (false, false) => Relation::Other,
    }
}

/// The condition of a rule.
pub(super) fn of_rule(
    before: Option<&Expression>,
    after: Option<&Expression>,
    plain: (Plain<'_>, Plain<'_>),
    words: Words<'_>,
    out: &mut Vec<Sentence>,
) {
    let (before, after) = (read(before), read(after));
    let (kind, lead) = match relation(before.as_ref(), after.as_ref()) {
        Relation::Same => return,
        Relation::Narrower => {
            (Kind::ConditionNarrowed, words.pick("applies in fewer cases: ", "vale en menos casos: "))
        }
        Relation::Wider => (Kind::ConditionWidened, words.pick("applies in more cases: ", "vale en más casos: ")),
        Relation::Other => (Kind::ConditionChanged, words.pick("applies in other cases: ", "vale en otros casos: ")),
    };
    out.push(Sentence { kind, text: lead + &detail(before.as_ref(), after.as_ref(), plain, words) });
}

/// Which parts are gone, new or other.
pub(super) fn detail(
    before: Option<&Read>,
    after: Option<&Read>,
    (before_plain, after_plain): (Plain<'_>, Plain<'_>),
    words: Words<'_>,
) -> String {
    let (b, a) = (parts(before), parts(after));
    let (dropped, added) = (missing(&b, &a), missing(&a, &b));
    if let ([one], [other]) = (dropped.as_slice(), added.as_slice())
        && let (ExprKind::Or(_), ExprKind::Or(_)) = (&one.kind, &other.kind)
    {
        let (b, a) = (alternatives(one), alternatives(other));
        let (dropped, added) = (missing(&b, &a), missing(&a, &b));
        let gone = said(&dropped, before_plain, " / ");
        let new = said(&added, after_plain, " / ");
        return match (dropped.is_empty(), added.is_empty()) {
            (false, true) => words.pick(format!("no longer where: {gone}"), format!("ya no donde: {gone}")),
            (true, false) => words.pick(format!("now also where: {new}"), format!("ahora también donde: {new}")),
            _ => words.pick(
                format!("where: {new}, instead of where: {gone}"),
                format!("donde: {new}, en vez de donde: {gone}"),
            ),
        };
    }
    let and = words.pick("; and ", "; y ");
    let gone = said(&dropped, before_plain, &and);
    let new = said(&added, after_plain, &and);
    match (dropped.is_empty(), added.is_empty()) {
        (false, true) => words.pick(format!("it no longer asks: {gone}"), format!("ya no pide: {gone}")),
        (true, false) => words.pick(format!("it now also asks: {new}"), format!("ahora pide además: {new}")),
        _ => words.pick(format!("now: {new}; before: {gone}"), format!("ahora: {new}; antes: {gone}")),
    }
}

fn said(parts: &[&Expr], plain: Plain<'_>, join: &str) -> String {
    parts.iter().map(|part| plain.expr(part)).collect::<Vec<_>>().join(join)
}

/// The parts of the top `and`, as they are written.
fn parts(read: Option<&Read>) -> Vec<&Expr> {
    match read.map(|read| (&read.written, &read.written.kind)) {
        None => Vec::new(),
        Some((_, ExprKind::And(parts))) => parts.iter().collect(),
        Some((whole, _)) => vec![whole],
    }
}

fn alternatives(expr: &Expr) -> Vec<&Expr> {
    match &expr.kind {
        ExprKind::Or(parts) => parts.iter().collect(),
        _ => vec![expr],
    }
}

/// The parts of one list that are not in the other.
fn missing<'e>(list: &[&'e Expr], other: &[&Expr]) -> Vec<&'e Expr> {
    let key = |expr: &Expr| print::expr(&normal::condition(expr));
    let known: Vec<String> = other.iter().map(|expr| key(expr)).collect();
    list.iter().copied().filter(|expr| !known.contains(&key(expr))).collect()
}

//! The meaning of a rule as text: what it does, without its id and its words.

use serde_json::Value as Json;

use crate::lang::ast::{Expr, ExprKind};
use crate::lang::{parse, print};
use crate::pack::RuleEntry;
use crate::pack::rule::Kind;
use crate::version::canonical;

/// Fields that are words, or who said so.
const WORDS: [&str; 13] = [
    "reviewed",
    "id",
    "title",
    "why",
    "steps",
    "notes",
    "sources",
    "evidence",
    "outside",
    "professional",
    "plain",
    "law",
    "strength",
];
/// Lists of which the order means nothing.
const SETS: [&str; 6] = ["materials", "cautions", "clashes", "keep_apart", "before", "after"];

/// The meaning of a rule: two rules of which it is the same are one. A note says nothing but its words, so these count.
#[must_use]
pub(crate) fn of(entry: &RuleEntry) -> String {
    let Ok(Json::Object(mut fields)) = serde_json::to_value(entry) else { return entry.id.value.clone() };
    let says = fields.get("why").cloned();
    for word in WORDS {
        fields.remove(word);
    }
    for hold in fields.get_mut("hold").and_then(Json::as_array_mut).into_iter().flatten() {
        hold.as_object_mut().map(|hold| hold.remove("because"));
    }
    for amount in fields.get_mut("amount").and_then(Json::as_array_mut).into_iter().flatten() {
        amount.as_object_mut().map(|amount| amount.remove("what"));
    }
    normal(&mut fields);
    if entry.kind == Kind::Know {
        fields.insert("says".to_owned(), says.unwrap_or_default());
    }
    canonical::text(&Json::Object(fields))
}

/// The work of a rule: what is done, with what, how much and how; not when.
#[must_use]
pub(super) fn of_work(entry: &RuleEntry) -> String {
    let Ok(Json::Object(all)) = serde_json::to_value(entry) else { return entry.id.value.clone() };
    let kept = ["job", "manner", "materials", "amount", "steps"];
    let fields: serde_json::Map<String, Json> =
        kept.iter().filter_map(|name| Some(((*name).to_owned(), all.get(*name)?.clone()))).collect();
    canonical::text(&Json::Object(fields))
}

/// Conditions and lists in one order.
fn normal(fields: &mut serde_json::Map<String, Json>) {
    if let Some(when) = fields.get_mut("when") {
        condition(when);
    }
    if let Some(whom) = fields.get_mut("for").and_then(|whom| whom.get_mut("where")) {
        condition(whom);
    }
    for hold in fields.get_mut("hold").and_then(Json::as_array_mut).into_iter().flatten() {
        hold.get_mut("if").map(condition);
    }
    for name in SETS.iter().copied().chain(["hold"]) {
        if let Some(Json::Array(list)) = fields.get_mut(name) {
            list.sort_by_cached_key(canonical::text);
        }
    }
}

fn condition(text: &mut Json) {
    if let Some(expr) = text.as_str().and_then(|text| parse::condition(text).ok()) {
        *text = Json::String(ordered(&expr));
    }
}

/// An expression with the parts of each `and` and `or` in one order.
fn ordered(expr: &Expr) -> String {
    let joined = |list: &[Expr], word: &str| {
        let mut parts: Vec<String> = list.iter().map(ordered).collect();
        parts.sort_unstable();
        parts.dedup();
        format!("({})", parts.join(word))
    };
    match &expr.kind {
        ExprKind::And(list) => joined(list, " and "),
        ExprKind::Or(list) => joined(list, " or "),
        ExprKind::Not(inner) => format!("not {}", ordered(inner)),
        _ => print::expr(expr),
    }
}

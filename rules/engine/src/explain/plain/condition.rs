//! Conditions, and the terms that they compare.

use super::{Plain, inside, marker, number};
use crate::explain::words::is_spanish;
use crate::fact::catalogue::{CATALOGUE, Fact, FactType};
use crate::fact::choice_names::{aggregate_name, choice_name, series_name};
use crate::fact::choices::SEVERITY;
use crate::fact::wording;
use crate::lang::ast::{Argument, Comparison, Expr, ExprKind, Literal};
use crate::lang::print;

/// A condition.
pub(super) fn of(expr: &Expr, at: &Plain<'_>) -> String {
    match &expr.kind {
        ExprKind::Or(parts) => all(parts, at.pick(" or ", " o "), at),
        ExprKind::And(parts) => all(parts, at.pick(" and ", " y "), at),
        ExprKind::Not(inner) => not(inner, at),
        ExprKind::SignsHas(sign, _) => format!("{} {}", at.pick("you see", "usted ve"), self::sign(sign, at)),
        ExprKind::IsAbsent(inner) => {
            format!("{} {}", marker::named(inner, at), at.pick("never comes here", "no llega nunca aquí"))
        }
        ExprKind::Compare(left, comparison, right) => compare(left, *comparison, right, at),
        ExprKind::In(left, items) => {
            let items: Vec<String> = items.iter().map(|item| value_of(left, item, at)).collect();
            is(left, &items.join(at.pick(" or ", " o ")), at)
        }
        ExprKind::Path(path) if is_truth(path) => format!("{}: {}", term(expr, at), at.pick("yes", "sí")),
        _ => term(expr, at),
    }
}

/// Parts joined by one word; signs that follow each other are said in one go.
fn all(parts: &[Expr], join: &str, at: &Plain<'_>) -> String {
    let mut out = String::new();
    let mut after_sign = false;
    for (place, part) in parts.iter().enumerate() {
        let is_sign = matches!(part.kind, ExprKind::SignsHas(..));
        if place > 0 {
            out.push_str(join);
        }
        match &part.kind {
            ExprKind::SignsHas(sign, _) if after_sign => out.push_str(&self::sign(sign, at)),
            ExprKind::Or(_) | ExprKind::And(_) => {
                out.push('(');
                out.push_str(&of(part, at));
                out.push(')');
            }
            _ => out.push_str(&of(part, at)),
        }
        after_sign = is_sign;
    }
    out
}

fn not(inner: &Expr, at: &Plain<'_>) -> String {
    match &inner.kind {
        ExprKind::SignsHas(sign, _) => {
            format!("{} {}", at.pick("you do not see", "usted no ve"), self::sign(sign, at))
        }
        ExprKind::IsAbsent(inner) => format!("{} {}", marker::named(inner, at), at.pick("comes here", "llega aquí")),
        ExprKind::Path(path) if is_truth(path) => format!("{}: no", term(inner, at)),
        ExprKind::Call(name, _) if name == "done" => format!("{} {}", at.pick("not", "no"), term(inner, at)),
        ExprKind::Call(..) => format!("{} {}", at.pick("no", "sin"), term(inner, at)),
        _ => format!("{} ({})", at.pick("it is not so that", "no es cierto que"), of(inner, at)),
    }
}

fn compare(left: &Expr, comparison: Comparison, right: &Expr, at: &Plain<'_>) -> String {
    let right_is_value = matches!(&right.kind, ExprKind::Path(path) if Fact::find(path).is_none());
    let value = if right_is_value { value_of(left, right, at) } else { term(right, at) };
    let words = match comparison {
        Comparison::Less => at.pick("under", "menos de"),
        Comparison::AtMost => at.pick("at most", "como mucho"),
        Comparison::More => at.pick("over", "más de"),
        Comparison::AtLeast => at.pick("at least", "al menos"),
        Comparison::Equal => "",
        Comparison::Unequal => at.pick("not", "no"),
    };
    is(left, format!("{words} {value}").trim(), at)
}

/// A term and what it is. A trait has no name of its own, so its question and the answer are said.
fn is(left: &Expr, value: &str, at: &Plain<'_>) -> String {
    if let Some(asked) = trait_of(left, at) {
        return match is_spanish(at.language) {
            true => format!("a «{asked}» la respuesta es: {value}"),
            false => format!("to “{asked}” the answer is: {value}"),
        };
    }
    match is_spanish(at.language) {
        true => format!("{}: {value}", term(left, at)),
        false => format!("{} is {value}", term(left, at)),
    }
}

/// How the trait is asked for that a `where` or `plant.trait(NAME)` names.
fn trait_of<'a>(expr: &Expr, at: &Plain<'a>) -> Option<&'a str> {
    Some(found_trait(expr, at)?.ask.get(at.language))
}

fn found_trait<'a>(expr: &Expr, at: &Plain<'a>) -> Option<&'a crate::pack::plant::TraitEntry> {
    let name = match &expr.kind {
        ExprKind::Path(name) if Fact::find(name).is_none() => name,
        ExprKind::Call(call, arguments) if call == "plant.trait" => only_path(arguments)?,
        _ => return None,
    };
    at.plant?.traits.iter().find(|of| of.id.value == *name)
}

/// A choice of the fact on the other side by its name.
fn value_of(left: &Expr, value: &Expr, at: &Plain<'_>) -> String {
    let ExprKind::Path(id) = &value.kind else { return term(value, at) };
    let pack = &at.set.pack;
    let named = found_trait(left, at)
        .and_then(|of| of.values.iter().find(|v| v.id.value == *id))
        .map(|value| inside(value.name.get(at.language)));
    named
        .or_else(|| {
            let fact = match &left.kind {
                ExprKind::Path(path) => Fact::find(path)?,
                ExprKind::Call(call, _) if call == "severity" => {
                    return choice_name(SEVERITY.name, id).map(|words| words.get(at.language).to_owned());
                }
                _ => return None,
            };
            match fact.entry().ty {
                FactType::Choice(list) => choice_name(list.name, id).map(|words| words.get(at.language).to_owned()),
                FactType::Stage => {
                    let stage = pack.stages.iter().find(|s| s.entry.id.value == *id)?;
                    Some(inside(stage.entry.name.get(at.language)))
                }
                FactType::Plant => {
                    let plant = pack.plants.iter().find(|p| p.entry.id.value == *id)?;
                    Some(inside(plant.entry.name.get(at.language)))
                }
                _ => None,
            }
        })
        .unwrap_or_else(|| id.clone())
}

/// A number, a fact, a marker, or arithmetic with them.
pub(super) fn term(expr: &Expr, at: &Plain<'_>) -> String {
    match &expr.kind {
        ExprKind::Number(literal) => number::of(literal, at),
        ExprKind::Path(path) => match Fact::find(path) {
            Some(fact) => wording::words(fact).name.get(at.language).to_owned(),
            None => marker::named(expr, at),
        },
        ExprKind::Call(name, arguments) => call(name, arguments, at)
            .or_else(|| marker::called(name, arguments, at))
            .unwrap_or_else(|| print::expr(expr)),
        ExprKind::Add(a, b) => format!("{} {} {}", term(a, at), at.pick("plus", "más"), term(b, at)),
        ExprKind::Subtract(a, b) => format!("{} {} {}", term(a, at), at.pick("less", "menos"), term(b, at)),
        ExprKind::Times(a, by) => format!("{by} × {}", term(a, at)),
        ExprKind::Over(a, by) => format!("{} / {by}", term(a, at)),
        ExprKind::Negative(a) => match &a.kind {
            // Before the other unit is worked out: -10 °C is 14 °F.
            ExprKind::Number(literal) => number::of(&Literal { value: -literal.value, unit: literal.unit.clone() }, at),
            _ => format!("-{}", term(a, at)),
        },
        _ => of(expr, at),
    }
}

/// A fact with arguments: its words with the arguments put in.
fn call(name: &str, arguments: &[Argument], at: &Plain<'_>) -> Option<String> {
    let entry = CATALOGUE.iter().find(|e| !e.arguments.is_empty() && e.name.split(", ").any(|n| n == name))?;
    let words = wording::words(entry.fact).name.get(at.language);
    let fill = |words: &str, slot: &str, value: &str| words.replace(&format!("{{{slot}}}"), value);
    Some(match (name, arguments) {
        ("severity" | "share" | "since", _) => fill(words, "name", &sign(only_path(arguments)?, at)),
        ("plant.trait", _) => {
            let id = only_path(arguments)?;
            let asked = at.plant.and_then(|p| p.traits.iter().find(|of| of.id.value == *id));
            asked.map_or_else(|| fill(words, "name", id), |of| of.ask.get(at.language).to_owned())
        }
        ("region.flag", _) => fill(words, "name", only_path(arguments)?),
        ("wants", _) => fill(words, "name", &job(only_path(arguments)?, at)),
        ("done" | "count", [Argument::Value(what), Argument::Within(days, _)]) => {
            let named = fill(words, "name", &work(what, at));
            fill(&named, "days", &crate::explain::number::plain(days.value))
        }
        ("mean" | "min" | "max" | "sum", [Argument::Value(series), Argument::Value(days)]) => {
            of_days(words, name, series, days, at)?
        }
        ("ahead", [Argument::Value(of), Argument::Value(series), Argument::Value(days)]) => {
            let ExprKind::Path(aggregate) = &of.kind else { return None };
            of_days(words, aggregate, series, days, at)?
        }
        ("frost_ahead", [Argument::Value(temperature), Argument::Value(days)]) => {
            fill(&fill(words, "temperature", &term(temperature, at)), "days", &bare(days)?)
        }
        ("heat_sum", [.., Argument::From(from)]) => {
            let base = match arguments {
                [Argument::Value(base), ..] => format!(" ({} {})", at.pick("over", "sobre"), term(base, at)),
                _ => String::new(),
            };
            fill(words, "marker", &marker::of(from, at)) + &base
        }
        ("days_to" | "weeks_to" | "days_from", [Argument::Value(of)]) => {
            fill(words, "marker", &marker_of(of, at)).replace(" a el ", " al ").replace(" de el ", " del ")
        }
        _ => return None,
    })
}

/// A marker inside a call, perhaps with days added.
fn marker_of(expr: &Expr, at: &Plain<'_>) -> String {
    match &expr.kind {
        ExprKind::Path(_) | ExprKind::Call(..) => marker::named(expr, at),
        _ => term(expr, at),
    }
}

fn of_days(words: &str, aggregate: &str, series: &Expr, days: &Expr, at: &Plain<'_>) -> Option<String> {
    let ExprKind::Path(series) = &series.kind else { return None };
    Some(
        words
            .replace("{aggregate}", aggregate_name(aggregate)?.get(at.language))
            .replace("{series}", series_name(series)?.get(at.language))
            .replace("{days}", &bare(days)?),
    )
}

/// The bare number of days that stands in the words of a fact.
fn bare(days: &Expr) -> Option<String> {
    let ExprKind::Number(literal) = &days.kind else { return None };
    let scale = if literal.unit.starts_with("week") { 7.0 } else { 1.0 };
    Some(crate::explain::number::plain(literal.value * scale))
}

fn only_path(arguments: &[Argument]) -> Option<&String> {
    match arguments {
        [Argument::Value(Expr { kind: ExprKind::Path(id), .. })] => Some(id),
        _ => None,
    }
}

fn sign(id: &str, at: &Plain<'_>) -> String {
    let found = at.set.pack.signs.iter().find(|sign| sign.entry.id.value == id);
    found.map_or_else(|| id.to_owned(), |sign| inside(sign.entry.name.get(at.language)))
}

fn job(id: &str, at: &Plain<'_>) -> String {
    let found = at.set.pack.jobs.iter().find(|job| job.entry.id.value == id);
    found.map_or_else(|| id.to_owned(), |job| inside(job.entry.name.get(at.language)))
}

/// A job, a material or a class of materials.
pub(super) fn work(expr: &Expr, at: &Plain<'_>) -> String {
    let ExprKind::Path(id) = &expr.kind else { return print::expr(expr) };
    let pack = &at.set.pack;
    let material = || pack.materials.iter().find(|m| m.entry.id.value == *id).map(|m| &m.entry.name);
    let class = || pack.classes.iter().find(|c| c.entry.id.value == *id).map(|c| &c.entry.name);
    let job = pack.jobs.iter().find(|j| j.entry.id.value == *id).map(|j| &j.entry.name);
    job.or_else(material).or_else(class).map_or_else(|| id.clone(), |name| inside(name.get(at.language)))
}

fn is_truth(path: &str) -> bool {
    Fact::find(path).is_some_and(|fact| fact.entry().ty == FactType::Truth)
}

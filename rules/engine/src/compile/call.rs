//! Facts that take arguments.

use lammas_agronomy::season::{Aggregate, Series};

use super::marker::{self, literal_in, shape, whole_days};
use super::path::{self, SERIES};
use super::term::{Term, Work};
use super::typing::{ChoiceSpace, Mistake, Scope, Ty, Typed, unit};
use crate::fact::catalogue::Fact;
use crate::fact::choices;
use crate::fact::step::Step;
use crate::lang::ast::{Argument, Expr, ExprKind, Literal, Span};

static AGGREGATES: [(&str, Aggregate); 4] =
    [("mean", Aggregate::Mean), ("min", Aggregate::Min), ("max", Aggregate::Max), ("sum", Aggregate::Sum)];

/// The term of a call.
///
/// # Errors
/// A name that takes no arguments; arguments that do not fit.
pub fn term(name: &str, arguments: &[Argument], span: Span, scope: Scope<'_>) -> Result<Typed, Mistake> {
    let of = |fact: Fact, term: Term, ty: Ty| {
        let entry = fact.entry();
        Typed { term, ty, step: Some(entry.step), range: entry.range }
    };
    let day = Ty::Number(unit("day"));
    Ok(match (name, arguments) {
        ("plant.trait", [Argument::Value(Expr { kind: ExprKind::Path(short), span })]) => {
            let number = scope.plant.traits.number(short).ok_or_else(|| {
                Mistake::new("unknown-name", *span, format!("`{}` has no trait `{short}`", scope.plant_id))
                    .nearest(short, scope.plant.traits.names())
            })?;
            path::of_trait(number)
        }
        ("severity", [Argument::Value(Expr { kind: ExprKind::Path(sign), span })]) => of(
            Fact::Severity,
            Term::Severity(path::sign(sign, *span, scope)?),
            Ty::Choice(ChoiceSpace::Fixed(&choices::SEVERITY)),
        ),
        ("share", [Argument::Value(Expr { kind: ExprKind::Path(sign), span })]) => {
            of(Fact::Share, Term::Share(path::sign(sign, *span, scope)?), Ty::Number(unit("%")))
        }
        ("region.flag", [Argument::Value(Expr { kind: ExprKind::Path(flag), .. })]) => {
            of(Fact::RegionFlag, Term::RegionFlag(flag.clone()), Ty::Truth)
        }
        ("wants", [Argument::Value(Expr { kind: ExprKind::Path(job), span })]) => {
            let number = scope.names.jobs.number(job).ok_or_else(|| {
                Mistake::new("unknown-name", *span, format!("there is no job `{job}`"))
                    .nearest(job, scope.names.jobs.names())
            })?;
            of(Fact::Wants, Term::Wants(number), Ty::Truth)
        }
        ("done", [Argument::Value(Expr { kind: ExprKind::Path(what), span }), Argument::Within(days, at)]) => {
            of(Fact::Done, Term::Done(work(what, *span, scope)?, number_of_days(days, *at)?), Ty::Truth)
        }
        ("count", [Argument::Value(Expr { kind: ExprKind::Path(what), span }), Argument::Within(days, at)]) => {
            of(Fact::Count, Term::Count(work(what, *span, scope)?, number_of_days(days, *at)?), Ty::Number(unit("")))
        }
        ("mean" | "min" | "max" | "sum", [Argument::Value(series), Argument::Value(days)]) => {
            let aggregate = aggregate(name).ok_or_else(|| shape(span, "mean(tmax, 7 days)"))?;
            of_days(aggregate, series, days, false, scope)?
        }
        (
            "ahead",
            [Argument::Value(Expr { kind: ExprKind::Path(of), span }), Argument::Value(series), Argument::Value(days)],
        ) => {
            let aggregate = aggregate(of).ok_or_else(|| {
                Mistake::new("unknown-fact", *span, format!("`{of}` can't be made of days"))
                    .help("`mean`, `min`, `max` and `sum` can")
            })?;
            of_days(aggregate, series, days, true, scope)?
        }
        ("frost_ahead", [Argument::Value(temperature), Argument::Value(days)]) => of(
            Fact::FrostAhead,
            Term::FrostAhead(literal_in(temperature, "°C", scope)?, span_of_days(days, scope)?),
            Ty::Truth,
        ),
        ("heat_sum", [Argument::Value(base), Argument::From(from)]) => of(
            Fact::HeatSum,
            Term::HeatSum {
                base_c: literal_in(base, "°C", scope)?,
                upper_c: None,
                from: Box::new(marker::at(from, scope)?),
            },
            Ty::Number(unit("°Cd")),
        ),
        ("heat_sum", [Argument::Value(base), Argument::Value(upper), Argument::From(from)]) => {
            let (base_c, upper_c) = (literal_in(base, "°C", scope)?, literal_in(upper, "°C", scope)?);
            if upper_c <= base_c {
                return Err(Mistake::new("range-reversed", upper.span, "the upper cut-off must lie above the base"));
            }
            let from = Box::new(marker::at(from, scope)?);
            of(Fact::HeatSum, Term::HeatSum { base_c, upper_c: Some(upper_c), from }, Ty::Number(unit("°Cd")))
        }
        ("days_to" | "weeks_to", [Argument::Value(expr)]) => {
            of(Fact::DaysTo, Term::DaysTo(Box::new(marker_of(expr, scope)?)), day)
        }
        ("days_from", [Argument::Value(expr)]) => {
            of(Fact::DaysFrom, Term::DaysFrom(Box::new(marker_of(expr, scope)?)), day)
        }
        _ => {
            if let Some(found) = marker::call(name, arguments, span, scope)? {
                let text =
                    crate::lang::print::expr(&Expr { span, kind: ExprKind::Call(name.to_owned(), arguments.to_vec()) });
                return Ok(marker::typed(found, &text));
            }
            let form = path::arguments(name);
            if !form.is_empty() {
                return Err(Mistake::new("wrong-type", span, format!("the arguments of `{name}` do not fit"))
                    .help(format!("write `{name}{form}`")));
            }
            if path::term(name, span, scope).is_ok() {
                return Err(Mistake::new("wrong-type", span, format!("`{name}` takes no arguments")));
            }
            return Err(Mistake::new("unknown-fact", span, format!("there is no fact or marker `{name}`"))
                .nearest(name, path::known_names().chain(marker::CALL_NAMES)));
        }
    })
}

fn marker_of(expr: &Expr, scope: Scope<'_>) -> Result<super::term::MarkerAt, Mistake> {
    let (marker, offset) = match &expr.kind {
        ExprKind::Add(left, right) => (left, literal_offset(right, 1.0)),
        ExprKind::Subtract(left, right) => (left, literal_offset(right, -1.0)),
        _ => {
            return marker::at(
                &crate::lang::ast::MarkerExpr { span: expr.span, marker: Box::new(expr.clone()), offset: None },
                scope,
            );
        }
    };
    let offset =
        offset.ok_or_else(|| Mistake::new("wrong-type", expr.span, "a marker may have only a duration added to it"))?;
    marker::at(&crate::lang::ast::MarkerExpr { span: expr.span, marker: marker.clone(), offset: Some(offset) }, scope)
}

fn literal_offset(expr: &Expr, sign: f64) -> Option<(Literal, Span)> {
    match &expr.kind {
        ExprKind::Number(literal) => {
            Some((Literal { value: sign * literal.value, unit: literal.unit.clone() }, expr.span))
        }
        _ => None,
    }
}

fn aggregate(name: &str) -> Option<Aggregate> {
    AGGREGATES.iter().find(|(word, _)| *word == name).map(|(_, aggregate)| *aggregate)
}

fn of_days(aggregate: Aggregate, series: &Expr, days: &Expr, ahead: bool, scope: Scope<'_>) -> Result<Typed, Mistake> {
    let name = crate::lang::print::expr(series);
    let Some((_, row, fact)) = SERIES.iter().find(|(word, ..)| *word == name) else {
        return Err(Mistake::new("unknown-fact", series.span, format!("`{name}` is no row of days"))
            .nearest(&name, SERIES.iter().map(|(word, ..)| *word)));
    };
    if aggregate == Aggregate::Sum && !matches!(row, Series::Rain | Series::Et0) {
        return Err(Mistake::new("wrong-type", series.span, format!("a sum of `{name}` has no meaning"))
            .help("take the `mean`"));
    }
    let entry = fact.entry();
    let days = span_of_days(days, scope)?;
    let term = if ahead { Term::Ahead(aggregate, *row, days) } else { Term::Past(aggregate, *row, days) };
    // A sum of mm/day over days is mm.
    let unit = if aggregate == Aggregate::Sum { unit("mm") } else { unit(entry.unit) };
    let range = if aggregate == Aggregate::Sum { None } else { entry.range };
    Ok(Typed { term, ty: Ty::Number(unit), step: Some(entry.step), range })
}

fn span_of_days(expr: &Expr, scope: Scope<'_>) -> Result<u16, Mistake> {
    let days = literal_in(expr, "day", scope)?;
    if days.fract() != 0.0 || !(1.0..=400.0).contains(&days) {
        return Err(Mistake::new("wrong-unit", expr.span, "a whole number of days from 1 to 400 is needed here"));
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and in 1..=400")]
    Ok(days as u16)
}

fn number_of_days(literal: &Literal, span: Span) -> Result<u16, Mistake> {
    let days = whole_days(literal.value, &literal.unit, span)?;
    u16::try_from(days)
        .ok()
        .filter(|days| *days > 0)
        .ok_or_else(|| Mistake::new("wrong-unit", span, "at least one day is needed here"))
}

/// The works that a word means: a job, else a material, else a class.
///
/// # Errors
/// A word that is none of them.
pub fn work(name: &str, span: Span, scope: Scope<'_>) -> Result<Work, Mistake> {
    let names = scope.names;
    if let Some(number) = names.jobs.number(name) {
        return Ok(Work::Job(number));
    }
    if let Some(number) = names.materials.number(name) {
        return Ok(Work::Material(number));
    }
    if let Some(number) = names.classes.number(name) {
        return Ok(Work::Class(number));
    }
    let known = names.jobs.names().chain(names.materials.names()).chain(names.classes.names());
    Err(Mistake::new("unknown-name", span, format!("there is no job, material or class `{name}`")).nearest(name, known))
}

/// The step to which a term's number is rounded before it is compared.
#[must_use]
pub fn step(term: &Term) -> Option<Step> {
    match term {
        Term::Past(_, series, _) | Term::Ahead(_, series, _) => {
            SERIES.iter().find(|(_, row, _)| row == series).map(|(.., fact)| fact.entry().step)
        }
        other => other.fact().map(|fact| fact.entry().step),
    }
}

//! Markers by name, and markers with days added to them.

use lammas_agronomy::marker::{Marker, Side, Threshold, Turn};
use lammas_agronomy::season::Series;

use super::path;
use super::term::{MarkerAt, MarkerRef, Term};
use super::typing::{self, Mistake, Scope, Ty, Typed, unit};
use crate::fact::value::Value;
use crate::lang::ast::{Argument, Expr, ExprKind, MarkerExpr, Span};
use crate::lang::print;
use crate::unit::Dimension;

/// The markers that take no arguments.
pub static FIXED_NAMES: [&str; 24] = [
    "last_frost.early",
    "last_frost.median",
    "last_frost.late",
    "first_frost.early",
    "first_frost.median",
    "first_frost.late",
    "last_killing_frost.median",
    "first_killing_frost.median",
    "growing.start",
    "growing.end",
    "hot_season.start",
    "hot_season.end",
    "warmest_week",
    "coldest_week",
    "longest_day",
    "shortest_day",
    "spring_equinox",
    "autumn_equinox",
    "rains.start",
    "rains.end",
    "second_rains.start",
    "second_rains.end",
    "planted",
    "today",
];

/// The markers that take arguments.
pub static CALL_NAMES: [&str; 7] = ["rises", "falls", "heat_reached", "chill_reached", "stage", "last", "since"];

/// The marker of this name.
#[must_use]
pub fn named(name: &str) -> Option<MarkerRef> {
    match name {
        "planted" => Some(MarkerRef::Planted),
        "today" => Some(MarkerRef::Today),
        "harvest_wait" => Some(MarkerRef::HarvestWait),
        _ => Marker::named(name).map(MarkerRef::Season),
    }
}

/// A marker by itself in a condition: its occurrence nearest to the day.
pub(super) fn typed(marker: MarkerRef, text: &str) -> Typed {
    let at = MarkerAt { marker, days: 0, text: text.to_owned() };
    Typed { term: Term::Marker(Box::new(at)), ty: Ty::Date, step: None, range: None }
}

/// `M ± duration`.
///
/// # Errors
/// A name that is no marker; an offset that is no whole number of days.
pub fn at(expr: &MarkerExpr, scope: Scope<'_>) -> Result<MarkerAt, Mistake> {
    let marker = reference(&expr.marker, scope)?;
    let days = match &expr.offset {
        None => 0,
        Some((literal, span)) => whole_days(literal.value, &literal.unit, *span)?,
    };
    Ok(MarkerAt { marker, days, text: print::marker(expr) })
}

/// A duration as whole days.
///
/// # Errors
/// Another unit; a part of a day; more than 800 days.
pub fn whole_days(value: f64, symbol: &str, span: Span) -> Result<i32, Mistake> {
    let found = crate::unit::Unit::find(symbol)
        .filter(|u| u.dimension == Dimension::Duration && u.symbol != "h" && u.symbol != "year");
    let Some(found) = found else {
        return Err(Mistake::new(
            "wrong-unit",
            span,
            format!("`{}` is not a number of days or weeks", format!("{value} {symbol}").trim()),
        ));
    };
    let days = found.convert(value, unit("day"));
    if days.fract() != 0.0 || days.abs() > 800.0 {
        return Err(Mistake::new(
            "wrong-unit",
            span,
            format!("`{value} {symbol}` is not a whole number of days up to 800"),
        ));
    }
    #[expect(clippy::cast_possible_truncation, reason = "whole and at most 800")]
    Ok(days as i32)
}

fn reference(expr: &Expr, scope: Scope<'_>) -> Result<MarkerRef, Mistake> {
    match &expr.kind {
        ExprKind::Path(name) => named(name).ok_or_else(|| unknown(name, expr.span)),
        ExprKind::Call(name, arguments) => {
            call(name, arguments, expr.span, scope)?.ok_or_else(|| unknown(name, expr.span))
        }
        _ => Err(Mistake::new("unknown-marker", expr.span, "a marker is missing here")),
    }
}

fn unknown(name: &str, span: Span) -> Mistake {
    let fault = Mistake::new("unknown-marker", span, format!("there is no marker `{name}`"));
    if crate::fact::catalogue::Fact::find(name).is_some() {
        return fault.help(format!("`{name}` is a fact: it has a value on each day, and no day of its own"));
    }
    fault.nearest(name, FIXED_NAMES.iter().chain(&CALL_NAMES).copied())
}

/// A marker with arguments; none if the name is not one.
///
/// # Errors
/// Arguments that do not fit.
pub(super) fn call(
    name: &str,
    arguments: &[Argument],
    span: Span,
    scope: Scope<'_>,
) -> Result<Option<MarkerRef>, Mistake> {
    Ok(Some(match (name, arguments) {
        ("rises" | "falls", [Argument::Value(series), Argument::Value(threshold)]) => {
            let series = series_of(series)?;
            let celsius = literal_in(threshold, "°C", scope)?;
            let at =
                Threshold::new(celsius).ok_or_else(|| Mistake::new("wrong-type", threshold.span, "not a number"))?;
            MarkerRef::Season(if name == "rises" { Marker::Rises(series, at) } else { Marker::Falls(series, at) })
        }
        ("heat_reached", [Argument::Value(sum), Argument::Value(base), Argument::From(from)]) => {
            MarkerRef::HeatReached {
                sum_cd: literal_in(sum, "°Cd", scope)?,
                base_c: literal_in(base, "°C", scope)?,
                from: Box::new(at(from, scope)?),
            }
        }
        ("chill_reached", [Argument::Value(hours)]) => MarkerRef::ChillReached(chill_hours(hours, scope)?),
        ("stage", [Argument::Value(Expr { kind: ExprKind::Path(stage), span })]) => {
            MarkerRef::Stage(scope.plant.stages.number(stage).ok_or_else(|| {
                Mistake::new("unknown-name", *span, format!("`{stage}` is no stage of `{}`", scope.plant_id))
                    .nearest(stage, scope.plant.stages.names())
            })?)
        }
        ("last", [Argument::Value(Expr { kind: ExprKind::Path(work), span })]) => {
            MarkerRef::Last(super::call::work(work, *span, scope)?)
        }
        ("since", [Argument::Value(Expr { kind: ExprKind::Path(sign), span })]) => {
            MarkerRef::Since(path::sign(sign, *span, scope)?)
        }
        ("rises" | "falls", _) => return Err(shape(span, "rises(tmean, 10 °C)")),
        ("heat_reached", _) => return Err(shape(span, "heat_reached(120 °Cd, 5 °C, from coldest_week)")),
        ("chill_reached", _) => return Err(shape(span, "chill_reached(800 h)")),
        ("stage", _) => return Err(shape(span, "stage(bloom)")),
        ("last", _) => return Err(shape(span, "last(feed)")),
        ("since", _) => return Err(shape(span, "since(frost-damage)")),
        _ => return Ok(None),
    }))
}

pub(super) fn shape(span: Span, example: &str) -> Mistake {
    Mistake::new("wrong-type", span, "the arguments do not fit").help(format!("write it like `{example}`"))
}

/// An amount of chill, whole hours of a winter.
fn chill_hours(expr: &Expr, scope: Scope<'_>) -> Result<u16, Mistake> {
    /// More hours than a year has.
    const MOST: f64 = 8784.0;
    let hours = literal_in(expr, "h", scope)?;
    if hours.fract() != 0.0 || !(1.0..=MOST).contains(&hours) {
        return Err(Mistake::new(
            "number-out-of-range",
            expr.span,
            format!("`{}` is no whole number of hours from 1 to {MOST}", print::expr(expr)),
        ));
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and at most 8784")]
    Ok(hours as u16)
}

fn series_of(expr: &Expr) -> Result<Series, Mistake> {
    let name = print::expr(expr);
    match name.as_str() {
        "tmin" => Ok(Series::Tmin),
        "tmax" => Ok(Series::Tmax),
        "tmean" => Ok(Series::Tmean),
        _ => Err(Mistake::new("unknown-fact", expr.span, format!("`{name}` has no curve to cross"))
            .help("`tmin`, `tmax` and `tmean` have one")),
    }
}

/// A literal in this unit.
///
/// # Errors
/// Anything else than a literal of the unit's dimension.
pub(super) fn literal_in(expr: &Expr, symbol: &str, scope: Scope<'_>) -> Result<f64, Mistake> {
    let to = unit(symbol);
    match typing::sum(expr, scope)? {
        Typed { term: Term::Literal(Value::Number(value)), ty: Ty::Number(from), .. }
            if from.dimension == to.dimension =>
        {
            Ok(from.convert(value, to))
        }
        _ => Err(Mistake::new("wrong-unit", expr.span, format!("a number in {symbol} is needed here"))),
    }
}

impl MarkerRef {
    /// On which turn of the year it lies: sides of a window are paired by it.
    #[must_use]
    pub const fn turn(&self) -> Turn {
        match self {
            Self::Season(marker) => marker.turn(),
            _ => Turn::Plant,
        }
    }

    /// Whether it begins or ends something: what its absence means hangs on it.
    #[must_use]
    pub const fn side(&self) -> Side {
        match self {
            Self::Season(marker) => marker.side(),
            _ => Side::Start,
        }
    }
}

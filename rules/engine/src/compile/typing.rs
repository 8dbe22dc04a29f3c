//! Names and types: a tree as written becomes terms and tests, or a fault with its place and a cure.

use super::names::{Names, PlantNames};
use super::term::{Atom, Condition, Term, Test};
use super::{call, path};
use crate::fact::choices::ChoiceList;
use crate::fact::step::Step;
use crate::fact::value::Value;
use crate::lang::ast::{Comparison, Expr, ExprKind, Literal, Span};
use crate::lang::print;
use crate::unit::{Dimension, Unit};

/// What a term turns out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ty {
    /// Yes or no.
    Truth,
    /// A number of a dimension in a unit.
    Number(&'static Unit),
    /// A day.
    Date,
    /// One of a list.
    Choice(ChoiceSpace),
    /// A region code.
    Region,
}

/// Which list a choice is of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ChoiceSpace {
    /// A fixed list.
    Fixed(&'static ChoiceList),
    /// The plants of the pack.
    Plant,
    /// The values of a trait.
    Trait(u16),
    /// The stages of the plant.
    Stage,
}

/// A term with its type.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed {
    /// The term.
    pub term: Term,
    /// Its type.
    pub ty: Ty,
    /// The step of its number, where it is one fact.
    pub step: Option<Step>,
    /// The range of its number in its unit, where it is one fact.
    pub range: Option<(f64, f64)>,
}

/// What is wrong, and where in the expression.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mistake {
    /// The check.
    pub code: &'static str,
    /// Where.
    pub span: Span,
    /// What.
    pub message: String,
    /// The cure.
    pub help: Option<String>,
}

impl Mistake {
    pub(crate) fn new(code: &'static str, span: Span, message: impl Into<String>) -> Self {
        Self { code, span, message: message.into(), help: None }
    }

    pub(crate) fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }

    pub(crate) fn nearest<'a>(self, word: &str, known: impl IntoIterator<Item = &'a str>) -> Self {
        match crate::nearest::nearest(word, known) {
            Some(name) => self.help(format!("did you mean `{name}`?")),
            None => self,
        }
    }
}

/// What the names in an expression may mean.
#[derive(Clone, Copy, Debug)]
pub struct Scope<'a> {
    /// Every vocabulary.
    pub names: &'a Names,
    /// The plant that it is compiled for.
    pub plant: &'a PlantNames,
    /// The plant's id.
    pub plant_id: &'a str,
    /// Whether traits go by their short names.
    pub short_traits: bool,
}

/// The terms and atoms of a plant, each distinct one once.
#[derive(Clone, Debug, Default)]
pub struct Pool {
    /// Terms.
    pub probes: Vec<Term>,
    /// Atoms.
    pub atoms: Vec<Atom>,
    probe_keys: std::collections::BTreeMap<String, u32>,
    atom_keys: std::collections::BTreeMap<String, u32>,
}

impl Pool {
    /// The number of a term.
    pub fn probe(&mut self, term: Term) -> u32 {
        let key = format!("{term:?}");
        *self.probe_keys.entry(key).or_insert_with(|| {
            self.probes.push(term);
            u32::try_from(self.probes.len() - 1).unwrap_or(u32::MAX)
        })
    }

    fn atom(&mut self, term: Term, test: Test) -> u32 {
        let probe = self.probe(term);
        let key = format!("{probe} {test:?}");
        *self.atom_keys.entry(key).or_insert_with(|| {
            self.atoms.push(Atom { probe, test });
            u32::try_from(self.atoms.len() - 1).unwrap_or(u32::MAX)
        })
    }
}

/// A condition.
///
/// # Errors
/// The first name that is not known, or types that do not fit.
pub fn condition(expr: &Expr, scope: Scope<'_>, pool: &mut Pool) -> Result<Condition, Mistake> {
    Ok(match &expr.kind {
        ExprKind::Or(parts) => Condition::Or(all(parts, scope, pool)?),
        ExprKind::And(parts) => Condition::And(all(parts, scope, pool)?),
        ExprKind::Not(inner) => Condition::Not(Box::new(condition(inner, scope, pool)?)),
        ExprKind::SignsHas(sign, span) => {
            let sign = path::sign(sign, *span, scope)?;
            Condition::Atom(pool.atom(Term::Sign(sign), Test::Holds))
        }
        ExprKind::IsAbsent(inner) => {
            let inner = sum(inner, scope)?;
            Condition::Atom(pool.atom(inner.term, Test::IsAbsent))
        }
        ExprKind::Compare(left, comparison, right) => {
            let (term, test) = compare(left, *comparison, right, expr.span, scope)?;
            Condition::Atom(pool.atom(term, test))
        }
        ExprKind::In(left, items) => {
            let (term, test) = one_of(left, items, scope)?;
            Condition::Atom(pool.atom(term, test))
        }
        _ => {
            let typed = sum(expr, scope)?;
            if typed.ty != Ty::Truth {
                let fault = Mistake::new(
                    "wrong-type",
                    expr.span,
                    format!("`{}` is {}, not a condition", print::expr(expr), words(typed.ty)),
                );
                let example = match typed.ty {
                    Ty::Number(unit) if !unit.symbol.is_empty() => format!("> 7 {}", unit.symbol),
                    Ty::Number(_) => "> 7".to_owned(),
                    _ => "= …".to_owned(),
                };
                return Err(fault.help(format!("compare it with something, such as `{example}`")));
            }
            Condition::Atom(pool.atom(typed.term, Test::Holds))
        }
    })
}

fn all(parts: &[Expr], scope: Scope<'_>, pool: &mut Pool) -> Result<Vec<Condition>, Mistake> {
    parts.iter().map(|part| condition(part, scope, pool)).collect()
}

/// A sum: anything that turns out a value.
///
/// # Errors
/// As [`condition`].
pub fn sum(expr: &Expr, scope: Scope<'_>) -> Result<Typed, Mistake> {
    match &expr.kind {
        ExprKind::Path(name) => path::term(name, expr.span, scope),
        ExprKind::Call(name, arguments) => call::term(name, arguments, expr.span, scope),
        ExprKind::Number(literal) => number(literal, 1.0, expr.span),
        ExprKind::Negative(inner) => match &inner.kind {
            ExprKind::Number(literal) => number(literal, -1.0, expr.span),
            _ => Err(Mistake::new("wrong-type", expr.span, "only a number can be negative")),
        },
        ExprKind::Add(left, right) => plus_or_minus(left, right, true, expr.span, scope),
        ExprKind::Subtract(left, right) => plus_or_minus(left, right, false, expr.span, scope),
        ExprKind::Times(left, by) => scaled(left, *by, Term::Times, scope),
        ExprKind::Over(left, by) => scaled(left, *by, Term::Over, scope),
        _ => Err(Mistake::new(
            "wrong-type",
            expr.span,
            format!("`{}` is a condition, where a number is needed", print::expr(expr)),
        )),
    }
}

fn number(literal: &Literal, sign: f64, span: Span) -> Result<Typed, Mistake> {
    let Some(unit) = Unit::find(&literal.unit) else {
        let known = crate::unit::UNITS.iter().map(|u| u.symbol);
        let fault = Mistake::new("wrong-unit", span, format!("`{}` is no unit", literal.unit))
            .nearest(&literal.unit, known.clone());
        let all = || known.filter(|symbol| !symbol.is_empty()).collect::<Vec<_>>().join(" ");
        return Err(if fault.help.is_some() { fault } else { fault.help(format!("the units are {}", all())) });
    };
    Ok(Typed {
        term: Term::Literal(Value::Number(sign * literal.value)),
        ty: Ty::Number(unit),
        step: None,
        range: None,
    })
}

fn scaled(left: &Expr, by: f64, make: fn(Box<Term>, f64) -> Term, scope: Scope<'_>) -> Result<Typed, Mistake> {
    let typed = sum(left, scope)?;
    match typed.ty {
        Ty::Number(unit) if unit.dimension == Dimension::Temperature => {
            Err(Mistake::new("wrong-unit", left.span, "a temperature can't be multiplied: 20 °C is not twice 10 °C"))
        }
        Ty::Number(_) => Ok(Typed { term: make(Box::new(typed.term), by), step: None, range: None, ..typed }),
        other => Err(Mistake::new("wrong-type", left.span, format!("{} can't be multiplied", words(other)))),
    }
}

fn plus_or_minus(left: &Expr, right: &Expr, plus: bool, span: Span, scope: Scope<'_>) -> Result<Typed, Mistake> {
    use Dimension::{Duration, Temperature, TemperatureDifference};
    let (a, b) = (sum(left, scope)?, sum(right, scope)?);
    let make = if plus { Term::Add } else { Term::Subtract };
    let verb = if plus { "added to" } else { "taken from" };
    let join = |a: Term, b: Term, ty: Ty| Typed { term: make(Box::new(a), Box::new(b)), ty, step: None, range: None };
    match (a.ty, b.ty) {
        (Ty::Number(x), Ty::Number(y)) if x.dimension == Temperature && y.dimension == Temperature && !plus => {
            let celsius = unit("°C");
            Ok(join(to_unit(a.term, x, celsius), to_unit(b.term, y, celsius), Ty::Number(unit("K"))))
        }
        (Ty::Number(x), Ty::Number(y)) if x.dimension == Temperature && y.dimension == TemperatureDifference => {
            Ok(join(to_unit(a.term, x, unit("°C")), b.term, Ty::Number(unit("°C"))))
        }
        (Ty::Number(x), Ty::Number(y)) if x.dimension == y.dimension && x.dimension != Temperature => {
            let b = to_unit(b.term, y, x);
            Ok(join(a.term, b, Ty::Number(x)))
        }
        (Ty::Date, Ty::Number(y)) if y.dimension == Duration => {
            Ok(join(a.term, to_unit(b.term, y, unit("day")), Ty::Date))
        }
        (Ty::Date, Ty::Date) if !plus => Ok(join(a.term, b.term, Ty::Number(unit("day")))),
        (Ty::Number(x), Ty::Number(y)) if x.dimension == Temperature && y.dimension == Temperature => {
            Err(Mistake::new("wrong-unit", span, "two temperatures can't be added").help("add a difference in K"))
        }
        (x, y) => Err(Mistake::new("wrong-unit", span, format!("{} can't be {verb} {}", words(y), words(x)))),
    }
}

/// The unit of this symbol; the one without a symbol if there is none such.
pub(super) fn unit(symbol: &str) -> &'static Unit {
    static PLAIN: Unit = crate::unit::UNITLESS;
    Unit::find(symbol).unwrap_or(&PLAIN)
}

fn to_unit(term: Term, from: &'static Unit, to: &'static Unit) -> Term {
    if from == to {
        return term;
    }
    match term {
        Term::Literal(Value::Number(value)) => Term::Literal(Value::Number(from.convert(value, to))),
        other => Term::Converted(Box::new(other), from, to),
    }
}

fn compare(
    left: &Expr,
    comparison: Comparison,
    right: &Expr,
    span: Span,
    scope: Scope<'_>,
) -> Result<(Term, Test), Mistake> {
    // A bare id beside a choice names one of its values, so the side that is a fact is read first.
    let choice_on_left = matches!(&left.kind, ExprKind::Path(name) if path::term(name, left.span, scope).is_err());
    let (left, comparison, right) =
        if choice_on_left && matches!(sum(right, scope), Ok(Typed { ty: Ty::Choice(_) | Ty::Region, .. })) {
            (right, comparison.turned(), left)
        } else {
            (left, comparison, right)
        };
    let a = sum(left, scope)?;
    match a.ty {
        Ty::Choice(space) => {
            let value = choice(right, space, scope)?;
            let ordered = matches!(space, ChoiceSpace::Fixed(list) if list.ordered) || space == ChoiceSpace::Stage;
            if !ordered && !matches!(comparison, Comparison::Equal | Comparison::Unequal) {
                return Err(Mistake::new(
                    "wrong-type",
                    span,
                    format!("the choices of `{}` have no order", print::expr(left)),
                )
                .help("compare them with `=`, `!=` or `in {…}`"));
            }
            return Ok((a.term, Test::Choice(comparison, value)));
        }
        Ty::Region => {
            let ExprKind::Path(code) = &right.kind else {
                return Err(Mistake::new("wrong-type", right.span, "a region is compared with a code")
                    .help("such as `region = US-CA`"));
            };
            return match comparison {
                Comparison::Equal => Ok((Term::RegionIs(code.clone()), Test::Holds)),
                _ => {
                    Err(Mistake::new("wrong-type", span, "a region can only be `=` a code")
                        .help("write `not region = US`"))
                }
            };
        }
        Ty::Truth => {
            return Err(Mistake::new("wrong-type", span, format!("`{}` is yes or no", print::expr(left)))
                .help(format!("write `{0}` or `not {0}`", print::expr(left))));
        }
        Ty::Number(_) | Ty::Date => {}
    }
    let b = sum(right, scope)?;
    match (a.ty, b.ty) {
        (Ty::Number(x), Ty::Number(y)) => {
            if x.dimension != y.dimension {
                let fault = Mistake::new(
                    "wrong-unit",
                    span,
                    format!(
                        "`{}` is {}, `{}` is {}",
                        print::expr(left),
                        x.dimension.words(),
                        print::expr(right),
                        y.dimension.words()
                    ),
                );
                let both = [x.dimension, y.dimension];
                return Err(
                    if both.contains(&Dimension::Temperature) && both.contains(&Dimension::TemperatureDifference) {
                        fault.help("a difference of temperatures is in K")
                    } else {
                        fault.help(format!("compare `{}` with {}", print::expr(left), x.dimension.words()))
                    },
                );
            }
            year_is_for_ages(&a, &b, span)?;
            if let Term::Literal(Value::Number(value)) = b.term {
                let value = y.convert(value, x);
                in_range(&a, value, right.span, left)?;
                return Ok((a.term, Test::Number(comparison, value)));
            }
            if let Term::Literal(Value::Number(value)) = a.term {
                let value = x.convert(value, y);
                in_range(&b, value, left.span, right)?;
                return Ok((b.term, Test::Number(comparison.turned(), value)));
            }
            let b = to_unit(b.term, y, x);
            Ok((Term::Compare(Box::new(a.term), comparison, Box::new(b)), Test::Holds))
        }
        (Ty::Date, Ty::Date) => Ok((Term::Compare(Box::new(a.term), comparison, Box::new(b.term)), Test::Holds)),
        (x, y) => Err(Mistake::new("wrong-type", span, format!("{} can't be compared with {}", words(x), words(y)))),
    }
}

fn year_is_for_ages(a: &Typed, b: &Typed, span: Span) -> Result<(), Mistake> {
    let years = |t: &Typed| matches!(t.ty, Ty::Number(unit) if unit.symbol == "year");
    let literal = |t: &Typed| matches!(t.term, Term::Literal(_));
    if (years(a) && literal(a) && !years(b)) || (years(b) && literal(b) && !years(a)) {
        return Err(Mistake::new("wrong-unit", span, "years measure only the age of a plant").help("write weeks"));
    }
    Ok(())
}

fn in_range(typed: &Typed, value: f64, span: Span, fact: &Expr) -> Result<(), Mistake> {
    match typed.range {
        Some((low, high)) if !(low..=high).contains(&value) => Err(Mistake::new(
            "number-out-of-range",
            span,
            format!("`{}` is never {value}: it lies between {low} and {high}", print::expr(fact)),
        )),
        _ => Ok(()),
    }
}

fn one_of(left: &Expr, items: &[Expr], scope: Scope<'_>) -> Result<(Term, Test), Mistake> {
    let a = sum(left, scope)?;
    match a.ty {
        Ty::Choice(space) => {
            let mut values = items.iter().map(|item| choice(item, space, scope)).collect::<Result<Vec<_>, _>>()?;
            values.sort_unstable();
            values.dedup();
            Ok((a.term, Test::OneOf(values)))
        }
        Ty::Number(unit) => {
            let mut values = Vec::new();
            for item in items {
                match sum(item, scope)? {
                    Typed { term: Term::Literal(Value::Number(value)), ty: Ty::Number(other), .. }
                        if other.dimension == unit.dimension =>
                    {
                        values.push(other.convert(value, unit));
                    }
                    other => {
                        return Err(Mistake::new(
                            "wrong-type",
                            item.span,
                            format!("{} does not fit into the list", words(other.ty)),
                        ));
                    }
                }
            }
            values.sort_by(f64::total_cmp);
            Ok((a.term, Test::OneOfNumbers(values)))
        }
        other => Err(Mistake::new("wrong-type", left.span, format!("{} can't be looked for in a list", words(other)))),
    }
}

fn choice(expr: &Expr, space: ChoiceSpace, scope: Scope<'_>) -> Result<u16, Mistake> {
    let ExprKind::Path(word) = &expr.kind else {
        return Err(Mistake::new("wrong-type", expr.span, format!("`{}` is no choice", print::expr(expr))));
    };
    let (found, known, what): (Option<u16>, Vec<&str>, &str) = match space {
        ChoiceSpace::Fixed(list) => (list.position(word), list.values.to_vec(), list.name),
        ChoiceSpace::Plant => (scope.names.plants.number(word), scope.names.plants.names().collect(), "plant"),
        ChoiceSpace::Stage => (scope.plant.stages.number(word), scope.plant.stages.names().collect(), "stage"),
        ChoiceSpace::Trait(number) => {
            let values = scope.plant.values.get(usize::from(number));
            (
                values.and_then(|v| v.number(word)),
                values.map(|v| v.names().collect()).unwrap_or_default(),
                "value of this trait",
            )
        }
    };
    found.ok_or_else(|| {
        let message = format!("`{word}` is no {what} of `{}`", scope.plant_id);
        let fault = Mistake::new("unknown-name", expr.span, message).nearest(word, known.iter().copied());
        if fault.help.is_none() { fault.help(format!("there are: {}", known.join(", "))) } else { fault }
    })
}

/// A type in the author's words.
#[must_use]
pub fn words(ty: Ty) -> &'static str {
    match ty {
        Ty::Truth => "yes or no",
        Ty::Number(unit) => unit.dimension.words(),
        Ty::Date => "a date",
        Ty::Choice(_) => "a choice",
        Ty::Region => "a region",
    }
}

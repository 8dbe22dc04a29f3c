//! Facts and markers that take no arguments.

use lammas_agronomy::season::Series;

use super::marker;
use super::term::Term;
use super::typing::{ChoiceSpace, Mistake, Scope, Ty, Typed, unit};
use crate::fact::catalogue::{CATALOGUE, Fact, FactType};
use crate::lang::ast::Span;

/// The series of the day curves by name.
pub static SERIES: [(&str, Series, Fact); 7] = [
    ("tmin", Series::Tmin, Fact::Tmin),
    ("tmax", Series::Tmax, Fact::Tmax),
    ("tmean", Series::Tmean, Fact::Tmean),
    ("rain", Series::Rain, Fact::Rain),
    ("et0", Series::Et0, Fact::Et0),
    ("rh", Series::Rh, Fact::Rh),
    ("wind", Series::Wind, Fact::Wind),
];

/// The term that a path names.
///
/// # Errors
/// A name that is no fact, no marker and, in `where`, no trait; a fact that the service can't work out yet.
pub fn term(name: &str, span: Span, scope: Scope<'_>) -> Result<Typed, Mistake> {
    if scope.short_traits
        && let Some(number) = scope.plant.traits.number(name)
    {
        return Ok(of_trait(number));
    }
    if let Some(fact) = Fact::find(name) {
        return of_fact(fact, span);
    }
    if let Some(marker) = marker::named(name) {
        return Ok(marker::typed(marker, name));
    }
    let fault = Mistake::new("unknown-fact", span, format!("there is no fact or marker `{name}`"));
    if CATALOGUE.iter().any(|e| !e.arguments.is_empty() && e.name.split(", ").any(|n| n == name)) {
        return Err(fault.help(format!("`{name}` takes arguments: `{name}{}`", arguments(name))));
    }
    if !scope.short_traits && scope.plant.traits.number(name).is_some() {
        return Err(fault.help(format!("outside `where` a trait is written `plant.trait({name})`")));
    }
    if scope.short_traits {
        let known: Vec<&str> = scope.plant.traits.names().collect();
        let message = format!("`{}` has no trait `{name}`", scope.plant_id);
        return Err(Mistake { message, ..fault.nearest(name, known) });
    }
    Err(fault.nearest(name, known_names()))
}

/// Every name that may stand by itself, and those that take arguments.
pub fn known_names() -> impl Iterator<Item = &'static str> {
    CATALOGUE
        .iter()
        .flat_map(|entry| entry.name.split(", "))
        .filter(|name| *name != "marker")
        .chain(marker::FIXED_NAMES.iter().copied())
}

/// How the arguments of a fact are written.
pub(super) fn arguments(name: &str) -> &'static str {
    CATALOGUE
        .iter()
        .find(|e| !e.arguments.is_empty() && e.name.split(", ").any(|n| n == name))
        .map_or("", |e| e.arguments)
}

pub(super) fn of_trait(number: u16) -> Typed {
    Typed { term: Term::Trait(number), ty: Ty::Choice(ChoiceSpace::Trait(number)), step: None, range: None }
}

fn of_fact(fact: Fact, span: Span) -> Result<Typed, Mistake> {
    let entry = fact.entry();
    if fact == Fact::HarvestWait {
        return Ok(marker::typed(super::term::MarkerRef::HarvestWait, entry.name));
    }
    let ty = match entry.ty {
        FactType::Truth => Ty::Truth,
        FactType::Number(_) => Ty::Number(unit(entry.unit)),
        FactType::Date => Ty::Date,
        FactType::Choice(list) => Ty::Choice(ChoiceSpace::Fixed(list)),
        FactType::Plant => Ty::Choice(ChoiceSpace::Plant),
        FactType::Trait => return Err(Mistake::new("wrong-type", span, "`plant.trait` takes a name")),
        FactType::Stage => Ty::Choice(ChoiceSpace::Stage),
        FactType::Region => Ty::Region,
        FactType::Weekdays => {
            return Err(Mistake::new(
                "wrong-type",
                span,
                format!("`{}` is a set of weekdays, which no condition can read", entry.name),
            ));
        }
    };
    Ok(Typed { term: Term::Fact(fact), ty, step: Some(entry.step), range: entry.range })
}

/// The number of a sign.
///
/// # Errors
/// A sign that the vocabulary does not have.
pub fn sign(name: &str, span: Span, scope: Scope<'_>) -> Result<u16, Mistake> {
    scope.names.signs.number(name).ok_or_else(|| {
        Mistake::new("unknown-name", span, format!("there is no sign `{name}`"))
            .nearest(name, scope.names.signs.names())
    })
}

//! Amounts: a quantity by name, and the terms of its inputs.

use lammas_agronomy::quantity::{self, Input, Kind, Quantity};
use lammas_agronomy::units::{self, Conversion};

use super::set::MaterialInfo;
use super::term::Term;
use super::typing::{self, ChoiceSpace, Mistake, Scope, Ty, Typed};
use super::window::unreadable;
use crate::lang::ast::Span;
use crate::lang::parse;
use crate::pack::At;
use crate::pack::material::Per;
use crate::pack::rule::AmountEntry;
use crate::unit::Unit;

/// One input of a quantity.
#[derive(Clone, Debug)]
pub struct AmountInput {
    /// As the door of quantities knows it.
    pub of: &'static Input,
    /// Where its value comes from.
    pub from: InputFrom,
    /// The input as written, for what is asked when it is unknown.
    pub text: String,
}

/// Where the value of an input comes from.
#[derive(Clone, Debug)]
pub enum InputFrom {
    /// A number.
    Number(Term, InUnit),
    /// A choice of a fixed list.
    Choice(Term, &'static crate::fact::choices::ChoiceList),
    /// A word as it stands.
    Word(String),
}

/// The unit in which a number of ours comes to the door of quantities.
#[derive(Clone, Copy, Debug)]
pub enum InUnit {
    /// That of the input.
    Declared,
    /// Another, from which this way leads to it.
    Other(Conversion),
    /// The input takes any and wants it told.
    Told(&'static str),
}

/// An amount, ready to be reckoned.
#[derive(Clone, Debug)]
pub struct Amount {
    /// The quantity; none: only the usual range is shown.
    pub quantity: Option<&'static Quantity>,
    /// Its inputs.
    pub inputs: Vec<AmountInput>,
    /// The material whose maximum caps it.
    pub max_of: Option<u16>,
    /// That maximum in the quantity's own unit.
    pub most: Option<f64>,
}

/// The name by which the door of quantities knows a unit of the language.
#[must_use]
pub fn door_unit(unit: &Unit) -> &'static str {
    match unit.symbol {
        "°C" => "C",
        "°F" => "F",
        "day" => "d",
        "°Cd" => "C d",
        "°Fd" => "F d",
        "m²" => "m2",
        "ft²" => "ft2",
        "mm/day" => "mm/d",
        "g/m²" => "g/m2",
        "" => "-",
        other => other,
    }
}

/// The least of the maxima of a material that a value in this unit can be held against.
#[must_use]
pub(crate) fn most_of(material: &MaterialInfo, unit: &str) -> Option<f64> {
    let in_unit = |(_, most, of): &(Per, f64, &'static Unit)| units::convert_text(*most, door_unit(of), unit).ok();
    material.maximum.iter().filter_map(in_unit).reduce(f64::min)
}

/// An amount, or the field that is wrong and why.
///
/// # Errors
/// A quantity or input that is not known, an input that is missing, a unit that does not fit.
pub fn amount<'e>(
    entry: &'e AmountEntry,
    scope: Scope<'_>,
    max_of: Option<u16>,
    materials: &[MaterialInfo],
) -> Result<Amount, (&'e At<String>, Mistake)> {
    let Some(call) = &entry.call else {
        return Ok(Amount { quantity: None, inputs: Vec::new(), max_of, most: None });
    };
    let whole = Span::new(0, call.value.len());
    let quantity = quantity::find(&call.value).map_err(|_| {
        let known = quantity::all().map(|q| q.name);
        (
            call,
            Mistake::new("unknown-quantity", whole, format!("there is no quantity `{}`", call.value))
                .nearest(&call.value, known),
        )
    })?;
    let mut inputs = Vec::new();
    for (name, text) in &entry.inputs {
        inputs.push(input(quantity, name, text, scope).map_err(|mistake| (text, mistake))?);
    }
    for needed in quantity.inputs.iter().filter(|input| input.required) {
        if !entry.inputs.contains_key(needed.name) {
            return Err((
                call,
                Mistake::new(
                    "unknown-quantity",
                    whole,
                    format!("`{}` needs the input `{}`", quantity.name, needed.name),
                ),
            ));
        }
    }
    let most = max_of.and_then(|at| most_of(materials.get(usize::from(at))?, quantity.unit));
    Ok(Amount { quantity: Some(quantity), inputs, max_of, most })
}

fn input(quantity: &'static Quantity, name: &str, text: &At<String>, scope: Scope<'_>) -> Result<AmountInput, Mistake> {
    let whole = Span::new(0, text.value.len());
    let known = quantity.input(name).ok_or_else(|| {
        Mistake::new("unknown-quantity", whole, format!("`{}` has no input `{name}`", quantity.name))
            .nearest(name, quantity.inputs.iter().map(|i| i.name))
    })?;
    let expr = parse::sum(&text.value).map_err(unreadable)?;
    let words = matches!(known.kind, Kind::Choice { .. });
    let from = match typing::sum(&expr, scope) {
        Ok(Typed { term, ty: Ty::Choice(ChoiceSpace::Fixed(list)), .. }) if words => InputFrom::Choice(term, list),
        Ok(Typed { term, ty: Ty::Number(unit), .. }) if !words => {
            let ours = door_unit(unit);
            let unit = match known.unit() {
                None => InUnit::Told(ours),
                Some(theirs) if theirs == ours => InUnit::Declared,
                Some(theirs) => units::read(ours)
                    .and_then(|from| Conversion::between(&from, &units::read(theirs)?))
                    .map(InUnit::Other)
                    .map_err(|fault| Mistake::new("wrong-unit", whole, format!("`{name}` is in {theirs}: {fault}")))?,
            };
            InputFrom::Number(term, unit)
        }
        Err(_) if words => InputFrom::Word(text.value.clone()),
        Err(mistake) => return Err(mistake),
        Ok(other) => {
            return Err(Mistake::new(
                "wrong-type",
                whole,
                format!("`{name}` is {}, found {}", known.expected(), typing::words(other.ty)),
            ));
        }
    };
    Ok(AmountInput { of: known, from, text: text.value.clone() })
}

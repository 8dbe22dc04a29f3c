//! Amounts: a quantity by name, and the terms of its inputs.

use lammas_agronomy::quantity::{self, Kind, Quantity};

use super::term::Term;
use super::typing::{self, ChoiceSpace, Mistake, Scope, Ty, Typed};
use super::window::unreadable;
use crate::lang::ast::Span;
use crate::lang::parse;
use crate::pack::At;
use crate::pack::rule::AmountEntry;
use crate::unit::Unit;

/// One input of a quantity.
#[derive(Clone, Debug)]
pub struct AmountInput {
    /// Its name at the door of quantities.
    pub name: &'static str,
    /// Where its value comes from.
    pub from: InputFrom,
    /// The input as written, for what is asked when it is unknown.
    pub text: String,
}

/// Where the value of an input comes from.
#[derive(Clone, Debug)]
pub enum InputFrom {
    /// A number in this unit of ours, which the door knows by that name.
    Number(Term, &'static str),
    /// A choice of a fixed list.
    Choice(Term, &'static crate::fact::choices::ChoiceList),
    /// A word as it stands.
    Word(String),
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

/// An amount, or the field that is wrong and why.
///
/// # Errors
/// A quantity or input that is not known, an input that is missing, a unit that does not fit.
pub fn amount<'e>(
    entry: &'e AmountEntry,
    scope: Scope<'_>,
    max_of: Option<u16>,
) -> Result<Amount, (&'e At<String>, Mistake)> {
    let Some(call) = &entry.call else {
        return Ok(Amount { quantity: None, inputs: Vec::new(), max_of });
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
    Ok(Amount { quantity: Some(quantity), inputs, max_of })
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
            if let Some(theirs) = known.unit()
                && let Err(fault) = lammas_agronomy::units::convert_text(1.0, ours, theirs)
            {
                return Err(Mistake::new("wrong-unit", whole, format!("`{name}` is in {theirs}: {fault}")));
            }
            InputFrom::Number(term, ours)
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
    Ok(AmountInput { name: known.name, from, text: text.value.clone() })
}

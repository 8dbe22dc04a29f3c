//! Amounts: reckoned through the door of quantities, capped at the material's maximum, rounded for show.

use std::borrow::Cow;

use lammas_agronomy::quantity::{Inputs, OutcomeValue};

use super::answer::{AmountShown, Measure, Range};
use super::number::{shown, to_us, unit_words};
use super::phrases::AmountPhrases;
use super::term_name;
use super::voice::Voice;
use crate::compile::amount::{Amount, InUnit, InputFrom, door_unit, most_of};
use crate::compile::rule::PlantRule;
use crate::compile::set::Set;
use crate::compile::term::Term;
use crate::decide::moment::Moment;
use crate::decide::read;
use crate::fact::catalogue::Fact;
use crate::fact::choices::TEXTURE;
use crate::fact::value::Value;
use crate::pack::rule::TypicalEntry;

/// What can't be said of an amount, and why.
enum Missing {
    Facts(Vec<String>),
    Refused(String),
}

/// The amounts of a rule, by its number among the plant's.
#[must_use]
pub fn of<'a>(at: u32, rule: &PlantRule, voice: Voice<'_, 'a>) -> Vec<AmountShown<'a>> {
    let said = voice.own(at).map(|own| own.amounts.as_slice()).unwrap_or_default();
    said.iter().zip(&rule.amounts).map(|(said, amount)| one(said, amount, voice.moment)).collect()
}

/// An amount as it is compared: the number as it is shown, and whether it is capped; none where it can't be reckoned.
pub type Number = Option<(f64, bool)>;

/// The amounts of a rule as they are compared: what [`of`] shows, without words.
#[must_use]
pub fn numbers(rule: &PlantRule, moment: &Moment<'_>) -> Vec<Number> {
    let number = |amount: &Amount| {
        let (value, unit, _) = reckon(amount, moment).ok()?;
        let (value, capped) = cap(value, &unit, amount, moment.set);
        Some((shown(value), capped))
    };
    rule.amounts.iter().filter(|amount| amount.quantity.is_some()).map(number).collect()
}

/// What the amounts of a rule are reckoned from.
#[must_use]
pub fn inputs(rule: &PlantRule, moment: &Moment<'_>) -> Vec<Value> {
    let inputs = rule.amounts.iter().filter(|amount| amount.quantity.is_some()).flat_map(|amount| &amount.inputs);
    inputs
        .filter_map(|input| match &input.from {
            InputFrom::Number(term, _) | InputFrom::Choice(term, _) => Some(read::term(term, moment).value),
            InputFrom::Word(_) => None,
        })
        .collect()
}

fn one<'a>(said: &'a AmountPhrases, amount: &Amount, moment: &Moment<'_>) -> AmountShown<'a> {
    let mut out = AmountShown {
        what: &said.what,
        value: None,
        unit: None,
        us: None,
        basis: "typical",
        quantity: amount.quantity.map(|q| q.name),
        typical: said.typical.as_ref(),
        needs: Vec::new(),
        capped: false,
        remarks: Vec::new(),
    };
    if amount.quantity.is_none() {
        return out;
    }
    match reckon(amount, moment) {
        Ok((value, unit, notes)) => {
            let (value, capped) = cap(value, &unit, amount, moment.set);
            out.value = Some(shown(value));
            let us = match amount.quantity {
                Some(quantity) if quantity.unit == unit => said.us.map(|(way, us)| (way.of(value), us)),
                _ => to_us(value, &unit),
            };
            out.us = us.map(|(value, unit)| Measure { value: shown(value), unit: unit_words(unit) });
            out.unit = Some(match unit {
                Cow::Borrowed(unit) => Cow::Borrowed(unit_words(unit)),
                Cow::Owned(unit) => Cow::Owned(unit_words(&unit).to_owned()),
            });
            out.basis = "computed";
            out.capped = capped;
            out.remarks = notes;
        }
        Err(Missing::Facts(needs)) => out.needs = needs,
        Err(Missing::Refused(why)) => out.remarks.push(why),
    }
    out
}

fn reckon(amount: &Amount, moment: &Moment<'_>) -> Result<(f64, Cow<'static, str>, Vec<String>), Missing> {
    let Some(quantity) = amount.quantity else { return Err(Missing::Facts(Vec::new())) };
    let mut inputs = Inputs::for_up_to(amount.inputs.len());
    let mut needs = Vec::new();
    for input in &amount.inputs {
        let name = input.of.name;
        match &input.from {
            InputFrom::Word(word) => inputs = inputs.text(name, word.clone()),
            InputFrom::Number(term, unit) => match read::term(term, moment).value {
                Value::Number(number) => {
                    inputs = match unit {
                        InUnit::Declared => inputs.number(name, number),
                        InUnit::Other(way) => inputs.number(name, way.of(number)),
                        InUnit::Told(unit) => inputs.measure(name, number, *unit),
                    };
                }
                // Rain that nobody knows counts as none: the soak is then rather too large than too small.
                Value::Unknown if !input.of.required && matches!(term, Term::Fact(Fact::Rain)) => {}
                _ => needs.extend(
                    term_name::leaves(term).into_iter().map(|leaf| term_name::of(leaf, moment.set, moment.book)),
                ),
            },
            InputFrom::Choice(term, list) => match choice(term, list, moment) {
                Some(word) => inputs = inputs.text(name, word),
                None => needs.push(term_name::of(term, moment.set, moment.book)),
            },
        }
    }
    if !needs.is_empty() {
        return Err(Missing::Facts(needs));
    }
    let outcome = quantity.reckon(&inputs).map_err(|error| Missing::Refused(error.to_string()))?;
    match outcome.value {
        OutcomeValue::Number(number) => Ok((number, outcome.unit, outcome.notes)),
        _ => Err(Missing::Refused(format!("`{}` is not one number", quantity.name))),
    }
}

/// A choice as a word; a texture that is not said is loam, for amounts only.
fn choice(term: &Term, list: &'static crate::fact::choices::ChoiceList, moment: &Moment<'_>) -> Option<&'static str> {
    match read::term(term, moment).value {
        Value::Choice(number) => list.values.get(usize::from(number)).copied(),
        _ if *list == TEXTURE => Some("loam"),
        _ => None,
    }
}

/// A value, at most what the material bears.
fn cap(value: f64, unit: &str, amount: &Amount, set: &Set) -> (f64, bool) {
    let most = match amount.quantity {
        Some(quantity) if quantity.unit == unit => amount.most,
        _ => amount.max_of.and_then(|material| most_of(set.materials.get(usize::from(material))?, unit)),
    };
    most.filter(|most| value > *most).map_or((value, false), |most| (most, true))
}

/// What is usual, never above a material's maximum.
#[must_use]
pub fn range(typical: &TypicalEntry, amount: &Amount, set: &Set) -> Range {
    let unit = typical.unit.value.as_str();
    let door = match crate::unit::Unit::find(unit) {
        Some(known) => door_unit(known),
        None => unit,
    };
    let (min, max) = (cap(typical.min, door, amount, set).0, cap(typical.max, door, amount, set).0);
    let us = match (to_us(min, unit), to_us(max, unit)) {
        (Some((low, us_unit)), Some((high, _))) => {
            Some(Box::new(Range { min: shown(low), max: shown(high), unit: unit_words(us_unit).to_owned(), us: None }))
        }
        _ => None,
    };
    Range { min: shown(min), max: shown(max), unit: unit_words(unit).to_owned(), us }
}

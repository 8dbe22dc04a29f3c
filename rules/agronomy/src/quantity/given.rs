//! The inputs of a call, checked: known names, declared units, allowed ranges, nothing missing.

use std::borrow::Cow;

use chrono::{DateTime, NaiveDate};

use super::error::QuantityError;
use super::inputs::{Input, Kind};
use super::value::{InputValue, Inputs, shorten};
use super::{Quantity, series};
use crate::bounds::Unusable;
use crate::nearest::nearest;
use crate::units::convert_text;

/// A checked value.
#[derive(Debug, Clone, PartialEq)]
enum Checked<'a> {
    Number(f64),
    Measure(f64, Cow<'a, str>),
    Numbers(Vec<f64>),
    Text(&'a str),
}

/// The checked inputs of one call; numbers stand in the declared units.
#[derive(Debug, Clone, PartialEq)]
pub struct Given<'a>(Vec<(&'static str, Checked<'a>)>);

pub(super) fn check<'a>(quantity: &Quantity, inputs: &'a Inputs) -> Result<Given<'a>, QuantityError> {
    let mut given = Given(Vec::with_capacity(quantity.inputs.len()));
    for (name, value) in inputs.iter() {
        let input = known(quantity, name)?;
        given.add(quantity, input, one(quantity, input, value)?)?;
    }
    given.nothing_missing(quantity)?;
    Ok(given)
}

pub(super) fn check_numbers(quantity: &Quantity, numbers: &[(&str, f64)]) -> Result<Given<'static>, QuantityError> {
    let mut given = Given(Vec::with_capacity(quantity.inputs.len()));
    for &(name, value) in numbers {
        let input = known(quantity, name)?;
        let checked = match input.kind {
            Kind::Number { .. } => Checked::Number(in_range(quantity, input, value)?),
            Kind::Measure { .. } => Checked::Measure(in_range(quantity, input, value)?, Cow::Borrowed("-")),
            _ => return Err(wrong(quantity, input, "a number")),
        };
        given.add(quantity, input, checked)?;
    }
    given.nothing_missing(quantity)?;
    Ok(given)
}

fn known(quantity: &Quantity, name: &str) -> Result<&'static Input, QuantityError> {
    quantity.input(name).ok_or_else(|| QuantityError::UnknownInput {
        quantity: quantity.name,
        name: shorten(name),
        nearest: nearest(name, quantity.inputs.iter().map(|input| input.name)),
        allowed: quantity.inputs.iter().map(|input| input.name).collect::<Vec<_>>().join(", "),
    })
}

fn wrong(quantity: &Quantity, input: &Input, got: impl Into<String>) -> QuantityError {
    QuantityError::WrongKind {
        quantity: quantity.name,
        field: input.name.to_owned(),
        got: got.into(),
        expected: input.expected(),
    }
}

fn in_range(quantity: &Quantity, input: &Input, value: f64) -> Result<f64, QuantityError> {
    let (unit, min, max) = match input.kind {
        Kind::Number { unit, min, max } | Kind::Numbers { unit, min, max, .. } | Kind::Row { unit, min, max, .. } => {
            (unit, min, max)
        }
        Kind::Measure { min, max } => ("in its unit", min, max),
        _ => return Err(wrong(quantity, input, "a number")),
    };
    if (min..=max).contains(&value) {
        Ok(value)
    } else {
        Err(QuantityError::OutOfRange { quantity: quantity.name, field: input.name, value, unit, min, max })
    }
}

fn declared(
    quantity: &Quantity,
    input: &Input,
    value: f64,
    from: Option<&str>,
    to: &'static str,
) -> Result<f64, QuantityError> {
    let Some(from) = from else {
        return in_range(quantity, input, value);
    };
    let converted = convert_text(value, from, to).map_err(|reason| QuantityError::Unit {
        quantity: quantity.name,
        field: input.name,
        reason,
        expected: input.expected(),
    })?;
    in_range(quantity, input, converted)
}

fn list<'a>(
    quantity: &Quantity,
    input: &Input,
    values: &[f64],
    from: Option<&str>,
    to: &'static str,
    long_enough: bool,
) -> Result<Checked<'a>, QuantityError> {
    if !long_enough {
        return Err(wrong(quantity, input, format!("a list of {}", values.len())));
    }
    let turned = values.iter().map(|&value| declared(quantity, input, value, from, to));
    turned.collect::<Result<_, _>>().map(Checked::Numbers)
}

/// `clay-loam` and `clay_loam` are `clay loam`.
fn same_words(choice: &str, text: &str) -> bool {
    let plain = |c| if c == '-' || c == '_' { ' ' } else { c };
    choice.chars().map(plain).eq(text.trim().chars().map(plain))
}

fn one<'a>(quantity: &Quantity, input: &Input, value: &'a InputValue) -> Result<Checked<'a>, QuantityError> {
    match (input.kind, value) {
        (Kind::Number { unit: to, .. }, InputValue::Number { value, unit }) => {
            Ok(Checked::Number(declared(quantity, input, *value, unit.as_deref(), to)?))
        }
        (Kind::Measure { .. }, InputValue::Number { value, unit }) => {
            Ok(Checked::Measure(in_range(quantity, input, *value)?, Cow::Borrowed(unit.as_deref().unwrap_or("-"))))
        }
        (Kind::Numbers { unit: to, count, .. }, InputValue::Numbers { values, unit }) => {
            list(quantity, input, values, unit.as_deref(), to, values.len() == count)
        }
        (Kind::Row { unit: to, most, .. }, InputValue::Numbers { values, unit }) => {
            list(quantity, input, values, unit.as_deref(), to, (1..=most).contains(&values.len()))
        }
        (Kind::Choice(choices), InputValue::Text(text)) => {
            choices.iter().find(|choice| same_words(choice, text)).map(|choice| Checked::Text(choice)).ok_or_else(
                || QuantityError::NoChoice {
                    quantity: quantity.name,
                    field: input.name,
                    text: shorten(text),
                    allowed: choices.join(", "),
                },
            )
        }
        (Kind::Text | Kind::Series | Kind::Date | Kind::Moment, InputValue::Text(text)) => Ok(Checked::Text(text)),
        (_, InputValue::Number { .. }) => Err(wrong(quantity, input, "a number")),
        (_, InputValue::Numbers { .. }) => Err(wrong(quantity, input, "a list of numbers")),
        (_, InputValue::Text(text)) => Err(wrong(quantity, input, format!("the text `{}`", shorten(text)))),
    }
}

impl<'a> Given<'a> {
    fn add(&mut self, quantity: &Quantity, input: &Input, value: Checked<'a>) -> Result<(), QuantityError> {
        if self.find(input.name).is_some() {
            return Err(QuantityError::Repeated { quantity: quantity.name, field: input.name });
        }
        self.0.push((input.name, value));
        Ok(())
    }

    fn nothing_missing(&self, quantity: &Quantity) -> Result<(), QuantityError> {
        let missing = quantity.inputs.iter().find(|input| input.required && self.find(input.name).is_none());
        missing.map_or(Ok(()), |input| {
            Err(QuantityError::MissingInput { quantity: quantity.name, field: input.name, expected: input.expected() })
        })
    }

    fn find(&self, name: &str) -> Option<&Checked<'a>> {
        self.0.iter().find(|(known, _)| *known == name).map(|(_, value)| value)
    }

    /// Whether the input was given.
    pub(super) fn has(&self, name: &str) -> bool {
        self.find(name).is_some()
    }

    /// A number in its declared unit, if it was given.
    pub(super) fn maybe(&self, name: &str) -> Option<f64> {
        match self.find(name)? {
            Checked::Number(value) | Checked::Measure(value, _) => Some(*value),
            Checked::Numbers(_) | Checked::Text(_) => None,
        }
    }

    /// A number in its declared unit.
    pub(super) fn number(&self, name: &'static str) -> Result<f64, Unusable> {
        self.maybe(name).ok_or_else(|| Unusable::Missing { field: name, expected: "a number".to_owned() })
    }

    /// The unit in which a measure was given.
    pub(super) fn unit_of(&self, name: &str) -> Option<&str> {
        match self.find(name)? {
            Checked::Measure(_, unit) => Some(unit),
            _ => None,
        }
    }

    /// Numbers in their declared unit.
    pub(super) fn numbers(&self, name: &'static str) -> Result<&[f64], Unusable> {
        match self.find(name) {
            Some(Checked::Numbers(values)) => Ok(values),
            _ => Err(Unusable::Missing { field: name, expected: "numbers".to_owned() }),
        }
    }

    /// A text, if it was given.
    pub(super) fn maybe_text(&self, name: &str) -> Option<&'a str> {
        match self.find(name)? {
            Checked::Text(text) => Some(text),
            _ => None,
        }
    }

    /// A text.
    pub(super) fn text(&self, name: &'static str) -> Result<&'a str, Unusable> {
        self.maybe_text(name).ok_or_else(|| Unusable::Missing { field: name, expected: "text".to_owned() })
    }

    /// A whole number that its range keeps small.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "checked to be whole and within the type"
    )]
    pub(super) fn whole(&self, name: &'static str) -> Result<u16, Unusable> {
        let value = self.number(name)?;
        if value.fract().abs() > 0.0 || !(0.0..=65_535.0).contains(&value) {
            return Err(Unusable::Unread {
                field: name,
                text: value.to_string(),
                expected: "a whole number".to_owned(),
            });
        }
        Ok(value as u16)
    }

    /// The day of the year.
    pub(super) fn day_of_year(&self) -> Result<u16, Unusable> {
        self.whole("day_of_year")
    }

    /// A date.
    pub(super) fn date(&self, name: &'static str) -> Result<NaiveDate, Unusable> {
        let text = self.text(name)?;
        series::read_date(text).ok_or_else(|| Unusable::Unread {
            field: name,
            text: shorten(text),
            expected: "a date such as 2026-03-01".to_owned(),
        })
    }

    /// A moment as days after noon UTC of 1 January 2000.
    pub(super) fn days_from_j2000(&self, name: &'static str) -> Result<f64, Unusable> {
        /// Noon UTC of 1 January 2000, in seconds of the Unix count.
        const J2000_S: f64 = 946_728_000.0;
        let text = self.text(name)?;
        let moment = DateTime::parse_from_rfc3339(text).map_err(|_| Unusable::Unread {
            field: name,
            text: shorten(text),
            expected: "a moment such as 2026-03-01T12:00:00Z".to_owned(),
        })?;
        #[expect(clippy::cast_precision_loss, reason = "seconds of some thousand years are exact")]
        let seconds = moment.timestamp() as f64;
        Ok((seconds - J2000_S) / 86_400.0)
    }
}

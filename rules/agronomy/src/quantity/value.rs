//! The inputs of a call, as given.

use std::borrow::Cow;

use serde_json::Value;

use super::error::QuantityError;

/// One input as given.
#[derive(Debug, Clone, PartialEq)]
pub enum InputValue {
    /// A number, in a unit or in the declared one.
    Number {
        /// The number.
        value: f64,
        /// Its unit; the declared one when absent.
        unit: Option<Cow<'static, str>>,
    },
    /// A word, a date, or a table of comma-separated values.
    Text(Cow<'static, str>),
    /// Numbers in order, all in one unit.
    Numbers {
        /// The numbers.
        values: Vec<f64>,
        /// Their unit; the declared one when absent.
        unit: Option<Cow<'static, str>>,
    },
}

/// The inputs of one call in the order given.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Inputs(Vec<(Cow<'static, str>, InputValue)>);

impl Inputs {
    /// No inputs yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// No inputs yet, with room for some.
    #[must_use]
    pub fn for_up_to(count: usize) -> Self {
        Self(Vec::with_capacity(count))
    }

    /// With a number in the declared unit.
    #[must_use]
    pub fn number(self, name: impl Into<Cow<'static, str>>, value: f64) -> Self {
        self.with(name, InputValue::Number { value, unit: None })
    }

    /// With a number in a unit of its own.
    #[must_use]
    pub fn measure(self, name: impl Into<Cow<'static, str>>, value: f64, unit: impl Into<Cow<'static, str>>) -> Self {
        self.with(name, InputValue::Number { value, unit: Some(unit.into()) })
    }

    /// With a word, a date or a table.
    #[must_use]
    pub fn text(self, name: impl Into<Cow<'static, str>>, text: impl Into<Cow<'static, str>>) -> Self {
        self.with(name, InputValue::Text(text.into()))
    }

    /// With any value. A name given twice is found out when the quantity is reckoned.
    #[must_use]
    pub fn with(mut self, name: impl Into<Cow<'static, str>>, value: InputValue) -> Self {
        self.0.push((name.into(), value));
        self
    }

    /// Name and value of each input, in the order given.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &InputValue)> {
        self.0.iter().map(|(name, value)| (&**name, value))
    }

    /// Reads an object of names and values. A value is `{"value": .., "unit": ".."}`, or bare: a number
    /// or list then stands in the declared unit, and yes or no may be `true` or `false`.
    ///
    /// # Errors
    /// [`QuantityError::NotAnObject`], or [`QuantityError::WrongKind`] for a value that is none of
    /// these, naming the field.
    pub fn from_json(quantity: &'static str, json: &Value) -> Result<Self, QuantityError> {
        let Value::Object(fields) = json else {
            return Err(QuantityError::NotAnObject);
        };
        fields
            .iter()
            .try_fold(Self::new(), |inputs, (name, json)| Ok(inputs.with(name.clone(), read(quantity, name, json)?)))
    }
}

const EXPECTED: &str = "a number, text, list of numbers, or an object of value and unit";

fn read(quantity: &'static str, name: &str, json: &Value) -> Result<InputValue, QuantityError> {
    let wrong =
        |got: String| QuantityError::WrongKind { quantity, field: name.to_owned(), got, expected: EXPECTED.to_owned() };
    let Value::Object(parts) = json else {
        return bare(json, None).ok_or_else(|| wrong(describe(json)));
    };
    if let Some(other) = parts.keys().find(|key| !["value", "unit"].contains(&key.as_str())) {
        return Err(wrong(format!("an object with `{}`", shorten(other))));
    }
    let unit = match parts.get("unit") {
        None | Some(Value::Null) => None,
        Some(Value::String(unit)) => Some(unit.clone().into()),
        Some(_) => return Err(wrong("an object whose unit is not text".to_owned())),
    };
    let value = parts.get("value").ok_or_else(|| wrong("an object without value".to_owned()))?;
    bare(value, unit).ok_or_else(|| wrong(describe(value)))
}

fn bare(json: &Value, unit: Option<Cow<'static, str>>) -> Option<InputValue> {
    match json {
        Value::Number(number) => Some(InputValue::Number { value: number.as_f64()?, unit }),
        Value::String(text) => Some(InputValue::Text(text.clone().into())),
        Value::Bool(yes) => Some(InputValue::Text(if *yes { "yes" } else { "no" }.into())),
        Value::Array(items) => {
            let values = items.iter().map(Value::as_f64).collect::<Option<Vec<_>>>()?;
            Some(InputValue::Numbers { values, unit })
        }
        Value::Null | Value::Object(_) => None,
    }
}

/// What a JSON value is, in words.
fn describe(json: &Value) -> String {
    match json {
        Value::Null => "null".to_owned(),
        Value::Bool(_) => "true or false".to_owned(),
        Value::Number(_) => "a number".to_owned(),
        Value::String(_) => "text".to_owned(),
        Value::Array(_) => "a list that is not all numbers".to_owned(),
        Value::Object(_) => "an object".to_owned(),
    }
}

/// A text short enough for a message.
pub(super) fn shorten(text: &str) -> String {
    if text.chars().count() > 60 { text.chars().take(57).chain("...".chars()).collect() } else { text.to_owned() }
}

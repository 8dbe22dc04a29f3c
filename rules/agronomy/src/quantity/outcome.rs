//! What a reckoning gives.

use std::borrow::Cow;

use serde_json::{Map, Value, json};

/// A number, a text, a list of numbers, or named parts.
#[derive(Debug, Clone, PartialEq)]
pub enum OutcomeValue {
    /// One finite number.
    Number(f64),
    /// A word.
    Text(String),
    /// Numbers in order, all in the one unit.
    List(Vec<f64>),
    /// Named parts, such as a table's row; each part's name carries its unit.
    Fields(Vec<(&'static str, OutcomeValue)>),
    /// Rows of named parts.
    Rows(Vec<Vec<(&'static str, OutcomeValue)>>),
    /// A number for each of some years, in order.
    Years(Vec<(i32, f64)>),
    /// Known not to exist, such as the frost of a year without any.
    Nothing,
}

impl OutcomeValue {
    pub(super) fn is_finite(&self) -> bool {
        match self {
            Self::Number(number) => number.is_finite(),
            Self::Text(_) | Self::Nothing => true,
            Self::List(numbers) => numbers.iter().all(|number| number.is_finite()),
            Self::Fields(fields) => fields.iter().all(|(_, value)| value.is_finite()),
            Self::Rows(rows) => rows.iter().flatten().all(|(_, value)| value.is_finite()),
            Self::Years(years) => years.iter().all(|(_, number)| number.is_finite()),
        }
    }

    // -0 becomes 0: adding the positive nought does just that.
    pub(super) fn without_negative_zero(self) -> Self {
        match self {
            Self::Number(number) => Self::Number(number + 0.0),
            Self::List(numbers) => Self::List(numbers.into_iter().map(|n| n + 0.0).collect()),
            Self::Years(years) => Self::Years(years.into_iter().map(|(year, n)| (year, n + 0.0)).collect()),
            other @ (Self::Text(_) | Self::Fields(_) | Self::Rows(_) | Self::Nothing) => other,
        }
    }

    /// As JSON: number, string, array, object or null.
    #[must_use]
    pub fn to_json(&self) -> Value {
        let object = |fields: &Vec<(&'static str, Self)>| {
            Value::Object(
                fields.iter().map(|(name, value)| ((*name).to_owned(), value.to_json())).collect::<Map<_, _>>(),
            )
        };
        match self {
            Self::Number(number) => json!(number),
            Self::Text(text) => json!(text),
            Self::List(numbers) => json!(numbers),
            Self::Fields(fields) => object(fields),
            Self::Rows(rows) => Value::Array(rows.iter().map(object).collect()),
            Self::Years(years) => Value::Object(
                years.iter().map(|(year, number)| (year.to_string(), json!(number))).collect::<Map<_, _>>(),
            ),
            Self::Nothing => Value::Null,
        }
    }
}

impl From<f64> for OutcomeValue {
    fn from(number: f64) -> Self {
        Self::Number(number)
    }
}

/// What a quantity's own formula gives back; the registry adds name, unit, method and source.
#[derive(Debug, Clone, PartialEq)]
pub struct Reckoned {
    pub(super) value: OutcomeValue,
    pub(super) unit: Option<Cow<'static, str>>,
    pub(super) notes: Vec<String>,
}

impl Reckoned {
    pub(super) fn text(text: impl Into<String>) -> Self {
        OutcomeValue::Text(text.into()).into()
    }

    pub(super) fn fields(fields: Vec<(&'static str, OutcomeValue)>) -> Self {
        OutcomeValue::Fields(fields).into()
    }

    /// In a unit other than the quantity's declared one.
    pub(super) fn in_unit(mut self, unit: impl Into<Cow<'static, str>>) -> Self {
        self.unit = Some(unit.into());
        self
    }

    /// With a remark on what was assumed.
    pub(super) fn note(mut self, note: impl Into<String>) -> Self {
        self.notes.push(note.into());
        self
    }
}

impl<T: Into<OutcomeValue>> From<T> for Reckoned {
    fn from(value: T) -> Self {
        Self { value: value.into(), unit: None, notes: Vec::new() }
    }
}

/// A reckoned quantity with all that is needed to trust it.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The quantity's name.
    pub quantity: &'static str,
    /// The value; its numbers are finite.
    pub value: OutcomeValue,
    /// The unit of the value; for named parts a description.
    pub unit: Cow<'static, str>,
    /// What was assumed or held at a limit; empty when nothing was.
    pub notes: Vec<String>,
    /// How it was reckoned.
    pub method: &'static str,
    /// Where the method comes from.
    pub source: &'static str,
}

impl Outcome {
    /// As a JSON object with `quantity`, `value`, `unit`, `notes`, `method` and `source`.
    #[must_use]
    pub fn to_json(&self) -> Value {
        json!({
            "quantity": self.quantity,
            "value": self.value.to_json(),
            "unit": self.unit,
            "notes": self.notes,
            "method": self.method,
            "source": self.source,
        })
    }
}

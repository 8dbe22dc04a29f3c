//! A quantity and its inputs as they are sent.

use lammas_agronomy::quantity::{Input, Kind, Quantity};
use serde::Serialize;
use utoipa::ToSchema;

/// Something that can be reckoned.
#[derive(Debug, Serialize, ToSchema)]
pub struct QuantityEntry {
    /// Its name, as in the path of the call that reckons it.
    name: &'static str,
    /// What it is, in a few words.
    title: &'static str,
    /// What it means and when to use it.
    about: &'static str,
    /// What goes in.
    inputs: Vec<QuantityInput>,
    /// The unit of the result; `-` for a bare number or a word.
    unit: &'static str,
    /// How it is reckoned.
    method: &'static str,
    /// Where the method comes from, with its equation or table.
    source: &'static str,
}

/// One input of a quantity.
#[derive(Debug, Serialize, ToSchema)]
pub struct QuantityInput {
    /// Its name.
    name: &'static str,
    /// What kind of value it is.
    kind: QuantityInputKind,
    /// What it is, and what holds when it is not given.
    about: &'static str,
    /// Whether it must be given.
    required: bool,
    /// The unit in which a bare number is read. Any other unit of the same measure may be given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    unit: Option<&'static str>,
    /// The least value, in that unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    min: Option<f64>,
    /// The greatest value, in that unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    max: Option<f64>,
    /// How many numbers there must be; any number of them where this is not there.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    count: Option<usize>,
    /// The words to choose from.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    choices: Option<&'static [&'static str]>,
}

/// The kind of an input.
#[derive(Debug, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum QuantityInputKind {
    /// A number with a unit.
    Number,
    /// A number in whatever unit: the result takes it on.
    Measure,
    /// Numbers in order, all in one unit.
    Numbers,
    /// One of some words.
    Choice,
    /// Any text.
    Text,
    /// A date, `2026-03-01`.
    Date,
    /// A moment, `2026-03-01T12:00:00Z`.
    Moment,
    /// A daily record as comma-separated values with a header, the first column `date`.
    Series,
}

impl From<&'static Quantity> for QuantityEntry {
    fn from(quantity: &'static Quantity) -> Self {
        Self {
            name: quantity.name,
            title: quantity.title,
            about: quantity.about,
            inputs: quantity.inputs.iter().map(QuantityInput::from).collect(),
            unit: quantity.unit,
            method: quantity.method,
            source: quantity.source,
        }
    }
}

impl From<&'static Input> for QuantityInput {
    fn from(input: &'static Input) -> Self {
        let (mut range, mut count, mut choices) = (None, None, None);
        let kind = match input.kind {
            Kind::Number { min, max, .. } => {
                range = Some((min, max));
                QuantityInputKind::Number
            }
            Kind::Measure { min, max } => {
                range = Some((min, max));
                QuantityInputKind::Measure
            }
            Kind::Numbers { min, max, count: length, .. } => {
                range = Some((min, max));
                count = Some(length);
                QuantityInputKind::Numbers
            }
            Kind::Row { min, max, .. } => {
                range = Some((min, max));
                QuantityInputKind::Numbers
            }
            Kind::Choice(words) => {
                choices = Some(words);
                QuantityInputKind::Choice
            }
            Kind::Text => QuantityInputKind::Text,
            Kind::Date => QuantityInputKind::Date,
            Kind::Moment => QuantityInputKind::Moment,
            Kind::Series => QuantityInputKind::Series,
        };
        Self {
            name: input.name,
            kind,
            about: input.about,
            required: input.required,
            unit: input.unit(),
            min: range.map(|(min, _)| min),
            max: range.map(|(_, max)| max),
            count,
            choices,
        }
    }
}

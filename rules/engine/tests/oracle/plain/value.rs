//! What a fact turns out to be, by name and in the base unit of its dimension.

use std::cmp::Ordering;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;
use lammas_engine::lang::ast::Comparison;
use lammas_engine::unit::{Dimension, Unit};

/// A value, or the want of one.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Value {
    Unknown,
    Absent,
    Yes(bool),
    /// In the base unit: °C, K, days, °Cd, mm, m², L, g, %, mm/day, km/h, kPa, dS/m, g/m².
    Number(f64, Dimension),
    On(Day),
    Word(String),
    /// An ISO 3166 code; a coarser one holds of it.
    Region(String),
}

/// A fact that was looked at.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Read {
    pub(crate) name: String,
    /// With its arguments.
    pub(crate) written: String,
    pub(crate) of_the_day: bool,
    pub(crate) known: bool,
    pub(crate) origin: Origin,
}

/// Two values count as equal within this: facts have steps, the noise of sums does not count.
const NOISE: f64 = 1e-9;

impl Value {
    /// A number of a unit.
    pub(crate) fn of(number: f64, symbol: &str) -> Self {
        let unit = Unit::find(symbol).unwrap();
        Self::Number(base(number, unit), unit.dimension)
    }

    /// The value rounded to a step in a unit, half away from zero.
    pub(crate) fn stepped(number: f64, step: f64, symbol: &str) -> Self {
        Self::of(to_step(number, step), symbol)
    }
}

/// `number` of the unit in the base unit of its dimension.
pub(crate) fn base(number: f64, unit: &'static Unit) -> f64 {
    let symbol = match unit.dimension {
        Dimension::Temperature => "°C",
        Dimension::TemperatureDifference => "K",
        Dimension::Duration => "day",
        Dimension::HeatSum => "°Cd",
        Dimension::Length => "mm",
        Dimension::Area => "m²",
        Dimension::Volume => "L",
        Dimension::Mass => "g",
        Dimension::Share => "%",
        Dimension::WaterRate => "mm/day",
        Dimension::Speed => "km/h",
        Dimension::Pressure => "kPa",
        Dimension::Salinity => "dS/m",
        Dimension::MassPerArea => "g/m²",
        Dimension::Plain => "",
    };
    unit.convert(number, Unit::find(symbol).unwrap())
}

/// Half away from zero; what is within 1e-9 of a half counts as one.
pub(crate) fn to_step(number: f64, step: f64) -> f64 {
    let steps = (number.abs() / step + 0.5 + NOISE).floor() * step;
    if number < 0.0 { -steps } else { steps }
}

/// The order of two values that can be compared; words by their place in an ordered list.
pub(crate) fn order(a: &Value, b: &Value) -> Option<Ordering> {
    match (a, b) {
        (Value::Number(x, _), Value::Number(y, _)) => {
            Some(if (x - y).abs() < NOISE { Ordering::Equal } else { x.partial_cmp(y)? })
        }
        (Value::On(x), Value::On(y)) => Some(x.cmp(y)),
        (Value::Yes(x), Value::Yes(y)) => Some(x.cmp(y)),
        (Value::Region(here), Value::Word(code)) => {
            Some(if is_within(here, code) { Ordering::Equal } else { Ordering::Less })
        }
        (Value::Word(x), Value::Word(y)) if x == y => Some(Ordering::Equal),
        (Value::Word(x), Value::Word(y)) => {
            let list = ORDERED.iter().find(|list| list.contains(&x.as_str()) && list.contains(&y.as_str()));
            let place = |word: &String| list.and_then(|list| list.iter().position(|w| w == word));
            // Words without an order differ; which way does not matter, since only `=` and `!=` may ask.
            Some(place(x).cmp(&place(y)).then(x.cmp(y)))
        }
        _ => None,
    }
}

const ORDERED: [&[&str]; 4] = [
    &["slight", "moderate", "severe"],
    &["weak", "normal", "strong"],
    &["sheltered", "open", "windy"],
    &["dry", "moist", "wet"],
];

/// What a comparison says: absent is false but for `!=`, and outweighs unknown.
pub(crate) fn compare(a: &Value, comparison: Comparison, b: &Value) -> Option<bool> {
    if *a == Value::Absent || *b == Value::Absent {
        return Some(comparison == Comparison::Unequal);
    }
    if *a == Value::Unknown || *b == Value::Unknown {
        return None;
    }
    // Said too coarsely to tell.
    if let (Value::Region(here), Value::Word(code)) = (a, b)
        && here != code
        && is_within(code, here)
    {
        return None;
    }
    let order = order(a, b).unwrap_or_else(|| panic!("{a:?} and {b:?} can't be compared"));
    Some(match comparison {
        Comparison::Less => order.is_lt(),
        Comparison::AtMost => order.is_le(),
        Comparison::More => order.is_gt(),
        Comparison::AtLeast => order.is_ge(),
        Comparison::Equal => order.is_eq(),
        Comparison::Unequal => order.is_ne(),
    })
}

/// Whether a region is another or lies in it.
fn is_within(inner: &str, outer: &str) -> bool {
    inner == outer || inner.strip_prefix(outer).is_some_and(|rest| rest.starts_with('-'))
}

/// A sum or difference. Absent outweighs unknown.
pub(crate) fn add(a: &Value, b: &Value, sign: f64) -> Value {
    use Dimension::{Duration, Temperature, TemperatureDifference};
    if *a == Value::Absent || *b == Value::Absent {
        return Value::Absent;
    }
    match (a, b) {
        (Value::Unknown, _) | (_, Value::Unknown) => Value::Unknown,
        (Value::Number(x, Temperature), Value::Number(y, Temperature)) if sign < 0.0 => {
            Value::Number(x - y, TemperatureDifference)
        }
        (Value::Number(x, dimension), Value::Number(y, _)) => Value::Number(x + sign * y, *dimension),
        (Value::On(day), Value::Number(days, Duration)) => Value::On(*day + whole(sign * days)),
        (Value::On(x), Value::On(y)) if sign < 0.0 => Value::Number(f64::from(*x - *y), Duration),
        _ => panic!("{a:?} and {b:?} can't be added"),
    }
}

#[expect(clippy::cast_possible_truncation, reason = "days are whole and few")]
pub(crate) fn whole(days: f64) -> i32 {
    days.round() as i32
}

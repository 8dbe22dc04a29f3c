//! The door of quantities: everything that can be reckoned, by name.
//!
//! Rules call quantities by name for their amounts, and the command line, the HTTP interface and the
//! published checks go through the same door.
//!
//! To add one:
//! 1. write the formula in its own module of this crate, with source and tests;
//! 2. write a [`Quantity`] in the file of its field below: name in the field's standard terms, inputs
//!    with unit and range (shared ones stand in `inputs.rs`), unit of the result, method, source;
//! 3. add a check with values from outside the project to `tests/published`.
//!
//! The tests of this file walk the whole list: names are unique, units are readable, and no input
//! within its range gives anything but a finite value or an error that says why.

mod amendments;
mod chill;
mod crop;
mod degree_days;
mod disease;
mod error;
mod et0;
mod extremes;
mod feeding;
mod frost;
mod given;
mod hardiness;
mod heat_days;
mod heat_stress;
mod hourly;
mod humidity;
mod inputs;
mod irrigation;
mod koppen;
mod layers;
mod mixing;
mod outcome;
mod pests;
mod plant_need;
mod pot;
mod radiation;
mod record;
mod root_zone;
mod run_time;
mod series;
mod soak;
mod soil_ph;
mod solar;
mod spray;
mod sun_times;
mod units;
mod value;

pub use error::QuantityError;
pub use given::Given;
pub use inputs::{Input, Kind};
pub use outcome::{Outcome, OutcomeValue, Reckoned};
pub use value::{InputValue, Inputs};

use std::borrow::Cow;

use crate::bounds::Unusable;

/// One thing that can be reckoned.
#[derive(Debug)]
pub struct Quantity {
    /// Its name: lower case, words joined by underscores.
    pub name: &'static str,
    /// What it is, in a few words.
    pub title: &'static str,
    /// The inputs in their order.
    pub inputs: &'static [Input],
    /// The unit of the result.
    pub unit: &'static str,
    /// What it means and when to use it.
    pub about: &'static str,
    /// How it is reckoned.
    pub method: &'static str,
    /// Where the method comes from, with equation or table number.
    pub source: &'static str,
    reckon: fn(&Given<'_>) -> Result<Reckoned, Unusable>,
}

/// The list, one line a field.
const FIELDS: &[&[Quantity]] = &[
    solar::ALL,
    radiation::ALL,
    humidity::ALL,
    et0::ALL,
    degree_days::ALL,
    crop::ALL,
    root_zone::ALL,
    plant_need::ALL,
    soak::ALL,
    pot::ALL,
    irrigation::ALL,
    feeding::ALL,
    hardiness::ALL,
    heat_days::ALL,
    frost::ALL,
    koppen::ALL,
    units::ALL,
    sun_times::ALL,
    heat_stress::ALL,
    soil_ph::ALL,
    amendments::ALL,
    layers::ALL,
    mixing::ALL,
    run_time::ALL,
    chill::ALL,
    pests::ALL,
    disease::ALL,
    spray::ALL,
];

/// Every quantity, field by field.
pub fn all() -> impl Iterator<Item = &'static Quantity> {
    FIELDS.iter().copied().flatten()
}

/// The quantity of a name.
///
/// # Errors
/// [`QuantityError::UnknownQuantity`], with the nearest name if one is near.
pub fn find(name: &str) -> Result<&'static Quantity, QuantityError> {
    all()
        .find(|quantity| quantity.name == name)
        .ok_or_else(|| QuantityError::UnknownQuantity { name: name.to_owned(), nearest: nearest(name) })
}

/// The name nearest to a text that names no quantity, if one is near enough to be meant.
#[must_use]
pub fn nearest(name: &str) -> Option<&'static str> {
    crate::nearest::nearest(name, all().map(|quantity| quantity.name))
}

impl Quantity {
    /// The input of a name.
    #[must_use]
    pub fn input(&self, name: &str) -> Option<&'static Input> {
        self.inputs.iter().find(|input| input.name == name)
    }

    /// Reckons from inputs in any unit that measures the right thing.
    ///
    /// # Errors
    /// [`QuantityError`], naming quantity and field: an unknown, repeated or missing input, an unknown
    /// or unfit unit, a value out of range, or values that do not go together.
    pub fn reckon(&self, inputs: &Inputs) -> Result<Outcome, QuantityError> {
        let given = given::check(self, inputs)?;
        self.outcome(&given)
    }

    /// Reckons from a JSON object of names and values; see [`Inputs::from_json`].
    ///
    /// # Errors
    /// As [`Self::reckon`] and [`Inputs::from_json`].
    pub fn reckon_json(&self, json: &serde_json::Value) -> Result<Outcome, QuantityError> {
        self.reckon(&Inputs::from_json(self.name, json)?)
    }

    /// Reckons a single number from numbers in the declared units.
    ///
    /// # Errors
    /// As [`Self::reckon`]; also [`QuantityError::NotOneNumber`] for a quantity whose result is text, a
    /// list or a table row.
    pub fn reckon_numbers(&self, numbers: &[(&str, f64)]) -> Result<f64, QuantityError> {
        let given = given::check_numbers(self, numbers)?;
        match self.outcome(&given)?.value {
            OutcomeValue::Number(number) => Ok(number),
            OutcomeValue::Text(_)
            | OutcomeValue::List(_)
            | OutcomeValue::Fields(_)
            | OutcomeValue::Rows(_)
            | OutcomeValue::Years(_)
            | OutcomeValue::Nothing => Err(QuantityError::NotOneNumber { quantity: self.name }),
        }
    }

    fn outcome(&self, given: &Given<'_>) -> Result<Outcome, QuantityError> {
        let reckoned = (self.reckon)(given).map_err(|reason| QuantityError::Refused { quantity: self.name, reason })?;
        if !reckoned.value.is_finite() {
            return Err(QuantityError::NotFinite { quantity: self.name });
        }
        Ok(Outcome {
            quantity: self.name,
            value: reckoned.value.without_negative_zero(),
            unit: reckoned.unit.unwrap_or(Cow::Borrowed(self.unit)),
            notes: reckoned.notes,
            method: self.method,
            source: self.source,
        })
    }
}

#[cfg(test)]
mod tests;

//! What can be wrong with a call of a quantity.

use crate::bounds::Unusable;

/// Why a quantity could not be reckoned. Every text names the quantity and the field.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum QuantityError {
    /// No quantity of this name.
    #[error("quantity `{name}` is not known{}", did_you_mean(*nearest))]
    UnknownQuantity {
        /// The name as given.
        name: String,
        /// The nearest known name.
        nearest: Option<&'static str>,
    },
    /// The inputs are not an object of names and values.
    #[error("inputs are not an object of names and values")]
    NotAnObject,
    /// An input that the quantity does not take.
    #[error("{quantity} takes no input `{name}`{}; its inputs are {allowed}", did_you_mean(*nearest))]
    UnknownInput {
        /// The quantity's name.
        quantity: &'static str,
        /// The name as given.
        name: String,
        /// The nearest input name.
        nearest: Option<&'static str>,
        /// The input names, joined.
        allowed: String,
    },
    /// An input that stands there twice.
    #[error("{quantity}: input `{field}` is given twice")]
    Repeated {
        /// The quantity's name.
        quantity: &'static str,
        /// The input's name.
        field: &'static str,
    },
    /// A required input is not there.
    #[error("{quantity}: input `{field}` is missing, expected {expected}")]
    MissingInput {
        /// The quantity's name.
        quantity: &'static str,
        /// The input's name.
        field: &'static str,
        /// Kind, unit and range.
        expected: String,
    },
    /// Text where a number is wanted, or the like.
    #[error("{quantity}: input `{field}` is {got}, expected {expected}")]
    WrongKind {
        /// The quantity's name.
        quantity: &'static str,
        /// The input's name.
        field: String,
        /// What was given.
        got: String,
        /// Kind, unit and range.
        expected: String,
    },
    /// A unit that is not known, or measures something else.
    #[error("{quantity}: input `{field}`: {reason}, expected {expected}")]
    Unit {
        /// The quantity's name.
        quantity: &'static str,
        /// The input's name.
        field: &'static str,
        /// What is wrong with the unit, with its text.
        reason: crate::units::UnitFault,
        /// Kind, unit and range.
        expected: String,
    },
    /// A number outside its range, after turning it into the declared unit.
    #[error("{quantity}: input `{field}` is {value} {unit}, allowed are {min} to {max} {unit}")]
    OutOfRange {
        /// The quantity's name.
        quantity: &'static str,
        /// The input's name.
        field: &'static str,
        /// The value in `unit`.
        value: f64,
        /// The declared unit.
        unit: &'static str,
        /// The least allowed value.
        min: f64,
        /// The greatest allowed value.
        max: f64,
    },
    /// Text that is none of the choices.
    #[error("{quantity}: input `{field}` is `{text}`, allowed are {allowed}")]
    NoChoice {
        /// The quantity's name.
        quantity: &'static str,
        /// The input's name.
        field: &'static str,
        /// The text as given.
        text: String,
        /// The choices, joined.
        allowed: String,
    },
    /// Inputs that are each allowed and together cannot be used.
    #[error("{quantity}: {reason}")]
    Refused {
        /// The quantity's name.
        quantity: &'static str,
        /// Which inputs, and why.
        reason: Unusable,
    },
    /// The result is too great to be a number.
    #[error("{quantity}: result is not a finite number")]
    NotFinite {
        /// The quantity's name.
        quantity: &'static str,
    },
    /// A single number was wanted from a quantity that gives something else.
    #[error("{quantity}: result is not a single number")]
    NotOneNumber {
        /// The quantity's name.
        quantity: &'static str,
    },
}

impl QuantityError {
    /// The input that the error is about, when it is about one.
    #[must_use]
    pub fn field(&self) -> Option<&str> {
        match self {
            Self::UnknownQuantity { .. } | Self::NotAnObject | Self::NotFinite { .. } | Self::NotOneNumber { .. } => {
                None
            }
            Self::UnknownInput { name, .. } => Some(name),
            Self::WrongKind { field, .. } => Some(field),
            Self::Repeated { field, .. }
            | Self::MissingInput { field, .. }
            | Self::Unit { field, .. }
            | Self::OutOfRange { field, .. }
            | Self::NoChoice { field, .. } => Some(field),
            Self::Refused { reason, .. } => Some(match reason {
                Unusable::OutOfRange { field, .. }
                | Unusable::Missing { field, .. }
                | Unusable::Unread { field, .. }
                | Unusable::Contradiction { field, .. } => field,
                Unusable::Crossed { low_field, .. } => low_field,
            }),
        }
    }
}

fn did_you_mean(nearest: Option<&'static str>) -> String {
    nearest.map_or_else(String::new, |name| format!(" (did you mean `{name}`?)"))
}

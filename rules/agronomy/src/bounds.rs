//! Values that cannot be used, and the words that say why.

/// Why a value was refused. Every text names the field, the value, its unit and what is allowed.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Unusable {
    /// Outside the range in which the formula holds; a value that is not a number is outside every range.
    #[error("{field} is {value} {unit}, expected {min} to {max} {unit}")]
    OutOfRange {
        /// The input's name.
        field: &'static str,
        /// The value as given, in `unit`.
        value: f64,
        /// The unit of value and limits.
        unit: &'static str,
        /// The least allowed value.
        min: f64,
        /// The greatest allowed value.
        max: f64,
    },
    /// Two values that stand in the wrong order, such as a minimum above its maximum.
    #[error("{low_field} is {low} {unit}, above {high_field} which is {high} {unit}")]
    Crossed {
        /// The input that should be the lower one.
        low_field: &'static str,
        /// Its value in `unit`.
        low: f64,
        /// The input that should be the higher one.
        high_field: &'static str,
        /// Its value in `unit`.
        high: f64,
        /// The unit of both.
        unit: &'static str,
    },
    /// An input that the reckoning cannot do without.
    #[error("{field} is missing: {expected}")]
    Missing {
        /// The input's name.
        field: &'static str,
        /// What would do.
        expected: String,
    },
    /// Text that cannot be read as what the field asks for.
    #[error("{field} is `{text}`, expected {expected}")]
    Unread {
        /// The input's name.
        field: &'static str,
        /// The text as given.
        text: String,
        /// What would do.
        expected: String,
    },
    /// Two inputs that say the same thing twice, or contradict each other.
    #[error("{field} and {other} contradict each other: {reason}")]
    Contradiction {
        /// The first input's name.
        field: &'static str,
        /// The second input's name.
        other: &'static str,
        /// What does not fit.
        reason: String,
    },
}

impl Unusable {
    pub(crate) fn missing(field: &'static str, expected: &str) -> Self {
        Self::Missing { field, expected: expected.to_owned() }
    }

    pub(crate) fn said_twice(field: &'static str, other: &'static str) -> Self {
        let reason = "they say the same thing, give one".to_owned();
        Self::Contradiction { field, other, reason }
    }
}

/// Gives `value` back when it lies in `min..=max`.
///
/// # Errors
/// [`Unusable::OutOfRange`], also for a value that is not a number.
pub fn within(field: &'static str, value: f64, unit: &'static str, min: f64, max: f64) -> Result<f64, Unusable> {
    if (min..=max).contains(&value) { Ok(value) } else { Err(Unusable::OutOfRange { field, value, unit, min, max }) }
}

/// Passes when `low <= high`.
///
/// # Errors
/// [`Unusable::Crossed`].
pub fn in_order(
    low_field: &'static str,
    low: f64,
    high_field: &'static str,
    high: f64,
    unit: &'static str,
) -> Result<(), Unusable> {
    if low <= high { Ok(()) } else { Err(Unusable::Crossed { low_field, low, high_field, high, unit }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_refused_value_is_named_with_its_unit_and_range() {
        let refused = within("tmin", 99.0, "C", -90.0, 60.0).unwrap_err();
        assert_eq!(refused.to_string(), "tmin is 99 C, expected -90 to 60 C");
    }

    #[test]
    fn a_value_that_is_not_a_number_is_in_no_range() {
        assert!(within("tmin", f64::NAN, "C", -90.0, 60.0).is_err());
        assert!(within("tmin", f64::INFINITY, "C", -90.0, 60.0).is_err());
        assert!(in_order("tmin", f64::NAN, "tmax", 1.0, "C").is_err());
    }

    #[test]
    fn limits_themselves_are_allowed() {
        assert_eq!(within("latitude", -90.0, "deg", -90.0, 90.0), Ok(-90.0));
        assert_eq!(in_order("tmin", 4.0, "tmax", 4.0, "C"), Ok(()));
    }
}

//! What a fact turns out to be.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;

/// A value, or the want of one. *Unknown*: nobody said. *Absent*: known not to exist.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value {
    /// Nobody said.
    Unknown,
    /// Known not to exist.
    Absent,
    /// Yes or no.
    Truth(bool),
    /// A number in the fact's unit, rounded to its step.
    Number(f64),
    /// A day.
    Date(Day),
    /// One of a list, by its position in it.
    Choice(u16),
}

impl Value {
    /// Whether it is neither unknown nor absent.
    #[must_use]
    pub const fn is_there(self) -> bool {
        !matches!(self, Self::Unknown | Self::Absent)
    }

    /// The number, if it is one.
    #[must_use]
    pub const fn number(self) -> Option<f64> {
        match self {
            Self::Number(n) => Some(n),
            _ => None,
        }
    }
}

/// A value and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The value.
    pub value: Value,
    /// The weakest origin of what went into it.
    pub origin: Origin,
}

impl Reading {
    /// Nobody said.
    pub const UNKNOWN: Self = Self { value: Value::Unknown, origin: Origin::Given };

    /// A value of this origin.
    #[must_use]
    pub const fn new(value: Value, origin: Origin) -> Self {
        Self { value, origin }
    }
}

/// Three values.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Truth {
    /// It is not so.
    False,
    /// Nobody said.
    Unknown,
    /// It is so.
    True,
}

impl Truth {
    /// Known.
    #[must_use]
    pub const fn known(b: bool) -> Self {
        if b { Self::True } else { Self::False }
    }

    /// False wins, then unknown.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        self.min(other)
    }

    /// True wins, then unknown.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        self.max(other)
    }

    /// `not unknown` is unknown.
    #[must_use]
    pub const fn not(self) -> Self {
        match self {
            Self::False => Self::True,
            Self::Unknown => Self::Unknown,
            Self::True => Self::False,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Truth::{self, False, True, Unknown};

    #[test]
    fn the_table_of_three_values() {
        for (p, q, and, or) in [
            (True, Unknown, Unknown, True),
            (False, Unknown, False, Unknown),
            (Unknown, Unknown, Unknown, Unknown),
            (True, False, False, True),
        ] {
            assert_eq!((Truth::and(p, q), Truth::or(p, q)), (and, or), "{p:?} {q:?}");
            assert_eq!((Truth::and(q, p), Truth::or(q, p)), (and, or), "{q:?} {p:?}");
        }
        assert_eq!(Unknown.not(), Unknown);
    }
}

//! Units of measure, with exact factors, and how to turn one into another.
//!
//! A unit is read from its text: a name of the [`table`], or a product, quotient or power of such names
//! (`mm/d`, `MJ m-2 d-1`, `lb/1000ft2`, `kPa C-1`). Factors are whole-number fractions of the base units
//! metre, kilogram, second, kelvin, siemens and radian, so a conversion is rounded once.
//!
//! Temperatures are affine and stand alone: `C`, `F` and `kelvin` are readings of a thermometer. A
//! *difference* of temperatures is another thing and another unit, `K`; inside a product (`C d`,
//! `kPa C-1`) a degree is always a difference.

mod read;
pub mod table;

use core::fmt;

pub use read::read;

/// Exponents of metre, kilogram, second, kelvin, siemens and radian, counted in halves, so that
/// `C^-0.5` has a dimension too; the last one marks a thermometer's reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dimension(pub(crate) [i8; 7]);

impl Dimension {
    /// Without dimension: shares, counts, factors.
    pub const NONE: Self = Self([0; 7]);
    /// m.
    pub const LENGTH: Self = Self([2, 0, 0, 0, 0, 0, 0]);
    /// m2.
    pub const AREA: Self = Self([4, 0, 0, 0, 0, 0, 0]);
    /// m3.
    pub const VOLUME: Self = Self([6, 0, 0, 0, 0, 0, 0]);
    /// kg.
    pub const MASS: Self = Self([0, 2, 0, 0, 0, 0, 0]);
    /// s.
    pub const TIME: Self = Self([0, 0, 2, 0, 0, 0, 0]);
    /// m s-1.
    pub const SPEED: Self = Self([2, 0, -2, 0, 0, 0, 0]);
    /// kg m-1 s-2.
    pub const PRESSURE: Self = Self([-2, 2, -4, 0, 0, 0, 0]);
    /// kg m2 s-2.
    pub const ENERGY: Self = Self([4, 2, -4, 0, 0, 0, 0]);
    /// kg m2 s-3.
    pub const POWER: Self = Self([4, 2, -6, 0, 0, 0, 0]);
    /// A difference of temperatures, K.
    pub const DIFFERENCE: Self = Self([0, 0, 0, 2, 0, 0, 0]);
    /// K s.
    pub const DEGREE_DAYS: Self = Self([0, 0, 2, 2, 0, 0, 0]);
    /// S.
    pub const CONDUCTANCE: Self = Self([0, 0, 0, 0, 2, 0, 0]);
    /// rad.
    pub const ANGLE: Self = Self([0, 0, 0, 0, 0, 2, 0]);
    /// A thermometer's reading.
    pub const READING: Self = Self([0, 0, 0, 0, 0, 0, 1]);
}

/// A factor to the base unit: `numerator / denominator`, times pi to a power.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Factor {
    pub(crate) numerator: u128,
    pub(crate) denominator: u128,
    pub(crate) pi_power: i8,
}

impl Factor {
    /// One.
    pub const ONE: Self = Self::of(1, 1);

    /// A whole-number fraction; neither part may be 0.
    #[must_use]
    pub const fn of(numerator: u128, denominator: u128) -> Self {
        Self { numerator, denominator, pi_power: 0 }
    }

    /// The product, or nothing when the whole numbers grow too long.
    fn times(self, other: Self) -> Option<Self> {
        // Crosswise first, so that the products stay as short as they can.
        let left = gcd(self.numerator, other.denominator);
        let right = gcd(other.numerator, self.denominator);
        Some(Self {
            numerator: (self.numerator / left).checked_mul(other.numerator / right)?,
            denominator: (self.denominator / right).checked_mul(other.denominator / left)?,
            pi_power: self.pi_power.checked_add(other.pi_power)?,
        })
    }

    fn inverse(self) -> Self {
        Self { numerator: self.denominator, denominator: self.numerator, pi_power: -self.pi_power }
    }

    #[expect(clippy::cast_precision_loss, reason = "the one rounding of a conversion happens here")]
    fn value(self) -> f64 {
        let mut value = self.numerator as f64 / self.denominator as f64;
        for _ in 0..self.pi_power.unsigned_abs() {
            if self.pi_power > 0 {
                value *= core::f64::consts::PI;
            } else {
                value /= core::f64::consts::PI;
            }
        }
        value
    }
}

/// The greatest common divisor, at least 1.
fn gcd(mut a: u128, mut b: u128) -> u128 {
    // Short numbers are the usual ones, and divided much faster.
    if let (Ok(mut a), Ok(mut b)) = (u64::try_from(a), u64::try_from(b)) {
        while b != 0 {
            (a, b) = (b, a % b);
        }
        return u128::from(a.max(1));
    }
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.max(1)
}

/// A unit as read: what it measures and how it stands to the base unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Unit {
    pub(crate) text: String,
    pub(crate) dimension: Dimension,
    pub(crate) factor: Factor,
    /// What this unit shows at the base's nought: 32 for F, 0 for all but thermometers.
    pub(crate) nought: f64,
}

impl Unit {
    /// What it measures.
    #[must_use]
    pub fn dimension(&self) -> Dimension {
        self.dimension
    }

    fn times(&self, other: &Self) -> Option<Self> {
        let mut exponents = self.dimension.0;
        for (mine, theirs) in exponents.iter_mut().zip(other.dimension.0) {
            *mine = mine.checked_add(theirs)?;
        }
        Some(Self {
            text: String::new(),
            dimension: Dimension(exponents),
            factor: self.factor.times(other.factor)?,
            nought: 0.0,
        })
    }

    /// The unit to a power counted in halves; a half power only of a unit whose factor is 1.
    fn power(&self, halves: i8) -> Option<Self> {
        let mut exponents = self.dimension.0;
        for exponent in &mut exponents {
            let doubled = exponent.checked_mul(halves)?;
            *exponent = doubled / 2;
        }
        let mut factor = Factor::ONE;
        if halves % 2 == 0 {
            for _ in 0..(halves / 2).unsigned_abs() {
                factor = factor.times(self.factor)?;
            }
            if halves < 0 {
                factor = factor.inverse();
            }
        } else if self.factor != Factor::ONE {
            return None;
        }
        Some(Self { text: String::new(), dimension: Dimension(exponents), factor, nought: 0.0 })
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

/// Why a unit was refused.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum UnitFault {
    /// No unit of this text is known.
    #[error("unit `{text}` is not known")]
    Unknown {
        /// The text as given.
        text: String,
    },
    /// Two units that measure different things.
    #[error("`{from}` cannot be turned into `{to}`: they measure different things")]
    Different {
        /// The unit given.
        from: String,
        /// The unit wanted.
        to: String,
    },
}

/// The way from one unit to another that measures the same, worked out once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conversion {
    from_nought: f64,
    factor: f64,
    to_nought: f64,
}

impl Conversion {
    /// From one unit to another.
    ///
    /// # Errors
    /// [`UnitFault::Different`] when the units measure different things.
    pub fn between(from: &Unit, to: &Unit) -> Result<Self, UnitFault> {
        let different = || UnitFault::Different { from: from.text.clone(), to: to.text.clone() };
        if from.dimension != to.dimension {
            return Err(different());
        }
        let factor = from.factor.times(to.factor.inverse()).ok_or_else(different)?;
        Ok(Self { from_nought: from.nought, factor: factor.value(), to_nought: to.nought })
    }

    /// A value of the first unit in the second.
    #[must_use]
    pub fn of(self, value: f64) -> f64 {
        (value - self.from_nought) * self.factor + self.to_nought
    }
}

/// Turns a value in one unit into another that measures the same.
///
/// # Errors
/// [`UnitFault::Different`] when the units measure different things.
pub fn convert(value: f64, from: &Unit, to: &Unit) -> Result<f64, UnitFault> {
    Ok(Conversion::between(from, to)?.of(value))
}

/// Turns a value between two units given by their texts; the same text twice gives the value back
/// untouched.
///
/// # Errors
/// [`UnitFault`] for an unknown unit or two that measure different things.
pub fn convert_text(value: f64, from: &str, to: &str) -> Result<f64, UnitFault> {
    if from == to {
        return Ok(value);
    }
    convert(value, &read(from)?, &read(to)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(value: f64, from: &str, to: &str, expected: f64) {
        let got = convert_text(value, from, to).unwrap();
        assert!(
            (got - expected).abs() <= 4.0 * f64::EPSILON * expected.abs(),
            "{value} {from} -> {got} {to}, not {expected}"
        );
    }

    #[test]
    fn definitions_hold_to_the_last_digit() {
        // NIST Special Publication 811 (2008), appendix B, exact factors in bold (from memory); and
        // the definitions of 1959: inch 25.4 mm, pound 0.45359237 kg, US gallon 231 cubic inches.
        for (value, from, to, expected) in [
            (1.0, "in", "mm", 25.4),
            (1.0, "ft", "m", 0.3048),
            (1.0, "gal", "L", 3.785_411_784),
            (1.0, "lb", "g", 453.592_37),
            (1.0, "oz", "g", 28.349_523_125),
            (1.0, "mph", "m/s", 0.447_04),
            (1.0, "acre", "m2", 4_046.856_422_4),
            (32.0, "F", "C", 0.0),
            (-40.0, "F", "C", -40.0),
            (100.0, "C", "F", 212.0),
            (0.0, "C", "kelvin", 273.15),
            (1.0, "km/d", "m/s", 1000.0 / 86_400.0),
            (1.0, "W/m2", "MJ m-2 d-1", 0.0864),
            (1.0, "MJ/m²/day", "MJ m-2 d-1", 1.0),
            (180.0, "deg", "rad", core::f64::consts::PI),
            (1.0, "L/m2", "mm", 1.0),
            (1.0, "lb/1000ft2", "g/m2", 453.592_37 / 92.903_04),
            (1.0, "lb N per 1000 sq ft", "lb/(1000*foot**2)", 1.0),
            (9.0, "F d", "C d", 5.0),
            (50.0, "%", "-", 0.5),
            (1.0, "week", "d", 7.0),
            (1.0, "dS/m", "mS/cm", 1.0),
        ] {
            check(value, from, to, expected);
        }
    }

    #[test]
    fn a_reading_is_not_a_difference() {
        assert!(convert_text(1.0, "C", "K").is_err());
        check(9.0, "delta_F", "K", 5.0);
        assert_eq!(
            convert_text(1.0, "mm", "C").unwrap_err().to_string(),
            "`mm` cannot be turned into `C`: they measure different things"
        );
    }

    #[test]
    fn every_unit_that_rules_may_write_can_be_read() {
        for text in [
            "°C", "°F", "K", "°Cd", "°Fd", "mm", "cm", "m", "in", "ft", "m²", "ft²", "L", "gal", "oz", "g", "lb", "kg",
            "%", "h", "day", "days", "week", "weeks", "year", "years", "mm/day", "km/h", "m/s", "mph", "kPa", "dS/m",
            "g/m²", "L/day", "kg/m³",
        ] {
            assert!(read(text).is_ok(), "{text}");
        }
    }

    #[test]
    fn nonsense_is_refused_with_its_own_text() {
        for text in ["furlongs", "", "mm/", "(mm", "mm**", "m^^2", "1/0", "9e99", "F^0.5", "é"] {
            let refused = read(text).unwrap_err();
            assert_eq!(refused, UnitFault::Unknown { text: text.to_owned() });
        }
        // However long, a text is refused and not worked on.
        assert!(read(&"(".repeat(100_000)).is_err());
    }

    #[test]
    fn every_named_unit_goes_to_its_base_and_back() {
        for named in table::NAMED {
            for name in named.names {
                let unit = read(name).unwrap();
                for other in table::NAMED.iter().filter(|o| o.dimension == named.dimension) {
                    let there = read(other.names[0]).unwrap();
                    let back = convert(convert(12.5, &unit, &there).unwrap(), &there, &unit).unwrap();
                    assert!((back - 12.5).abs() < 1e-9, "{name} {}: {back}", other.names[0]);
                }
            }
        }
    }

    #[test]
    fn no_name_stands_twice_in_the_table() {
        let mut names: Vec<_> = table::NAMED.iter().flat_map(|named| named.names).collect();
        names.sort();
        for pair in names.windows(2) {
            assert_ne!(pair[0], pair[1]);
        }
    }
}

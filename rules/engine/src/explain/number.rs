//! Numbers as they are shown: rounded once, from the exact value, in both unit systems.

use lammas_agronomy::units::{self, Conversion};

use super::words::is_spanish;

/// Two significant digits below 100, three from there on; half away from zero.
#[must_use]
pub fn shown(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return 0.0;
    }
    let magnitude = libm::floor(libm::log10(value.abs()));
    let digits = if value.abs() < 100.0 { 2.0 } else { 3.0 };
    let places = digits - 1.0 - magnitude;
    let scale = libm::pow(10.0, places.abs());
    let round = |x: f64| (x.abs() + 0.5 + 1e-9).floor() * if x < 0.0 { -1.0 } else { 1.0 };
    let rounded = if places >= 0.0 { round(value * scale) / scale } else { round(value / scale) * scale };
    if rounded == 0.0 { 0.0 } else { rounded }
}

/// A number without needless zeros.
#[must_use]
pub fn plain(value: f64) -> String {
    let rounded = (value.abs() * 1e6 + 0.5).floor() / 1e6;
    let signed = if value < 0.0 && rounded > 0.0 { -rounded } else { rounded };
    // Most are whole, and whole numbers are printed in a tenth of the time.
    #[expect(clippy::cast_possible_truncation, reason = "whole and within the type")]
    if rounded.fract() == 0.0 && rounded < 1e15 { (signed as i64).to_string() } else { signed.to_string() }
}

/// The unit that a gardener in the United States reads, for a unit of ours.
#[must_use]
pub fn us_unit(unit: &str) -> Option<&'static str> {
    Some(match unit {
        "L" => "gal",
        "mm" | "cm" => "in",
        "m" => "ft",
        "g" => "oz",
        "kg" => "lb",
        "m2" | "m²" => "ft2",
        "C" | "°C" => "F",
        "km/h" | "m/s" => "mph",
        "mm/d" | "mm/day" => "in/d",
        "g/m2" | "g/m²" => "lb/1000ft2",
        _ => return None,
    })
}

/// The way from a unit to that of the United States.
#[must_use]
pub fn us_conversion(unit: &str) -> Option<(Conversion, &'static str)> {
    let to = us_unit(unit)?;
    let ours = match unit {
        "°C" => "C",
        "m²" => "m2",
        "mm/day" => "mm/d",
        "g/m²" => "g/m2",
        other => other,
    };
    Conversion::between(&units::read(ours).ok()?, &units::read(to).ok()?).ok().map(|way| (way, to))
}

/// A value in the unit of the United States, exact.
#[must_use]
pub fn to_us(value: f64, unit: &str) -> Option<(f64, &'static str)> {
    us_conversion(unit).map(|(way, unit)| (way.of(value), unit))
}

/// A unit as it is written for people, behind a number, in a language: days and years have a plural.
#[must_use]
pub fn unit_behind<'u>(unit: &'u str, value: f64, language: &str) -> &'u str {
    let is_one = (value - 1.0).abs() < 1e-9;
    match (unit, is_spanish(language)) {
        ("d" | "day" | "days", false) => {
            if is_one {
                "day"
            } else {
                "days"
            }
        }
        ("d" | "day" | "days", true) => {
            if is_one {
                "día"
            } else {
                "días"
            }
        }
        ("year", false) => {
            if is_one {
                "year"
            } else {
                "years"
            }
        }
        ("year", true) => {
            if is_one {
                "año"
            } else {
                "años"
            }
        }
        ("mm/d" | "mm/day", true) => "mm/día",
        _ => unit_words(unit),
    }
}

/// A unit as it is written for people.
#[must_use]
pub fn unit_words(unit: &str) -> &str {
    match unit {
        "C" => "°C",
        "F" => "°F",
        "d" | "day" => "days",
        "m2" => "m²",
        "ft2" => "ft²",
        "g/m2" => "g/m²",
        "mm/d" => "mm/day",
        "in/d" => "in/day",
        "lb/1000ft2" => "lb/1000 ft²",
        "-" => "",
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_digits_below_a_hundred_and_three_above() {
        for (value, expected) in [
            (0.0, 0.0),
            (17.46, 17.0),
            (0.0449, 0.045),
            (99.9, 100.0),
            (123.4, 123.0),
            (1265.0, 1270.0),
            (6.25, 6.3),
            (-6.25, -6.3),
        ] {
            assert!((shown(value) - expected).abs() < 1e-9, "{value}: {}", shown(value));
        }
    }

    #[test]
    fn litres_are_gallons_for_those_who_want_them() {
        let (gallons, unit) = to_us(11.356_235_352, "L").unwrap();
        assert!((gallons - 3.0).abs() < 1e-9);
        assert_eq!(unit, "gal");
    }
}

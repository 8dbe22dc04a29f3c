//! Numbers moved by a step that a gardener would notice.

use crate::lang::ast::Literal;
use crate::unit::{Dimension, Unit};

/// The number lower and higher by a step. Own choices: 2 °C on the thermometer, 1 K between two readings, a quarter of a span
/// of time or of a quantity, ten in a hundred of a share, half a point of pH.
pub(super) fn steps(literal: &Literal) -> [Literal; 2] {
    let value = literal.value;
    let quarter = |least: f64, to: f64| ((value.abs() * 0.25) / to).round().max(least / to) * to;
    let whole = value.fract() == 0.0;
    let step = match Unit::find(&literal.unit).map(|unit| (unit.dimension, unit.symbol)) {
        Some((Dimension::Temperature, "°F")) => 4.0,
        Some((Dimension::Temperature, _)) => 2.0,
        Some((Dimension::TemperatureDifference, _)) => 1.0,
        Some((Dimension::Duration, "year")) if value < 1.0 => quarter(0.1, 0.1),
        Some((Dimension::Duration, "year")) => quarter(0.5, 0.5),
        Some((Dimension::Duration, _)) => quarter(1.0, 1.0),
        Some((Dimension::HeatSum, _)) => quarter(5.0, 5.0),
        Some((Dimension::Share, _)) if value < 20.0 => value / 2.0,
        Some((Dimension::Share, _)) => 10.0,
        Some((Dimension::Plain, _)) if value.abs() < 1.0 => 0.2,
        Some((Dimension::Plain, _)) if whole => 1.0,
        Some((Dimension::Plain, _)) => 0.5,
        _ => value.abs() * 0.25,
    };
    let tidy = |value: f64| (value * 1e6).round() / 1e6;
    let at = |value: f64| Literal { value: tidy(value), unit: literal.unit.clone() };
    [at(value - step), at(value + step)]
}

/// Half of a number of days, at least one.
pub(super) const fn half(days: u16) -> u16 {
    if days < 2 { 0 } else { days / 2 }
}

/// Both ends of a `7..14 days` halved; none where it can't be read.
pub(super) fn half_range(written: &str) -> Option<String> {
    let after = crate::lang::parse::after(written).ok()?;
    let half = |value: f64| (value / 2.0).floor();
    let (from, to, unit) = (half(after.from), half(after.to), after.unit);
    (to < after.to).then(|| if from >= to { format!("{to} {unit}") } else { format!("{from}..{to} {unit}") })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_is_one_that_a_gardener_would_notice() {
        for (value, unit, lower, higher) in [
            (30.0, "°C", 28.0, 32.0),
            (8.0, "weeks", 6.0, 10.0),
            (3.0, "days", 2.0, 4.0),
            (4.0, "years", 3.0, 5.0),
            (0.3, "year", 0.2, 0.4),
            (550.0, "°Cd", 410.0, 690.0),
            (25.0, "%", 15.0, 35.0),
            (10.0, "%", 5.0, 15.0),
            (7.2, "", 6.7, 7.7),
            (0.6, "", 0.4, 0.8),
            (10.0, "mm", 7.5, 12.5),
        ] {
            let [down, up] = steps(&Literal { value, unit: unit.to_owned() });
            assert_eq!((down.value, up.value), (lower, higher), "{value} {unit}");
        }
        assert_eq!(half_range("7..14 days").as_deref(), Some("3..7 days"));
        assert_eq!(half_range("28 days").as_deref(), Some("14 days"));
    }
}

//! Dimensions and the units of literals, with exact factors.

use serde::Serialize;

/// What a number measures. Numbers of different dimensions can't be compared or added.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Dimension {
    /// A point on the thermometer.
    Temperature,
    /// A difference of two temperatures.
    TemperatureDifference,
    /// A span of time.
    Duration,
    /// Warmth over time, in degree days.
    HeatSum,
    /// A length or a depth of water.
    Length,
    /// An area.
    Area,
    /// A volume.
    Volume,
    /// A mass.
    Mass,
    /// A share in per cent.
    Share,
    /// A depth of water a day.
    WaterRate,
    /// A speed.
    Speed,
    /// A pressure.
    Pressure,
    /// Electrical conductivity, the measure of salt.
    Salinity,
    /// A mass on an area.
    MassPerArea,
    /// A count, a pH or a depletion: no unit.
    Plain,
}

impl Dimension {
    /// The dimension in the author's words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Temperature => "a temperature (°C, °F)",
            Self::TemperatureDifference => "a temperature difference (K)",
            Self::Duration => "a duration (h, days, weeks)",
            Self::HeatSum => "a heat sum (°Cd, °Fd)",
            Self::Length => "a length (mm, cm, m, in, ft)",
            Self::Area => "an area (m², ft²)",
            Self::Volume => "a volume (L, gal)",
            Self::Mass => "a mass (g, kg, oz, lb)",
            Self::Share => "a share (%)",
            Self::WaterRate => "a water rate (mm/day)",
            Self::Speed => "a speed (km/h, m/s, mph)",
            Self::Pressure => "a pressure (kPa)",
            Self::Salinity => "a salinity (dS/m)",
            Self::MassPerArea => "a mass on an area (g/m²)",
            Self::Plain => "a number without a unit",
        }
    }
}

/// One unit. Its value in the dimension's base unit is `(x + shift) * numerator / denominator`.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// As it is written.
    pub symbol: &'static str,
    /// Other ways in which it is written.
    pub also: &'static [&'static str],
    /// What it measures.
    pub dimension: Dimension,
    numerator: f64,
    denominator: f64,
    shift: f64,
}

const fn unit(
    symbol: &'static str,
    also: &'static [&'static str],
    dimension: Dimension,
    numerator: f64,
    denominator: f64,
) -> Unit {
    Unit { symbol, also, dimension, numerator, denominator, shift: 0.0 }
}

/// Every unit that a literal may carry. Factors are exact by definition (international yard and pound, US gallon of 231 cubic inches).
pub static UNITS: &[Unit] = &[
    unit("°C", &["C"], Dimension::Temperature, 1.0, 1.0),
    Unit {
        symbol: "°F",
        also: &["F"],
        dimension: Dimension::Temperature,
        numerator: 5.0,
        denominator: 9.0,
        shift: -32.0,
    },
    unit("K", &[], Dimension::TemperatureDifference, 1.0, 1.0),
    unit("day", &["days", "d"], Dimension::Duration, 1.0, 1.0),
    unit("h", &[], Dimension::Duration, 1.0, 24.0),
    unit("week", &["weeks"], Dimension::Duration, 7.0, 1.0),
    unit("year", &["years"], Dimension::Duration, 1461.0, 4.0),
    unit("°Cd", &[], Dimension::HeatSum, 1.0, 1.0),
    unit("°Fd", &[], Dimension::HeatSum, 5.0, 9.0),
    unit("mm", &[], Dimension::Length, 1.0, 1.0),
    unit("cm", &[], Dimension::Length, 10.0, 1.0),
    unit("m", &[], Dimension::Length, 1000.0, 1.0),
    unit("in", &[], Dimension::Length, 127.0, 5.0),
    unit("ft", &[], Dimension::Length, 1524.0, 5.0),
    unit("m²", &["m2"], Dimension::Area, 1.0, 1.0),
    unit("ft²", &["ft2"], Dimension::Area, 145_161.0, 1_562_500.0),
    unit("L", &["l"], Dimension::Volume, 1.0, 1.0),
    unit("gal", &[], Dimension::Volume, 473_176_473.0, 125_000_000.0),
    unit("g", &[], Dimension::Mass, 1.0, 1.0),
    unit("kg", &[], Dimension::Mass, 1000.0, 1.0),
    unit("oz", &[], Dimension::Mass, 45_359_237.0, 1_600_000.0),
    unit("lb", &[], Dimension::Mass, 45_359_237.0, 100_000.0),
    unit("%", &[], Dimension::Share, 1.0, 1.0),
    unit("mm/day", &[], Dimension::WaterRate, 1.0, 1.0),
    unit("km/h", &[], Dimension::Speed, 1.0, 1.0),
    unit("m/s", &[], Dimension::Speed, 18.0, 5.0),
    unit("mph", &[], Dimension::Speed, 25_146.0, 15_625.0),
    unit("kPa", &[], Dimension::Pressure, 1.0, 1.0),
    unit("dS/m", &[], Dimension::Salinity, 1.0, 1.0),
    unit("g/m²", &["g/m2"], Dimension::MassPerArea, 1.0, 1.0),
    UNITLESS,
];

/// Counts, pH and depletion.
pub const UNITLESS: Unit = unit("", &[], Dimension::Plain, 1.0, 1.0);

impl Unit {
    /// The unit written so, if there is one.
    #[must_use]
    pub fn find(symbol: &str) -> Option<&'static Self> {
        UNITS.iter().find(|unit| unit.symbol == symbol || unit.also.contains(&symbol))
    }

    /// `value` of this unit, in `to`, a unit of the same dimension.
    #[must_use]
    pub fn convert(&self, value: f64, to: &Self) -> f64 {
        if self == to {
            return value;
        }
        // One product and one quotient, so that 95 °F is 35 °C to the last bit.
        (value + self.shift) * (self.numerator * to.denominator) / (self.denominator * to.numerator) - to.shift
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn convert(value: f64, from: &str, to: &str) -> f64 {
        Unit::find(from).unwrap().convert(value, Unit::find(to).unwrap())
    }

    #[test]
    #[expect(clippy::float_cmp, reason = "conversions of literals are exact")]
    fn literals_convert_exactly() {
        // NIST Special Publication 811, appendix B: 1 in = 25.4 mm, 1 ft = 304.8 mm, 1 lb = 453.59237 g, 1 US gal = 3.785411784 L.
        assert_eq!(convert(95.0, "°F", "°C"), 35.0);
        assert_eq!(convert(90.0, "°F", "°C"), 290.0 / 9.0);
        assert_eq!(convert(0.5, "in", "mm"), 12.7);
        assert_eq!(convert(3.0, "ft", "m"), 0.9144);
        assert_eq!(convert(8.0, "week", "day"), 56.0);
        assert_eq!(convert(1.0, "lb", "g"), 453.592_37);
        assert_eq!(convert(1.0, "gal", "L"), 3.785_411_784);
        assert_eq!(convert(1.0, "mph", "km/h"), 1.609_344);
        assert_eq!(convert(1.0, "year", "day"), 365.25);
        assert_eq!(convert(900.0, "°Fd", "°Cd"), 500.0);
        assert_eq!(convert(1.0, "ft²", "m²"), 0.092_903_04);
    }

    #[test]
    fn no_two_units_share_a_name() {
        let mut names: Vec<&str> = UNITS.iter().flat_map(|u| u.also.iter().copied().chain([u.symbol])).collect();
        let all = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), all);
    }
}

//! The named units and their exact factors.
//!
//! To add one: write a row with its names (the first is its own), what it measures and the exact
//! fraction of the base unit. Sources: SI Brochure (9th edition, 2019) for the units of the SI and
//! those accepted beside it; the international yard and pound of 1959 and NIST Handbook 44,
//! appendix C, for the others (from memory). US gallons and their parts are liquid, bushels dry.

use super::{Dimension, Factor};

/// One named unit.
#[derive(Debug)]
pub struct Named {
    /// Its names, its own first.
    pub names: &'static [&'static str],
    /// What it measures.
    pub dimension: Dimension,
    /// How many base units it is.
    pub factor: Factor,
    /// What it shows at the base's nought.
    pub nought: f64,
}

const fn unit(names: &'static [&'static str], dimension: Dimension, numerator: u128, denominator: u128) -> Named {
    Named { names, dimension, factor: Factor::of(numerator, denominator), nought: 0.0 }
}

const fn thermometer(names: &'static [&'static str], numerator: u128, denominator: u128, nought: f64) -> Named {
    let factor = Factor::of(numerator, denominator);
    Named { names, dimension: Dimension::READING, factor, nought }
}

/// All named units.
pub const NAMED: &[Named] = &[
    // Without dimension. A part by mass of one thing in another is a plain number.
    unit(&["-", "1", "ratio", "mass", "part", "pH", "count"], Dimension::NONE, 1, 1),
    unit(&["%", "percent", "pct"], Dimension::NONE, 1, 100),
    unit(&["ppm", "parts_per_million"], Dimension::NONE, 1, 1_000_000),
    // Thermometers: base is the degree Celsius.
    thermometer(&["C", "°C", "degC", "deg C", "celsius", "degree_Celsius"], 1, 1, 0.0),
    thermometer(&["F", "°F", "degF", "deg F", "fahrenheit", "degree_Fahrenheit"], 5, 9, 32.0),
    thermometer(&["kelvin", "K_abs"], 1, 1, 273.15),
    // Differences of temperature.
    unit(&["K", "delta_C", "delta_degC"], Dimension::DIFFERENCE, 1, 1),
    unit(&["delta_F", "delta_degF"], Dimension::DIFFERENCE, 5, 9),
    // Degree days.
    unit(&["Cd", "°Cd", "C degree days"], Dimension::DEGREE_DAYS, 86_400, 1),
    unit(&["Fd", "°Fd", "F degree days"], Dimension::DEGREE_DAYS, 48_000, 1),
    // Length.
    unit(&["m", "metre", "meter", "metres", "meters"], Dimension::LENGTH, 1, 1),
    unit(&["mm", "millimetre", "millimeter"], Dimension::LENGTH, 1, 1_000),
    unit(&["cm", "centimetre", "centimeter"], Dimension::LENGTH, 1, 100),
    unit(&["km", "kilometre", "kilometer"], Dimension::LENGTH, 1_000, 1),
    unit(&["in", "inch", "inches"], Dimension::LENGTH, 254, 10_000),
    unit(&["ft", "foot", "feet"], Dimension::LENGTH, 3_048, 10_000),
    unit(&["yd", "yard"], Dimension::LENGTH, 9_144, 10_000),
    unit(&["mi", "mile"], Dimension::LENGTH, 1_609_344, 1_000),
    // Area.
    unit(&["sq ft", "square foot", "sqft"], Dimension::AREA, 9_290_304, 100_000_000),
    unit(&["sq m", "square metre", "square meter"], Dimension::AREA, 1, 1),
    unit(&["ha", "hectare"], Dimension::AREA, 10_000, 1),
    unit(&["acre"], Dimension::AREA, 40_468_564_224, 10_000_000),
    // Volume.
    unit(&["L", "l", "litre", "liter"], Dimension::VOLUME, 1, 1_000),
    unit(&["mL", "ml", "millilitre", "milliliter"], Dimension::VOLUME, 1, 1_000_000),
    unit(
        &["gal", "US gal", "US_gal", "gallon", "US_liquid_gallon"],
        Dimension::VOLUME,
        3_785_411_784,
        1_000_000_000_000,
    ),
    unit(&["qt", "quart", "US_liquid_quart"], Dimension::VOLUME, 946_352_946, 1_000_000_000_000),
    unit(&["pint", "US_liquid_pint"], Dimension::VOLUME, 473_176_473, 1_000_000_000_000),
    unit(&["cup"], Dimension::VOLUME, 2_365_882_365, 10_000_000_000_000),
    unit(
        &["fl oz", "floz", "fluid_ounce", "US_fluid_ounce"],
        Dimension::VOLUME,
        295_735_295_625,
        10_000_000_000_000_000,
    ),
    unit(&["tbsp", "tablespoon"], Dimension::VOLUME, 1_478_676_478_125, 100_000_000_000_000_000),
    unit(&["tsp", "teaspoon"], Dimension::VOLUME, 492_892_159_375, 100_000_000_000_000_000),
    unit(&["bu", "bushel"], Dimension::VOLUME, 3_523_907_016_688, 100_000_000_000_000),
    // Mass.
    unit(&["kg", "kilogram"], Dimension::MASS, 1, 1),
    unit(&["g", "gram"], Dimension::MASS, 1, 1_000),
    unit(&["mg", "milligram"], Dimension::MASS, 1, 1_000_000),
    unit(&["tonne", "metric_ton"], Dimension::MASS, 1_000, 1),
    unit(&["lb", "pound", "pounds"], Dimension::MASS, 45_359_237, 100_000_000),
    unit(&["oz", "ounce"], Dimension::MASS, 28_349_523_125, 1_000_000_000_000),
    // Time. A year is the Julian year of 365.25 days.
    unit(&["s", "second"], Dimension::TIME, 1, 1),
    unit(&["min", "minute", "minutes"], Dimension::TIME, 60, 1),
    unit(&["h", "hour", "hours", "hr"], Dimension::TIME, 3_600, 1),
    unit(&["d", "day", "days"], Dimension::TIME, 86_400, 1),
    unit(&["week", "weeks"], Dimension::TIME, 604_800, 1),
    unit(&["yr", "year", "years", "calendar years"], Dimension::TIME, 31_557_600, 1),
    // Speed.
    unit(&["mph"], Dimension::SPEED, 44_704, 100_000),
    // Pressure.
    unit(&["Pa", "pascal"], Dimension::PRESSURE, 1, 1),
    unit(&["hPa", "hectopascal", "mbar", "millibar"], Dimension::PRESSURE, 100, 1),
    unit(&["kPa", "kilopascal"], Dimension::PRESSURE, 1_000, 1),
    unit(&["MPa", "megapascal"], Dimension::PRESSURE, 1_000_000, 1),
    unit(&["bar"], Dimension::PRESSURE, 100_000, 1),
    unit(&["psi"], Dimension::PRESSURE, 44_482_216_152_605, 6_451_600_000),
    // Energy and power.
    unit(&["J", "joule"], Dimension::ENERGY, 1, 1),
    unit(&["kJ", "kilojoule"], Dimension::ENERGY, 1_000, 1),
    unit(&["MJ", "megajoule"], Dimension::ENERGY, 1_000_000, 1),
    unit(&["cal", "calorie"], Dimension::ENERGY, 4_184, 1_000),
    unit(&["kWh"], Dimension::ENERGY, 3_600_000, 1),
    unit(&["W", "watt"], Dimension::POWER, 1, 1),
    // Conductance, for salts in soil and water.
    unit(&["S", "siemens"], Dimension::CONDUCTANCE, 1, 1),
    unit(&["dS", "decisiemens"], Dimension::CONDUCTANCE, 1, 10),
    unit(&["mS", "millisiemens"], Dimension::CONDUCTANCE, 1, 1_000),
    unit(&["uS", "µS", "microsiemens"], Dimension::CONDUCTANCE, 1, 1_000_000),
    // Angle.
    unit(&["rad", "radian"], Dimension::ANGLE, 1, 1),
    Named {
        names: &["deg", "°", "degree", "degrees", "deg east", "deg north"],
        dimension: Dimension::ANGLE,
        factor: Factor { numerator: 1, denominator: 180, pi_power: 1 },
        nought: 0.0,
    },
];

/// What a unit may be followed by to say what is weighed: `% N`, `g Mg`, `lb product`.
pub const SUBSTANCES: &[&str] = &["N", "P", "K", "S", "Mg", "Fe", "Ca", "P2O5", "K2O", "product", "of stock"];

/// The row of a name.
#[must_use]
pub fn find(name: &str) -> Option<&'static Named> {
    NAMED.iter().find(|named| named.names.contains(&name))
}

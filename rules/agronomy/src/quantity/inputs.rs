//! What a quantity takes, and the inputs that many of them share.

/// The kind of an input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A number with unit and allowed range in that unit.
    Number {
        /// The declared unit; a call may give any unit that measures the same.
        unit: &'static str,
        /// The least allowed value.
        min: f64,
        /// The greatest allowed value.
        max: f64,
    },
    /// A number in whatever unit: the result takes it on.
    Measure {
        /// The least allowed value, in any unit.
        min: f64,
        /// The greatest allowed value, in any unit.
        max: f64,
    },
    /// Numbers in order, each within the range.
    Numbers {
        /// The declared unit.
        unit: &'static str,
        /// The least allowed value.
        min: f64,
        /// The greatest allowed value.
        max: f64,
        /// How many there must be.
        count: usize,
    },
    /// Numbers in order, each within the range, one at least.
    Row {
        /// The declared unit.
        unit: &'static str,
        /// The least allowed value.
        min: f64,
        /// The greatest allowed value.
        max: f64,
        /// How many there may be.
        most: usize,
    },
    /// One of some words.
    Choice(&'static [&'static str]),
    /// Any text.
    Text,
    /// A date, `2026-03-01`.
    Date,
    /// A moment, `2026-03-01T12:00:00Z`.
    Moment,
    /// A daily record as comma-separated values with a header; the first column is `date`.
    Series,
}

/// One input of a quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Input {
    /// Its name.
    pub name: &'static str,
    /// Kind, unit and range.
    pub kind: Kind,
    /// Whether it must be there.
    pub required: bool,
    /// What it is, and what holds when it is not given.
    pub about: &'static str,
}

impl Input {
    pub(super) const fn new(name: &'static str, kind: Kind, about: &'static str) -> Self {
        Self { name, kind, required: true, about }
    }

    pub(super) const fn number(
        name: &'static str,
        unit: &'static str,
        min: f64,
        max: f64,
        about: &'static str,
    ) -> Self {
        Self::new(name, Kind::Number { unit, min, max }, about)
    }

    pub(super) const fn choice(name: &'static str, choices: &'static [&'static str], about: &'static str) -> Self {
        Self::new(name, Kind::Choice(choices), about)
    }

    pub(super) const fn optional(mut self) -> Self {
        self.required = false;
        self
    }

    /// Kind, unit and range in words.
    #[must_use]
    pub fn expected(&self) -> String {
        match self.kind {
            Kind::Number { unit, min, max } => format!("a number of {min} to {max} {unit}"),
            Kind::Measure { min, max } => format!("a number of {min} to {max} in any unit"),
            Kind::Numbers { unit, min, max, count } => {
                format!("{count} numbers of {min} to {max} {unit}")
            }
            Kind::Row { unit, min, max, most } => format!("1 to {most} numbers of {min} to {max} {unit}"),
            Kind::Choice(choices) => format!("one of {}", choices.join(", ")),
            Kind::Text => "text".to_owned(),
            Kind::Date => "a date such as 2026-03-01".to_owned(),
            Kind::Moment => "a moment such as 2026-03-01T12:00:00Z".to_owned(),
            Kind::Series => "a daily record as comma-separated values".to_owned(),
        }
    }

    /// The declared unit, for numbers.
    #[must_use]
    pub fn unit(&self) -> Option<&'static str> {
        match self.kind {
            Kind::Number { unit, .. } | Kind::Numbers { unit, .. } | Kind::Row { unit, .. } => Some(unit),
            _ => None,
        }
    }
}

pub(super) const LATITUDE: Input = Input::number("latitude", "deg", -90.0, 90.0, "latitude, south negative");
pub(super) const DAY_OF_YEAR: Input =
    Input::number("day_of_year", "d", 1.0, 366.0, "day of the year, 1 is the first of January");
pub(super) const MONTH: Input = Input::number("month", "-", 1.0, 12.0, "month, 1 is January");
pub(super) const DATE: Input = Input::new("date", Kind::Date, "the day");
pub(super) const ELEVATION: Input = Input::number("elevation", "m", -500.0, 9000.0, "height above the sea");
pub(super) const TMIN: Input = Input::number("tmin", "C", -90.0, 60.0, "minimum temperature of the day");
pub(super) const TMAX: Input = Input::number("tmax", "C", -90.0, 60.0, "maximum temperature of the day");
pub(super) const RHMEAN: Input = Input::number("rhmean", "%", 0.0, 100.0, "mean relative humidity of the day");
pub(super) const RHMAX: Input = Input::number("rhmax", "%", 0.0, 100.0, "greatest relative humidity of the day");
pub(super) const RHMIN: Input = Input::number("rhmin", "%", 0.0, 100.0, "least relative humidity of the day");
pub(super) const EA: Input = Input::number("ea", "kPa", 0.0, 12.0, "actual vapour pressure of the air");
pub(super) const TDEW: Input = Input::number("tdew", "C", -90.0, 45.0, "dew point");
pub(super) const RA: Input = Input::number("ra", "MJ m-2 d-1", 0.0, 50.0, "extraterrestrial radiation");
pub(super) const SUNSHINE: Input = Input::number("sunshine", "h", 0.0, 24.0, "hours of bright sunshine");
pub(super) const SOLAR: Input = Input::number("solar", "MJ m-2 d-1", 0.0, 50.0, "solar radiation at the ground");
pub(super) const KRS: Input =
    Input::number("kRs", "C^-0.5", 0.1, 0.25, "radiation from the temperature range: 0.16 inland, 0.19 on the coast");
pub(super) const U2: Input = Input::number("u2", "m/s", 0.0, 60.0, "wind speed at 2 m");
pub(super) const WIND: Input = Input::number("wind", "m/s", 0.0, 60.0, "wind speed as measured");
pub(super) const WIND_HEIGHT: Input =
    Input::number("wind_height", "m", 0.5, 200.0, "height at which the wind was measured");

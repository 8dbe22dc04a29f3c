//! Turning units, by name.

use super::inputs::{Input, Kind};
use super::value::shorten;
use super::{Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::units;

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "convert",
        title: "value in another unit",
        inputs: &[
            Input::new("value", Kind::Measure { min: -1e15, max: 1e15 }, "value in its unit"),
            Input::new("to", Kind::Text, "unit to turn it into"),
        ],
        unit: "as asked",
        about: "readings of a thermometer and differences of temperature are different things",
        method: "exact factors, rounded once",
        source: "SI Brochure (2019); NIST Handbook 44, appendix C (from memory)",
        reckon: |given| {
            let to = given.text("to")?;
            let from = given.unit_of("value").unwrap_or("-");
            let value = units::convert_text(given.number("value")?, from, to).map_err(|fault| Unusable::Unread {
                field: "to",
                text: shorten(to),
                expected: format!("a unit that `{}` can be turned into: {fault}", shorten(from)),
            })?;
            Ok(Reckoned::from(value).in_unit(to.to_owned()))
        },
    },
    Quantity {
        name: "degree_days_c_to_f",
        title: "degree days in Fahrenheit",
        inputs: &[Input::number("degree_days", "C d", 0.0, 1e6, "degree days in Celsius")],
        unit: "F d",
        about: "a difference: there are no 32 degrees to add",
        method: "nine fifths",
        source: "definition",
        reckon: |given| Ok((given.number("degree_days")? * 9.0 / 5.0).into()),
    },
];

//! The sun's path, by name.

use chrono::Datelike;

use super::Quantity;
use super::inputs::{DATE, DAY_OF_YEAR, Input, Kind, LATITUDE};
use crate::bounds::Unusable;
use crate::sun::{self, SunPath};

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "declination_fao_rad",
        title: "declination of the sun",
        inputs: &[DAY_OF_YEAR],
        unit: "rad",
        about: "angle of the sun above the equator at noon; up to half a degree off the almanac's",
        method: "one sine over the year",
        source: "FAO-56 equation 24",
        reckon: |given| Ok(sun::declination_rad(given.day_of_year()?).into()),
    },
    Quantity {
        name: "declination_apparent_deg",
        title: "apparent declination of the sun",
        inputs: &[Input::new("utc", Kind::Moment, "the moment, 1950 to 2050")],
        unit: "deg",
        about: "angle of the sun above the equator at a moment, good to about 0.01 degree",
        method: "low-precision solar coordinates",
        source: "Astronomical Almanac, section C (from memory)",
        reckon: |given| Ok(sun::declination_apparent_deg(given.days_from_j2000("utc")?).into()),
    },
    Quantity {
        name: "inverse_relative_distance",
        title: "inverse relative distance of earth and sun",
        inputs: &[DAY_OF_YEAR],
        unit: "-",
        about: "how much nearer the sun is than in the mean, squared in its effect",
        method: "one cosine over the year",
        source: "FAO-56 equation 23",
        reckon: |given| Ok(sun::inverse_relative_distance(given.day_of_year()?).into()),
    },
    Quantity {
        name: "sunset_hour_angle_rad",
        title: "sunset hour angle",
        inputs: &[LATITUDE, DAY_OF_YEAR],
        unit: "rad",
        about: "half the day's arc: pi in the polar day, 0 in the polar night",
        method: "sun's centre on a flat horizon, no refraction",
        source: "FAO-56 equation 25",
        reckon: |given| {
            let path = sun::sunset_angle(given.number("latitude")?, given.day_of_year()?);
            Ok(noted(path, path.hour_angle_rad()))
        },
    },
    Quantity {
        name: "daylength_fao_h",
        title: "daylight hours",
        inputs: &[LATITUDE, DAY_OF_YEAR],
        unit: "h",
        about: "geometric day length, some minutes shorter than a clock shows",
        method: "from the sunset hour angle",
        source: "FAO-56 equation 34",
        reckon: |given| {
            let (latitude, doy) = (given.number("latitude")?, given.day_of_year()?);
            Ok(noted(sun::sunset_angle(latitude, doy), sun::daylength_h(latitude, doy)))
        },
    },
    Quantity {
        name: "day_of_year",
        title: "day of the year",
        inputs: &[DATE],
        unit: "d",
        about: "1 is the first of January; the last of December is 365 or 366",
        method: "calendar",
        source: "FAO-56 Annex 2 Table 2.5",
        reckon: |given| Ok(f64::from(given.date("date")?.ordinal()).into()),
    },
    Quantity {
        name: "middle_of_month",
        title: "day of the year in the middle of a month",
        inputs: &[super::inputs::MONTH],
        unit: "d",
        about: "the day for which monthly means are reckoned",
        method: "whole part of 30.4 M - 15",
        source: "FAO-56 Annex 2, note under Table 2.5",
        reckon: |given| Ok(f64::from(sun::middle_of_month(month(given.whole("month")?)?)).into()),
    },
];

/// A month that its range has already kept within 1..=12.
pub(super) fn month(month: u16) -> Result<u8, Unusable> {
    u8::try_from(month).map_err(|_| Unusable::OutOfRange {
        field: "month",
        value: f64::from(month),
        unit: "-",
        min: 1.0,
        max: 12.0,
    })
}

fn noted(path: SunPath, value: f64) -> super::Reckoned {
    let reckoned = super::Reckoned::from(value);
    match path {
        SunPath::Rises { .. } => reckoned,
        SunPath::PolarDay => reckoned.note("polar day: the sun does not set"),
        SunPath::PolarNight => reckoned.note("polar night: the sun does not rise"),
    }
}

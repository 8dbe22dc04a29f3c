//! Radiation, by name.

use super::Quantity;
use super::inputs::{DAY_OF_YEAR, EA, ELEVATION, Input, KRS, LATITUDE, MONTH, RA, SUNSHINE, TMAX, TMIN};
use super::solar::month;
use crate::bounds::in_order;
use crate::{radiation, sun};

const UNIT: &str = "MJ m-2 d-1";

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "ra_daily",
        title: "extraterrestrial radiation",
        inputs: &[LATITUDE, DAY_OF_YEAR],
        unit: UNIT,
        about: "what the sun gives above the air on a level surface in a day",
        method: "from declination, distance and sunset hour angle",
        source: "FAO-56 equation 21",
        reckon: |given| Ok(sun::extraterrestrial_mj(given.number("latitude")?, given.day_of_year()?).into()),
    },
    Quantity {
        name: "rs_from_sunshine",
        title: "solar radiation from hours of sunshine",
        inputs: &[LATITUDE, DAY_OF_YEAR, SUNSHINE],
        unit: UNIT,
        about: "hours above the day length count as the day length",
        method: "Angstrom formula with 0.25 and 0.50",
        source: "FAO-56 equation 35",
        reckon: |given| {
            let sun = sun::day(given.number("latitude")?, given.day_of_year()?);
            Ok(radiation::from_sunshine_mj(sun, given.number("sunshine")?).into())
        },
    },
    Quantity {
        name: "rs_from_sunshine_month",
        title: "mean solar radiation of a month from hours of sunshine a day",
        inputs: &[LATITUDE, MONTH, SUNSHINE],
        unit: UNIT,
        about: "the month's middle day stands for the month",
        method: "Angstrom formula with 0.25 and 0.50 on the month's middle day",
        source: "FAO-56 equation 35; Annex 2, note under Table 2.5",
        reckon: |given| {
            let doy = sun::middle_of_month(month(given.whole("month")?)?);
            let sun = sun::day(given.number("latitude")?, doy);
            Ok(radiation::from_sunshine_mj(sun, given.number("sunshine")?).into())
        },
    },
    Quantity {
        name: "rs_from_temperature",
        title: "solar radiation from the temperature range",
        inputs: &[LATITUDE, DAY_OF_YEAR, TMIN, TMAX, KRS],
        unit: UNIT,
        about: "for places without sunshine or radiation; as printed, not held at the clear sky",
        method: "kRs times the root of the range times extraterrestrial radiation",
        source: "FAO-56 equation 50",
        reckon: |given| {
            let (tmin_c, tmax_c) = (given.number("tmin")?, given.number("tmax")?);
            in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
            let ra_mj = sun::extraterrestrial_mj(given.number("latitude")?, given.day_of_year()?);
            Ok(radiation::from_temperature_mj(ra_mj, tmin_c, tmax_c, given.number("kRs")?).into())
        },
    },
    Quantity {
        name: "rso_clear_sky",
        title: "clear-sky radiation",
        inputs: &[ELEVATION, RA],
        unit: UNIT,
        about: "what reaches the ground under a cloudless sky",
        method: "share of extraterrestrial radiation that grows with elevation",
        source: "FAO-56 equation 37",
        reckon: |given| Ok(sun::clear_sky_mj(given.number("elevation")?, given.number("ra")?).into()),
    },
    Quantity {
        name: "rns_net_shortwave",
        title: "net short-wave radiation",
        inputs: &[super::inputs::SOLAR],
        unit: UNIT,
        about: "what the grass surface keeps of the sun",
        method: "albedo 0.23",
        source: "FAO-56 equation 38",
        reckon: |given| Ok(radiation::net_shortwave_mj(given.number("solar")?).into()),
    },
    Quantity {
        name: "rnl_net_longwave",
        title: "net long-wave radiation",
        inputs: &[TMAX, TMIN, EA, Input::number("rs_over_rso", "-", 0.0, 1.0, "solar over clear-sky radiation")],
        unit: UNIT,
        about: "heat that leaves the surface; a share below 0.3 counts as 0.3",
        method: "Stefan-Boltzmann law with humidity and cloud terms",
        source: "FAO-56 equation 39; floor of 0.3 from ASCE-EWRI 2005 equation 18",
        reckon: |given| {
            let (tmin_c, tmax_c) = (given.number("tmin")?, given.number("tmax")?);
            in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
            let share = given.number("rs_over_rso")?;
            let held = radiation::relative_to_clear_sky(share, 1.0);
            let ea_kpa = given.number("ea")?;
            let reckoned: super::Reckoned = radiation::net_longwave_mj(tmin_c, tmax_c, ea_kpa, held).into();
            Ok(if held > share { reckoned.note("rs_over_rso held at 0.3, the darkest sky") } else { reckoned })
        },
    },
];

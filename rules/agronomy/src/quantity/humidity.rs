//! Vapour pressure, air pressure and wind, by name.

use super::Quantity;
use super::inputs::{ELEVATION, Input, RHMAX, RHMEAN, RHMIN, TDEW, TMAX, TMIN, WIND};
use crate::bounds::in_order;
use crate::{humidity, pressure, wind};

const TEMPERATURE: Input = Input::number("temperature", "C", -90.0, 60.0, "air temperature");
const HEIGHT: Input = Input::number("height", "m", 0.5, 200.0, "height at which the wind was measured");

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "saturation_vapour_pressure",
        title: "saturation vapour pressure",
        inputs: &[TEMPERATURE],
        unit: "kPa",
        about: "how much water vapour air of a temperature can hold",
        method: "exponential of the temperature",
        source: "FAO-56 equation 11",
        reckon: |given| Ok(humidity::saturation_vapour_pressure_kpa(given.number("temperature")?).into()),
    },
    Quantity {
        name: "slope_vapour_pressure",
        title: "slope of the saturation curve",
        inputs: &[TEMPERATURE],
        unit: "kPa C-1",
        about: "how fast saturation grows with the temperature",
        method: "derivative of the saturation curve",
        source: "FAO-56 equation 13",
        reckon: |given| Ok(humidity::slope_vapour_pressure(given.number("temperature")?).into()),
    },
    Quantity {
        name: "mean_saturation_vapour_pressure",
        title: "mean saturation vapour pressure of a day",
        inputs: &[TMIN, TMAX],
        unit: "kPa",
        about: "half the sum at the extremes, not the value at the mean",
        method: "mean of the values at minimum and maximum",
        source: "FAO-56 equation 12",
        reckon: |given| {
            let (tmin_c, tmax_c) = (given.number("tmin")?, given.number("tmax")?);
            in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
            Ok(humidity::mean_saturation_vapour_pressure_kpa(tmin_c, tmax_c).into())
        },
    },
    Quantity {
        name: "atmospheric_pressure",
        title: "atmospheric pressure",
        inputs: &[ELEVATION],
        unit: "kPa",
        about: "mean pressure of the air at an elevation",
        method: "gas law for air of 20 C",
        source: "FAO-56 equation 7",
        reckon: |given| Ok(pressure::atmospheric_pressure_kpa(given.number("elevation")?).into()),
    },
    Quantity {
        name: "psychrometric_constant",
        title: "psychrometric constant",
        inputs: &[ELEVATION],
        unit: "kPa C-1",
        about: "relates vapour pressure and temperature of air that takes up water",
        method: "0.000665 times the pressure",
        source: "FAO-56 equations 7 and 8",
        reckon: |given| {
            let pressure_kpa = pressure::atmospheric_pressure_kpa(given.number("elevation")?);
            Ok(pressure::psychrometric_constant(pressure_kpa).into())
        },
    },
    Quantity {
        name: "ea_from_dew_point",
        title: "actual vapour pressure from the dew point",
        inputs: &[TDEW],
        unit: "kPa",
        about: "the most reliable way when the dew point is measured",
        method: "saturation at the dew point",
        source: "FAO-56 equation 14",
        reckon: |given| Ok(humidity::ea_from_dew_point_kpa(given.number("tdew")?).into()),
    },
    Quantity {
        name: "ea_from_wet_bulb",
        title: "actual vapour pressure from a psychrometer",
        inputs: &[
            Input::number("tdry", "C", -20.0, 60.0, "dry bulb temperature"),
            Input::number("twet", "C", -20.0, 60.0, "wet bulb temperature"),
            ELEVATION,
            Input::number(
                "coefficient",
                "C^-1",
                0.0006,
                0.0013,
                "0.000662 aspirated, 0.000800 naturally ventilated, 0.001200 indoors",
            ),
        ],
        unit: "kPa",
        about: "never below 0: drier readings than dry air can give are a faulty wick",
        method: "saturation at the wet bulb less the psychrometer's term",
        source: "FAO-56 equations 15 and 16",
        reckon: |given| {
            let (dry_c, wet_c) = (given.number("tdry")?, given.number("twet")?);
            in_order("twet", wet_c, "tdry", dry_c, "C")?;
            let pressure_kpa = pressure::atmospheric_pressure_kpa(given.number("elevation")?);
            let coefficient = given.number("coefficient")?;
            let ea_kpa = humidity::ea_from_wet_bulb_kpa(dry_c, wet_c, pressure_kpa, coefficient);
            Ok(ea_kpa.max(0.0).into())
        },
    },
    Quantity {
        name: "ea_from_rhmax_rhmin",
        title: "actual vapour pressure from both extremes of relative humidity",
        inputs: &[TMIN, TMAX, RHMAX, RHMIN],
        unit: "kPa",
        about: "to be preferred over the mean humidity: a day may differ by 5 %",
        method: "mean of the values at dawn and in the afternoon",
        source: "FAO-56 equation 17",
        reckon: |given| {
            let (tmin_c, tmax_c) = (given.number("tmin")?, given.number("tmax")?);
            let (rhmax, rhmin) = (given.number("rhmax")?, given.number("rhmin")?);
            in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
            in_order("rhmin", rhmin, "rhmax", rhmax, "%")?;
            Ok(humidity::ea_from_rh_max_and_min_kpa(tmin_c, tmax_c, rhmax, rhmin).into())
        },
    },
    Quantity {
        name: "ea_from_rhmax",
        title: "actual vapour pressure from the greatest relative humidity",
        inputs: &[TMIN, RHMAX],
        unit: "kPa",
        about: "for stations whose least humidity cannot be trusted",
        method: "share of the saturation at the minimum",
        source: "FAO-56 equation 18",
        reckon: |given| Ok(humidity::ea_from_rh_max_kpa(given.number("tmin")?, given.number("rhmax")?).into()),
    },
    Quantity {
        name: "ea_from_rhmean",
        title: "actual vapour pressure from the mean relative humidity",
        inputs: &[TMIN, TMAX, RHMEAN],
        unit: "kPa",
        about: "the last resort where humidity is known at all",
        method: "share of the day's mean saturation",
        source: "FAO-56 equation 19",
        reckon: |given| {
            let (tmin_c, tmax_c) = (given.number("tmin")?, given.number("tmax")?);
            in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
            Ok(humidity::ea_from_rh_mean_kpa(tmin_c, tmax_c, given.number("rhmean")?).into())
        },
    },
    Quantity {
        name: "ea_from_tmin",
        title: "actual vapour pressure when no humidity is known",
        inputs: &[TMIN],
        unit: "kPa",
        about: "the air at dawn is taken as saturated; in dry climates it is not",
        method: "saturation at the minimum",
        source: "FAO-56 equation 48",
        reckon: |given| Ok(humidity::ea_from_tmin_kpa(given.number("tmin")?).into()),
    },
    Quantity {
        name: "wind_to_2m_factor",
        title: "factor that brings a wind speed to 2 m",
        inputs: &[HEIGHT],
        unit: "-",
        about: "for winds over short grass",
        method: "logarithmic wind profile",
        source: "FAO-56 equation 47",
        reckon: |given| Ok(wind::wind_to_2m_factor(given.number("height")?).into()),
    },
    Quantity {
        name: "wind_at_2m",
        title: "wind speed at 2 m",
        inputs: &[WIND, HEIGHT],
        unit: "m/s",
        about: "for winds over short grass",
        method: "logarithmic wind profile",
        source: "FAO-56 equation 47",
        reckon: |given| Ok(wind::wind_at_2m_ms(given.number("wind")?, given.number("height")?).into()),
    },
];

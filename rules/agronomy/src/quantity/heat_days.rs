//! Hot days and their zone, by name.

use super::inputs::Input;
use super::record::{MAXIMA, days};
use super::{Given, OutcomeValue, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::heat_zone::{HEAT_DAY_C, heat_zone};
use crate::record::days_above;

const MAP: &str = "AHS plant heat-zone map";
const ZONE_UNIT: &str = "AHS heat zone";
const THRESHOLD: Input =
    Input::number("threshold", "C", -60.0, 60.0, "a day counts above this maximum; 30 C if not given").optional();

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "heat_days_by_year",
        title: "heat days of each year",
        inputs: &[MAXIMA, THRESHOLD],
        unit: "d",
        about: "calendar years with nine tenths of their maxima; a day at the threshold itself does not count",
        method: "days with a maximum above the threshold, counted",
        source: MAP,
        reckon: |given| {
            let years = counted(given, given.maybe("threshold").unwrap_or(HEAT_DAY_C))?;
            Ok(OutcomeValue::Years(years.into_iter().map(|(year, days)| (year, days.into())).collect()).into())
        },
    },
    Quantity {
        name: "heat_zone_from_records",
        title: "heat zone of a record",
        inputs: &[MAXIMA],
        unit: ZONE_UNIT,
        about: "counting days of 30 C itself as well may move a place on an edge into the next zone",
        method: "mean yearly number of days above 30 C, then its band",
        source: MAP,
        reckon: |given| {
            let years = counted(given, HEAT_DAY_C)?;
            let sum: f64 = years.iter().map(|(_, days)| f64::from(*days)).sum();
            let mean = sum / years.len() as f64;
            let zone: Reckoned = f64::from(heat_zone(mean)).into();
            let shown = libm::round(mean * 10.0) / 10.0;
            Ok(zone.note(format!("mean of {} years: {shown} heat days", years.len())))
        },
    },
    Quantity {
        name: "heat_zone_from_days",
        title: "heat zone",
        inputs: &[Input::number("mean_heat_days", "d/yr", 0.0, 366.0, "mean number of days above 30 C in a year")],
        unit: ZONE_UNIT,
        about: "1 to 12; a number on an edge belongs to the cooler zone, but a whole day is zone 2",
        method: "bands: under 1, to 7, 14, 30, 45, 60, 90, 120, 150, 180, 210, above",
        source: MAP,
        reckon: |given| Ok(f64::from(heat_zone(given.number("mean_heat_days")?)).into()),
    },
];

/// Never empty.
fn counted(given: &Given<'_>, threshold_c: f64) -> Result<Vec<(i32, u16)>, Unusable> {
    let years = days_above(&days(given, &["tmax_c"])?, threshold_c);
    if years.is_empty() {
        let expected = "a calendar year with nine tenths of its maxima".to_owned();
        return Err(Unusable::Missing { field: "series", expected });
    }
    Ok(years)
}

//! The coldest night of a usual year and its zone, by name.

use super::inputs::{Input, Kind};
use super::record::{MINIMA, days};
use super::{Given, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::hardiness::HardinessZone;
use crate::record::{CalendarYear, calendar_years};

const BANDS: &str = "USDA plant hardiness zone map, bands of 2012 and 2023";
const ZONE_UNIT: &str = "USDA zone";
/// Years that a mean should have at least; the maps average thirty.
const FEW_YEARS: usize = 10;

const YEARS: Input = Input::new(
    "years",
    Kind::Row { unit: "calendar years", min: 1900.0, max: 2200.0, most: 200 },
    "calendar years to average; if not given, all with nine tenths of their minima",
)
.optional();

const fn extreme(unit: &'static str, min: f64, max: f64) -> Input {
    Input::number("mean_annual_extreme_minimum", unit, min, max, "mean of each year's lowest minimum")
}

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "mean_annual_extreme_minimum",
        title: "mean of each year's lowest minimum",
        inputs: &[MINIMA, YEARS],
        unit: "C",
        about: "what hardiness zones are made of; years from January to December, where some take July to June",
        method: "lowest minimum of each calendar year, averaged",
        source: "USDA plant hardiness zone map",
        reckon: |given| mean(given).map(|(mean_c, years)| remark(mean_c.into(), years)),
    },
    Quantity {
        name: "zone_from_records",
        title: "hardiness half zone of a record",
        inputs: &[MINIMA, YEARS],
        unit: ZONE_UNIT,
        about: "a record of few years may lie a half zone off: the maps average thirty",
        method: "mean annual extreme minimum, then its band of 5 F; a lower edge starts the warmer half zone",
        source: BANDS,
        reckon: |given| {
            mean(given)
                .map(|(mean_c, years)| remark(Reckoned::text(HardinessZone::of_celsius(mean_c).to_string()), years))
        },
    },
    Quantity {
        name: "zone_from_fahrenheit",
        title: "hardiness half zone",
        inputs: &[extreme("F", -150.0, 120.0)],
        unit: ZONE_UNIT,
        about: "1a to 13b; beyond the ends the end zones hold",
        method: "bands of 5 F from -60 F on; a lower edge starts the warmer half zone",
        source: BANDS,
        reckon: |given| {
            let zone = HardinessZone::of_fahrenheit(given.number("mean_annual_extreme_minimum")?);
            Ok(Reckoned::text(zone.to_string()))
        },
    },
    Quantity {
        name: "zone_from_celsius",
        title: "hardiness half zone by the printed Celsius edges",
        inputs: &[extreme("C", -100.0, 50.0)],
        unit: ZONE_UNIT,
        about: "the Celsius edges are printed to a tenth of a degree",
        method: "edges of the Fahrenheit bands in C, rounded to 0.1; a lower edge starts the warmer half zone",
        source: BANDS,
        reckon: |given| {
            let zone = HardinessZone::by_printed_celsius(given.number("mean_annual_extreme_minimum")?);
            Ok(Reckoned::text(zone.to_string()))
        },
    },
];

fn remark(reckoned: Reckoned, years: usize) -> Reckoned {
    if years < FEW_YEARS { reckoned.note(format!("mean of {years} years; the maps average 30")) } else { reckoned }
}

/// The mean with the number of its years.
fn mean(given: &Given<'_>) -> Result<(f64, usize), Unusable> {
    let years = calendar_years(&days(given, &["tmin_c"])?);
    let lowest_c = if given.has("years") {
        let wanted = given.numbers("years")?;
        wanted.iter().map(|wanted| lowest_of(&years, wanted)).collect::<Result<Vec<_>, _>>()?
    } else {
        years.iter().filter(|year| year.has_minima()).filter_map(|year| year.lowest_c).collect()
    };
    if lowest_c.is_empty() {
        return Err(Unusable::Missing {
            field: "series",
            expected: "a calendar year with nine tenths of its minima".to_owned(),
        });
    }
    let mut sum = 0.0;
    for lowest_c in &lowest_c {
        sum += lowest_c;
    }
    Ok((sum / lowest_c.len() as f64, lowest_c.len()))
}

fn lowest_of(years: &[CalendarYear], wanted: &f64) -> Result<f64, Unusable> {
    let found = years.iter().find(|year| (f64::from(year.year) - wanted).abs() < 1e-9);
    found.filter(|year| year.has_minima()).and_then(|year| year.lowest_c).ok_or_else(|| Unusable::Contradiction {
        field: "years",
        other: "series",
        reason: format!("the record has not nine tenths of the minima of year {wanted}"),
    })
}

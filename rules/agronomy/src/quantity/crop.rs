//! Crop coefficients and root depths, by name.

use super::inputs::{Input, Kind, RHMIN, U2};
use super::value::shorten;
use super::{Given, OutcomeValue, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::crop::coefficient;
use crate::crop::table::{self, Coefficients, Crop};
use crate::nearest::nearest;

const PLANT: Input = Input::new("plant", Kind::Text, "row of the table, such as tomato");

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "kc_table",
        title: "crop coefficients",
        inputs: &[PLANT],
        unit: "-",
        about: "for a subhumid, calm climate; the middle where the end is a range",
        method: "table",
        source: "FAO-56 Table 12",
        reckon: |given| {
            let kc = coefficients(given)?;
            Ok(Reckoned::fields(vec![
                ("ini", kc.ini.into()),
                ("mid", kc.mid.into()),
                ("end", ((kc.end.0 + kc.end.1) / 2.0).into()),
            ]))
        },
    },
    Quantity {
        name: "kc_table_range",
        title: "crop coefficients, the end as a range",
        inputs: &[PLANT],
        unit: "-",
        about: "for a subhumid, calm climate",
        method: "table",
        source: "FAO-56 Table 12",
        reckon: |given| {
            let kc = coefficients(given)?;
            Ok(Reckoned::fields(vec![
                ("ini", kc.ini.into()),
                ("mid", kc.mid.into()),
                ("end", OutcomeValue::List(vec![kc.end.0, kc.end.1])),
            ]))
        },
    },
    Quantity {
        name: "rooting_depth_and_p",
        title: "root depth and depletion fraction",
        inputs: &[PLANT],
        unit: "m; -",
        about: "mature plants in deep soil; p holds at a need of 5 mm/d",
        method: "table",
        source: "FAO-56 Table 22",
        reckon: |given| {
            let crop = crop(given)?;
            let (least, most) = crop.root_depth_m;
            Ok(Reckoned::fields(vec![
                ("max_root_depth_m", OutcomeValue::List(vec![least, most])),
                ("p_at_5mm", crop.p.into()),
            ]))
        },
    },
    Quantity {
        name: "kc_mid_climate_adjusted",
        title: "mid-season crop coefficient in a climate",
        inputs: &[
            Input::number("kc_mid_table", "-", 0.0, 2.0, "the table's value"),
            U2,
            RHMIN,
            Input::number("plant_height", "m", 0.01, 60.0, "height of the plant"),
        ],
        unit: "-",
        about: "wind counts from 1 to 6 m/s, humidity from 20 to 80 %, height from 0.1 to 10 m",
        method: "wind and humidity term times a power of the height",
        source: "FAO-56 equation 62",
        reckon: |given| {
            Ok(coefficient::mid_in_climate(
                given.number("kc_mid_table")?,
                given.number("u2")?,
                given.number("rhmin")?,
                given.number("plant_height")?,
            )
            .into())
        },
    },
    Quantity {
        name: "kc_curve_interpolated",
        title: "crop coefficient on a day of the season",
        inputs: &[
            Input::new(
                "stage_days",
                Kind::Numbers { unit: "d", min: 0.0, max: 1000.0, count: 4 },
                "lengths of initial, development, middle and late stages",
            ),
            Input::number("k_ini", "-", 0.0, 2.0, "initial coefficient"),
            Input::number("k_mid", "-", 0.0, 2.0, "middle coefficient"),
            Input::number("k_end", "-", 0.0, 2.0, "end coefficient"),
            Input::number("day", "d", 0.0, 4000.0, "day since planting"),
        ],
        unit: "-",
        about: "straight lines between the stages; the end value stays",
        method: "interpolation",
        source: "FAO-56 equation 66",
        reckon: |given| {
            let lengths = given.numbers("stage_days")?;
            let stage_days = <[f64; 4]>::try_from(lengths)
                .map_err(|_| Unusable::Missing { field: "stage_days", expected: "four lengths".to_owned() })?;
            Ok(coefficient::on_day(
                stage_days,
                given.number("k_ini")?,
                given.number("k_mid")?,
                given.number("k_end")?,
                given.number("day")?,
            )
            .into())
        },
    },
    Quantity {
        name: "landscape_coefficient",
        title: "landscape coefficient",
        inputs: &[
            Input::number("species", "-", 0.0, 1.5, "species factor, 0.1 to 0.9"),
            Input::number("density", "-", 0.1, 1.5, "density factor, 0.5 to 1.3"),
            Input::number("microclimate", "-", 0.1, 1.5, "microclimate factor, 0.5 to 1.4"),
        ],
        unit: "-",
        about: "plant factor of a mixed planting in its place",
        method: "product of the three factors",
        source: "landscape coefficient method (Costello, Matheny, Clark and Jones 2000)",
        reckon: |given| {
            Ok(coefficient::landscape(
                given.number("species")?,
                given.number("density")?,
                given.number("microclimate")?,
            )
            .into())
        },
    },
];

fn crop(given: &Given<'_>) -> Result<&'static Crop, Unusable> {
    let name = given.text("plant")?;
    table::find(name).ok_or_else(|| {
        let rows = table::CROPS.iter().flat_map(|crop| crop.names).copied();
        let near = nearest(name, rows).map(|near| format!(" (did you mean `{near}`?)"));
        Unusable::Unread {
            field: "plant",
            text: shorten(name),
            expected: format!("a row of the table{}", near.unwrap_or_default()),
        }
    })
}

fn coefficients(given: &Given<'_>) -> Result<Coefficients, Unusable> {
    let crop = crop(given)?;
    crop.coefficients.ok_or_else(|| Unusable::Unread {
        field: "plant",
        text: crop.names.first().copied().unwrap_or_default().to_owned(),
        expected: "a row with coefficients".to_owned(),
    })
}

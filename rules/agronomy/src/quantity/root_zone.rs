//! Soil and its store of water, by name.

use super::inputs::Input;
use super::{Given, OutcomeValue, Quantity, Reckoned};
use crate::bounds::{Unusable, in_order};
use crate::water::root_zone;
use crate::water::texture::{self, Texture};

const TEXTURE_NAMES: &[&str] = &[
    "sand",
    "loamy sand",
    "sandy loam",
    "loam",
    "silt loam",
    "silt",
    "sandy clay loam",
    "clay loam",
    "silty clay loam",
    "silt clay loam",
    "sandy clay",
    "silty clay",
    "clay",
];
pub(super) const TEXTURE: Input = Input::choice("texture", TEXTURE_NAMES, "USDA texture class of the soil");
pub(super) const FIELD_CAPACITY: Input =
    Input::number("field_capacity", "m3/m3", 0.0, 0.9, "water content at field capacity");
pub(super) const WILTING_POINT: Input =
    Input::number("wilting_point", "m3/m3", 0.0, 0.9, "water content at wilting point");
pub(super) const AVAILABLE: Input = Input::number("available_water", "mm/m", 0.0, 400.0, "available water of the soil");
pub(super) const ROOT_DEPTH: Input = Input::number("root_depth", "m", 0.01, 5.0, "depth of the root zone");
const P: Input = Input::number("p", "-", 0.0, 1.0, "share of the store used without stress");
const TAW: Input = Input::number("taw", "mm", 0.0, 2000.0, "total available water");
const RAW: Input = Input::number("raw", "mm", 0.0, 2000.0, "readily available water");
const DEPLETION: Input =
    Input::number("depletion_start", "mm", 0.0, 2000.0, "water missing from the full store at the start of the day");
const ETC: Input = Input::number("etc", "mm/d", 0.0, 30.0, "evapotranspiration of the plant");

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "available_water_range",
        title: "water content and available water of a texture class",
        inputs: &[TEXTURE],
        unit: "m3/m3; mm per m",
        about: "ranges from the table; clay loam, sandy clay and sandy clay loam have no row there",
        method: "table",
        source: "FAO-56 Table 19; missing rows from Saxton and Rawls 2006 and common practice",
        reckon: |given| {
            let texture = texture_of(given)?;
            let range = |(least, most)| OutcomeValue::List(vec![least, most]);
            Ok(Reckoned::fields(vec![
                ("field_capacity", range(texture.field_capacity)),
                ("wilting_point", range(texture.wilting_point)),
                ("available_mm_per_m", range(texture.available_mm_per_m)),
            ])
            .note(texture.source))
        },
    },
    Quantity {
        name: "available_water",
        title: "available water of a texture class",
        inputs: &[TEXTURE],
        unit: "mm/m",
        about: "water between field capacity and wilting point",
        method: "middle of the table's range",
        source: "FAO-56 Table 19; missing rows from Saxton and Rawls 2006 and common practice",
        reckon: |given| {
            let texture = texture_of(given)?;
            Ok(Reckoned::from(texture.available_middle_mm_per_m()).note(texture.source))
        },
    },
    Quantity {
        name: "taw",
        title: "total available water of the root zone",
        inputs: &[
            FIELD_CAPACITY.optional(),
            WILTING_POINT.optional(),
            AVAILABLE.optional(),
            TEXTURE.optional(),
            ROOT_DEPTH,
            Input::number("p", "-", 0.0, 1.0, "may stand beside; the total does not hang on it").optional(),
        ],
        unit: "mm",
        about: "from field capacity and wilting point, or available water, or texture",
        method: "available water times root depth",
        source: "FAO-56 equation 82",
        reckon: |given| Ok(taw_mm(given)?.into()),
    },
    Quantity {
        name: "raw",
        title: "readily available water of the root zone",
        inputs: &[
            FIELD_CAPACITY.optional(),
            WILTING_POINT.optional(),
            AVAILABLE.optional(),
            TEXTURE.optional(),
            ROOT_DEPTH,
            P,
        ],
        unit: "mm",
        about: "what the plant takes without stress; p is not adjusted here",
        method: "share of the total available water",
        source: "FAO-56 equation 83",
        reckon: |given| Ok(root_zone::readily_available_mm(taw_mm(given)?, given.number("p")?).into()),
    },
    Quantity {
        name: "initial_raw",
        title: "readily available water of young roots",
        inputs: &[Input::number("taw_per_m", "mm/m", 0.0, 400.0, "available water of the soil"), P, ROOT_DEPTH],
        unit: "mm",
        about: "the store of a young plant, whose roots are still shallow",
        method: "share of available water times root depth",
        source: "FAO-56 equation 83, Example 38",
        reckon: |given| {
            let total_mm = given.number("taw_per_m")? * given.number("root_depth")?;
            Ok(root_zone::readily_available_mm(total_mm, given.number("p")?).into())
        },
    },
    Quantity {
        name: "p_adjusted",
        title: "depletion fraction adjusted for the need",
        inputs: &[Input::number("p_table", "-", 0.0, 1.0, "the table's fraction, for 5 mm/d"), ETC],
        unit: "-",
        about: "smaller on hot days, held at 0.1 to 0.8",
        method: "p + 0.04 (5 - ETc)",
        source: "FAO-56 Table 22 footnote 2; limits in chapter 8",
        reckon: |given| Ok(root_zone::p_adjusted(given.number("p_table")?, given.number("etc")?).into()),
    },
    Quantity {
        name: "ks_stress",
        title: "water stress coefficient",
        inputs: &[TAW, RAW, DEPLETION],
        unit: "-",
        about: "1 while water is within easy reach, 0 when the store is empty",
        method: "straight fall beyond the readily available water",
        source: "FAO-56 equation 84",
        reckon: |given| {
            let (taw_mm, raw_mm) = stores(given)?;
            Ok(root_zone::stress(taw_mm, raw_mm, given.number("depletion_start")?).into())
        },
    },
    Quantity {
        name: "kr_evaporation_reduction",
        title: "evaporation reduction coefficient",
        inputs: &[
            Input::number("tew", "mm", 0.0, 200.0, "total evaporable water of the surface layer"),
            Input::number("rew", "mm", 0.0, 200.0, "readily evaporable water of it"),
            DEPLETION,
        ],
        unit: "-",
        about: "how far a drying surface slows down its evaporation",
        method: "straight fall beyond the readily evaporable water",
        source: "FAO-56 equation 74",
        reckon: |given| {
            let (tew_mm, rew_mm) = (given.number("tew")?, given.number("rew")?);
            in_order("rew", rew_mm, "tew", tew_mm, "mm")?;
            let depletion_mm = given.number("depletion_start")?;
            Ok(root_zone::evaporation_reduction(tew_mm, rew_mm, depletion_mm).into())
        },
    },
    Quantity {
        name: "depletion_run_10_days",
        title: "depletion of the root zone day by day",
        inputs: &[
            TAW,
            RAW,
            DEPLETION,
            ETC,
            Input::number("rain", "mm/d", 0.0, 500.0, "rain of each day"),
            Input::number("days", "d", 1.0, 366.0, "how many days"),
        ],
        unit: "mm at end of day",
        about: "with the same need and rain each day and no watering",
        method: "water balance with the morning's stress",
        source: "FAO-56 equations 84 and 85, Example 37",
        reckon: |given| {
            let (taw_mm, raw_mm) = stores(given)?;
            let (etc_mm, rain_mm) = (given.number("etc")?, given.number("rain")?);
            let mut depletion_mm = given.number("depletion_start")?;
            in_order("depletion_start", depletion_mm, "taw", taw_mm, "mm")?;
            let mut evenings = Vec::new();
            for _ in 0..given.whole("days")? {
                depletion_mm = root_zone::depletion_after_mm(taw_mm, raw_mm, depletion_mm, etc_mm, rain_mm);
                evenings.push(depletion_mm);
            }
            Ok(OutcomeValue::List(evenings).into())
        },
    },
];

fn texture_of(given: &Given<'_>) -> Result<&'static Texture, Unusable> {
    let name = given.text("texture")?;
    texture::find(name).ok_or_else(|| Unusable::missing("texture", "a USDA texture class"))
}

/// The total available water in mm, from whichever way the soil was described.
pub(super) fn taw_mm(given: &Given<'_>) -> Result<f64, Unusable> {
    let root_depth_m = given.number("root_depth")?;
    let contents = given.has("field_capacity") || given.has("wilting_point");
    match (contents, given.maybe("available_water"), given.has("texture")) {
        (true, None, false) => {
            let (fc, wp) = (given.number("field_capacity")?, given.number("wilting_point")?);
            in_order("wilting_point", wp, "field_capacity", fc, "m3/m3")?;
            Ok(root_zone::total_available_mm(fc, wp, root_depth_m))
        }
        (false, Some(mm_per_m), false) => Ok(mm_per_m * root_depth_m),
        (false, None, true) => Ok(texture_of(given)?.available_middle_mm_per_m() * root_depth_m),
        (false, None, false) => {
            Err(Unusable::missing("texture", "texture, or available_water, or field_capacity with wilting_point"))
        }
        (true, Some(_), _) => Err(Unusable::said_twice("field_capacity", "available_water")),
        (true, None, true) => Err(Unusable::said_twice("field_capacity", "texture")),
        (false, Some(_), true) => Err(Unusable::said_twice("available_water", "texture")),
    }
}

fn stores(given: &Given<'_>) -> Result<(f64, f64), Unusable> {
    let (taw_mm, raw_mm) = (given.number("taw")?, given.number("raw")?);
    in_order("raw", raw_mm, "taw", taw_mm, "mm")?;
    Ok((taw_mm, raw_mm))
}

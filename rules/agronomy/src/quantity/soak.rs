//! Soaks in open ground, by name.

use super::inputs::Input;
use super::root_zone::{AVAILABLE, FIELD_CAPACITY, ROOT_DEPTH, TEXTURE, WILTING_POINT, taw_mm};
use super::{Given, Quantity, Reckoned};
use crate::bounds::{Unusable, within};
use crate::water::root_zone;
use crate::water::soak::{self, WaterMethod};

const FAO: &str = "FAO-56 chapter 8";
pub(super) const NEED: Input = Input::number("water_need", "mm/d", 0.0, 30.0, "water the plant takes");
pub(super) const CANOPY: Input = Input::number("canopy_diameter", "m", 0.0, 50.0, "width of the plant's canopy");
pub(super) const INTERVAL: Input =
    Input::number("interval", "d", 0.5, 90.0, "days since the last soak, else reckoned").optional();
pub(super) const METHOD: Input = Input::choice(
    "method",
    &["can", "drip", "basin", "sprinkler"],
    "how the water is brought; basin if neither this nor efficiency is given",
)
.optional();
pub(super) const EFFICIENCY: Input =
    Input::number("efficiency", "-", 0.1, 1.0, "share that reaches the roots, else by method").optional();
const P_TABLE: Input = Input::number("p", "-", 0.0, 1.0, "share of the store used without stress at 5 mm/d");
const RAIN: Input = Input::number("rain", "mm/d", 0.0, 500.0, "effective rain, 0 if not given").optional();

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "soak_interval",
        title: "days between soaks",
        inputs: &[
            NEED,
            FIELD_CAPACITY.optional(),
            WILTING_POINT.optional(),
            AVAILABLE.optional(),
            TEXTURE.optional(),
            ROOT_DEPTH,
            P_TABLE,
            RAIN,
        ],
        unit: "d",
        about: "whole days, 1 to 28",
        method: "readily available water, with p adjusted for the need, over need less rain, rounded down",
        source: FAO,
        reckon: |given| {
            let soak = Soak::new(given)?;
            Ok(soak.noted(f64::from(soak.days()).into()))
        },
    },
    Quantity {
        name: "soak_depth",
        title: "depth of a soak at the roots",
        inputs: &[
            NEED,
            FIELD_CAPACITY.optional(),
            WILTING_POINT.optional(),
            AVAILABLE.optional(),
            TEXTURE.optional(),
            ROOT_DEPTH,
            P_TABLE,
            RAIN,
            INTERVAL,
        ],
        unit: "mm",
        about: "fills up what was taken, never more than the readily available water",
        method: "need less rain times days, held at the readily available water",
        source: FAO,
        reckon: |given| {
            let soak = Soak::new(given)?;
            Ok(soak.noted(soak.depth_mm(given).into()))
        },
    },
    Quantity {
        name: "soak_volume",
        title: "water of a soak from the tap",
        inputs: &[
            NEED,
            FIELD_CAPACITY.optional(),
            WILTING_POINT.optional(),
            AVAILABLE.optional(),
            TEXTURE.optional(),
            ROOT_DEPTH,
            P_TABLE,
            RAIN,
            INTERVAL,
            CANOPY.optional(),
            Input::number("area", "m2", 0.0, 100_000.0, "wetted area, else by canopy_diameter").optional(),
            METHOD,
            EFFICIENCY,
        ],
        unit: "L",
        about: "for one plant or for an area",
        method: "depth of the soak times wetted area over efficiency",
        source: "FAO-56 chapter 8; efficiencies and wetted area by common practice",
        reckon: |given| {
            let soak = Soak::new(given)?;
            let area_m2 = wetted_area_m2(given)?;
            let litres = soak::volume_l(soak.depth_mm(given), area_m2, efficiency(given)?);
            Ok(soak.noted(litres.into()))
        },
    },
];

/// What a soak in open ground hangs on.
struct Soak {
    raw_mm: f64,
    need_mm_per_day: f64,
    rain_mm_per_day: f64,
}

impl Soak {
    fn new(given: &Given<'_>) -> Result<Self, Unusable> {
        let need_mm_per_day = given.number("water_need")?;
        let p = root_zone::p_adjusted(given.number("p")?, need_mm_per_day);
        Ok(Self {
            raw_mm: root_zone::readily_available_mm(taw_mm(given)?, p),
            need_mm_per_day,
            rain_mm_per_day: given.maybe("rain").unwrap_or(0.0),
        })
    }

    fn days(&self) -> u8 {
        soak::interval_days(self.raw_mm, self.need_mm_per_day, self.rain_mm_per_day)
    }

    fn depth_mm(&self, given: &Given<'_>) -> f64 {
        let days = given.maybe("interval").unwrap_or_else(|| f64::from(self.days()));
        soak::depth_mm(self.raw_mm, self.need_mm_per_day, self.rain_mm_per_day, days)
    }

    fn noted(&self, reckoned: Reckoned) -> Reckoned {
        if self.need_mm_per_day <= self.rain_mm_per_day { reckoned.note("rain covers the need") } else { reckoned }
    }
}

fn wetted_area_m2(given: &Given<'_>) -> Result<f64, Unusable> {
    match (given.maybe("area"), given.maybe("canopy_diameter")) {
        (Some(area_m2), None) => Ok(area_m2),
        (None, Some(diameter_m)) => Ok(soak::wetted_area_m2(diameter_m)),
        (Some(_), Some(_)) => Err(Unusable::said_twice("area", "canopy_diameter")),
        (None, None) => Err(Unusable::missing("canopy_diameter", "canopy_diameter or area")),
    }
}

/// The share of the water that reaches the roots.
pub(super) fn efficiency(given: &Given<'_>) -> Result<f64, Unusable> {
    match (given.maybe("efficiency"), given.maybe_text("method")) {
        (Some(_), Some(_)) => Err(Unusable::said_twice("efficiency", "method")),
        (Some(share), None) => within("efficiency", share, "-", 0.1, 1.0),
        (None, Some("can")) => Ok(WaterMethod::Can.efficiency()),
        (None, Some("drip")) => Ok(WaterMethod::Drip.efficiency()),
        (None, Some("sprinkler")) => Ok(WaterMethod::Sprinkler.efficiency()),
        (None, _) => Ok(WaterMethod::Basin.efficiency()),
    }
}

//! What a plant in its place takes, by name.

use super::inputs::Input;
use super::soak::CANOPY;
use super::{Given, Quantity};
use crate::water::need::{Exposure, Place, WindExposure, canopy_area_m2, need_mm_per_day};

const LANDSCAPE: &str =
    "landscape coefficient method (Costello, Matheny, Clark and Jones 2000); steps of the microclimate: own";
const YES_NO: &[&str] = &["yes", "no"];

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "canopy_area",
        title: "area under a canopy",
        inputs: &[CANOPY],
        unit: "m2",
        about: "the circle that the plant covers",
        method: "circle",
        source: "geometry",
        reckon: |given| Ok(canopy_area_m2(given.number("canopy_diameter")?).into()),
    },
    Quantity {
        name: "plant_water_need",
        title: "water that a plant in its place takes",
        inputs: &[
            Input::number("et0", "mm/d", 0.0, 20.0, "reference evapotranspiration"),
            Input::number("plant_factor", "-", 0.0, 1.5, "plant factor or crop coefficient"),
            Input::number("density", "-", 0.1, 1.5, "density of the planting, 1 if not given").optional(),
            Input::choice(
                "exposure",
                &["full-sun", "half-sun", "shade", "afternoon-sun"],
                "sun; full-sun if not given",
            )
            .optional(),
            Input::choice("wind", &["sheltered", "open", "windy"], "wind; sheltered if not given").optional(),
            Input::choice("reflected_heat", YES_NO, "wall, paving or roof; no if not given").optional(),
            Input::choice("mulched", YES_NO, "soil is covered; no if not given").optional(),
        ],
        unit: "mm/d",
        about: "depth of water on the area under the canopy",
        method: "reference evapotranspiration times plant, density and microclimate factors",
        source: LANDSCAPE,
        reckon: |given| {
            let density = given.maybe("density").unwrap_or(1.0);
            let (et0, factor) = (given.number("et0")?, given.number("plant_factor")?);
            Ok(need_mm_per_day(et0, factor, density, place(given).microclimate()).into())
        },
    },
];

fn place(given: &Given<'_>) -> Place {
    let yes = |name| given.maybe_text(name) == Some("yes");
    Place {
        exposure: match given.maybe_text("exposure") {
            Some("half-sun") => Exposure::HalfSun,
            Some("shade") => Exposure::Shade,
            Some("afternoon-sun") => Exposure::AfternoonSun,
            _ => Exposure::FullSun,
        },
        wind: match given.maybe_text("wind") {
            Some("open") => WindExposure::Open,
            Some("windy") => WindExposure::Windy,
            _ => WindExposure::Sheltered,
        },
        reflected_heat: yes("reflected_heat"),
        mulched: yes("mulched"),
    }
}

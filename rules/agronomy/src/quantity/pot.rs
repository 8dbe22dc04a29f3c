//! Watering pots, by name.

use super::inputs::Input;
use super::soak::{CANOPY, EFFICIENCY, INTERVAL, METHOD, NEED, efficiency};
use super::{Given, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::water::container::{self, PotInterval};
use crate::water::soak::WaterMethod;

const POT: &str = "0.15 L of water within reach per litre of mix (common practice)";
const CONTAINER: Input = Input::number("container_volume", "L", 0.05, 5000.0, "volume of the mix");
const MOUTH: Input = Input::number("container_diameter", "m", 0.0, 10.0, "width of the container's mouth").optional();

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "container_water_need",
        title: "water that a plant takes out of its pot",
        inputs: &[NEED, CANOPY, MOUTH],
        unit: "L/d",
        about: "the canopy drinks, or the pot's mouth where that is wider",
        method: "need times area",
        source: "geometry",
        reckon: |given| Ok(pot_need_l(given)?.into()),
    },
    Quantity {
        name: "container_soak_interval",
        title: "days between waterings of a pot",
        inputs: &[NEED, CANOPY, MOUTH, CONTAINER],
        unit: "d",
        about: "whole days, 1 to 28; 1 is every day",
        method: "water within reach over what the plant takes, rounded down",
        source: POT,
        reckon: |given| {
            let interval = pot_interval(given)?;
            let days = Reckoned::from(f64::from(interval.days()));
            Ok(match interval {
                PotInterval::MoreThanOnceADay => {
                    days.note("every day: the pot does not last a day, look again in the afternoon")
                }
                PotInterval::Days(1) => days.note("every day"),
                PotInterval::Days(_) => days,
            })
        },
    },
    Quantity {
        name: "container_soak_volume",
        title: "water of one watering of a pot",
        inputs: &[NEED, CANOPY, MOUTH, CONTAINER, INTERVAL, METHOD, EFFICIENCY],
        unit: "L",
        about: "with what drains and carries salts out; by can if neither method nor efficiency is given",
        method: "what was taken, not above what the pot holds within reach, over efficiency",
        source: POT,
        reckon: |given| {
            let held_l = container::available_l(given.number("container_volume")?);
            let days = match given.maybe("interval") {
                Some(days) => days,
                None => f64::from(pot_interval(given)?.days()),
            };
            let efficiency = if given.has("method") || given.has("efficiency") {
                efficiency(given)?
            } else {
                WaterMethod::Can.efficiency()
            };
            Ok(container::volume_l(held_l, pot_need_l(given)?, days, efficiency).into())
        },
    },
];

fn pot_need_l(given: &Given<'_>) -> Result<f64, Unusable> {
    let mouth_m = given.maybe("container_diameter").unwrap_or(0.0);
    let (need, canopy_m) = (given.number("water_need")?, given.number("canopy_diameter")?);
    Ok(container::need_l_per_day(need, canopy_m, mouth_m))
}

fn pot_interval(given: &Given<'_>) -> Result<PotInterval, Unusable> {
    let held_l = container::available_l(given.number("container_volume")?);
    Ok(container::pot_interval(held_l, pot_need_l(given)?))
}

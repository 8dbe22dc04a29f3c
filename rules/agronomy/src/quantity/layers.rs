//! Compost and mulch by area and depth, by name.

use super::inputs::Input;
use super::{Given, Quantity, Reckoned};
use crate::bounds::Unusable;

const AREA: Input = Input::number("area", "m2", 0.0, 1_000_000.0, "area to cover");
const DEPTH: Input = Input::number("depth", "mm", 0.0, 1000.0, "depth of the layer when it has settled");
const SETTLING: Input =
    Input::number("settling", "%", 0.0, 60.0, "how much the loose material sinks; 0 if not given").optional();
/// Deeper layers keep air from the roots (common practice).
const DEEPEST_MULCH_MM: f64 = 100.0;

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "layer_volume",
        title: "compost or mulch for a layer",
        inputs: &[AREA, DEPTH, SETTLING],
        unit: "L",
        about: "loose volume to bring; one centimetre on one square metre is ten litres",
        method: "area times depth, more by what it sinks",
        source: "geometry",
        reckon: |given| Ok(keep_shallow(loose_l(given)?.into(), given.number("depth")?)),
    },
    Quantity {
        name: "bags_for_layer",
        title: "bags of compost or mulch for a layer",
        inputs: &[AREA, DEPTH, SETTLING, Input::number("bag_volume", "L", 1.0, 2000.0, "what a bag holds")],
        unit: "count",
        about: "whole bags, the last one opened",
        method: "volume of the layer over that of a bag, rounded up",
        source: "geometry",
        reckon: |given| {
            let bags = loose_l(given)? / given.number("bag_volume")?;
            // A quotient a hair above a whole number is that number.
            Ok(keep_shallow((bags - 1e-9).ceil().max(0.0).into(), given.number("depth")?))
        },
    },
    Quantity {
        name: "layer_depth",
        title: "depth of a layer from what there is",
        inputs: &[AREA_TO_COVER, Input::number("volume", "L", 0.0, 1e9, "loose material at hand"), SETTLING],
        unit: "mm",
        about: "settled depth",
        method: "volume, less what it sinks, over the area",
        source: "geometry",
        reckon: |given| {
            let left = 1.0 - given.maybe("settling").unwrap_or(0.0) / 100.0;
            let depth_mm = given.number("volume")? * left / given.number("area")?;
            Ok(keep_shallow(depth_mm.into(), depth_mm))
        },
    },
];

const AREA_TO_COVER: Input = Input::number("area", "m2", 0.01, 1_000_000.0, "area to cover");

fn loose_l(given: &Given<'_>) -> Result<f64, Unusable> {
    let left = 1.0 - given.maybe("settling").unwrap_or(0.0) / 100.0;
    Ok(given.number("area")? * given.number("depth")? / left)
}

fn keep_shallow(reckoned: Reckoned, depth_mm: f64) -> Reckoned {
    let reckoned = reckoned.note("keep mulch a hand's width from stems and trunks (common practice)");
    if depth_mm > DEEPEST_MULCH_MM {
        reckoned.note("mulch deeper than 100 mm keeps air and water from the roots (common practice)")
    } else {
        reckoned
    }
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    fn ask(name: &str, inputs: &Value) -> f64 {
        find(name).unwrap().reckon_json(inputs).unwrap().value.to_json().as_f64().unwrap()
    }

    #[test]
    fn three_inches_on_a_hundred_square_feet_are_a_little_under_a_cubic_yard() {
        // 25 cubic feet of the 27 in a cubic yard; a cubic foot is 28.3168 L.
        let asked = json!({"area": {"value": 100, "unit": "ft2"}, "depth": {"value": 3, "unit": "in"}});
        assert!((ask("layer_volume", &asked) - 25.0 * 28.316_846_592).abs() < 1e-6);
    }

    #[test]
    fn what_sinks_is_brought_and_bags_are_whole() {
        let asked = json!({"area": 4, "depth": 50, "settling": 20, "bag_volume": 50});
        assert!((ask("bags_for_layer", &asked) - 5.0).abs() < 1e-12);
        let back = json!({"area": 4, "volume": 250, "settling": 20});
        assert!((ask("layer_depth", &back) - 50.0).abs() < 1e-9);
    }
}

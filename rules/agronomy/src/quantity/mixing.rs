//! Liquids thinned and made up, by name.

use super::inputs::Input;
use super::{Quantity, Reckoned};
use crate::bounds::in_order;
use crate::feeding::product;

const MIX: Input = Input::number("volume", "L", 0.0, 1_000_000.0, "ready mix wanted");
const LABEL: &str = "how much the label allows prevails; measure with a cup kept for this alone";

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "concentrate_for_dilution",
        title: "concentrate for a dilution of parts",
        inputs: &[
            MIX,
            Input::number(
                "parts_water",
                "-",
                0.0,
                100_000.0,
                "parts of water for one part of concentrate: 50 for 1:50",
            ),
        ],
        unit: "mL",
        about: "fill up with water to the volume; where a label means one part in 50 of the whole, give 49",
        method: "volume over all parts",
        source: "definition",
        reckon: |given| {
            let concentrate_l = given.number("volume")? / (1.0 + given.number("parts_water")?);
            Ok(Reckoned::from(1000.0 * concentrate_l).note(LABEL))
        },
    },
    Quantity {
        name: "concentrate_for_strength",
        title: "concentrate for a weaker strength",
        inputs: &[
            MIX,
            Input::number("stock", "%", 0.000_1, 100.0, "strength of the concentrate"),
            Input::number("target", "%", 0.0, 100.0, "strength wanted, not above stock"),
        ],
        unit: "mL",
        about: "fill up with water to the volume",
        method: "volume times target over stock",
        source: "conservation of what is dissolved",
        reckon: |given| {
            let (stock, target) = (given.number("stock")?, given.number("target")?);
            in_order("target", target, "stock", stock, "%")?;
            Ok(Reckoned::from(1000.0 * given.number("volume")? * target / stock).note(LABEL))
        },
    },
    Quantity {
        name: "product_for_ppm",
        title: "product for a strength in a volume of water",
        inputs: &[
            Input::number("volume", "L", 0.0, 1_000_000.0, "water to feed with"),
            Input::number("target", "ppm", 0.0, 100_000.0, "strength, mg of nutrient per litre"),
            Input::number("analysis", "%", 0.01, 100.0, "nutrient in the product by mass"),
        ],
        unit: "g",
        about: "mass to dissolve in the can or tank",
        method: "strength over analysis, times the volume",
        source: "definition of ppm as mg/L",
        reckon: |given| {
            let g_per_l = product::for_strength_g_per_l(given.number("target")?, given.number("analysis")?);
            Ok((g_per_l * given.number("volume")?).into())
        },
    },
    Quantity {
        name: "ppm_from_mass",
        title: "strength of a mass in water",
        inputs: &[
            Input::number("mass", "g", 0.0, 1e9, "mass dissolved"),
            Input::number("volume", "L", 0.001, 1e9, "volume of water"),
        ],
        unit: "ppm",
        about: "mg per litre of what was weighed",
        method: "mass over volume",
        source: "definition of ppm as mg/L",
        reckon: |given| Ok((1000.0 * given.number("mass")? / given.number("volume")?).into()),
    },
];

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    fn ask(name: &str, inputs: &Value) -> f64 {
        find(name).unwrap().reckon_json(inputs).unwrap().value.to_json().as_f64().unwrap()
    }

    #[test]
    fn one_to_fifty_is_one_part_of_fifty_one() {
        assert!((ask("concentrate_for_dilution", &json!({"volume": 5.1, "parts_water": 50})) - 100.0).abs() < 1e-9);
        assert!(
            (ask("concentrate_for_strength", &json!({"volume": 10, "stock": 5, "target": 0.5})) - 1000.0).abs() < 1e-9
        );
        let refused =
            find("concentrate_for_strength").unwrap().reckon_json(&json!({"volume": 1, "stock": 2, "target": 3}));
        assert_eq!(
            refused.unwrap_err().to_string(),
            "concentrate_for_strength: target is 3 %, above stock which is 2 %"
        );
    }

    #[test]
    fn what_is_dissolved_for_a_strength_gives_that_strength() {
        // 100 ppm of nitrogen from a 20 % product: half a gram a litre (definition).
        let grams = ask("product_for_ppm", &json!({"volume": 10, "target": 100, "analysis": 20}));
        assert!((grams - 5.0).abs() < 1e-9);
        assert!((ask("ppm_from_mass", &json!({"mass": grams * 0.2, "volume": 10})) - 100.0).abs() < 1e-9);
    }
}

//! Gypsum and Epsom salt, by name.

use super::inputs::Input;
use super::{Quantity, Reckoned};
use crate::amend::gypsum;
use crate::bounds::in_order;
use crate::feeding::elements::MG_IN_EPSOM;
use crate::feeding::product;

const AREA: Input = Input::number("area", "m2", 0.0, 1_000_000.0, "area to treat");
const SODIUM_NOW: Input = Input::number("sodium_now", "%", 0.0, 60.0, "exchangeable sodium now, share of the capacity");
const SODIUM_TARGET: Input =
    Input::number("sodium_target", "%", 0.0, 60.0, "exchangeable sodium wanted, not above sodium_now");

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "gypsum_for_sodium",
        title: "gypsum for a sodic soil",
        inputs: &[
            Input::number("cec_cmol_per_kg", "-", 0.5, 80.0, "exchange capacity in cmol/kg, the same as meq per 100 g"),
            SODIUM_NOW,
            SODIUM_TARGET,
            Input::number("depth", "m", 0.01, 1.5, "depth of soil to mend"),
            Input::number(
                "bulk_density",
                "kg/m3",
                800.0,
                2000.0,
                "of the dry soil; 1350 if not given (common practice)",
            )
            .optional(),
            Input::number("purity", "%", 10.0, 100.0, "gypsum in the product; 100 if not given").optional(),
            Input::number(
                "factor",
                "-",
                1.0,
                1.5,
                "for what misses the clay; 1.1 to 1.3 by sodium_target if not given",
            )
            .optional(),
        ],
        unit: "g/m2",
        about: "only where a soil test shows exchangeable sodium of some 15 % or more; gypsum does not change the pH",
        method: "8.6 F D rho CEC (ESPi - ESPf) / p in Mg/ha",
        source: "Oster, Shainberg and Abrol 1999, as used by North Dakota State University; F: Oster and Frenkel 1980 (from memory)",
        reckon: |given| {
            let (now, wanted) = (given.number("sodium_now")?, given.number("sodium_target")?);
            in_order("sodium_target", wanted, "sodium_now", now, "%")?;
            let bulk_density = given.maybe("bulk_density").unwrap_or(1350.0) / 1000.0;
            let factor = given.maybe("factor").unwrap_or_else(|| gypsum::factor(wanted));
            let purity = given.maybe("purity").unwrap_or(100.0);
            let cec = given.number("cec_cmol_per_kg")?;
            let g_m2 = gypsum::g_per_m2(cec, (now, wanted), given.number("depth")?, bulk_density, purity, factor);
            let reckoned = Reckoned::from(g_m2)
                .note("then leach with good water that drains away, or the sodium stays")
                .note("large amounts are given over several seasons");
            Ok(if now < 15.0 {
                reckoned.note("below 15 % a soil is not called sodic: gypsum may not be needed")
            } else {
                reckoned
            })
        },
    },
    Quantity {
        name: "epsom_for_magnesium",
        title: "Epsom salt for a rate of magnesium",
        inputs: &[AREA, Input::number("nutrient_rate", "g/m2", 0.0, 50.0, "magnesium per area")],
        unit: "g",
        about: "MgSO4 with seven waters, 9.86 % magnesium; only where a test or the leaves show the want of it",
        method: "rate times area over the share of magnesium",
        source: "standard atomic weights (IUPAC 2021)",
        reckon: |given| {
            let magnesium_g = product::for_area_g(given.number("nutrient_rate")?, given.number("area")?);
            Ok((magnesium_g / MG_IN_EPSOM).into())
        },
    },
];

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::json;

    #[test]
    fn epsom_salt_for_a_gram_of_magnesium_holds_a_gram() {
        // 246.47 g of MgSO4.7H2O hold 24.305 g of magnesium.
        let asked = json!({"area": 10, "nutrient_rate": 2.4305});
        let grams = find("epsom_for_magnesium").unwrap().reckon_json(&asked).unwrap().value.to_json();
        assert!((grams.as_f64().unwrap() - 246.47).abs() < 0.01, "{grams}");
    }

    #[test]
    fn gypsum_for_more_sodium_than_there_is_is_refused() {
        let asked = json!({"cec_cmol_per_kg": 20, "sodium_now": 10, "sodium_target": 12, "depth": 0.15});
        let refused = find("gypsum_for_sodium").unwrap().reckon_json(&asked).unwrap_err();
        assert_eq!(refused.to_string(), "gypsum_for_sodium: sodium_target is 12 %, above sodium_now which is 10 %");
        let asked = json!({"cec_cmol_per_kg": 20, "sodium_now": 28, "sodium_target": 10, "depth": 0.15, "purity": 75,
            "bulk_density": {"value": 1.35, "unit": "tonne/m3"}, "factor": 1.2});
        let outcome = find("gypsum_for_sodium").unwrap().reckon_json(&asked).unwrap();
        // 8.6 * 1.2 * 0.15 * 1.35 * 20 * 18 / 75 = 10.03 Mg/ha, by hand.
        assert!((outcome.value.to_json().as_f64().unwrap() - 1003.1).abs() < 0.1, "{:?}", outcome.value);
        assert_eq!(outcome.notes.len(), 2);
    }
}

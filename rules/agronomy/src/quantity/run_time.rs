//! How long a sprinkler or a drip line must run, by name.

use super::inputs::Input;
use super::{Given, Quantity};
use crate::bounds::Unusable;

const NET: Input = Input::number("net_depth", "mm", 0.0, 500.0, "depth that is to reach the roots");
const FLOW: Input = Input::number("flow", "L/h", 1.0, 1_000_000.0, "what all heads on the area give together");
const AREA: Input = Input::number("area", "m2", 0.1, 1_000_000.0, "area that they wet");
const EMITTER: Input = Input::number("emitter_flow", "L/h", 0.1, 100.0, "what one dripper gives");
const ALONG: Input = Input::number("emitter_spacing", "m", 0.05, 5.0, "between drippers on a line");
const ACROSS: Input = Input::number("line_spacing", "m", 0.05, 10.0, "between lines");
const SPRINKLED: Input =
    Input::number("efficiency", "-", 0.1, 1.0, "share that reaches the roots; 0.75 if not given (common practice)")
        .optional();
const DRIPPED: Input =
    Input::number("efficiency", "-", 0.1, 1.0, "share that reaches the roots; 0.9 if not given (common practice)")
        .optional();
const GEOMETRY: &str = "one litre on one square metre is one millimetre";

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "sprinkler_rate",
        title: "depth that sprinklers give in an hour",
        inputs: &[FLOW, AREA],
        unit: "mm/h",
        about: "the mean over the area; a row of cups shows how even it is",
        method: "flow over area",
        source: GEOMETRY,
        reckon: |given| Ok(sprinkler_mm_h(given)?.into()),
    },
    Quantity {
        name: "drip_rate",
        title: "depth that drip lines give in an hour",
        inputs: &[EMITTER, ALONG, ACROSS],
        unit: "mm/h",
        about: "spread over the whole area between lines",
        method: "flow of a dripper over its share of the area",
        source: GEOMETRY,
        reckon: |given| Ok(drip_mm_h(given)?.into()),
    },
    Quantity {
        name: "sprinkler_run_time",
        title: "time that sprinklers must run",
        inputs: &[NET, FLOW, AREA, SPRINKLED],
        unit: "min",
        about: "in several turns where water begins to run off",
        method: "net depth over efficiency over rate",
        source: GEOMETRY,
        reckon: |given| Ok((60.0 * gross_mm(given, 0.75)? / sprinkler_mm_h(given)?).into()),
    },
    Quantity {
        name: "drip_run_time",
        title: "time that drip lines must run",
        inputs: &[NET, EMITTER, ALONG, ACROSS, DRIPPED],
        unit: "min",
        about: "for a bed with lines at an even distance",
        method: "net depth over efficiency over rate",
        source: GEOMETRY,
        reckon: |given| Ok((60.0 * gross_mm(given, 0.9)? / drip_mm_h(given)?).into()),
    },
    Quantity {
        name: "drip_run_time_for_plant",
        title: "time that the drippers of one plant must run",
        inputs: &[
            Input::number("volume", "L", 0.0, 10_000.0, "water for the plant, losses counted in"),
            EMITTER,
            Input::number("emitters", "count", 1.0, 200.0, "drippers at the plant"),
        ],
        unit: "min",
        about: "volume as soak_volume gives it",
        method: "volume over the flow of all drippers",
        source: "definition",
        reckon: |given| {
            let drippers = f64::from(given.whole("emitters")?);
            Ok((60.0 * given.number("volume")? / (given.number("emitter_flow")? * drippers)).into())
        },
    },
];

fn gross_mm(given: &Given<'_>, usual_efficiency: f64) -> Result<f64, Unusable> {
    Ok(given.number("net_depth")? / given.maybe("efficiency").unwrap_or(usual_efficiency))
}

fn sprinkler_mm_h(given: &Given<'_>) -> Result<f64, Unusable> {
    Ok(given.number("flow")? / given.number("area")?)
}

fn drip_mm_h(given: &Given<'_>) -> Result<f64, Unusable> {
    let share_m2 = given.number("emitter_spacing")? * given.number("line_spacing")?;
    Ok(given.number("emitter_flow")? / share_m2)
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    fn ask(name: &str, inputs: &Value) -> f64 {
        find(name).unwrap().reckon_json(inputs).unwrap().value.to_json().as_f64().unwrap()
    }

    #[test]
    fn the_common_formula_in_gallons_and_inches_is_met() {
        // Common practice: inches an hour = 96.3 x gallons a minute / square feet. 5 gpm on 1000 sq ft.
        let asked = json!({"flow": {"value": 300, "unit": "gal/h"}, "area": {"value": 1000, "unit": "ft2"}});
        assert!((ask("sprinkler_rate", &asked) - 96.3 * 5.0 / 1000.0 * 25.4).abs() < 0.01);
        // And for drip: 231 x gph / (spacing x row spacing in square inches). 0.6 gph at 12 by 18 inches.
        let asked = json!({"emitter_flow": {"value": 0.6, "unit": "gal/h"},
            "emitter_spacing": {"value": 12, "unit": "in"}, "line_spacing": {"value": 18, "unit": "in"}});
        assert!((ask("drip_rate", &asked) - 231.0 * 0.6 / 216.0 * 25.4).abs() < 0.01);
    }

    #[test]
    fn losses_make_it_run_longer() {
        let asked = json!({"net_depth": 15, "flow": 1000, "area": 50, "efficiency": 0.75});
        assert!((ask("sprinkler_run_time", &asked) - 60.0).abs() < 1e-9);
        let asked = json!({"net_depth": 9, "emitter_flow": 2, "emitter_spacing": 0.5, "line_spacing": 0.4});
        assert!((ask("drip_run_time", &asked) - 60.0).abs() < 1e-9);
        assert!(
            (ask("drip_run_time_for_plant", &json!({"volume": 12, "emitter_flow": 4, "emitters": 2})) - 90.0).abs()
                < 1e-9
        );
    }
}

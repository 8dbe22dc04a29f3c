//! Heat and the person who works, by name.

use super::inputs::Input;
use super::{Given, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::heat_stress::worker::{FULL_SUN_F, Risk};
use crate::heat_stress::{globe, index};

const NWS: &str = "US National Weather Service heat index: Rothfusz 1990 (SR 90-23) with adjustments";
const OSHA: &str = "US Occupational Safety and Health Administration, Using the heat index: a guide for employers";
const AIR: Input = Input::number("temperature", "C", -50.0, 55.0, "temperature of the air in the shade");
const RH: Input = Input::number("relative_humidity", "%", 0.0, 100.0, "relative humidity at that time");
const BULB_MIN: f64 = -50.0;
const BULB_MAX: f64 = 90.0;

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "heat_index",
        title: "heat index",
        inputs: &[AIR, RH],
        unit: "F",
        about: "how hot the air feels in the shade in a light wind; full sun may add up to 15 F",
        method: "regression with its adjustments, the simple formula below 80 F",
        source: NWS,
        reckon: |given| {
            let index_f = index_f(given)?;
            Ok(noted_below(index_f.into(), index_f))
        },
    },
    Quantity {
        name: "heat_index_chart",
        title: "heat index as the chart prints it",
        inputs: &[AIR, RH],
        unit: "F, whole degrees",
        about: "the heat index rounded to whole degrees",
        method: "regression with its adjustments, the simple formula below 80 F, rounded",
        source: NWS,
        reckon: |given| {
            let index_f = index_f(given)?;
            Ok(noted_below(index_f.round().into(), index_f))
        },
    },
    Quantity {
        name: "worker_risk_level",
        title: "risk of heat for one who works outdoors",
        inputs: &[Input::number("heat_index", "C", -50.0, 150.0, "heat index, with what the sun adds")],
        unit: "level",
        about: "lower (caution), moderate, high, very high to extreme",
        method: "bands below 91, to 103, to 115 and above 115 F; the shared edge of 103 is counted as high",
        source: OSHA,
        reckon: |given| {
            let risk = Risk::of_index_f(fahrenheit(given.number("heat_index")?));
            Ok(Reckoned::text(risk.name()).note(risk.measures()))
        },
    },
    Quantity {
        name: "full_sun_addition",
        title: "what full sun adds to the heat index",
        inputs: &[Input::choice("situation", &["full sun instead of shade"], "what is compared")],
        unit: "F, at most",
        about: "a difference: add it to a heat index in F for work in full sun",
        method: "stated figure",
        source: OSHA,
        reckon: |_| Ok(FULL_SUN_F.into()),
    },
    Quantity {
        name: "heat_caution",
        title: "heat caution for garden work",
        inputs: &[
            AIR,
            RH,
            Input::choice("sun", &["shade", "full-sun"], "where the work is done"),
            Input::choice("work", &["light", "heavy"], "heavy is digging, sawing, carrying; light if not given")
                .optional(),
            Input::choice("clothing", &["normal", "heavy"], "heavy is a spray suit or the like; normal if not given")
                .optional(),
        ],
        unit: "heat index in F, level",
        about: "heavy work or heavy clothing counts as the next level (own choice; the guide asks for more precautions)",
        method: "heat index, 15 F more in full sun, then the bands of worker_risk_level",
        source: OSHA,
        reckon: heat_caution,
    },
    Quantity {
        name: "wbgt_simple_shade",
        title: "wet-bulb globe temperature guessed from temperature and humidity",
        inputs: &[AIR, RH],
        unit: "C",
        about: "supposes moderate sun and a light wind; too low in full sun and still air",
        method: "0.567 T + 0.393 e + 3.94",
        source: "Australian Bureau of Meteorology, after the American College of Sports Medicine 1984 (from memory)",
        reckon: |given| Ok(globe::simple_c(given.number("temperature")?, given.number("relative_humidity")?).into()),
    },
    Quantity {
        name: "wbgt_outdoor",
        title: "wet-bulb globe temperature in the sun",
        inputs: &[
            Input::number("natural_wet_bulb", "C", BULB_MIN, BULB_MAX, "wet bulb in the open"),
            Input::number("globe", "C", BULB_MIN, BULB_MAX, "black globe in the open"),
            Input::number("dry_bulb", "C", BULB_MIN, BULB_MAX, "dry bulb, shaded"),
        ],
        unit: "C",
        about: "from the three readings of a heat-stress meter",
        method: "0.7 wet bulb + 0.2 globe + 0.1 dry bulb",
        source: "ISO 7243",
        reckon: |given| {
            let wet_c = given.number("natural_wet_bulb")?;
            Ok(globe::outdoor_c(wet_c, given.number("globe")?, given.number("dry_bulb")?).into())
        },
    },
];

fn fahrenheit(celsius: f64) -> f64 {
    celsius * 9.0 / 5.0 + 32.0
}

fn index_f(given: &Given<'_>) -> Result<f64, Unusable> {
    Ok(index::heat_index_f(fahrenheit(given.number("temperature")?), given.number("relative_humidity")?))
}

fn noted_below(reckoned: Reckoned, index_f: f64) -> Reckoned {
    if index_f < 80.0 {
        reckoned.note("below 80 F the index is near the temperature and says little")
    } else {
        reckoned
    }
}

fn heat_caution(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let shade_f = index_f(given)?;
    let added_f = if given.text("sun")? == "full-sun" { FULL_SUN_F } else { 0.0 };
    let mut risk = Risk::of_index_f(shade_f + added_f);
    let harder = given.maybe_text("work") == Some("heavy") || given.maybe_text("clothing") == Some("heavy");
    if harder {
        risk = risk.raised();
    }
    let reckoned = Reckoned::fields(vec![
        ("heat_index_f", (shade_f + added_f).into()),
        ("level", super::OutcomeValue::Text(risk.name().to_owned())),
        ("measures", super::OutcomeValue::Text(risk.measures().to_owned())),
    ])
    .note("the young, the old, the ill and those not used to heat are at risk earlier");
    Ok(if added_f > 0.0 { reckoned.note("15 F added for full sun, the most it adds") } else { reckoned })
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::json;

    #[test]
    fn full_sun_and_heavy_work_each_raise_the_caution() {
        let level = |json: serde_json::Value| {
            find("heat_caution").unwrap().reckon_json(&json).unwrap().value.to_json()["level"].clone()
        };
        let mut asked = json!({"temperature": {"value": 90, "unit": "F"}, "relative_humidity": 40, "sun": "shade"});
        assert_eq!(level(asked.clone()), "lower (caution)");
        asked["sun"] = json!("full-sun");
        assert_eq!(level(asked.clone()), "high");
        asked["work"] = json!("heavy");
        assert_eq!(level(asked), "very high to extreme");
    }
}

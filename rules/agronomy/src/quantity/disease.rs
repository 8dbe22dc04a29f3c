//! Weather that favours a disease, by name.

use super::inputs::Input;
use super::{OutcomeValue, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::disease::generic::Fungus;
use crate::disease::{scab, wet_rule};

const MEAN: Input = Input::number("temperature", "C", -30.0, 50.0, "mean temperature while the leaves were wet");
const WET: Input = Input::number(
    "wet_hours",
    "h",
    0.0,
    500.0,
    "hours of wet leaves at a stretch; add wet spells parted by less than 8 dry hours",
);
const ABOUT: &str = "infection was possible, not certain: it needs the fungus and a leaf that does not resist";
const MILLS: &str =
    "revised Mills table: Mills 1944, Jones 1980, MacHardy and Gadoury 1989, as printed by West Virginia University";
const MAGAREY: &str = "Magarey, Sutton and Thayer 2005, Phytopathology 95: 92-100";

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "apple_scab_wet_hours",
        title: "wet hours that apple scab needs",
        inputs: &[Input::number(
            "temperature",
            "C",
            1.0,
            26.2,
            "mean temperature while the leaves are wet, 34 to 79 F",
        )],
        unit: "h",
        about: ABOUT,
        method: "table, straight between its rows",
        source: MILLS,
        reckon: |given| {
            let f = fahrenheit(given.number("temperature")?).clamp(scab::RANGE_F.0, scab::RANGE_F.1);
            scab::wet_hours_needed(f).map(Reckoned::from).ok_or_else(|| Unusable::missing("temperature", "34 to 79 F"))
        },
    },
    Quantity {
        name: "apple_scab_infection",
        title: "whether apple scab could infect",
        inputs: &[MEAN, WET],
        unit: "infection; wet hours needed",
        about: ABOUT,
        method: "wet hours against the table; outside 34 to 79 F no infection",
        source: MILLS,
        reckon: |given| {
            let needed_h = scab::wet_hours_needed(fahrenheit(given.number("temperature")?));
            Ok(verdict(given.number("wet_hours")?, needed_h)
                .note("rain that begins by night counts from sunrise where little scab was last year"))
        },
    },
    Quantity {
        name: "leaf_infection",
        title: "whether a leaf fungus could infect",
        inputs: &[
            MEAN,
            WET,
            Input::number("tmin_infection", "C", -10.0, 40.0, "below it no infection"),
            Input::number("topt_infection", "C", -5.0, 45.0, "best for infection"),
            Input::number("tmax_infection", "C", 0.0, 50.0, "above it no infection"),
            Input::number("wet_min", "h", 0.5, 200.0, "wet hours needed at the best temperature"),
            Input::number("wet_max", "h", 0.5, 400.0, "wet hours that are enough at any temperature between"),
        ],
        unit: "infection; wet hours needed",
        about: ABOUT,
        method: "least wet hours over the response to temperature, not above the most",
        source: MAGAREY,
        reckon: |given| {
            let temperatures_c =
                (given.number("tmin_infection")?, given.number("topt_infection")?, given.number("tmax_infection")?);
            let fungus = Fungus::new(temperatures_c, (given.number("wet_min")?, given.number("wet_max")?))?;
            let needed_h = fungus.wet_hours_needed(given.number("temperature")?);
            Ok(verdict(given.number("wet_hours")?, needed_h))
        },
    },
    Quantity {
        name: "disease_weather",
        title: "whether the weather favours a common disease",
        inputs: &[Input::choice("disease", wet_rule::NAMES, "the disease"), MEAN, WET],
        unit: "-",
        about: "favoured or not favoured; infection also needs the fungus and a leaf that does not resist",
        method: "enough wet hours between two temperatures; the note says how many and which",
        source: "common practice: handbooks differ by some hours and degrees",
        reckon: |given| {
            let disease = given.text("disease")?;
            let rule = wet_rule::find(disease).ok_or_else(|| Unusable::missing("disease", "one with a rule"))?;
            let favoured = rule.favoured(given.number("wet_hours")?, given.number("temperature")?);
            let (from_c, to_c) = rule.mean_c;
            Ok(Reckoned::text(if favoured { "favoured" } else { "not favoured" })
                .note(format!("favoured from {} wet hours at {from_c} to {to_c} C", rule.wet_h)))
        },
    },
];

fn fahrenheit(celsius: f64) -> f64 {
    celsius * 9.0 / 5.0 + 32.0
}

fn verdict(wet_h: f64, needed_h: Option<f64>) -> Reckoned {
    let word = |possible: bool| OutcomeValue::Text(if possible { "possible" } else { "not to be expected" }.to_owned());
    match needed_h {
        Some(needed_h) => {
            Reckoned::fields(vec![("infection", word(wet_h >= needed_h)), ("wet_hours_needed", needed_h.into())])
        }
        None => {
            Reckoned::fields(vec![("infection", word(false))]).note("at this temperature no wetness is long enough")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    fn ask(name: &str, inputs: &Value) -> Value {
        find(name).unwrap().reckon_json(inputs).unwrap().value.to_json()
    }

    #[test]
    fn wet_hours_at_fifty_fahrenheit_are_the_table_s() {
        let at = |wet: f64| {
            ask("apple_scab_infection", &json!({"temperature": {"value": 50, "unit": "F"}, "wet_hours": wet}))
        };
        assert_eq!(at(11.5)["infection"], "possible");
        assert_eq!(at(10.5)["infection"], "not to be expected");
        let frost = ask("apple_scab_infection", &json!({"temperature": -3, "wet_hours": 90}));
        assert_eq!(frost, json!({"infection": "not to be expected"}));
    }

    #[test]
    fn a_rule_says_what_it_asks_for() {
        let asked = json!({"disease": "rose black spot", "temperature": 20, "wet_hours": 8});
        let outcome = find("disease_weather").unwrap().reckon_json(&asked).unwrap();
        assert_eq!(outcome.value.to_json(), "favoured");
        assert_eq!(outcome.notes, ["favoured from 7 wet hours at 15 to 27 C"]);
    }
}

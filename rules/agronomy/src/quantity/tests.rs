//! Walks the whole list of quantities.

use super::*;
use crate::units;
use serde_json::json;

#[test]
fn names_are_unique_and_every_text_is_there() {
    let mut names: Vec<_> = all().map(|quantity| quantity.name).collect();
    names.sort_unstable();
    for pair in names.windows(2) {
        assert_ne!(pair[0], pair[1]);
    }
    for quantity in all() {
        assert!(quantity.name.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_'));
        for text in [quantity.title, quantity.about, quantity.method, quantity.source] {
            assert!(!text.is_empty() && !text.ends_with('.'), "{}: {text}", quantity.name);
        }
        for (i, input) in quantity.inputs.iter().enumerate() {
            assert!(!input.about.is_empty());
            assert!(quantity.inputs[i + 1..].iter().all(|other| other.name != input.name));
        }
    }
}

#[test]
fn every_declared_unit_can_be_read() {
    for quantity in all() {
        for unit in quantity.inputs.iter().filter_map(Input::unit) {
            assert!(units::read(unit).is_ok(), "{}: {unit}", quantity.name);
        }
    }
}

// A small generator with a fixed seed: the same points on every machine.
struct Points(u64);

impl Points {
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        // The ends of a range are the likeliest to break: a quarter of the points each.
        match self.0 >> 62 {
            0 => 0.0,
            1 => 1.0,
            _ => ((self.0 >> 11) & 0xffff_ffff) as f64 / f64::from(u32::MAX),
        }
    }
}

fn text_for(name: &str) -> &'static str {
    match name {
        "grade" => "30-4-4",
        "injector" => "1:100",
        "plant" => "tomato",
        "pest" => "cabbage maggot",
        "stage" => "first generation flies",
        _ => "%",
    }
}

/// Every day of two years with one minimum missing.
fn two_years() -> String {
    let mut record = "date,tmin_c,tmax_c,precip_mm\n".to_owned();
    for (count, date) in chrono::NaiveDate::from_ymd_opt(2025, 1, 1).unwrap().iter_days().take(730).enumerate() {
        let warm = -10.0 * libm::cos(count as f64 / 365.0 * std::f64::consts::TAU);
        let tmin_c = if date.to_string() == "2026-03-03" { String::new() } else { format!("{:.1}", warm + 6.0) };
        record += &format!("{date},{tmin_c},{:.1},{}\n", warm + 16.0, count % 5);
    }
    record
}

#[test]
fn no_allowed_input_gives_anything_but_a_finite_value_or_a_named_error() {
    let mut points = Points(7);
    let record = two_years();
    for quantity in all() {
        let mut answered = 0;
        for _ in 0..400 {
            let mut inputs = Inputs::new();
            for input in quantity.inputs {
                if !input.required && points.share() < 0.5 {
                    continue;
                }
                inputs = match input.kind {
                    Kind::Number { min, max, .. } => {
                        let value = min + (max - min) * points.share();
                        let whole = ["day_of_year", "month", "days", "day"].contains(&input.name);
                        inputs.number(input.name, if whole { value.floor() } else { value })
                    }
                    Kind::Measure { min, max } => {
                        let unit = if input.name == "ph_change" { "pH" } else { "%" };
                        inputs.measure(input.name, min + (max - min) * points.share(), unit)
                    }
                    Kind::Numbers { min, max, count, .. } => inputs.with(
                        input.name,
                        InputValue::Numbers {
                            values: (0..count).map(|_| min + (max - min) * points.share()).collect(),
                            unit: None,
                        },
                    ),
                    Kind::Row { min, max, .. } => inputs.with(
                        input.name,
                        InputValue::Numbers {
                            values: (0..30).map(|_| min + (max - min) * points.share()).collect(),
                            unit: None,
                        },
                    ),
                    Kind::Choice(choices) => {
                        let at = (points.share() * (choices.len() - 1) as f64).round() as usize;
                        inputs.text(input.name, choices[at])
                    }
                    Kind::Text => inputs.text(input.name, text_for(input.name)),
                    Kind::Date => {
                        inputs.text(input.name, if points.share() < 0.5 { "2026-03-01" } else { "2026-03-02" })
                    }
                    Kind::Moment => inputs.text(input.name, "2026-03-01T12:00:00Z"),
                    Kind::Series => inputs.text(input.name, record.clone()),
                };
            }
            match quantity.reckon(&inputs) {
                Ok(outcome) => {
                    answered += 1;
                    assert!(outcome.value.is_finite());
                    assert!(!outcome.unit.is_empty());
                }
                Err(QuantityError::Refused { reason, .. }) => {
                    assert!(!reason.to_string().is_empty());
                }
                Err(other) => panic!("{}: {inputs:?} gave {other}", quantity.name),
            }
        }
        assert!(answered > 0, "{} never answered", quantity.name);
    }
}

#[test]
fn a_unit_that_measures_the_same_is_turned_into_the_declared_one() {
    let quantity = find("saturation_vapour_pressure").unwrap();
    let celsius = quantity.reckon(&Inputs::new().number("temperature", 25.0)).unwrap();
    let fahrenheit = quantity.reckon(&Inputs::new().measure("temperature", 77.0, "F")).unwrap();
    assert_eq!(celsius.value, fahrenheit.value);
    assert_eq!(celsius.unit, "kPa");
    assert_eq!(celsius.source, "FAO-56 equation 11");
}

#[test]
fn every_refusal_names_quantity_and_field() {
    let refused = |name: &str, json: serde_json::Value| {
        let quantity = find(name).unwrap();
        Inputs::from_json(quantity.name, &json).and_then(|inputs| quantity.reckon(&inputs)).unwrap_err().to_string()
    };
    for (json, expected) in [
        (
            json!({"latitude": 91, "day_of_year": 5}),
            "daylength_fao_h: input `latitude` is 91 deg, allowed are -90 to 90 deg",
        ),
        (json!({"latitude": 9}), "daylength_fao_h: input `day_of_year` is missing, expected a number of 1 to 366 d"),
        (
            json!({"lattitude": 9, "day_of_year": 5}),
            "daylength_fao_h takes no input `lattitude` (did you mean `latitude`?); its inputs are latitude, day_of_year",
        ),
        (
            json!({"latitude": "north", "day_of_year": 5}),
            "daylength_fao_h: input `latitude` is the text `north`, expected a number of -90 to 90 deg",
        ),
        (
            json!({"latitude": {"value": 9, "unit": "mm"}, "day_of_year": 5}),
            "daylength_fao_h: input `latitude`: `mm` cannot be turned into `deg`: they measure different things, expected a number of -90 to 90 deg",
        ),
        (
            json!({"latitude": {"value": 9, "unit": "yards"}, "day_of_year": 5}),
            "daylength_fao_h: input `latitude`: unit `yards` is not known, expected a number of -90 to 90 deg",
        ),
        (
            json!({"latitude": {"wert": 9}, "day_of_year": 5}),
            "daylength_fao_h: input `latitude` is an object with `wert`, expected a number, text, list of numbers, or an object of value and unit",
        ),
        (json!({"latitude": 9, "day_of_year": 5.5}), "daylength_fao_h: day_of_year is `5.5`, expected a whole number"),
        (json!(null), "inputs are not an object of names and values"),
    ] {
        assert_eq!(refused("daylength_fao_h", json), expected);
    }
    assert_eq!(
        refused("et0_hs", json!({"latitude": 9, "day_of_year": 5, "tmin": 9, "tmax": 3})),
        "et0_hs: tmin is 9 C, above tmax which is 3 C"
    );
    assert_eq!(
        refused("dd_single_sine", json!({"tmin": 9, "tmax": 13, "lower": 5, "upper": 30, "cutoff": "flat"})),
        "dd_single_sine: input `cutoff` is `flat`, allowed are horizontal, intermediate, vertical"
    );
    assert_eq!(
        find("daylenth_fao_h").unwrap_err().to_string(),
        "quantity `daylenth_fao_h` is not known (did you mean `daylength_fao_h`?)"
    );
}

#[test]
fn an_input_given_twice_is_refused() {
    let quantity = find("ea_from_tmin").unwrap();
    let twice = quantity.reckon(&Inputs::new().number("tmin", 1.0).number("tmin", 2.0));
    assert_eq!(twice.unwrap_err().to_string(), "ea_from_tmin: input `tmin` is given twice");
}

#[test]
fn numbers_alone_go_the_short_way_and_give_the_same() {
    let quantity = find("et0_hs").unwrap();
    let numbers = [("latitude", 45.72), ("day_of_year", 196.0), ("tmin", 14.8), ("tmax", 26.6)];
    let inputs = numbers.iter().fold(Inputs::new(), |inputs, &(name, value)| inputs.number(name, value));
    let short = quantity.reckon_numbers(&numbers).unwrap();
    assert_eq!(quantity.reckon(&inputs).unwrap().value, OutcomeValue::Number(short));
    assert!(quantity.reckon_numbers(&numbers[..3]).is_err());
    assert!(find("day_of_year").unwrap().reckon_numbers(&[("date", 5.0)]).is_err());
}

#[test]
fn what_was_assumed_is_said() {
    let quantity = find("et0_pm_daily").unwrap();
    let inputs = Inputs::new()
        .number("latitude", 45.72)
        .number("elevation", 200.0)
        .number("day_of_year", 196.0)
        .number("tmin", 14.8)
        .number("tmax", 26.6);
    assert_eq!(quantity.reckon(&inputs).unwrap().notes.len(), 3);
    let said = quantity.reckon(&inputs.number("tdew", 12.0).number("u2", 1.0).number("solar", 20.0)).unwrap();
    assert!(said.notes.is_empty());
}

#[test]
fn two_ways_of_saying_humidity_contradict_each_other() {
    let quantity = find("et0_pm_daily").unwrap();
    let json = json!({"latitude": 4, "elevation": 2, "day_of_year": 9, "tmin": 9, "tmax": 20, "ea": 1, "tdew": 5});
    let refused = quantity.reckon(&Inputs::from_json(quantity.name, &json).unwrap()).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "et0_pm_daily: ea and tdew contradict each other: they say the same thing, give one"
    );
    assert_eq!(refused.field(), Some("ea"));
}

#[test]
fn every_texture_of_the_table_can_be_chosen() {
    let quantity = find("available_water").unwrap();
    for texture in crate::water::texture::TEXTURES {
        for name in texture.names {
            for written in [(*name).to_owned(), name.replace(' ', "-"), name.replace(' ', "_")] {
                let outcome = quantity.reckon(&Inputs::new().text("texture", written)).unwrap();
                assert_eq!(outcome.value, OutcomeValue::Number(texture.available_middle_mm_per_m()));
                assert_eq!(outcome.notes, [texture.source]);
            }
        }
    }
    assert!(quantity.reckon(&Inputs::new().text("texture", "mud")).is_err());
}

#[test]
fn the_whole_way_from_weather_to_can_goes_by_name() {
    // Common practice: 11 to 40 L every 3 to 7 days for a rose in high summer.
    let number = |name: &str, json: serde_json::Value| match find(name).unwrap().reckon_json(&json).unwrap().value {
        OutcomeValue::Number(number) => number,
        other => panic!("{name} gave {other:?}"),
    };
    let need =
        number("plant_water_need", json!({"et0": 6.5, "plant_factor": 0.7, "exposure": "full-sun", "mulched": false}));
    let soil = json!({"water_need": need, "texture": "clay-loam", "root_depth": 0.5, "p": 0.4});
    let days = number("soak_interval", soil.clone());
    assert!((3.0..=7.0).contains(&days), "{days}");
    let mut rose = soil;
    rose["canopy_diameter"] = json!({"value": 90, "unit": "cm"});
    rose["method"] = json!("basin");
    let litres = number("soak_volume", rose.clone());
    assert!((11.0..=40.0).contains(&litres), "{litres}");

    // Half the days take half the water, and shade takes less than sun.
    rose["interval"] = json!(days / 2.0);
    assert!((number("soak_volume", rose) - litres / 2.0).abs() < 1e-9);
    let shade = json!({"et0": 6.5, "plant_factor": 0.7, "exposure": "shade"});
    assert!(number("plant_water_need", shade) < need);
}

#[test]
fn a_pot_that_does_not_last_a_day_says_every_day() {
    let quantity = find("container_soak_interval").unwrap();
    let json = json!({"water_need": 9, "canopy_diameter": 0.5, "container_volume": 10});
    let outcome = quantity.reckon_json(&json).unwrap();
    assert_eq!(outcome.value, OutcomeValue::Number(1.0));
    assert!(outcome.notes[0].starts_with("every day"), "{:?}", outcome.notes);
}

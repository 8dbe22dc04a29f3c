//! Acid and lime for a soil, by name.

use super::inputs::{Input, Kind};
use super::root_zone::TEXTURE;
use super::value::shorten;
use super::{Given, OutcomeValue, Quantity, Reckoned};
use crate::amend::{lime, sulphur};
use crate::bounds::{Unusable, in_order};

const SULPHUR_TABLE: &str = "Michigan State University, elemental sulphur to lower pH to 4.5, as printed by a supplier";
const LIME_TABLE: &str = "table of ground limestone to raise pH to 6.5 on a soil-information page";
const GARDEN_RULE: &str = "garden rule, as garden-soil pages print it";
const BETWEEN: &str = "table, straight between its rows; a target within it takes the difference of two rows";
const ABOUT_SULPHUR: &str = "where to begin: tables differ by up to a factor of two; where free lime is (it fizzes with vinegar) sulphur does nothing";
const ABOUT_LIME: &str = "where to begin: tables differ by about a third; not for plants that like acid soil";
/// g/m2 in one lb per acre: 453.59237 g on 4046.8564224 m2, exact.
const G_M2_PER_LB_ACRE: f64 = 453.592_37 / 4_046.856_422_4;
/// g/m2 in one lb per 100 sq ft: 453.59237 g on 9.290304 m2, exact.
const G_M2_PER_LB_100_FT2: f64 = 453.592_37 / 9.290_304;

const ACID_NOW: Input =
    Input::number("ph_now", "pH", sulphur::LEAST_PH, sulphur::MOST_PH, "pH of the soil now, tested in water");
const ACID_TARGET: Input =
    Input::number("ph_target", "pH", sulphur::LEAST_PH, sulphur::MOST_PH, "pH wanted, not above ph_now");
const TO_4P5: Input = Input::number("ph_target", "pH", 4.5, 4.5, "pH wanted: the table's");
const LIME_NOW: Input =
    Input::number("ph_now", "pH", lime::LEAST_PH, lime::MOST_PH, "pH of the soil now, tested in water");
const LIME_TARGET: Input =
    Input::number("ph_target", "pH", lime::LEAST_PH, lime::MOST_PH, "pH wanted, not below ph_now");
const TO_6P5: Input = Input::number("ph_target", "pH", 6.5, 6.5, "pH wanted: the table's");
const PURITY: Input = Input::number("purity", "%", 10.0, 100.0, "sulphur in the product; 100 if not given").optional();
const NEUTRALISING: Input =
    Input::number("neutralising_value", "%", 20.0, 180.0, "against pure calcium carbonate; 100 if not given")
        .optional();
const DOWN: Input = Input::new(
    "ph_change",
    Kind::Measure { min: -3.0, max: 0.0 },
    "change of pH, negative; the unit may say from where",
);
const UP: Input =
    Input::new("ph_change", Kind::Measure { min: 0.0, max: 3.0 }, "change of pH; the unit may say from where");

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "sulphur_to_ph_4p5_lb_acre",
        title: "sulphur to lower the pH to 4.5",
        inputs: &[TEXTURE, ACID_NOW, TO_4P5],
        unit: "lb/acre",
        about: ABOUT_SULPHUR,
        method: BETWEEN,
        source: SULPHUR_TABLE,
        reckon: |given| Ok(sulphur_lb_acre(given)?.into()),
    },
    Quantity {
        name: "sulphur_for_ph",
        title: "sulphur to lower the pH",
        inputs: &[TEXTURE, ACID_NOW, ACID_TARGET, PURITY],
        unit: "g/m2",
        about: ABOUT_SULPHUR,
        method: BETWEEN,
        source: SULPHUR_TABLE,
        reckon: |given| {
            let pure_g_m2 = sulphur_lb_acre(given)? * G_M2_PER_LB_ACRE;
            let g_m2 = pure_g_m2 * 100.0 / given.maybe("purity").unwrap_or(100.0);
            Ok(acid_notes(split(g_m2.into(), pure_g_m2)))
        },
    },
    Quantity {
        name: "iron_sulphate_for_ph",
        title: "iron sulphate to lower the pH",
        inputs: &[TEXTURE, ACID_NOW, ACID_TARGET],
        unit: "g/m2",
        about: "FeSO4 with seven waters: quicker than sulphur, eight times as much of it; stains paving",
        method: "sulphur of the table times 8 (8.7 by formula; other sheets print 6)",
        source: "ratio: Royal Horticultural Society, acidifying soil; sulphur: Michigan State University table",
        reckon: |given| {
            let sulphur_g_m2 = sulphur_lb_acre(given)? * G_M2_PER_LB_ACRE;
            Ok(acid_notes((sulphur_g_m2 * sulphur::IRON_SULPHATE_PER_SULPHUR).into()))
        },
    },
    Quantity {
        name: "lb_acre_to_g_m2",
        title: "rate per acre in grams per square metre",
        inputs: &[Input::number("rate", "lb/acre", 0.0, 1e6, "mass per area")],
        unit: "g/m2",
        about: "for tables in pounds per acre",
        method: "exact factors",
        source: "international pound and acre (definitions)",
        reckon: |given| Ok((given.number("rate")? * G_M2_PER_LB_ACRE).into()),
    },
    Quantity {
        name: "limestone_to_ph_6p5_lb_100sqft",
        title: "ground limestone to raise the pH to 6.5",
        inputs: &[TEXTURE, LIME_NOW, TO_6P5],
        unit: "lb per 100 sq ft",
        about: ABOUT_LIME,
        method: BETWEEN,
        source: LIME_TABLE,
        reckon: |given| Ok(lime_lb_100_ft2(given)?.into()),
    },
    Quantity {
        name: "limestone_for_ph",
        title: "ground limestone to raise the pH",
        inputs: &[TEXTURE, LIME_NOW, LIME_TARGET, NEUTRALISING],
        unit: "g/m2",
        about: ABOUT_LIME,
        method: BETWEEN,
        source: LIME_TABLE,
        reckon: |given| {
            let pure_lb = lime_lb_100_ft2(given)?;
            let g_m2 = pure_lb * G_M2_PER_LB_100_FT2 * 100.0 / given.maybe("neutralising_value").unwrap_or(100.0);
            let parts = (pure_lb * 10.0 / lime::MOST_AT_ONCE_LB_PER_1000_FT2).ceil();
            let reckoned = Reckoned::from(g_m2).note("work it in; it takes months to act; not together with ammonium");
            Ok(if parts > 1.0 {
                reckoned.note(format!(
                    "in {parts} applications half a year apart (common practice: at most 50 lb per 1000 sq ft at once)"
                ))
            } else {
                reckoned
            })
        },
    },
    Quantity {
        name: "sulphur_one_unit_lb_1000sqft",
        title: "sulphur by the garden rule",
        inputs: &[TEXTURE, DOWN],
        unit: "lb per 1000 sq ft",
        about: "from about pH 6; the university table takes as much on sand and 1.6 to 1.8 times as much on loam and clay",
        method: "10, 15 and 20 for one unit on sandy loam, loam and clay loam, in proportion",
        source: GARDEN_RULE,
        reckon: |given| {
            let soil = lime::Group::of_texture(given.text("texture")?);
            Ok((sulphur::garden_rule_lb_per_1000_ft2(soil) * -ph_change(given)?).into())
        },
    },
    Quantity {
        name: "limestone_one_unit_lb_1000sqft",
        title: "limestone by the garden rule",
        inputs: &[TEXTURE, UP],
        unit: "lb per 1000 sq ft",
        about: "from about pH 5.5; other tables take up to half as much again and more",
        method: "35, 50 and 70 for one unit on sandy loam, loam and clay loam, in proportion",
        source: GARDEN_RULE,
        reckon: |given| {
            let soil = lime::Group::of_texture(given.text("texture")?);
            Ok((lime::garden_rule_lb_per_1000_ft2(soil) * ph_change(given)?).into())
        },
    },
    Quantity {
        name: "sulphur_max_single_application",
        title: "most sulphur at once on planted ground",
        inputs: &[Input::choice("situation", &["established lawn", "planted bed"], "what grows there")],
        unit: "lb per 1000 sq ft per application, not more often than every 2-3 months, below 75 F",
        about: "a safety limit, from the careful end to the most; water in at once and wash it off the leaves",
        method: "stated limit; a planted bed is held to the lawn's",
        source: "Clemson University, soil acidification (citing EC 707, 2003)",
        reckon: |_| {
            let range = vec![sulphur::LEAST_AT_ONCE_LB_PER_1000_FT2, sulphur::MOST_AT_ONCE_LB_PER_1000_FT2];
            Ok(OutcomeValue::List(range).into())
        },
    },
    Quantity {
        name: "ordering",
        title: "which soil takes more for the same change of pH",
        inputs: &[Input::choice("amendment", &["sulphur or lime, same pH change", "sulphur", "lime"], "what is given")],
        unit: "amount order",
        about: "the lighter the soil, the less it takes",
        method: "the amounts of the tables compared for a whole change",
        source: "Michigan State University sulphur table; table of ground limestone",
        reckon: |given| {
            let acid = [("sand", sulphur::Group::Sand), ("loam", sulphur::Group::Loam), ("clay", sulphur::Group::Clay)]
                .map(|(name, group)| (name, sulphur::lb_per_acre(group, 7.0, 4.5)));
            let limed =
                [("sand", lime::Group::SandyLoam), ("loam", lime::Group::Loam), ("clay", lime::Group::ClayLoam)]
                    .map(|(name, group)| (name, lime::lb_per_100_ft2(group, 4.0, 6.5)));
            Ok(match given.text("amendment")? {
                "sulphur" => Reckoned::text(in_order_of_amount(acid)),
                "lime" => Reckoned::text(in_order_of_amount(limed)),
                _ => {
                    let (of_acid, of_lime) = (in_order_of_amount(acid), in_order_of_amount(limed));
                    if of_acid == of_lime {
                        Reckoned::text(of_acid)
                    } else {
                        Reckoned::text(format!("sulphur {of_acid}, lime {of_lime}"))
                    }
                }
            })
        },
    },
];

fn in_order_of_amount(mut amounts: [(&'static str, f64); 3]) -> String {
    amounts.sort_by(|a, b| a.1.total_cmp(&b.1));
    amounts.map(|(name, _)| name).join("<")
}

fn sulphur_lb_acre(given: &Given<'_>) -> Result<f64, Unusable> {
    let (now, target) = (given.number("ph_now")?, given.number("ph_target")?);
    in_order("ph_target", target, "ph_now", now, "pH")?;
    Ok(sulphur::lb_per_acre(sulphur::Group::of_texture(given.text("texture")?), now, target))
}

fn lime_lb_100_ft2(given: &Given<'_>) -> Result<f64, Unusable> {
    let (now, target) = (given.number("ph_now")?, given.number("ph_target")?);
    in_order("ph_now", now, "ph_target", target, "pH")?;
    Ok(lime::lb_per_100_ft2(lime::Group::of_texture(given.text("texture")?), now, target))
}

/// A bare number, or one whose unit tells where the change begins: `from about 6.0`, `5.5 to 6.5`.
fn ph_change(given: &Given<'_>) -> Result<f64, Unusable> {
    let change = given.number("ph_change")?;
    let unit = given.unit_of("ph_change").unwrap_or("-").trim();
    let ph = |text: &str| text.trim().parse::<f64>().ok().filter(|ph| (3.0..=10.0).contains(ph));
    let says_start =
        unit.strip_prefix("from").map(|rest| rest.trim().trim_start_matches("about ")).and_then(ph).is_some();
    let says_both = unit
        .split_once(" to ")
        .and_then(|(from, to)| Some(ph(to)? - ph(from)?))
        .is_some_and(|difference| (difference - change).abs() < 1e-9);
    if ["-", "pH", "1"].contains(&unit) || says_start || says_both {
        return Ok(change);
    }
    Err(Unusable::Unread {
        field: "ph_change",
        text: shorten(unit),
        expected: "no unit, or where the change begins: `from 6.0`, or both ends that differ by it: `5.5 to 6.5`"
            .to_owned(),
    })
}

fn split(reckoned: Reckoned, pure_g_m2: f64) -> Reckoned {
    let most_g_m2 = sulphur::MOST_AT_ONCE_LB_PER_1000_FT2 * G_M2_PER_LB_100_FT2 / 10.0;
    let parts = (pure_g_m2 / most_g_m2).ceil();
    if parts > 1.0 {
        reckoned.note(format!(
            "on planted ground in {parts} applications 2 to 3 months apart, each at most 49 g/m2 of sulphur and below 24 C (Clemson University)"
        ))
    } else {
        reckoned
    }
}

fn acid_notes(reckoned: Reckoned) -> Reckoned {
    reckoned
        .note("test again before giving more; on open ground work it in months before planting")
        .note("dust hurts eyes and lungs: still weather, goggles, dust mask; the label prevails")
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    fn ask(name: &str, inputs: &Value) -> Result<f64, String> {
        let outcome = find(name).unwrap().reckon_json(inputs).map_err(|error| error.to_string())?;
        Ok(outcome.value.to_json().as_f64().unwrap())
    }

    #[test]
    fn a_target_on_the_wrong_side_is_refused_by_name() {
        let up = json!({"texture": "loam", "ph_now": 5.0, "ph_target": 6.0});
        assert_eq!(
            ask("sulphur_for_ph", &up).unwrap_err(),
            "sulphur_for_ph: ph_target is 6 pH, above ph_now which is 5 pH"
        );
        let alkaline = json!({"texture": "loam", "ph_now": 8.1, "ph_target": 6.0});
        assert_eq!(
            ask("sulphur_for_ph", &alkaline).unwrap_err(),
            "sulphur_for_ph: input `ph_now` is 8.1 pH, allowed are 4.5 to 7 pH"
        );
        let down = json!({"texture": "loam", "ph_now": 6.4, "ph_target": 6.0});
        assert!(ask("limestone_for_ph", &down).unwrap_err().contains("ph_now is 6.4 pH, above ph_target"));
    }

    #[test]
    fn a_weaker_product_takes_more_and_iron_sulphate_eight_times() {
        let mut asked = json!({"texture": "clay loam", "ph_now": 7.0, "ph_target": 6.0});
        let pure = ask("sulphur_for_ph", &asked).unwrap();
        assert!((pure - (3830.0 - 2300.0) * 0.112_085_116).abs() < 1e-3, "{pure}");
        let iron = ask("iron_sulphate_for_ph", &asked).unwrap();
        assert!((iron / pure - 8.0).abs() < 1e-9);
        asked["purity"] = json!(90);
        assert!((ask("sulphur_for_ph", &asked).unwrap() - pure / 0.9).abs() < 1e-9);
    }

    #[test]
    fn an_amount_too_great_for_once_says_in_how_many_parts() {
        let asked = json!({"texture": "clay", "ph_now": 7.0, "ph_target": 6.0});
        let outcome = find("sulphur_for_ph").unwrap().reckon_json(&asked).unwrap();
        assert!(outcome.notes[0].starts_with("on planted ground in 4 applications"), "{:?}", outcome.notes);
    }

    #[test]
    fn the_unit_of_a_change_may_only_say_where_it_begins() {
        let change = |unit: &str| {
            let asked = json!({"texture": "loam", "ph_change": {"value": 1.0, "unit": unit}});
            ask("limestone_one_unit_lb_1000sqft", &asked)
        };
        for unit in ["-", "pH", "from about 5.5", "from 5.5", "5.5 to 6.5"] {
            assert_eq!(change(unit), Ok(50.0), "{unit}");
        }
        for unit in ["mm", "5.5 to 6.0", "from here"] {
            assert!(change(unit).unwrap_err().contains("ph_change is `"), "{unit}");
        }
    }
}

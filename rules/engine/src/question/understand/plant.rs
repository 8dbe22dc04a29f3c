//! The plant: traits, age, size, stage.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;

use super::super::pointer::Trouble;
use super::super::said::Said;
use super::facts::{number, put};
use crate::compile::book::PlantBook;
use crate::fact::catalogue::Fact;
use crate::fact::value::{Reading, Value};

/// A young plant counts as at least this share of a grown one.
const LEAST_SHARE: f64 = 0.25;

/// The traits: said, else the usual value as assumed, else unknown.
pub(super) fn traits(said: &Said, book: &PlantBook, troubles: &mut Vec<Trouble>) -> Vec<Reading> {
    for name in said.plant.traits.keys() {
        if book.names.traits.number(name).is_none() {
            let pointer = format!("/plant/traits/{}", escaped(name));
            troubles.push(Trouble::unknown(pointer, "trait", name, book.names.traits.names()));
        }
    }
    book.traits
        .iter()
        .enumerate()
        .map(|(at, info)| {
            let name = book.names.traits.name(u16::try_from(at).unwrap_or(u16::MAX));
            let values = book.names.values.get(at);
            match (said.plant.traits.get(name), values) {
                (Some(value), Some(values)) => match values.number(value) {
                    Some(number) => Reading::new(Value::Choice(number), Origin::Given),
                    None => {
                        troubles.push(Trouble::unknown(
                            format!("/plant/traits/{}", escaped(name)),
                            name,
                            value,
                            values.names(),
                        ));
                        Reading::UNKNOWN
                    }
                },
                _ => info.usual.map_or(Reading::UNKNOWN, |usual| Reading::new(Value::Choice(usual), Origin::Assumed)),
            }
        })
        .collect()
}

/// A name as part of a JSON pointer.
fn escaped(name: &str) -> String {
    name.replace('~', "~0").replace('/', "~1")
}

/// Age, planting day, stage, and the size where it is not said.
pub(super) fn facts(said: &Said, book: &PlantBook, day: Day, given: &mut [Reading], troubles: &mut Vec<Trouble>) {
    let plant = &said.plant;
    let mut age = number(Fact::PlantAge, plant.age_years, troubles);
    if let Some(age) = age {
        put(given, Fact::PlantAge, Value::Number(age), Origin::Given);
    }
    if let Some(date) = plant.planted_on {
        match Day::supported(date) {
            Ok(planted) if planted <= day => {
                put(given, Fact::PlantPlantedOn, Value::Date(planted), Origin::Given);
                age = Some(f64::from(day - planted) / 365.25);
            }
            Ok(_) => troubles.push(Trouble::new("/plant/planted_on", format!("`{date}` lies after the date asked"))),
            Err(fault) => troubles.push(Trouble::new("/plant/planted_on", fault.to_string())),
        }
    }
    let share = match age {
        Some(age) if book.habit.grown_after_years > 0.0 => (age / book.habit.grown_after_years).clamp(LEAST_SHARE, 1.0),
        _ => 1.0,
    };
    for (fact, grown) in
        [(Fact::PlantHeight, book.habit.height_m), (Fact::PlantCanopyDiameter, book.habit.canopy_diameter_m)]
    {
        if given.get(fact as usize).is_none_or(|reading| !reading.value.is_there()) {
            put(given, fact, Value::Number(fact.entry().step.round(grown * share)), Origin::Assumed);
        }
    }
    if let Some(stage) = &plant.stage {
        match book.names.stages.number(stage) {
            Some(number) => put(given, Fact::PlantStage, Value::Choice(number), Origin::Given),
            None => troubles.push(Trouble::unknown("/plant/stage", "stage", stage, book.names.stages.names())),
        }
    }
    if let Some(date) = plant.stage_since {
        if plant.stage.is_none() {
            troubles.push(Trouble::new("/plant/stage_since", "the stage itself is missing"));
        } else if Day::from_date(date) > day {
            troubles.push(Trouble::new("/plant/stage_since", format!("`{date}` lies after the date asked")));
        }
    }
}

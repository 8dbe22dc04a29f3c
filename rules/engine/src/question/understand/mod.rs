//! From what was said to what is meant: names looked up, values checked and rounded, what is not said assumed where the
//! catalogue says so. Every field that can't be used is named at once.

mod climate;
mod condition;
mod differences;
mod emergency;
mod facts;
mod history;
mod plant;
mod words;

use std::sync::Arc;

use lammas_agronomy::calendar::Day;

pub use climate::{profile, profile_on};
pub use differences::{differing, meant};

use super::asked;
use super::climate::Climate;
use super::pointer::{Trouble, TroubleKind};
use super::said::Said;
use super::{Question, nothing_given};
use crate::compile::set::Set;

/// Understands a question. The climate has been found already (a registered one, or by [`profile`]); the date is there.
///
/// # Errors
/// Every field that can't be used, with its pointer.
pub fn understand(said: &Said, set: &Set, climate: Arc<Climate>, today: Option<Day>) -> Result<Question, Vec<Trouble>> {
    let mut troubles = Vec::new();
    let day = day(said, today, &mut troubles);
    let plant = set.names.plants.number(&said.plant.kind);
    if plant.is_none() {
        let near = set.words.plants(&said.plant.kind);
        let known: Vec<&str> = near.iter().map(|found| found.name.as_str()).collect();
        let trouble = if said.plant.kind.is_empty() {
            Trouble::new("/plant/type", "the plant is missing")
        } else {
            Trouble::unknown_near("/plant/type", "plant", &said.plant.kind, &known)
        };
        troubles.push(trouble.of_kind(TroubleKind::UnknownPlant));
    }
    let Some(book) = plant.and_then(|number| set.plants.get(usize::from(number))) else {
        // Without the plant its traits and stages mean nothing; all else is still looked at.
        facts::check_ranges(said, &mut troubles);
        let mut signs = condition::signs(said, set, day, &mut troubles);
        history::works(said, set, day, &mut troubles);
        let heard = words::heard(said, set, set.words.without_plant(), &mut signs).map(Arc::new);
        let is_only_the_plant = troubles.iter().all(|trouble| trouble.kind == TroubleKind::UnknownPlant);
        let danger = is_only_the_plant.then(|| emergency::told(said, set, climate, day, signs, heard)).flatten();
        return danger.ok_or_else(|| sorted(troubles));
    };
    let mut given = nothing_given();
    facts::site(said, book, &mut given, &mut troubles);
    let traits = plant::traits(said, book, &mut troubles);
    plant::facts(said, book, day, &mut given, &mut troubles);
    let mut signs = condition::signs(said, set, day, &mut troubles);
    let heard = words::heard(said, set, book.plant, &mut signs).map(Arc::new);
    let problems = condition::problems(said, set, &mut troubles);
    let history = history::works(said, set, day, &mut troubles);
    let wishes = condition::wishes(said, set, &mut troubles);
    let (region, region_flags) = facts::region(said, &mut troubles);
    if !troubles.is_empty() {
        return Err(sorted(troubles));
    }
    let mut question = Question {
        climate,
        day,
        day_assumed: said.date.is_none(),
        plant: book.plant,
        plant_is_unknown: false,
        given,
        traits,
        planted: said.plant.planted_on.map(Day::from_date),
        stage_since: said.plant.stage_since.map(Day::from_date),
        signs,
        heard,
        wishes,
        region,
        region_flags,
        problems,
        history,
        asked: Arc::new(serde_json::Value::Null),
    };
    question.asked = Arc::new(asked::asked(&question, set));
    Ok(question)
}

fn day(said: &Said, today: Option<Day>, troubles: &mut Vec<Trouble>) -> Day {
    match (said.date, today) {
        (Some(date), _) => Day::supported(date).unwrap_or_else(|fault| {
            troubles.push(Trouble::new("/date", fault.to_string()));
            Day::from_date(date)
        }),
        (None, Some(today)) => today,
        (None, None) => {
            troubles.push(Trouble::new("/date", "the date is missing"));
            Day::from_ce(1)
        }
    }
}

fn sorted(mut troubles: Vec<Trouble>) -> Vec<Trouble> {
    troubles.sort();
    troubles.dedup();
    troubles
}

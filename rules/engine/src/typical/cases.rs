//! The conditions of a plant for which a set is looked at.
//!
//! The cells that the rules of a plant distinguish are far too many to ask of each; these few are asked, and no more is
//! claimed: nothing told; each value of each trait by itself; each sign that a rule or a problem of the plant speaks of, seen
//! by itself; and every condition of a scenario of the plant, whatever else it tells of age, site, signs and works, moved
//! to the day with all its dates. The weather of a scenario stays with it: the places have their own.

use chrono::{Days, NaiveDate};
use lammas_agronomy::calendar::Day;
use serde_json::Value as Json;

use super::places::Spot;
use crate::compile::set::Set;
use crate::compile::term::Term;
use crate::fact::value::{Reading, Value};
use crate::question::Question;
use crate::question::said::{ConditionSaid, PlantSaid, Said, SignSaid};

/// A condition that is typical of a plant.
#[derive(Clone, Debug)]
pub struct Case {
    /// What it is, in few words: `nothing told`, `flowering = once`, `sign aphids`, `as in rose/thrips-in-june`.
    pub name: String,
    /// What is told, without climate and date.
    said: Said,
    /// The date by which the dates in it stand; none: there are none.
    stands_on: Option<NaiveDate>,
}

/// The typical conditions of a plant in these sets, each once, in a fixed order.
#[must_use]
pub fn of(sets: &[&Set], plant: &str) -> Vec<Case> {
    let bare = Said { plant: PlantSaid { kind: plant.to_owned(), ..PlantSaid::default() }, ..Said::default() };
    let mut cases = vec![Case { name: "nothing told".to_owned(), said: bare.clone(), stands_on: None }];
    for (name, value) in traits(sets, plant) {
        let mut said = bare.clone();
        said.plant.traits.insert(name.clone(), value.clone());
        cases.push(Case { name: format!("{name} = {value}"), said, stands_on: None });
    }
    for sign in signs(sets, plant) {
        let seen = SignSaid { sign: sign.clone(), ..SignSaid::default() };
        let condition = ConditionSaid { signs: Some(vec![seen]), ..ConditionSaid::default() };
        let said = Said { condition: Some(condition), ..bare.clone() };
        cases.push(Case { name: format!("sign {sign}"), said, stands_on: None });
    }
    for set in sets {
        for filed in set.pack.scenarios.iter().filter(|filed| filed.entry.ask.plant.kind == plant) {
            let ask = &filed.entry.ask;
            let said = Said {
                plant: ask.plant.clone(),
                site: ask.site.clone(),
                water: ask.water.clone(),
                weather: ask.weather.clone(),
                wishes: ask.wishes.clone(),
                condition: ask.condition.clone(),
                history: ask.history.clone(),
                ..Said::default()
            };
            let file = filed.file.trim_start_matches("scenarios/").trim_end_matches(".yaml");
            cases.push(Case { name: format!("as in {file}"), said, stands_on: ask.date });
        }
    }
    each_once(cases)
}

/// Conditions that tell the same are one; two that have one name only are told apart.
fn each_once(cases: Vec<Case>) -> Vec<Case> {
    let mut kept: Vec<(String, Case)> = Vec::new();
    for mut case in cases {
        let content = format!("{} {:?}", serde_json::to_string(&case.said).unwrap_or_default(), case.stands_on);
        if kept.iter().any(|(known, _)| *known == content) {
            continue;
        }
        if kept.iter().any(|(_, other)| other.name == case.name) {
            case.name.push_str(", as it is now");
        }
        kept.push((content, case));
    }
    kept.into_iter().map(|(_, case)| case).collect()
}

fn traits(sets: &[&Set], plant: &str) -> Vec<(String, String)> {
    let mut found: Vec<(String, String)> = Vec::new();
    for filed in sets.iter().flat_map(|set| &set.pack.plants).filter(|filed| filed.entry.id.value == plant) {
        for one in &filed.entry.traits {
            found.extend(one.values.iter().map(|value| (one.id.value.clone(), value.id.value.clone())));
        }
    }
    found.sort();
    found.dedup();
    found
}

/// The signs that a rule or a problem of the plant speaks of.
fn signs(sets: &[&Set], plant: &str) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for set in sets {
        let Some(book) = set.names.plants.number(plant).and_then(|n| set.plants.get(usize::from(n))) else { continue };
        let mut numbers: Vec<u16> = book.problems.iter().flat_map(|p| p.signs.iter().map(|(sign, ..)| *sign)).collect();
        for term in &book.probes {
            term.walk(&mut |term| {
                if let Term::Sign(sign) | Term::Severity(sign) | Term::Share(sign) = term {
                    numbers.push(*sign);
                }
            });
        }
        found.extend(numbers.into_iter().map(|sign| set.names.signs.name(sign).to_owned()));
    }
    found.sort();
    found.dedup();
    found
}

impl Case {
    /// Whether cold air gathers at the site: the season there is another.
    #[must_use]
    pub fn is_hollow(&self) -> bool {
        self.said.site.frost_hollow == Some(true)
    }

    /// What is told, without climate and date.
    #[must_use]
    pub const fn said(&self) -> &Said {
        &self.said
    }

    /// The case as a request at a place on a day, its dates moved to that day.
    #[must_use]
    pub fn at(&self, spot: &Spot, day: Day) -> Said {
        let mut said = self.said.clone();
        said.climate = spot.said.clone();
        said.date = Some(day.date());
        let Some(stood) = self.stands_on else { return said };
        let by = day - Day::from_date(stood);
        let moved = |date: &mut NaiveDate| *date = later(*date, by);
        said.plant.planted_on.iter_mut().for_each(moved);
        said.plant.stage_since.iter_mut().for_each(moved);
        let condition = said.condition.iter_mut().flat_map(|condition| &mut condition.signs).flatten();
        condition.flat_map(|sign| &mut sign.since).for_each(moved);
        said.history.iter_mut().flatten().flat_map(|work| &mut work.date).for_each(moved);
        said
    }
}

fn later(date: NaiveDate, days: i32) -> NaiveDate {
    let by = Days::new(u64::from(days.unsigned_abs()));
    let moved = if days < 0 { date.checked_sub_days(by) } else { date.checked_add_days(by) };
    moved.unwrap_or(date)
}

/// A question on another day, with everything in it that is a date moved as far: the same as asking that day anew.
#[must_use]
pub fn moved(question: &Question, day: Day) -> Question {
    let by = day - question.day;
    let mut there = question.clone();
    there.day = day;
    let moved = |day: &mut Day| *day = *day + by;
    there.planted.iter_mut().for_each(moved);
    there.stage_since.iter_mut().for_each(moved);
    there.signs.iter_mut().flat_map(|sign| &mut sign.since).for_each(moved);
    there.history.iter_mut().flatten().for_each(|work| work.day = work.day + by);
    for reading in &mut there.given {
        if let Value::Date(day) = reading.value {
            *reading = Reading { value: Value::Date(day + by), ..*reading };
        }
    }
    there
}

/// A request without what it does not say: ready for a file.
#[must_use]
pub fn lean(said: &Said) -> Json {
    let mut whole = serde_json::to_value(said).unwrap_or_default();
    prune(&mut whole);
    whole
}

/// Lists in which "none" and "not said" are two answers.
const LISTS_THAT_TELL: [&str; 2] = ["history", "signs"];

fn prune(value: &mut Json) {
    if let Json::Array(list) = value {
        list.iter_mut().for_each(prune);
    }
    let Json::Object(members) = value else { return };
    members.values_mut().for_each(prune);
    members.retain(|name, value| match value {
        Json::Null | Json::Bool(false) if name == "recall" || name == "looked_closely" => false,
        Json::Null => false,
        Json::Array(list) => !list.is_empty() || LISTS_THAT_TELL.contains(&name.as_str()),
        Json::Object(inner) => !inner.is_empty(),
        _ => true,
    });
}

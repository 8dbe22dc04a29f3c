//! Small packs and questions for single cases, asked of both: the engine and the plain evaluator.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::Set;
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::window;
use lammas_engine::question::said::{PlantSaid, Said, WorkSaid};
use lammas_engine::question::understand::understand;
use lammas_engine::question::{Climate, Question};

use crate::agreement::{differences, of_engine};
use crate::making::words;
use crate::plain::outcome::{Outcome, Verdict};
use crate::plain::windows::{Found, Open};
use crate::plain::world::World;

/// What every rule must have, and what it says beside it.
pub(crate) fn rule(id: &str, fields: &str) -> String {
    let has = |key: &str| fields.contains(key);
    let mut text = format!(
        "- {{id: {id}, title: {{en: T}}, why: {{en: W}}, sources: [common-practice], evidence: consensus, strength: do"
    );
    if !has("for:") {
        text.push_str(", for: {plants: all}");
    }
    if !has("job:") && !has("kind: know") {
        text.push_str(", job: mulch");
    }
    for field in fields.lines().map(str::trim).filter(|line| !line.is_empty()) {
        text.push_str(", ");
        text.push_str(field);
    }
    text.push_str("}\n");
    text
}

/// A set of these rules.
pub(crate) fn set(rules: &[String]) -> Set {
    words::set_of(&[("rules/all.yaml".to_owned(), rules.concat())])
}

pub(crate) fn day(date: &str) -> Day {
    Day::from_date(date.parse().unwrap())
}

/// A question about a rose of which nothing is said.
pub(crate) fn about(plant: &str, date: &str) -> Said {
    let plant = PlantSaid { kind: plant.to_owned(), ..PlantSaid::default() };
    Said { date: Some(date.parse().unwrap()), plant, ..Said::default() }
}

/// A work: a job, a material or a rule, and its date.
pub(crate) fn work(what: &[(&str, &str)], date: &str) -> WorkSaid {
    let of = |key: &str| what.iter().find(|(k, _)| *k == key).map(|(_, value)| (*value).to_owned());
    WorkSaid {
        job: of("job"),
        rule: of("rule"),
        material: of("material"),
        date: Some(date.parse().unwrap()),
        label_days_to_harvest: None,
    }
}

/// What becomes of the rules; both must say the same.
pub(crate) fn verdicts(set: &Set, said: &Said, profile: &Profile) -> Vec<Verdict> {
    let (engine, _) = of_engine(set, said, profile);
    let plain = World::new(&set.pack, said, profile).decide();
    assert_eq!(differences(&engine, &plain), Vec::<String>::new());
    engine
}

/// What becomes of one rule; both must say the same.
pub(crate) fn outcome(set: &Set, said: &Said, profile: &Profile, id: &str) -> Outcome {
    let found = verdicts(set, said, profile).into_iter().find(|verdict| verdict.rule == id);
    found.map_or(Outcome::No, |verdict| verdict.outcome)
}

/// The question as the engine understands it.
pub(crate) fn question(set: &Set, said: &Said, profile: &Profile) -> Question {
    let climate = Arc::new(Climate::new(None, profile.clone(), SiteShift::default()));
    understand(said, set, climate, None).unwrap_or_else(|troubles| panic!("{troubles:#?}"))
}

/// The occurrences of the windows of a rule, joined; both must find the same. None: all year, or unknown.
pub(crate) fn occurrences(set: &Set, said: &Said, profile: &Profile, id: &str) -> Option<Vec<Open>> {
    let question = question(set, said, profile);
    let book = &set.plants[usize::from(question.plant)];
    let moment = Moment::new(set, book, &question, question.day);
    let world = World::new(&set.pack, said, profile);
    let entry = world.rule(id);
    let compiled = book.rules.iter().find(|rule| set.rules[rule.rule as usize].id == id).unwrap();
    let mut all = Vec::new();
    for (compiled, written) in compiled.windows.iter().zip(&entry.window.0) {
        let mut engine = match window::occurrences(compiled, &moment) {
            window::Found::AllYear => Found::AllYear,
            window::Found::Unknown => Found::Unknown,
            window::Found::Some(list) => {
                Found::Some(list.iter().map(|o| Open { opens: o.opens, best: o.best, closes: o.closes }).collect())
            }
        };
        if let Found::Some(list) = &mut engine {
            list.sort();
        }
        let plain = world.occurrences(written);
        assert_eq!(engine, plain, "{id}");
        match plain {
            Found::Some(list) => all.extend(list),
            Found::AllYear | Found::Unknown => return None,
        }
    }
    Some(crate::plain::windows::joined(all))
}

//! Someone or something is in danger: one task, who to call, and nothing ranks with it.

use lammas_engine::compile::set::Set;
use lammas_engine::decide::causes::Weather;
use lammas_engine::decide::decision::{decide, one};
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::outcome::{Block, Outcome};
use lammas_engine::explain::{diagnosis, whole};
use lammas_engine::question::Question;
use lammas_engine::question::said::{ConditionSaid, Said, SignSaid};
use lammas_engine::scenario;
use serde::Deserialize;

use crate::shipped::set;

const EMERGENCIES: &str = include_str!("../data/words/emergencies.yaml");
const NOTHING: &str = include_str!("../data/words/nothing.yaml");
const PHRASES: &str = include_str!("../data/words/phrases.yaml");
const LATER: &str = include_str!("../data/words/later.yaml");

#[derive(Deserialize)]
struct Meant {
    sign: String,
    en: Vec<String>,
    es: Vec<String>,
}

fn said(plant: &str, words: &str, language: &str) -> Said {
    let mut said = Said::default();
    said.climate.id = Some("hot-dry-valley".to_owned());
    said.date = chrono::NaiveDate::from_ymd_opt(2026, 9, 15);
    said.plant.kind = plant.to_owned();
    // Some pests are to be reported in some countries only.
    said.site.region = Some("US".to_owned());
    said.language = Some(language.to_owned());
    said.condition = Some(ConditionSaid { words: Some(words.to_owned()), ..ConditionSaid::default() });
    said
}

fn with_sign(plant: &str, signs: &[&str]) -> Said {
    let mut said = said(plant, "", "en");
    let signs = signs.iter().map(|sign| SignSaid { sign: (*sign).to_owned(), ..SignSaid::default() });
    said.condition = Some(ConditionSaid { signs: Some(signs.collect()), ..ConditionSaid::default() });
    said
}

fn asked(set: &Set, said: &Said) -> Option<Question> {
    scenario::question(set, said).ok()
}

/// The one task, if the answer is that of an emergency.
fn emergency(set: &Set, said: &Said) -> Option<String> {
    let question = asked(set, said)?;
    let answer = whole::answer(set, &question, "en", whole::Extent::FULL)?;
    let task = answer.tasks.first().filter(|task| task.emergency.is_some())?;
    assert_eq!(answer.tasks.len(), 1, "{said:?}");
    Some(task.id.to_owned())
}

#[test]
fn what_people_in_danger_say_is_heard_for_any_plant_and_for_none() {
    let set = set();
    let meant: Vec<Meant> = serde_saphyr::from_str(EMERGENCIES).unwrap();
    for sign in set.pack.signs.iter().filter(|sign| sign.entry.emergency) {
        let id = &sign.entry.id.value;
        assert!(meant.iter().any(|phrase| phrase.sign == *id), "nobody says {id}");
    }
    let (mut heard, mut count, mut faults) = (0.0, 0.0, Vec::new());
    for phrase in &meant {
        for (language, texts) in [("en", &phrase.en), ("es", &phrase.es)] {
            for (text, plant) in
                texts.iter().flat_map(|text| ["rose", "lawn", "apple", "", "baobab"].map(|p| (text, p)))
            {
                count += 1.0;
                // Which of two dangers it is matters less than that one is heard.
                match emergency(&set, &said(plant, text, language)) {
                    Some(_) => heard += 1.0,
                    None => faults.push(format!("{plant}: {text} ({})", phrase.sign)),
                }
            }
        }
    }
    println!("{count} calls for help, heard {:.1} %", 100.0 * heard / count);
    assert!(heard / count >= 0.95, "{heard} of {count}: {faults:#?}");
}

#[test]
fn what_is_no_danger_never_sounds_the_alarm() {
    #[derive(Deserialize)]
    struct Texts {
        en: Vec<String>,
        es: Vec<String>,
    }
    let set = set();
    let nothing: Texts = serde_saphyr::from_str(NOTHING).unwrap();
    let mut texts: Vec<(&str, String)> = Vec::new();
    texts.extend(nothing.en.into_iter().map(|text| ("en", text)));
    texts.extend(nothing.es.into_iter().map(|text| ("es", text)));
    let dangers = |sign: &str| set.pack.signs.iter().any(|s| s.entry.id.value == sign && s.entry.emergency);
    for file in [PHRASES, LATER] {
        let meant: Vec<Meant> = serde_saphyr::from_str(file).unwrap();
        for phrase in meant.into_iter().filter(|phrase| !dangers(&phrase.sign)) {
            texts.extend(phrase.en.into_iter().map(|text| ("en", text)));
            texts.extend(phrase.es.into_iter().map(|text| ("es", text)));
        }
    }
    texts.extend([
        ("en", "there are no power lines near the tree".to_owned()),
        ("en", "the dog sleeps under the rose".to_owned()),
        ("en", "nobody swallowed anything".to_owned()),
        ("en", "a line of ants goes up the tree".to_owned()),
        ("en", "my tree is too tall".to_owned()),
        ("en", "I have sprayed soap on the aphids".to_owned()),
        ("en", "is this plant poisonous".to_owned()),
        ("en", "branches hang low with fruit".to_owned()),
        ("es", "no hay cables cerca del árbol".to_owned()),
        ("es", "el perro duerme bajo el rosal".to_owned()),
        ("es", "una fila de hormigas sube al árbol".to_owned()),
        ("es", "las ramas cuelgan cargadas de fruta".to_owned()),
    ]);
    let mut alarms = Vec::new();
    for (language, text) in &texts {
        for plant in ["rose", "lawn", "citrus", "baobab"] {
            if let Some(rule) = emergency(&set, &said(plant, text, language)) {
                alarms.push(format!("{plant}: {text}: {rule}"));
            }
        }
    }
    println!("{} texts without danger, {} alarms", texts.len() * 4, alarms.len());
    assert!(alarms.is_empty(), "{alarms:#?}");
}

#[test]
fn in_an_emergency_all_else_is_held_with_the_reason_and_nothing_is_asked() {
    let set = set();
    let question = asked(&set, &with_sign("rose", &["animal-ate-poison", "spent-blooms"])).unwrap();
    let answer = whole::answer(&set, &question, "en", whole::Extent::FULL).unwrap();
    let json = serde_json::to_value(&answer).unwrap();
    assert_eq!(json["tasks"].as_array().map(Vec::len), Some(1), "{json}");
    assert_eq!(json["tasks"][0]["priority"]["band"], "now");
    assert!(json["tasks"][0]["emergency"]["call"].as_str().is_some_and(|call| call.contains("vet")), "{json}");
    assert!(json["tasks"][0]["professional"].is_string());
    for list in ["depends_on", "questions", "notes", "causes"] {
        assert_eq!(json[list].as_array().map(Vec::len), Some(0), "{list}");
    }
    let held = json["held"].as_array().unwrap();
    assert!(held.iter().any(|held| held["kind"] == "emergency"), "{json}");
    for held in held.iter().filter(|held| held["kind"] == "emergency") {
        assert!(held["because"].as_str().unwrap().contains("All else waits"), "{held}");
        assert!(held["look_again"].is_null());
    }
    // What is told without the danger is advised as ever.
    assert!(emergency(&set, &with_sign("rose", &["spent-blooms"])).is_none());
}

#[test]
fn of_two_emergencies_one_is_the_task_and_the_other_stands_first_among_what_is_held() {
    let set = set();
    let question = asked(&set, &with_sign("apple", &["power-line-in-tree", "person-exposed"])).unwrap();
    let answer = whole::answer(&set, &question, "en", whole::Extent::FULL).unwrap();
    assert_eq!(answer.tasks.iter().map(|task| task.id).collect::<Vec<_>>(), ["any.emergency-person-exposed"]);
    let held = &answer.held[0];
    assert_eq!((held.id, held.kind), ("any.emergency-power-line", "emergency"));
    assert!(held.because.starts_with("This too"), "{}", &*held.because);
}

#[test]
fn a_rule_asked_for_by_itself_becomes_what_the_whole_decision_says() {
    let set = set();
    for plant in set.names.plants.names() {
        let question =
            asked(&set, &with_sign(plant, &["power-line-in-tree", "spent-blooms", "aphid-clusters"])).unwrap();
        let book = &set.plants[usize::from(question.plant)];
        let moment = Moment::new(&set, book, &question, question.day);
        let decision = decide(&moment);
        let first = decision.emergency.unwrap();
        for at in 0..u32::try_from(book.rules.len()).unwrap() {
            let by_itself = one(at, &moment).filter(|outcome| *outcome != Outcome::No);
            let in_all =
                decision.verdicts.iter().find(|verdict| verdict.at == at).map(|verdict| verdict.outcome.clone());
            assert_eq!(by_itself, in_all, "{plant}: {}", set.rules[book.rules[at as usize].rule as usize].id);
        }
        let waits = |outcome: &Outcome| *outcome == Outcome::Held(vec![Block::Emergency(first)]);
        assert!(decision.verdicts.iter().all(|v| v.rule == first || matches!(v.outcome, Outcome::Held(_))));
        assert!(plant != "rose" || decision.verdicts.iter().any(|v| waits(&v.outcome)));
    }
}

#[test]
fn a_diagnosis_says_who_to_call_before_it_looks_for_causes() {
    let set = set();
    for (plant, weather) in [("rose", Weather::Counts), ("rose", Weather::IsUnknown), ("baobab", Weather::IsUnknown)] {
        let question = asked(&set, &with_sign(plant, &["person-exposed", "pale-stippling", "webbing"])).unwrap();
        let found = diagnosis::of(&set, &question, weather, "en").unwrap();
        let json = serde_json::to_value(&found).unwrap();
        assert_eq!((&json["status"], json["tasks"].as_array().unwrap().len()), (&"emergency".into(), 1), "{json}");
        assert!(json["tasks"][0]["emergency"]["call"].is_string());
        assert_eq!((json["causes"].as_array().map(Vec::len), json["look_next"].is_null()), (Some(0), true), "{json}");
        assert_eq!(json["plant"].is_null(), plant == "baobab");
    }
}

#[test]
fn an_unknown_plant_without_danger_is_still_unknown() {
    let set = set();
    assert!(asked(&set, &said("baobab", "yellow leaves", "en")).is_none());
    assert!(asked(&set, &with_sign("", &["spent-blooms"])).is_none());
    // Where the region decides whether it is to be reported, it is asked with the plant.
    let mut said = with_sign("baobab", &["plum-pox-suspected"]);
    assert!(asked(&set, &said).is_some());
    said.site.region = None;
    assert!(asked(&set, &said).is_none());
}

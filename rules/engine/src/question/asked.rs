//! The question as it was understood: what goes into the digest, and what is echoed.

use lammas_agronomy::origin::Origin;
use serde_json::{Map, Value as Json, json};

use super::Question;
use crate::compile::set::Set;
use crate::fact::catalogue::{CATALOGUE, Fact, FactType};
use crate::fact::value::{Truth, Value};

/// The question in canonical words: ids resolved, units SI, values rounded to their steps, sets sorted, what is not said
/// left out, the climate by its content.
#[must_use]
pub fn asked(question: &Question, set: &Set) -> Json {
    let mut out = Map::new();
    out.insert("climate".to_owned(), json!(question.climate.sha256));
    out.insert("date".to_owned(), json!(question.day.date()));
    if !question.plant_is_unknown {
        out.insert("plant".to_owned(), json!(set.names.plants.name(question.plant)));
    }
    let Some(book) = set.plants.get(usize::from(question.plant)) else { return Json::Object(out) };
    let mut traits = Map::new();
    for (at, reading) in question.traits.iter().enumerate() {
        if let (Value::Choice(value), Origin::Given) = (reading.value, reading.origin) {
            let name = book.names.traits.name(u16::try_from(at).unwrap_or(u16::MAX));
            let value = book.names.values.get(at).map_or("", |values| values.name(value));
            traits.insert(name.to_owned(), json!(value));
        }
    }
    insert(&mut out, "traits", traits);
    let mut facts = Map::new();
    for entry in CATALOGUE {
        let reading = question.given(entry.fact);
        if reading.origin != Origin::Given || !reading.value.is_there() {
            continue;
        }
        let shown = match (reading.value, entry.ty) {
            (Value::Number(number), _) => json!(number),
            (Value::Truth(yes), _) => json!(yes),
            (Value::Date(day), _) => json!(day.date()),
            (Value::Choice(choice), FactType::Choice(list)) => json!(list.values.get(usize::from(choice))),
            (Value::Choice(stage), FactType::Stage) => json!(book.names.stages.name(stage)),
            _ => continue,
        };
        facts.insert(entry.name.to_owned(), shown);
    }
    if let Some(day) = question.stage_since {
        facts.insert(Fact::PlantStageSince.entry().name.to_owned(), json!(day.date()));
    }
    insert(&mut out, "facts", facts);
    let (mut seen, mut not_seen) = (Vec::new(), Vec::new());
    for (at, state) in question.signs.iter().enumerate() {
        let id = set.names.signs.name(u16::try_from(at).unwrap_or(u16::MAX));
        match state.seen {
            Truth::True => {
                let mut sign = Map::new();
                sign.insert("sign".to_owned(), json!(id));
                if let Some(severity) = state.severity {
                    sign.insert(
                        "severity".to_owned(),
                        json!(crate::fact::choices::SEVERITY.values.get(usize::from(severity))),
                    );
                }
                if let Some(share) = state.share_pct {
                    sign.insert("share_pct".to_owned(), json!(share));
                }
                if let Some(day) = state.since {
                    sign.insert("since".to_owned(), json!(day.date()));
                }
                seen.push(Json::Object(sign));
            }
            // That nobody told of danger goes without saying.
            Truth::False if !set.pack.signs.get(at).is_some_and(|sign| sign.entry.emergency) => {
                not_seen.push(json!(id));
            }
            Truth::False | Truth::Unknown => {}
        }
    }
    // The list of what is not seen is long and follows from the vocabulary; its hash stands for it.
    if !(seen.is_empty() && not_seen.is_empty()) {
        out.insert("signs".to_owned(), Json::Array(seen));
        out.insert("not_seen".to_owned(), json!(crate::version::hash::of_value(&Json::Array(not_seen))));
    }
    insert_list(&mut out, "wishes", question.wishes.iter().map(|job| json!(set.names.jobs.name(*job))).collect());
    insert_list(&mut out, "problems", question.problems.iter().map(|p| json!(set.names.problems.name(*p))).collect());
    insert_list(&mut out, "region_flags", question.region_flags.iter().map(|flag| json!(flag)).collect());
    if let Some(region) = &question.region {
        out.insert("region".to_owned(), json!(region));
    }
    if let Some(history) = &question.history {
        let works: Vec<Json> = history
            .iter()
            .map(|work| {
                let mut entry = Map::new();
                entry.insert("date".to_owned(), json!(work.day.date()));
                if let Some(job) = work.job {
                    entry.insert("job".to_owned(), json!(set.names.jobs.name(job)));
                }
                if let Some(rule) = work.rule {
                    entry.insert("rule".to_owned(), json!(set.rules.get(rule as usize).map(|info| &info.id)));
                }
                if let Some(material) = work.material {
                    entry.insert("material".to_owned(), json!(set.names.materials.name(material)));
                }
                if let Some(class) = work.class {
                    entry.insert("class".to_owned(), json!(set.names.classes.name(class)));
                }
                if let Some(days) = work.label_days_to_harvest {
                    entry.insert("label_days_to_harvest".to_owned(), json!(days));
                }
                Json::Object(entry)
            })
            .collect();
        out.insert("history".to_owned(), Json::Array(works));
    }
    Json::Object(out)
}

fn insert(out: &mut Map<String, Json>, name: &str, map: Map<String, Json>) {
    if !map.is_empty() {
        out.insert(name.to_owned(), Json::Object(map));
    }
}

fn insert_list(out: &mut Map<String, Json>, name: &str, list: Vec<Json>) {
    if !list.is_empty() {
        out.insert(name.to_owned(), Json::Array(list));
    }
}

//! A set taken several times over: the same trade for plants and rules of other names.

use serde_json::{Value as Json, json};

use super::garden::Garden;

/// The set with its plants and their rules so many times over. What holds for all plants stays once.
pub(crate) fn over(garden: &Garden, times: usize) -> Garden {
    let ids: Vec<String> = garden.plants.iter().map(|plant| text(&plant["id"])).collect();
    let mut out = garden.clone();
    for turn in 1..times {
        let renamed = |id: &Json| json!(name(&text(id), &ids, turn));
        for plant in &garden.plants {
            let mut copy = plant.clone();
            copy["id"] = renamed(&plant["id"]);
            out.plants.push(copy);
        }
        for problem in &mut out.problems {
            if let Some(list) = problem["plants"].as_array_mut() {
                let more: Vec<Json> = list.iter().filter(|id| ids.contains(&text(id))).map(renamed).collect();
                list.extend(more);
            }
        }
        for rule in &garden.rules {
            let whom = &rule["for"];
            if !whom["plant"].is_string() && !whom["plants"].is_array() {
                continue;
            }
            let mut copy = rule.clone();
            copy["id"] = renamed(&rule["id"]);
            for (outer, inner) in
                [("for", "plant"), ("for", "plants"), ("alternate", "with"), ("blocks", "rules"), ("blocks", "plants")]
            {
                if !rule[outer][inner].is_null() {
                    copy[outer][inner] = all(&rule[outer][inner], &renamed);
                }
            }
            for field in ["before", "after"] {
                for entry in copy[field].as_array_mut().into_iter().flatten() {
                    entry["rule"] = renamed(&entry["rule"]);
                }
            }
            if !rule["clashes"].is_null() {
                copy["clashes"] = all(&rule["clashes"], &renamed);
            }
            out.rules.push(copy);
        }
    }
    out
}

fn all(value: &Json, renamed: &impl Fn(&Json) -> Json) -> Json {
    match value {
        Json::Array(list) => Json::Array(list.iter().map(renamed).collect()),
        one => renamed(one),
    }
}

/// A plant, or a rule of it, in another copy. Guards take their turn behind their name.
fn name(id: &str, plants: &[String], turn: usize) -> String {
    let (head, rest) = id.split_once('.').map_or((id, None), |(head, rest)| (head, Some(rest)));
    match rest {
        None => format!("{head}-n{turn}"),
        Some(rest) if plants.iter().any(|plant| plant == head) => format!("{head}-n{turn}.{rest}"),
        Some(rest) => format!("{head}.{rest}-n{turn}"),
    }
}

fn text(id: &Json) -> String {
    id.as_str().unwrap_or_default().to_owned()
}

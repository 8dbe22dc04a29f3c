//! The changes as JSON.

use lammas_engine::compile::set::Set;
use lammas_engine::impact::change::How;
use lammas_engine::impact::pair::Detail;
use lammas_engine::impact::report::Group;
use lammas_engine::typical::weeks::WEEKS;
use serde_json::{Map, Value, json};

use super::requests::Asked;
use super::{Found, climates, date, request, title};

/// Everything that was found.
pub(super) fn all(found: &Found<'_>) -> Value {
    let (grid, report) = (found.grid, &found.report);
    let plants = grid.plants.iter().zip(&report.by_plant);
    let mut out = json!({
        "before": set(grid.before),
        "after": set(grid.after),
        "climates": climates(grid).into_iter().map(|(id, what)| json!({"id": id, "is": what})).collect::<Vec<Value>>(),
        "answers": report.answers,
        "changed": report.changed,
        "weeks": WEEKS,
        "places": grid.places.iter().map(|spot| json!({"id": spot.id, "name": spot.name.get("en")})).collect::<Vec<Value>>(),
        "plants": plants.map(|((id, cases), changed)| {
            json!({"id": id, "changed": changed, "conditions": cases.iter().map(|case| &case.name).collect::<Vec<_>>()})
        }).collect::<Vec<Value>>(),
        "changes": report.groups.iter().map(|group| one(group, found)).collect::<Vec<Value>>(),
    });
    if let Some(asked) = &found.requests {
        out["requests"] = of_requests(asked);
    }
    out
}

fn set(set: &Set) -> Value {
    json!({"name": set.pack.header.name.value, "version": set.pack.header.version.value, "sha256": set.sha256})
}

/// What a change is, of which rule: without the rule it concerns the whole answer.
fn head(plant: &str, rule: &str, how: How, detail: &Detail) -> Map<String, Value> {
    let mut out = Map::new();
    out.insert("plant".to_owned(), json!(plant));
    if !rule.is_empty() {
        out.insert("rule".to_owned(), json!(rule));
    }
    out.insert("kind".to_owned(), json!(how.kind()));
    match how {
        How::Outcome(from, to) => {
            out.insert("from".to_owned(), json!(from.as_str()));
            out.insert("to".to_owned(), json!(to.as_str()));
        }
        How::Band(from, to) => {
            out.insert("from".to_owned(), json!(from.as_str()));
            out.insert("to".to_owned(), json!(to.as_str()));
        }
        _ => {}
    }
    out.insert("words".to_owned(), json!(how.words()));
    if let Some((before, after)) = detail {
        out.insert("before".to_owned(), json!(before));
        out.insert("after".to_owned(), json!(after));
    }
    out
}

fn one(group: &Group, found: &Found<'_>) -> Value {
    let grid = found.grid;
    let plant = grid.plants.get(group.plant);
    let case = |number: usize| plant.and_then(|(_, cases)| cases.get(number)).map(|case| case.name.as_str());
    let place = |number: usize| grid.places.get(number).map(|spot| spot.id.as_str());
    let example = &group.example;
    let mut out = head(plant.map_or("", |(id, _)| id), &group.rule, group.how, &example.detail);
    out.insert("title".to_owned(), json!(title(grid, &group.rule)));
    out.insert("answers".to_owned(), json!(group.answers));
    let places: Vec<Value> =
        group.places.iter().map(|(at, weeks)| json!({"place": place(*at), "weeks": weeks})).collect();
    out.insert("places".to_owned(), json!(places));
    let conditions: Vec<Option<&str>> = group.cases.iter().map(|number| case(*number)).collect();
    out.insert("conditions".to_owned(), json!(conditions));
    out.insert(
        "example".to_owned(),
        json!({
            "place": place(example.portion.place),
            "date": date(group),
            "condition": case(example.case),
            "request": request(grid, group),
        }),
    );
    Value::Object(out)
}

fn of_requests(asked: &Asked) -> Value {
    let changes = asked.requests.found.iter().map(|((plant, rule, how), of)| {
        let mut out = head(plant, rule, *how, &of.detail);
        out.insert("lines".to_owned(), json!(of.lines));
        Value::Object(out)
    });
    json!({
        "lines": asked.lines,
        "answers": asked.requests.answers,
        "changed": asked.requests.changed,
        "bad": asked.bad.iter().map(|bad| json!({"line": bad.line, "detail": bad.detail})).collect::<Vec<Value>>(),
        "changes": changes.collect::<Vec<Value>>(),
    })
}

//! Changes of a question as JSON: applied here to see what they do, and handed out as a patch (RFC 6902) for the caller to
//! apply to the request.

use serde::Serialize;
use serde_json::{Map, Value as Json, json};

use crate::question::said::Said;

/// One place of a question with what is to stand there.
#[derive(Clone, Debug, PartialEq)]
pub struct Edit {
    /// JSON pointer (RFC 6901); `-` as the last part puts the value behind a list.
    pub pointer: String,
    /// The value; none takes away what stands there.
    pub to: Option<Json>,
}

impl Edit {
    /// A value put at a place.
    #[must_use]
    pub fn put(pointer: impl Into<String>, to: Json) -> Self {
        Self { pointer: pointer.into(), to: Some(to) }
    }

    /// A place emptied.
    #[must_use]
    pub fn remove(pointer: impl Into<String>) -> Self {
        Self { pointer: pointer.into(), to: None }
    }
}

/// One step of a patch (RFC 6902).
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PatchStep {
    /// `add`, `replace` or `remove`.
    pub op: &'static str,
    /// JSON pointer.
    pub path: String,
    /// The value; none where one is removed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<Json>,
}

/// Members whose empty list, or `false`, says the same as to leave them out.
const NOTHING_BY_ITSELF: [&str; 8] =
    ["wishes", "not_seen", "problems", "region_flags", "restricted_days", "rule_sets", "recall", "looked_closely"];

/// A question as JSON without its climate, and without members that say nothing: a patch that fits it fits the request,
/// however that leaves them out.
#[must_use]
pub fn document(said: &Said) -> Json {
    let bare = Said { climate: Default::default(), ..said.clone() };
    let mut document = serde_json::to_value(bare).unwrap_or_default();
    if let Some(members) = document.as_object_mut() {
        members.remove("climate");
    }
    lean(&mut document);
    document
}

fn lean(value: &mut Json) {
    match value {
        Json::Object(members) => {
            members.values_mut().for_each(lean);
            members.retain(|name, value| match value {
                Json::Null => false,
                Json::Object(inner) => !inner.is_empty(),
                Json::Array(list) => !(list.is_empty() && NOTHING_BY_ITSELF.contains(&name.as_str())),
                Json::Bool(false) => !NOTHING_BY_ITSELF.contains(&name.as_str()),
                _ => true,
            });
        }
        Json::Array(list) => list.iter_mut().for_each(lean),
        _ => {}
    }
}

/// The order in which edits can be applied one by one: lists as a whole, then what is put behind them, then what is taken
/// away, from the end of each list.
pub fn order(edits: &mut [Edit]) {
    let place = |edit: &Edit| edit.pointer.rsplit('/').next().and_then(|last| last.parse::<usize>().ok());
    edits.sort_by_key(|edit| {
        let rank = match (&edit.to, edit.pointer.ends_with("/-")) {
            (Some(_), false) => 0,
            (Some(_), true) => 1,
            (None, _) => 2,
        };
        (rank, std::cmp::Reverse(place(edit).filter(|_| rank == 2)))
    });
}

/// The steps of a patch that make these edits of a document, each in the document as the steps before it leave it.
#[must_use]
pub fn patch(document: &Json, edits: &[Edit]) -> Vec<PatchStep> {
    let mut ordered = edits.to_vec();
    order(&mut ordered);
    let mut document = document.clone();
    let mut steps = Vec::with_capacity(ordered.len());
    for edit in ordered {
        let step = step(&document, &edit);
        take(&mut document, &step);
        steps.push(step);
    }
    steps
}

fn step(document: &Json, edit: &Edit) -> PatchStep {
    let Some(to) = &edit.to else {
        return PatchStep { op: "remove", path: edit.pointer.clone(), value: None };
    };
    let is_entry = edit.pointer.rsplit('/').next().is_some_and(|last| last.parse::<usize>().is_ok());
    if is_entry {
        return PatchStep { op: "replace", path: edit.pointer.clone(), value: Some(to.clone()) };
    }
    // What the value would stand in may be missing, too: the highest of it is added with all that is inside.
    let (mut path, mut value) = (edit.pointer.clone(), to.clone());
    while let Some((parent, last)) = path.rsplit_once('/') {
        if parent.is_empty() || document.pointer(parent).is_some() {
            break;
        }
        value = if last == "-" { json!([value]) } else { json!({ unescaped(last): value }) };
        path = parent.to_owned();
    }
    PatchStep { op: "add", path, value: Some(value) }
}

/// Applies one step. A path that leads nowhere changes nothing.
fn take(document: &mut Json, step: &PatchStep) {
    let Some((parent, last)) = step.path.rsplit_once('/') else { return };
    let Some(parent) = document.pointer_mut(parent) else { return };
    match (parent, &step.value) {
        (Json::Object(members), Some(value)) => {
            members.insert(unescaped(last), value.clone());
        }
        (Json::Object(members), None) => {
            members.remove(&unescaped(last));
        }
        (Json::Array(list), Some(value)) if last == "-" => list.push(value.clone()),
        (Json::Array(list), value) => {
            let Ok(place) = last.parse::<usize>() else { return };
            match (list.get_mut(place), value) {
                (Some(slot), Some(value)) => *slot = value.clone(),
                (Some(_), None) => {
                    list.remove(place);
                }
                (None, _) => {}
            }
        }
        _ => {}
    }
}

/// The document after a patch.
#[must_use]
pub fn patched(document: &Json, steps: &[PatchStep]) -> Json {
    let mut document = document.clone();
    steps.iter().for_each(|step| take(&mut document, step));
    document
}

/// A document as the question that it is; none: a value of it does not fit.
#[must_use]
pub fn said(document: Json) -> Option<Said> {
    let Json::Object(mut members) = document else { return None };
    members.insert("climate".to_owned(), Json::Object(Map::new()));
    serde_json::from_value(Json::Object(members)).ok()
}

/// A name as a part of a JSON pointer.
#[must_use]
pub fn escaped(name: &str) -> String {
    name.replace('~', "~0").replace('/', "~1")
}

fn unescaped(part: &str) -> String {
    part.replace("~1", "/").replace("~0", "~")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_patch_makes_what_is_missing_and_takes_from_the_end() {
        let document = json!({"plant": {"type": "rose"}, "history": [{"job": "a"}, {"job": "b"}, {"job": "c"}]});
        let edits = [
            Edit::remove("/history/0"),
            Edit::remove("/history/2"),
            Edit::put("/condition/signs/-", json!({"sign": "x"})),
            Edit::put("/condition/vigour", json!("weak")),
            Edit::put("/site/soil/ph", json!(7.5)),
        ];
        let steps = patch(&document, &edits);
        let path = |step: &PatchStep| format!("{} {}", step.op, step.path);
        assert_eq!(
            steps.iter().map(path).collect::<Vec<_>>(),
            ["add /condition", "add /site", "add /condition/signs", "remove /history/2", "remove /history/0"]
        );
        assert_eq!(
            patched(&document, &steps),
            json!({"plant": {"type": "rose"}, "history": [{"job": "b"}], "site": {"soil": {"ph": 7.5}},
                "condition": {"signs": [{"sign": "x"}], "vigour": "weak"}})
        );
    }

    #[test]
    fn a_document_keeps_what_says_something_by_being_empty() {
        let mut asked = Said::default();
        asked.plant.kind = "rose".to_owned();
        asked.history = Some(Vec::new());
        assert_eq!(document(&asked), json!({"plant": {"type": "rose"}, "history": []}));
        assert_eq!(said(document(&asked)).map(|said| said.plant), Some(asked.plant));
    }
}

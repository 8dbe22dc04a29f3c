//! The face of an answer: how much is said, in which units, how many tasks. The decision is the same behind each.
//!
//! What is for safety stands on every face: what to check first, cautions, separations, what is held, when to call a
//! professional.

use lammas_engine::explain::answer::Answer;
use lammas_engine::explain::whole::Extent;
use serde_json::{Map, Value};

use super::request::AdviceRequest;
use crate::v1::question::choices::{Detail, UnitSystem};

/// What of a task stands in a brief answer.
const BRIEF_TASK: [&str; 12] = [
    "id",
    "title",
    "priority",
    "window",
    "check_first",
    "steps",
    "amounts",
    "keep_apart",
    "reasons",
    "cautions",
    "professional",
    "emergency",
];

/// What is kept of a task that a limit cut.
const OF_CUT: [&str; 6] = ["id", "title", "check_first", "keep_apart", "cautions", "professional"];

/// How an answer is to be shown.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Face {
    units: UnitSystem,
    detail: Detail,
    limit: Option<u16>,
}

impl Face {
    /// The face that a request asks for.
    pub(crate) fn of(request: &AdviceRequest) -> Self {
        Self {
            units: request.units.unwrap_or(UnitSystem::Both),
            detail: request.detail.unwrap_or(Detail::Standard),
            limit: request.limit,
        }
    }

    /// How much has to be said.
    pub(crate) const fn extent(self) -> Extent {
        match self.detail {
            Detail::Full => Extent::FULL,
            Detail::Standard | Detail::Brief => Extent::STANDARD,
        }
    }

    /// The text of an answer.
    ///
    /// # Errors
    /// When the answer can't be written as JSON.
    pub(crate) fn shown(self, answer: &Answer<'_>) -> serde_json::Result<String> {
        if self.detail != Detail::Brief && self.units == UnitSystem::Both && self.limit.is_none() {
            return serde_json::to_string(answer);
        }
        let mut whole = serde_json::to_value(answer)?;
        self.cut(&mut whole);
        self.less(&mut whole);
        match self.units {
            UnitSystem::Both => {}
            UnitSystem::Si => each_object(&mut whole["tasks"], &mut |object| {
                object.shift_remove("us");
            }),
            UnitSystem::Us => each_object(&mut whole["tasks"], &mut in_us_units),
        }
        serde_json::to_string(&whole)
    }

    /// Cuts the list of tasks; what is for safety in those that are cut stays.
    fn cut(self, whole: &mut Value) {
        let Some(limit) = self.limit else { return };
        let Some(tasks) = whole["tasks"].as_array_mut() else { return };
        if tasks.len() <= usize::from(limit) {
            return;
        }
        let mut gone = tasks.split_off(usize::from(limit));
        for task in &mut gone {
            keep_only(task, &OF_CUT);
        }
        whole["safety_of_cut"] = Value::Array(gone);
    }

    fn less(self, whole: &mut Value) {
        if self.detail != Detail::Brief {
            return;
        }
        for task in whole["tasks"].as_array_mut().into_iter().flatten() {
            keep_only(task, &BRIEF_TASK);
            if let Some(reasons) = task["reasons"].as_array_mut() {
                reasons.truncate(1);
                reasons.iter_mut().for_each(|reason| leave_out(reason, &["facts"]));
            }
        }
        for list in ["held", "notes"] {
            for entry in whole[list].as_array_mut().into_iter().flatten() {
                leave_out(entry, &["facts", "sources"]);
            }
        }
    }
}

fn keep_only(value: &mut Value, members: &[&str]) {
    if let Some(object) = value.as_object_mut() {
        object.retain(|name, _| members.contains(&name.as_str()));
    }
}

fn leave_out(value: &mut Value, members: &[&str]) {
    if let Some(object) = value.as_object_mut() {
        for name in members {
            object.shift_remove(*name);
        }
    }
}

/// Takes the value of the United States' units in the place of the other, where there is one.
fn in_us_units(object: &mut Map<String, Value>) {
    if let Some(Value::Object(us)) = object.shift_remove("us") {
        for (name, value) in us {
            object.insert(name, value);
        }
    }
}

fn each_object(value: &mut Value, change: &mut dyn FnMut(&mut Map<String, Value>)) {
    match value {
        Value::Object(object) => {
            change(object);
            object.values_mut().for_each(|member| each_object(member, change));
        }
        Value::Array(list) => list.iter_mut().for_each(|entry| each_object(entry, change)),
        _ => {}
    }
}

//! Why a rule is not there, as it is shown.

use chrono::NaiveDate;
use serde::Serialize;
use serde_json::Value as Json;

use super::edit::PatchStep;
use crate::explain::answer::FactShown;
use crate::explain::rule_answer::Named;

/// Why a rule is not there, and what it would take.
#[derive(Clone, Debug, Serialize)]
pub struct WhyNot<'a> {
    /// The rule.
    pub rule: Named,
    /// The plant that was asked about.
    pub plant: Named,
    /// The day that was asked about.
    pub date: NaiveDate,
    /// applies, held, depends, no.
    pub outcome: &'static str,
    /// Why, part by part.
    pub because: Vec<Reason<'a>>,
    /// Changes that bring it, the smallest first; each was tried.
    pub ways: Vec<WayShown>,
    /// The first later day on which it comes by itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub comes_on: Option<NaiveDate>,
    /// All of it in a sentence.
    pub words: String,
    /// How far it was looked.
    pub looked: Looked,
}

/// Something that stands in the way.
#[derive(Clone, Debug, Serialize)]
pub struct Reason<'a> {
    /// plant, trait, condition, problem, window, unknown, or a kind of hold.
    pub kind: &'static str,
    /// In words.
    pub text: String,
    /// The guard, or the rule that goes before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rule: Option<&'a str>,
    /// The facts that it hangs on, as they are now.
    pub facts: Vec<FactShown<'a>>,
}

/// Changes that bring the rule together.
#[derive(Clone, Debug, Serialize)]
pub struct WayShown {
    /// One for each fact that is told otherwise.
    pub changes: Vec<Change>,
    /// The same as a patch of the request (RFC 6902).
    pub patch: Vec<PatchStep>,
}

/// One fact told otherwise.
#[derive(Clone, Debug, Serialize)]
pub struct Change {
    /// Its name, as rules write it.
    pub fact: String,
    /// The change in words.
    pub text: String,
    /// Where it stands in the request.
    pub pointer: String,
    /// What stands there now; null: nothing.
    pub from: Json,
    /// What to put there; null: take it away.
    pub to: Json,
}

/// How far it was looked.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Looked {
    /// The most changes together.
    pub most_changes: usize,
    /// Days ahead.
    pub days: i32,
    /// Whether everything within that was looked at.
    pub complete: bool,
}

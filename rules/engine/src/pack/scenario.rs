//! Scenarios: a question, and what must and must not be answered.

use serde::{Deserialize, Serialize};

use super::At;
use crate::question::said::Said;

/// A task that must be advised.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AdvisedExpected {
    /// The rule.
    pub rule: At<String>,
    /// Facts or signs that its reasons must quote.
    #[serde(default)]
    pub because: Vec<String>,
    /// A piece of one of its conditions of the day.
    #[serde(default)]
    pub check_first: Option<String>,
    /// Its band.
    #[serde(default)]
    pub band: Option<String>,
}

/// A rule that must be held.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeldExpected {
    /// The rule.
    pub rule: At<String>,
    /// hold guard clash apart done early late never withheld avoid.
    #[serde(default)]
    pub kind: Option<String>,
    /// A piece of its reason.
    #[serde(default)]
    pub because: Option<String>,
}

/// A rule that must depend.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DependsExpected {
    /// The rule.
    pub rule: At<String>,
    /// Facts among those it depends on.
    #[serde(default)]
    pub on: Vec<String>,
}

/// What must be answered.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Expected {
    /// advised, nothing-due, needs-facts.
    #[serde(default)]
    pub status: Option<String>,
    /// Advised.
    #[serde(default)]
    pub advised: Vec<AdvisedExpected>,
    /// Held.
    #[serde(default)]
    pub held: Vec<HeldExpected>,
    /// Dependent.
    #[serde(default)]
    pub depends: Vec<DependsExpected>,
    /// Among the notes.
    #[serde(default)]
    pub noted: Vec<At<String>>,
    /// Not to be found at all.
    #[serde(default)]
    pub absent: Vec<At<String>>,
    /// Among the questions.
    #[serde(default)]
    pub asked: Vec<String>,
    /// The first question.
    #[serde(default)]
    pub asked_first: Option<String>,
}

/// A scenario.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScenarioEntry {
    /// What it shows, for a horticulturist to read.
    pub name: At<String>,
    /// The question.
    pub ask: Said,
    /// The answer.
    pub expect: Expected,
}

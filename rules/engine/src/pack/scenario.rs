//! Scenarios: a question, and what must and must not be answered.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::At;
use super::rule::Strength;
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
    /// Its points, 0..=100.
    #[serde(default)]
    pub score: Option<u8>,
    /// How strongly it is advised.
    #[serde(default)]
    pub strength: Option<Strength>,
    /// Cautions among those shown with it.
    #[serde(default)]
    pub cautions: Vec<String>,
    /// Materials among those it is done with.
    #[serde(default)]
    pub materials: Vec<String>,
    /// Rules among those of the same answer that come before it.
    #[serde(default)]
    pub after: Vec<String>,
    /// Amounts among those shown.
    #[serde(default)]
    pub amounts: Vec<AmountExpected>,
    /// A piece of the text that leaves it to a professional.
    #[serde(default)]
    pub professional: Option<String>,
}

/// An amount that must be shown; what is left out may be anything.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AmountExpected {
    /// The number, as shown.
    #[serde(default)]
    pub value: Option<f64>,
    /// The unit of the number or of the usual range.
    #[serde(default)]
    pub unit: Option<String>,
    /// The usual range, least and most.
    #[serde(default)]
    pub usual: Option<(f64, f64)>,
    /// Whether a material's maximum capped it.
    #[serde(default)]
    pub capped: Option<bool>,
    /// Facts among those without which it can't be reckoned.
    #[serde(default)]
    pub needs: Vec<String>,
}

/// A rule that must be held.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeldExpected {
    /// The rule.
    pub rule: At<String>,
    /// hold guard clash apart done early late never withheld avoid emergency.
    #[serde(default)]
    pub kind: Option<String>,
    /// A piece of its reason.
    #[serde(default)]
    pub because: Option<String>,
    /// The day on which to look again.
    #[serde(default)]
    pub until: Option<NaiveDate>,
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
    /// Tasks that must stand in this order, others between them or not.
    #[serde(default)]
    pub order: Vec<At<String>>,
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

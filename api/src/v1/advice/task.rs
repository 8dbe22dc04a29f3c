//! A task, as it is sent. Members that a brief answer leaves out say so.

use serde::{Deserialize, Serialize};
use serde_json::Value;
use utoipa::ToSchema;

use super::amount::AdviceAmount;
use super::words::{
    AdviceBand, AdviceCertainty, AdviceEvidence, AdviceKind, AdviceStrength, ApartOf, CautionKind, FactOrigin,
    MaterialHazard, TaskStatus, WindowSide,
};
use crate::v1::question::date::Date;

/// Something to do.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceTask {
    /// The rule.
    pub id: String,
    /// The rule set that gave it its meaning; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub rule_set: Option<String>,
    /// Rule sets that reworded or tightened it; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub also: Option<Vec<String>>,
    /// The version of the rule set; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub version: Option<String>,
    /// The kind of work; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub job: Option<String>,
    /// What to do, in few words.
    pub title: String,
    /// What became of the rule; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub status: Option<TaskStatus>,
    /// What kind of rule it is; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub kind: Option<AdviceKind>,
    /// How pressing it is.
    pub priority: AdvicePriority,
    /// When it can be done.
    pub window: AdviceWindow,
    /// What to check on the day, before the steps.
    pub check_first: Vec<AdviceCheck>,
    /// How it is done, step by step.
    pub steps: Vec<String>,
    /// How much.
    pub amounts: Vec<AdviceAmount>,
    /// With what; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub materials: Option<Vec<AdviceMaterial>>,
    /// Tasks of this answer that come before it; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub after: Option<Vec<String>>,
    /// What it is kept apart from.
    pub keep_apart: Vec<AdviceApart>,
    /// How often; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub repeat: Option<AdviceRepeat>,
    /// Why.
    pub reasons: Vec<AdviceReason>,
    /// Cautions.
    pub cautions: Vec<AdviceCaution>,
    /// Why a licensed professional does it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub professional: Option<String>,
    /// Who to call, where someone or something is in danger: it is then the only task.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub emergency: Option<AdviceEmergency>,
    /// What may be expected afterwards, never a promise; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub expect: Option<Vec<AdviceExpect>>,
    /// How well it is founded; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub evidence: Option<AdviceEvidence>,
    /// How strongly it is advised; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub strength: Option<AdviceStrength>,
    /// How certain it is; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub certainty: Option<AdviceCertainty>,
    /// Sources; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub sources: Option<Vec<AdviceSource>>,
}

/// What is for safety in a task that a limit cut.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceCutTask {
    /// The rule.
    pub id: String,
    /// What it is about.
    pub title: String,
    /// What to check on the day.
    pub check_first: Vec<AdviceCheck>,
    /// What it is kept apart from.
    pub keep_apart: Vec<AdviceApart>,
    /// Cautions.
    pub cautions: Vec<AdviceCaution>,
    /// Why a licensed professional does it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub professional: Option<String>,
}

/// What makes a task an emergency: nothing else of the answer is done before it.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceEmergency {
    /// Who to call, by kind: the numbers are those of the place.
    pub call: String,
}

/// How pressing a task is.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdvicePriority {
    /// 0 to 100.
    #[schema(minimum = 0, maximum = 100)]
    pub score: u8,
    /// How soon.
    pub band: AdviceBand,
    /// What the score is made of; in a full answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub parts: Option<AdviceScore>,
}

/// The parts of a score.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceScore {
    /// The sum less the deduction, kept in 0 to 100.
    #[schema(minimum = 0, maximum = 100)]
    pub total: u8,
    /// Urgency of the rule: 0, 8, 16, 24.
    #[schema(minimum = 0)]
    pub urgency: u8,
    /// Time: closing soon, best day reached, overdue.
    #[schema(minimum = 0)]
    pub time: u8,
    /// Impact if it is missed: 0, 10, 20, 30.
    #[schema(minimum = 0)]
    pub impact: u8,
    /// The worst severity among the signs: 0, 7, 13, 20.
    #[schema(minimum = 0)]
    pub severity: u8,
    /// The weakest origin among the facts: 10, 7, 4, 2.
    #[schema(minimum = 0)]
    pub certainty: u8,
    /// Taken off for what is only worth considering, and for doubtful evidence.
    #[schema(minimum = 0)]
    pub minus: u8,
}

/// When something can be done.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceWindow {
    /// Whether it can be done on any day.
    pub all_year: bool,
    /// First day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub opens: Option<Date>,
    /// Best day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub best: Option<Date>,
    /// Last day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub closes: Option<Date>,
    /// What its sides hang on; in a full answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub basis: Option<Vec<AdviceWindowBasis>>,
}

/// What a side of a window hangs on.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceWindowBasis {
    /// Which side.
    pub side: WindowSide,
    /// The marker with its offset, as the rule writes it.
    pub marker: String,
    /// The same in words.
    pub words: String,
    /// The day of the marker, or `never`, `always`, `unknown`.
    pub state: String,
}

/// Something to check on the day.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceCheck {
    /// The guard that it comes from, if it is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub guard: Option<String>,
    /// What to check.
    pub text: String,
}

/// A material.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceMaterial {
    /// Its id.
    pub id: String,
    /// Its generic name.
    pub name: String,
    /// What is in it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub analysis: Option<String>,
    /// How dangerous it is.
    pub hazard: MaterialHazard,
}

/// What a task is kept apart from.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceApart {
    /// What it is.
    pub of: ApartOf,
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// The fewest days between them.
    #[schema(minimum = 0)]
    pub days: u16,
}

/// How often something is done.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceRepeat {
    /// The fewest days between two.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    #[schema(minimum = 0)]
    pub min_days: Option<u16>,
    /// The most days between two.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    #[schema(minimum = 0)]
    pub max_days: Option<u16>,
    /// At most so many times,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    #[schema(minimum = 0)]
    pub times: Option<u16>,
    /// within so many days.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    #[schema(minimum = 0)]
    pub within_days: Option<u16>,
}

/// A reason.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceReason {
    /// In words.
    pub text: String,
    /// The facts that it rests on; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub facts: Option<Vec<AdviceFact>>,
}

/// A fact as it was read.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceFact {
    /// As rules write it; `GET /v1/facts` lists them.
    pub name: String,
    /// What it is called.
    pub words: String,
    /// Its value: a number, a word, yes or no, a date, `absent`, or `null` when it is not known.
    pub value: Value,
    /// Its unit; empty if it has none.
    pub unit: String,
    /// Where it comes from.
    pub origin: FactOrigin,
}

/// A caution.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceCaution {
    /// Its id.
    pub id: String,
    /// Whom or what it protects.
    pub kind: CautionKind,
    /// What is said.
    pub text: String,
}

/// What may be expected.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceExpect {
    /// Its id.
    pub what: String,
    /// Its name.
    pub name: String,
    /// From when; none where the warmth for it does not come within a year.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub from: Option<Date>,
    /// Until when.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub until: Option<Date>,
}

/// Where a piece of knowledge comes from.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceSource {
    /// Its id.
    pub id: String,
    /// Its title.
    pub title: String,
    /// Its publisher.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub publisher: Option<String>,
    /// Its year.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    #[schema(minimum = 0)]
    pub year: Option<u16>,
    /// How it was read.
    pub how_read: String,
}

//! The answer as it is sent: the same members as the engine's own, so that it can be described and read back.

use serde::{Deserialize, Serialize};
use serde_json::Value;
use utoipa::ToSchema;

use super::heard::{AdviceNotUnderstood, AdviceUnderstood, AdviceUnsure};
use super::held::AdviceHeld;
use super::task::{AdviceCutTask, AdviceFact, AdviceSource, AdviceTask};
use super::words::{AdviceStatus, CauseLikelihood, DateOrigin, FactOrigin, RuleOutcome};
use crate::v1::climate_differences::ClimateDiffering;
use crate::v1::climate_error::ClimateError;
use crate::v1::question::date::Date;
use crate::v1::season::answer::SeasonInBrief;
use crate::v1::weather::AnswerWeather;

/// Advice.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceAnswer {
    /// What became of the question.
    pub status: AdviceStatus,
    /// What to do, in order.
    pub tasks: Vec<AdviceTask>,
    /// What to leave alone, and what must wait.
    pub held: Vec<AdviceHeld>,
    /// What hangs on facts that nobody gave; at most 12.
    pub depends_on: Vec<AdviceDepends>,
    /// How many more of them there are.
    pub depends_more: u32,
    /// What to ask next; at most 5.
    pub questions: Vec<AdviceQuestion>,
    /// Where the question has words: signs that they mean. These count as seen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub understood: Option<Vec<AdviceUnderstood>>,
    /// Words that could be one of a few signs. They don't count; `questions` asks about the first of them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub unsure: Option<Vec<AdviceUnsure>>,
    /// Words that are no sign of the plant, or that say what is not there. They don't count.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub not_understood: Option<Vec<AdviceNotUnderstood>>,
    /// Nothing to do, but worth saying.
    pub notes: Vec<AdviceNote>,
    /// Causes of the signs, the likeliest first.
    pub causes: Vec<AdviceCause>,
    /// The season on the day.
    pub season: SeasonInBrief,
    /// What was assumed, and by which rules it was read.
    pub assumptions: Vec<AdviceAssumption>,
    /// The climate that the answer stands on.
    pub climate: AdviceClimate,
    /// The question as it was understood: ids resolved, values rounded to their steps, the climate by its hash.
    pub asked: Value,
    /// Whether the date was given.
    pub date_origin: DateOrigin,
    /// The rule sets that spoke, lowest first.
    pub rule_sets: Vec<AdviceRuleSet>,
    /// SHA-256 over the question, the rule sets and the decision version: equal digests are equal decisions.
    #[schema(pattern = "^[0-9a-f]{64}$")]
    pub digest: String,
    /// First day on which the decision is the same, all else equal.
    pub valid_from: Date,
    /// Last day on which the decision is the same, all else equal.
    pub valid_until: Date,
    /// What changes on the day after.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub next_change: Option<AdviceNextChange>,
    /// When nothing is due: the next window that opens.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub next_opening: Option<AdviceNextOpening>,
    /// When nothing is due and nothing opens for 26 weeks: why the plant asks for nothing here.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub quiet: Option<String>,
    /// What comes before anything said here: the label, and the rules of the place.
    pub notice: String,
    /// What can be read over the telephone or from a receipt, where a registered climate, a plant and a date are the whole
    /// question: `POST /v1/replay` takes it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, example = "hot-dry-valley/rose/2026-09-15/core@2026.11.1")]
    pub reference: Option<String>,
    /// Rule sets among those that spoke that were taken back since they were published.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub withdrawn: Vec<AdviceWithdrawn>,
    /// Where the request says `recall`: a text from which `POST /v1/replay` gives this answer again. It holds the question, which is
    /// kept nowhere else. Left out where it would have 4096 characters or more: then keep the request and the `digest`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, max_length = 4095)]
    pub recall: Option<String>,
    /// When a limit cut the list of tasks: what is for safety in those that were cut.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub safety_of_cut: Option<Vec<AdviceCutTask>>,
}

/// A rule that hangs on facts which nobody gave.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceDepends {
    /// The rule.
    pub id: String,
    /// What it is about, in few words.
    pub title: String,
    /// The facts that it hangs on, as rules write them.
    pub on: Vec<String>,
    /// What could come of it.
    pub could_be: Vec<RuleOutcome>,
}

/// A question to ask next.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceQuestion {
    /// The fact that it finds out, as rules write it.
    pub fact: String,
    /// The question in plain words.
    pub text: String,
    /// How to find out.
    pub look: String,
    /// Where the answer goes: a JSON pointer (RFC 6901) into the request.
    pub pointer: String,
    /// What can be answered.
    pub answers: Vec<AdviceChoice>,
    /// Up to three rules that it settles.
    pub settles: Vec<String>,
}

/// An answer that can be given to a question.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceChoice {
    /// In words.
    pub text: String,
    /// Where the value goes, as a JSON pointer; `-` at its end: added to the list. None for those who can't tell.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub pointer: Option<String>,
    /// The exact value to put there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub value: Option<Value>,
    /// What then becomes of the rules that the question settles.
    pub leads_to: Vec<AdviceLeadsTo>,
}

/// What becomes of a rule.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceLeadsTo {
    /// The rule.
    pub rule: String,
    /// What becomes of it.
    pub outcome: RuleOutcome,
}

/// Nothing to do, but worth saying.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceNote {
    /// The rule.
    pub id: String,
    /// In few words.
    pub title: String,
    /// What is said.
    pub text: String,
    /// The facts that it rests on; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub facts: Option<Vec<AdviceFact>>,
    /// Sources; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub sources: Option<Vec<AdviceSource>>,
}

/// A cause of the signs.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceCause {
    /// The problem.
    pub id: String,
    /// Its name.
    pub name: String,
    /// How likely it is.
    pub likelihood: CauseLikelihood,
    /// The points that its signs and what favours it make.
    pub points: i32,
}

/// A fact that was assumed.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceAssumption {
    /// The fact, as rules write it.
    pub name: String,
    /// What it is called.
    pub words: String,
    /// What was taken.
    pub value: Value,
    /// Its unit; empty if it has none.
    pub unit: String,
    /// Always `assumed`.
    pub origin: FactOrigin,
    /// Rules of this answer that read it.
    pub rules: Vec<String>,
}

/// The climate of an answer.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceClimate {
    /// The registered one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub id: Option<String>,
    /// SHA-256 of its content.
    #[schema(pattern = "^[0-9a-f]{64}$")]
    pub sha256: String,
    /// Where it comes from.
    pub origin: FactOrigin,
    /// Largest difference between the daily curve and a monthly mean, K.
    pub curve_error_k: f64,
    /// What became of the forecast, if there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub forecast: Option<String>,
    /// The weather behind it, if there is any: kept for the registered climate, or brought by the request.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub weather: Option<AnswerWeather>,
    /// How it differs from the climate that the question names, if it was said so, with the markers of the season in short.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub differences: Option<ClimateDiffering>,
    /// How good it is, if it was estimated from coordinates.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub error: Option<ClimateError>,
    /// Where it comes from, if it was estimated: the notice that has to be shown with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub sources: Option<Vec<AdviceSource>>,
}

/// A rule set by name, version and content.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceRuleSet {
    /// Its name.
    pub name: String,
    /// Its calendar version.
    pub version: String,
    /// SHA-256 of its canonical form.
    #[schema(pattern = "^[0-9a-f]{64}$")]
    pub sha256: String,
}

/// A rule set that was taken back after it was published.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceWithdrawn {
    /// Its name.
    pub name: String,
    /// Its calendar version.
    pub version: String,
    /// Since when.
    #[schema(example = "2026-09-15T12:00:00Z")]
    pub since: String,
    /// Why.
    pub because: String,
}

/// What changes when an answer ends.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceNextChange {
    /// The first day on which the decision is another.
    pub date: Date,
    /// The first rule, in order, that differs.
    pub rule: String,
    /// What becomes of it.
    pub because: String,
}

/// The next window that opens.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceNextOpening {
    /// The day.
    pub date: Date,
    /// The rule.
    pub rule: String,
    /// What it is about.
    pub title: String,
}

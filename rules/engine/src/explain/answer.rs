//! The answer: everything that is said of a question.

use chrono::NaiveDate;
use serde::Serialize;
use serde_json::Value as Json;

use crate::rank::{Band, Score};

/// A whole answer.
#[derive(Clone, Debug, Serialize)]
pub struct Answer {
    /// advised, nothing-due, needs-facts.
    pub status: &'static str,
    /// What to do, in order.
    pub tasks: Vec<Task>,
    /// What to leave alone, and what must wait.
    pub held: Vec<Held>,
    /// What hangs on facts that nobody gave; at most 12.
    pub depends_on: Vec<Depends>,
    /// How many more of them there are.
    pub depends_more: usize,
    /// What to ask next; at most 5.
    pub questions: Vec<Question>,
    /// Nothing to do, but worth saying.
    pub notes: Vec<Note>,
    /// Causes of the signs.
    pub causes: Vec<CauseShown>,
    /// The season on the day.
    pub season: super::season::SeasonBrief,
    /// What was assumed, and by which rules it was read.
    pub assumptions: Vec<Assumption>,
    /// The climate that it stood on.
    pub climate: ClimateShown,
    /// The question as it was understood.
    pub asked: Json,
    /// Whether the date was said or assumed.
    pub date_origin: &'static str,
    /// The sets that spoke.
    pub rule_sets: Vec<RuleSet>,
    /// SHA-256 over the question, the sets and the decision version.
    pub digest: String,
    /// First day on which the decision is the same.
    pub valid_from: NaiveDate,
    /// Last day on which the decision is the same.
    pub valid_until: NaiveDate,
    /// What changes then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next_change: Option<NextChange>,
    /// When nothing is due: the next window that opens.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next_opening: Option<NextOpening>,
    /// Label and local law.
    pub notice: &'static str,
}

/// A set by name, version and content.
#[derive(Clone, Debug, Serialize)]
pub struct RuleSet {
    /// Name.
    pub name: String,
    /// Calendar version.
    pub version: String,
    /// SHA-256 of its canonical form.
    pub sha256: String,
}

/// The climate of an answer.
#[derive(Clone, Debug, Serialize)]
pub struct ClimateShown {
    /// The registered one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// SHA-256 of its content.
    pub sha256: String,
    /// given, measured, estimated.
    pub origin: &'static str,
    /// Largest difference between the daily curve and a monthly mean, K.
    pub curve_error_k: f64,
    /// What became of the forecast, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub forecast: Option<&'static str>,
}

/// A fact as it was read.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FactShown {
    /// As rules write it.
    pub name: String,
    /// What it is called.
    pub words: String,
    /// Its value.
    pub value: Json,
    /// Its unit; empty if it has none.
    pub unit: String,
    /// Where it comes from.
    pub origin: &'static str,
}

/// A reason.
#[derive(Clone, Debug, Serialize)]
pub struct Reason {
    /// In words.
    pub text: String,
    /// The facts that it rests on.
    pub facts: Vec<FactShown>,
}

/// Priority.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Priority {
    /// 0..=100.
    pub score: u8,
    /// How soon.
    pub band: Band,
    /// What the score is made of.
    pub parts: Score,
}

/// A side of a window and what it hangs on.
#[derive(Clone, Debug, Serialize)]
pub struct Basis {
    /// opens, best, closes.
    pub side: &'static str,
    /// The marker with its offset, as the rule writes it.
    pub marker: String,
    /// What that is in words.
    pub words: String,
    /// The marker's state or day.
    pub state: String,
}

/// A window.
#[derive(Clone, Debug, Serialize)]
pub struct WindowShown {
    /// Whether it is open on all days.
    pub all_year: bool,
    /// First day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opens: Option<NaiveDate>,
    /// Best day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best: Option<NaiveDate>,
    /// Last day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closes: Option<NaiveDate>,
    /// What its sides hang on.
    pub basis: Vec<Basis>,
}

/// A value in the other unit system.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Measure {
    /// Rounded for show.
    pub value: f64,
    /// Unit.
    pub unit: String,
}

/// A usual range.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Range {
    /// The least.
    pub min: f64,
    /// The most.
    pub max: f64,
    /// Unit.
    pub unit: String,
    /// The same in the United States' units.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub us: Option<Box<Range>>,
}

/// An amount.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AmountShown {
    /// What the number says.
    pub what: String,
    /// The number; none where it can't be reckoned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<f64>,
    /// Its unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// The same in the United States' units.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub us: Option<Measure>,
    /// computed or typical.
    pub basis: &'static str,
    /// The quantity that was reckoned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quantity: Option<&'static str>,
    /// What is usual.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub typical: Option<Range>,
    /// Facts without which it can't be reckoned.
    pub needs: Vec<String>,
    /// Whether a material's maximum capped it.
    pub capped: bool,
    /// Why it could not be reckoned, or what was assumed.
    pub remarks: Vec<String>,
}

/// A caution.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CautionShown {
    /// Its id.
    pub id: String,
    /// Whom it protects.
    pub kind: crate::pack::word::CautionKind,
    /// What is said.
    pub text: String,
}

/// A condition to check on the day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CheckShown {
    /// The guard that it comes from, if it is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub guard: Option<String>,
    /// What is said.
    pub text: String,
}

/// A material.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct MaterialShown {
    /// Its id.
    pub id: String,
    /// Its generic name.
    pub name: String,
    /// What is in it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub analysis: String,
    /// none, low, label, restricted.
    pub hazard: crate::pack::material::Hazard,
}

/// A separation.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ApartShown {
    /// job, material, class, rule.
    pub of: &'static str,
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Days.
    pub days: u16,
}

/// How often.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct RepeatShown {
    /// Days between two, the least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub min_days: Option<u16>,
    /// And the most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_days: Option<u16>,
    /// At most so many times,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub times: Option<u16>,
    /// within so many days.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub within_days: Option<u16>,
}

/// What may be expected.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ExpectShown {
    /// Its id.
    pub what: String,
    /// Its name.
    pub name: String,
    /// From when; none where the warmth does not come within a year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<NaiveDate>,
    /// Until when.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<NaiveDate>,
}

/// A source.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SourceShown {
    /// Its id.
    pub id: String,
    /// Its title.
    pub title: String,
    /// Its publisher.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub publisher: Option<String>,
    /// Its year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub year: Option<u16>,
    /// How it was read.
    pub how_read: String,
}

/// A task.
#[derive(Clone, Debug, Serialize)]
pub struct Task {
    /// The rule.
    pub id: String,
    /// The set that gave it its meaning.
    pub rule_set: String,
    /// Sets that reworded or tightened it.
    pub also: Vec<String>,
    /// The set's version.
    pub version: String,
    /// The job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<String>,
    /// What to do, in few words.
    pub title: String,
    /// applies.
    pub status: &'static str,
    /// task.
    pub kind: crate::pack::rule::Kind,
    /// How soon.
    pub priority: Priority,
    /// When.
    pub window: WindowShown,
    /// To check on the day, before the steps.
    pub check_first: Vec<CheckShown>,
    /// How.
    pub steps: Vec<String>,
    /// How much.
    pub amounts: Vec<AmountShown>,
    /// With what.
    pub materials: Vec<MaterialShown>,
    /// Tasks of this answer that come before it.
    pub after: Vec<String>,
    /// What it is kept apart from.
    pub keep_apart: Vec<ApartShown>,
    /// How often.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub repeat: Option<RepeatShown>,
    /// Why.
    pub reasons: Vec<Reason>,
    /// Cautions.
    pub cautions: Vec<CautionShown>,
    /// Why a licensed professional does it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub professional: Option<String>,
    /// What may be expected.
    pub expect: Vec<ExpectShown>,
    /// How well it is founded.
    pub evidence: crate::pack::rule::Evidence,
    /// How strongly it is advised.
    pub strength: crate::pack::rule::Strength,
    /// high, medium, low.
    pub certainty: &'static str,
    /// Sources.
    pub sources: Vec<SourceShown>,
}

/// Why a rule is held.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HeldBy {
    /// hold, guard, clash, apart, done, early, late, never, withheld, avoid.
    pub kind: &'static str,
    /// In words.
    pub because: String,
    /// The guard, or the rule that goes before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rule: Option<String>,
}

/// A rule that is held, or something to leave alone.
#[derive(Clone, Debug, Serialize)]
pub struct Held {
    /// The rule.
    pub id: String,
    /// The set.
    pub rule_set: String,
    /// Its job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<String>,
    /// What it is.
    pub title: String,
    /// The first reason's kind.
    pub kind: &'static str,
    /// The first reason in words.
    pub because: String,
    /// All reasons.
    pub blocks: Vec<HeldBy>,
    /// The facts that it rests on.
    pub facts: Vec<FactShown>,
    /// The first later day, up to 400, on which it is no longer held.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub look_again: Option<NaiveDate>,
    /// Where no day brings it: the facts that only the caller can change.
    pub changes_with: Vec<String>,
    /// Cautions.
    pub cautions: Vec<CautionShown>,
    /// Sources.
    pub sources: Vec<SourceShown>,
}

/// A rule that depends.
#[derive(Clone, Debug, Serialize)]
pub struct Depends {
    /// The rule.
    pub id: String,
    /// What it is.
    pub title: String,
    /// Facts that it hangs on.
    pub on: Vec<String>,
    /// What could come of it.
    pub could_be: Vec<&'static str>,
}

/// A note.
#[derive(Clone, Debug, Serialize)]
pub struct Note {
    /// The rule.
    pub id: String,
    /// In few words.
    pub title: String,
    /// What is said.
    pub text: String,
    /// The facts that it rests on.
    pub facts: Vec<FactShown>,
    /// Sources.
    pub sources: Vec<SourceShown>,
}

/// A cause of the signs.
#[derive(Clone, Debug, Serialize)]
pub struct CauseShown {
    /// The problem.
    pub id: String,
    /// Its name.
    pub name: String,
    /// How likely.
    pub likelihood: crate::decide::causes::Likelihood,
    /// Its points.
    pub points: i32,
}

/// Something that was assumed.
#[derive(Clone, Debug, Serialize)]
pub struct Assumption {
    /// The fact.
    #[serde(flatten)]
    pub fact: FactShown,
    /// Rules of this answer that read it.
    pub rules: Vec<String>,
}

/// What changes when the answer ends.
#[derive(Clone, Debug, Serialize)]
pub struct NextChange {
    /// The first day on which the decision is another.
    pub date: NaiveDate,
    /// The first rule, in order, that differs.
    pub rule: String,
    /// What becomes of it.
    pub because: String,
}

/// The next window that opens.
#[derive(Clone, Debug, Serialize)]
pub struct NextOpening {
    /// The day.
    pub date: NaiveDate,
    /// The rule.
    pub rule: String,
    /// What it is.
    pub title: String,
}

/// An answer that can be given to a question.
#[derive(Clone, Debug, Serialize)]
pub struct Choice {
    /// In words.
    pub text: String,
    /// Where the value goes, as a JSON pointer; `-` at its end: added to the list.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pointer: Option<String>,
    /// The exact value to put there; none for "I can't tell".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<Json>,
    /// What becomes of the rules that the question settles.
    pub leads_to: Vec<LeadsTo>,
}

/// What becomes of a rule.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LeadsTo {
    /// The rule.
    pub rule: String,
    /// applies, held, no, depends.
    pub outcome: &'static str,
}

/// What to ask next.
#[derive(Clone, Debug, Serialize)]
pub struct Question {
    /// The fact.
    pub fact: String,
    /// In plain words.
    pub text: String,
    /// How to find out.
    pub look: String,
    /// Where the answer goes, as a JSON pointer.
    pub pointer: String,
    /// What can be answered.
    pub answers: Vec<Choice>,
    /// Up to three rules that it settles.
    pub settles: Vec<String>,
}

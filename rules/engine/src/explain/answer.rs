//! The answer: everything that is said of a question.

use std::borrow::Cow;
use std::ops::Deref;

use chrono::NaiveDate;
use serde::{Serialize, Serializer};
use serde_json::Value as Json;

use super::rendered::Rendered;
use crate::rank::{Band, Score};

/// A whole answer.
#[derive(Clone, Debug, Serialize)]
pub struct Answer<'a> {
    /// advised, nothing-due, needs-facts.
    pub status: &'static str,
    /// What to do, in order.
    pub tasks: Vec<Task<'a>>,
    /// What to leave alone, and what must wait.
    pub held: Vec<Held<'a>>,
    /// What hangs on facts that nobody gave; at most 12.
    pub depends_on: Vec<Depends<'a>>,
    /// How many more of them there are.
    pub depends_more: usize,
    /// What to ask next; at most 5.
    pub questions: Vec<Question<'a>>,
    /// What was heard in the caller's own words, where there are any.
    #[serde(flatten, skip_serializing_if = "Option::is_none")]
    pub heard: Option<Heard<'a>>,
    /// Nothing to do, but worth saying.
    pub notes: Vec<Note<'a>>,
    /// Causes of the signs.
    pub causes: Vec<CauseShown<'a>>,
    /// The season on the day.
    pub season: super::season::SeasonBrief,
    /// What was assumed, and by which rules it was read.
    pub assumptions: Vec<Assumption<'a>>,
    /// The climate that it stood on.
    pub climate: ClimateShown<'a>,
    /// The question as it was understood.
    pub asked: &'a Json,
    /// Whether the date was said or assumed.
    pub date_origin: &'static str,
    /// The sets that spoke.
    pub rule_sets: Vec<RuleSet<'a>>,
    /// SHA-256 over the question, the sets and the decision version.
    pub digest: String,
    /// First day on which the decision is the same.
    pub valid_from: NaiveDate,
    /// Last day on which the decision is the same.
    pub valid_until: NaiveDate,
    /// What changes then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next_change: Option<NextChange<'a>>,
    /// When nothing is due: the next window that opens.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next_opening: Option<NextOpening<'a>>,
    /// When nothing is due and nothing opens for half a year: why, if the plant's notes say so.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quiet: Option<&'a str>,
    /// Label and local law.
    pub notice: &'static str,
    /// What can be read over the telephone, where it says the whole question.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<String>,
    /// Sets among those that spoke that were taken back.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub withdrawn: Vec<Withdrawn>,
    /// What the answer can be given again from, where that was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub recall: Option<String>,
}

/// A set that was taken back after it was published.
#[derive(Clone, Debug, Serialize)]
pub struct Withdrawn {
    /// Name.
    pub name: String,
    /// Calendar version.
    pub version: String,
    /// Since when, as RFC 3339 writes it.
    pub since: String,
    /// Why.
    pub because: String,
}

/// What was heard in the caller's own words. Only what is understood counts.
#[derive(Clone, Debug, Serialize)]
pub struct Heard<'a> {
    /// Signs that are meant.
    pub understood: Vec<Understood<'a>>,
    /// Words that could be one of a few signs.
    pub unsure: Vec<Unsure<'a>>,
    /// Words that are no sign of the plant, or that say what is not there.
    pub not_understood: Vec<NotUnderstood<'a>>,
}

/// Words that mean a sign.
#[derive(Clone, Debug, Serialize)]
pub struct Understood<'a> {
    /// The sign.
    pub sign: &'a str,
    /// Its name.
    pub name: &'a str,
    /// The words.
    pub text: &'a str,
}

/// Words that could be one of a few signs.
#[derive(Clone, Debug, Serialize)]
pub struct Unsure<'a> {
    /// The words.
    pub text: &'a str,
    /// The signs, the likeliest first.
    pub could_be: Vec<SignNamed<'a>>,
}

/// Words that are not understood.
#[derive(Clone, Debug, Serialize)]
pub struct NotUnderstood<'a> {
    /// The words.
    pub text: &'a str,
}

/// A sign by its id and name.
#[derive(Clone, Debug, Serialize)]
pub struct SignNamed<'a> {
    /// Its id.
    pub sign: &'a str,
    /// Its name.
    pub name: &'a str,
}

/// A set by name, version and content.
#[derive(Clone, Debug, Serialize)]
pub struct RuleSet<'a> {
    /// Name.
    pub name: &'a str,
    /// Calendar version.
    pub version: &'a str,
    /// SHA-256 of its canonical form.
    pub sha256: &'a str,
}

impl<'a> RuleSet<'a> {
    /// A set of those that were laid over each other.
    #[must_use]
    pub fn of(layer: &'a crate::pack::layer::Layer) -> Self {
        Self { name: &layer.name, version: &layer.version, sha256: &layer.sha256 }
    }
}

/// The climate of an answer.
#[derive(Clone, Debug, Serialize)]
pub struct ClimateShown<'a> {
    /// The registered one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<&'a str>,
    /// SHA-256 of its content.
    pub sha256: &'a str,
    /// given, measured, estimated.
    pub origin: &'static str,
    /// Largest difference between the daily curve and a monthly mean, K.
    pub curve_error_k: f64,
    /// What became of the forecast, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub forecast: Option<&'static str>,
    /// The weather behind the answer, if there is any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weather: Option<super::weather::WeatherShown<'a>>,
    /// How it differs from another, if it was said so, with the markers of the season in short.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub differences: Option<super::differing::DifferingShown>,
    /// How good it is, if it was estimated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<super::estimate::EstimateShown>,
    /// Where it comes from, if it was estimated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sources: Option<&'static Rendered<Vec<SourceShown>>>,
}

/// A text: one of the prepared phrases, or made for this answer.
#[derive(Clone, Debug, Serialize)]
#[serde(untagged)]
pub enum Said<'a> {
    /// As it is always said.
    Phrase(&'a Rendered<String>),
    /// For this answer.
    Made(String),
}

impl Deref for Said<'_> {
    type Target = str;

    fn deref(&self) -> &str {
        match self {
            Self::Phrase(phrase) => phrase,
            Self::Made(text) => text,
        }
    }
}

impl PartialEq for Said<'_> {
    fn eq(&self, other: &Self) -> bool {
        **self == **other
    }
}

/// A value as it stands in an answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FactValue<'a> {
    /// Not known: `null`.
    Unknown,
    /// Known not to exist: `"absent"`.
    Absent,
    /// Yes or no.
    Truth(bool),
    /// A number.
    Number(f64),
    /// A date.
    Date(NaiveDate),
    /// One of a vocabulary, by its id.
    Choice(&'a str),
}

impl Serialize for FactValue<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Unknown => serializer.serialize_unit(),
            Self::Absent => serializer.serialize_str("absent"),
            Self::Truth(yes) => serializer.serialize_bool(*yes),
            Self::Number(number) => serializer.serialize_f64(*number),
            Self::Date(date) => date.serialize(serializer),
            Self::Choice(id) => serializer.serialize_str(id),
        }
    }
}

/// A fact as it was read.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FactShown<'a> {
    /// As rules write it.
    pub name: Said<'a>,
    /// What it is called.
    pub words: Said<'a>,
    /// Its value.
    pub value: FactValue<'a>,
    /// Its unit; empty if it has none.
    pub unit: &'static str,
    /// Where it comes from.
    pub origin: &'static str,
}

/// A reason.
#[derive(Clone, Debug, Serialize)]
pub struct Reason<'a> {
    /// In words.
    pub text: Said<'a>,
    /// The facts that it rests on.
    pub facts: Vec<FactShown<'a>>,
}

/// Priority.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Priority {
    /// 0..=100.
    pub score: u8,
    /// How soon.
    pub band: Band,
    /// What the score is made of, in a full answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub parts: Option<Score>,
}

/// A side of a window and what it hangs on.
#[derive(Clone, Debug, Serialize)]
pub struct Basis<'a> {
    /// opens, best, closes.
    pub side: &'static str,
    /// The marker with its offset, as the rule writes it.
    pub marker: &'a str,
    /// What that is in words.
    pub words: &'a str,
    /// The marker's state or day.
    pub state: String,
}

/// A window.
#[derive(Clone, Debug, Serialize)]
pub struct WindowShown<'a> {
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
    /// What its sides hang on, in a full answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub basis: Option<Vec<Basis<'a>>>,
}

/// A value in the other unit system.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Measure {
    /// Rounded for show.
    pub value: f64,
    /// Unit.
    pub unit: &'static str,
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
#[derive(Clone, Debug, Serialize)]
pub struct AmountShown<'a> {
    /// What the number says.
    pub what: &'a Rendered<String>,
    /// The number; none where it can't be reckoned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<f64>,
    /// Its unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<Cow<'static, str>>,
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
    pub typical: Option<&'a Rendered<Range>>,
    /// Facts without which it can't be reckoned.
    pub needs: Vec<String>,
    /// Whether a material's maximum capped it.
    pub capped: bool,
    /// Why it could not be reckoned, or what was assumed.
    pub remarks: Vec<String>,
}

/// What makes a task an emergency.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct EmergencyShown {
    /// Who to call, by kind.
    pub call: String,
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
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CheckShown<'a> {
    /// The guard that it comes from, if it is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub guard: Option<&'a str>,
    /// What is said.
    pub text: Said<'a>,
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
#[derive(Clone, Debug, Serialize)]
pub struct ExpectShown<'a> {
    /// Its id.
    pub what: &'a str,
    /// Its name.
    pub name: &'a Rendered<String>,
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
pub struct Task<'a> {
    /// The rule.
    pub id: &'a str,
    /// The set that gave it its meaning.
    pub rule_set: &'a str,
    /// Sets that reworded or tightened it.
    pub also: &'a [String],
    /// The set's version.
    pub version: &'a str,
    /// The job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<&'a str>,
    /// What to do, in few words.
    pub title: &'a Rendered<String>,
    /// applies.
    pub status: &'static str,
    /// task.
    pub kind: crate::pack::rule::Kind,
    /// How soon.
    pub priority: Priority,
    /// When.
    pub window: WindowShown<'a>,
    /// To check on the day, before the steps.
    pub check_first: Vec<CheckShown<'a>>,
    /// How.
    pub steps: &'a Rendered<Vec<String>>,
    /// How much.
    pub amounts: Vec<AmountShown<'a>>,
    /// With what.
    pub materials: &'a Rendered<Vec<MaterialShown>>,
    /// Tasks of this answer that come before it.
    pub after: Vec<&'a str>,
    /// What it is kept apart from.
    pub keep_apart: &'a Rendered<Vec<ApartShown>>,
    /// How often.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub repeat: Option<RepeatShown>,
    /// Why.
    pub reasons: [Reason<'a>; 1],
    /// Cautions.
    pub cautions: Vec<&'a Rendered<CautionShown>>,
    /// Why a licensed professional does it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub professional: Option<&'a Rendered<String>>,
    /// Who to call, where someone or something is in danger: it is then the only task.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency: Option<&'a Rendered<EmergencyShown>>,
    /// What may be expected.
    pub expect: Vec<ExpectShown<'a>>,
    /// How well it is founded.
    pub evidence: crate::pack::rule::Evidence,
    /// How strongly it is advised.
    pub strength: crate::pack::rule::Strength,
    /// high, medium, low.
    pub certainty: &'static str,
    /// Sources.
    pub sources: &'a Rendered<Vec<SourceShown>>,
}

/// Why a rule is held.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeldBy<'a> {
    /// hold, guard, clash, apart, done, early, late, never, withheld, avoid, emergency.
    pub kind: &'static str,
    /// In words.
    pub because: Said<'a>,
    /// The guard, or the rule that goes before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rule: Option<&'a str>,
}

/// A rule that is held, or something to leave alone.
#[derive(Clone, Debug, Serialize)]
pub struct Held<'a> {
    /// The rule.
    pub id: &'a str,
    /// The set.
    pub rule_set: &'a str,
    /// Its job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<&'a str>,
    /// What it is.
    pub title: &'a Rendered<String>,
    /// The first reason's kind.
    pub kind: &'static str,
    /// The first reason in words.
    pub because: Said<'a>,
    /// All reasons.
    pub blocks: Vec<HeldBy<'a>>,
    /// The facts that it rests on.
    pub facts: Vec<FactShown<'a>>,
    /// The first later day, up to 400, on which it is no longer held.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub look_again: Option<NaiveDate>,
    /// Where no day brings it: the facts that only the caller can change.
    pub changes_with: Vec<Said<'a>>,
    /// Cautions.
    pub cautions: Vec<&'a Rendered<CautionShown>>,
    /// Sources.
    pub sources: &'a Rendered<Vec<SourceShown>>,
}

/// A rule that depends.
#[derive(Clone, Debug, Serialize)]
pub struct Depends<'a> {
    /// The rule.
    pub id: &'a str,
    /// What it is.
    pub title: &'a Rendered<String>,
    /// Facts that it hangs on.
    pub on: Vec<Said<'a>>,
    /// What could come of it.
    pub could_be: Vec<&'static str>,
}

/// A note.
#[derive(Clone, Debug, Serialize)]
pub struct Note<'a> {
    /// The rule.
    pub id: &'a str,
    /// In few words.
    pub title: &'a Rendered<String>,
    /// What is said.
    pub text: Said<'a>,
    /// The facts that it rests on.
    pub facts: Vec<FactShown<'a>>,
    /// Sources.
    pub sources: &'a Rendered<Vec<SourceShown>>,
}

/// A cause of the signs.
#[derive(Clone, Debug, Serialize)]
pub struct CauseShown<'a> {
    /// The problem.
    pub id: &'a str,
    /// Its name.
    pub name: &'a str,
    /// How likely.
    pub likelihood: crate::decide::causes::Likelihood,
    /// Its points.
    pub points: i32,
}

/// Something that was assumed.
#[derive(Clone, Debug, Serialize)]
pub struct Assumption<'a> {
    /// The fact.
    #[serde(flatten)]
    pub fact: FactShown<'a>,
    /// Rules of this answer that read it.
    pub rules: Vec<&'a str>,
}

/// What changes when the answer ends.
#[derive(Clone, Debug, Serialize)]
pub struct NextChange<'a> {
    /// The first day on which the decision is another.
    pub date: NaiveDate,
    /// The first rule, in order, that differs.
    pub rule: &'a str,
    /// What becomes of it.
    pub because: String,
}

/// The next window that opens.
#[derive(Clone, Debug, Serialize)]
pub struct NextOpening<'a> {
    /// The day.
    pub date: NaiveDate,
    /// The rule.
    pub rule: &'a str,
    /// What it is.
    pub title: &'a str,
}

/// An answer that can be given to a question.
#[derive(Clone, Debug, Serialize)]
pub struct Choice<'a> {
    /// In words.
    pub text: String,
    /// Where the value goes, as a JSON pointer; `-` at its end: added to the list.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pointer: Option<String>,
    /// The exact value to put there; none for "I can't tell".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<Json>,
    /// What becomes of the rules that the question settles.
    pub leads_to: Vec<LeadsTo<'a>>,
}

/// What becomes of a rule.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LeadsTo<'a> {
    /// The rule.
    pub rule: &'a str,
    /// applies, held, no, depends.
    pub outcome: &'static str,
}

/// What to ask next.
#[derive(Clone, Debug, Serialize)]
pub struct Question<'a> {
    /// The fact.
    pub fact: String,
    /// In plain words.
    pub text: String,
    /// How to find out.
    pub look: String,
    /// Where the answer goes, as a JSON pointer.
    pub pointer: String,
    /// What can be answered.
    pub answers: Vec<Choice<'a>>,
    /// Up to three rules that it settles.
    pub settles: Vec<&'a str>,
}

//! A rule as it is written.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::shapes::{AllOr, OneOrMany, OrderEntry};
use super::{At, Expression};
use crate::text::{Text, Texts};

/// What a rule is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Work to do.
    #[default]
    Task,
    /// Something to leave alone; a guard if it blocks.
    Avoid,
    /// Nothing to do, but worth saying.
    Know,
}

/// How a work is done, where a clash of jobs asks for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Manner {
    /// A cut that takes much of the plant.
    Hard,
    /// Water or spray over the leaves.
    Overhead,
}

/// How well a piece of advice is founded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Evidence {
    /// The handbooks agree.
    Consensus,
    /// A trial showed it.
    Trial,
    /// The trade does it.
    CommonPractice,
    /// Told, not shown.
    Doubtful,
}

/// How strongly it is advised.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Strength {
    /// Do it.
    Do,
    /// A matter of choice.
    Consider,
    /// Leave it alone.
    Avoid,
}

/// Whom a rule is for.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ForEntry {
    /// One plant.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plant: Option<At<String>>,
    /// Several, or all.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plants: Option<AllOr>,
    /// The problem that it treats.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub problem: Option<At<String>>,
    /// Over the plant's traits, by their short names.
    #[serde(default, rename = "where", skip_serializing_if = "Option::is_none")]
    pub traits: Option<Expression>,
}

/// One window.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WindowEntry {
    /// Its first day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub opens: Option<At<String>>,
    /// Its best day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub best: Option<At<String>>,
    /// Its last day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closes: Option<At<String>>,
    /// What an absent marker means instead of the table.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub if_absent: Option<IfAbsent>,
}

/// The only other choice for a window whose markers are absent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum IfAbsent {
    /// Open on all days.
    AllYear,
}

/// What can stop a rule that otherwise applies.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HoldEntry {
    /// The condition.
    #[serde(rename = "if")]
    pub condition: Expression,
    /// The reason, and the condition to meet where the fact is of the day.
    pub because: Text,
    /// A fact of the day must be known.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub strict: bool,
    /// The file it stands in, where that is not the rule's: a set above added it.
    #[serde(skip)]
    pub file: Option<Arc<str>>,
}

impl HoldEntry {
    /// The file it stands in; `rule` is that of its rule.
    #[must_use]
    pub fn file<'f>(&'f self, rule: &'f str) -> &'f str {
        self.file.as_deref().unwrap_or(rule)
    }
}

/// What is said out of season.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OutsideEntry {
    /// Before the window.
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub early: Text,
    /// After it.
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub late: Text,
    /// Where there is none.
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub never: Text,
}

/// Weight of a rule.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RankEntry {
    /// 0 can wait a season, 1 within weeks, 2 within days, 3 today or tomorrow.
    pub urgency: u8,
    /// 0 cosmetic, 1 some loss, 2 crop or season lost, 3 plant lost or person hurt.
    pub impact: u8,
}

/// One amount.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AmountEntry {
    /// What the number says.
    pub what: Text,
    /// The quantity that is reckoned.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub call: Option<At<String>>,
    /// Its inputs: facts or literals.
    #[serde(default, rename = "with", skip_serializing_if = "BTreeMap::is_empty")]
    pub inputs: BTreeMap<String, At<String>>,
    /// What is usual, shown when it can't be reckoned, or beside it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub typical: Option<TypicalEntry>,
    /// The material whose maximum caps it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub max_of: Option<At<String>>,
}

/// A usual range.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TypicalEntry {
    /// The least.
    pub min: f64,
    /// The most.
    pub max: f64,
    /// The unit of both.
    pub unit: At<String>,
}

/// What may be expected after the work.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExpectEntry {
    /// An outlook's id.
    pub what: At<String>,
    /// `7..14 days`, `550 °Cd`.
    pub after: At<String>,
}

/// What must be kept apart, and by how many days.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ApartEntry {
    /// A material.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub material: Option<At<String>>,
    /// A class of materials.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub class: Option<At<String>>,
    /// A job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub job: Option<At<String>>,
    /// The least number of days between them.
    pub days: u16,
}

/// How often.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepeatEntry {
    /// `7..10 days`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub every: Option<At<String>>,
    /// The most.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_most: Option<AtMostEntry>,
}

/// The most times in a span of days.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AtMostEntry {
    /// Times.
    pub times: u16,
    /// `365 days`.
    pub within: At<String>,
}

/// The member that takes turns with this one.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AlternateEntry {
    /// The other rule.
    #[serde(rename = "with")]
    pub rule: At<String>,
    /// `14 days`.
    pub gap: At<String>,
}

/// What a guard blocks; everything named must match.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BlocksEntry {
    /// Jobs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub jobs: Vec<At<String>>,
    /// Materials.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub materials: Vec<At<String>>,
    /// Classes of materials.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub classes: Vec<At<String>>,
    /// Rules.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub rules: Vec<At<String>>,
    /// Plants; none named: every plant.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub plants: Vec<At<String>>,
}

/// The law behind a guard: the words of a place, not of the trade.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LawEntry {
    /// In force since.
    pub since: chrono::NaiveDate,
    /// When it was looked up; laws change.
    pub seen: chrono::NaiveDate,
}

/// What makes a task an emergency.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EmergencyEntry {
    /// Who to call, by kind: numbers are those of the place.
    pub call: Text,
}

/// A finding of plain words that is left as it is, and why.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlainEntry {
    /// Codes of findings.
    pub waive: Vec<At<String>>,
    /// Why.
    pub because: String,
}

/// A rule as it is written.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RuleEntry {
    /// Plant first, kebab-case; never reused.
    pub id: At<String>,
    /// Task, avoid or know.
    #[serde(default)]
    pub kind: Kind,
    /// The job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub job: Option<At<String>>,
    /// How it is done.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub manner: Option<Manner>,
    /// What to do, in few words.
    pub title: Text,
    /// Whom it is for.
    #[serde(rename = "for")]
    pub whom: ForEntry,
    /// When in the season.
    #[serde(default, skip_serializing_if = "no_windows")]
    pub window: OneOrMany<WindowEntry>,
    /// The condition.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub when: Option<Expression>,
    /// What holds it back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hold: Vec<HoldEntry>,
    /// What is said out of season.
    #[serde(default)]
    pub outside: OutsideEntry,
    /// Its weight.
    #[serde(default)]
    pub rank: RankEntry,
    /// How well it is founded.
    pub evidence: Evidence,
    /// How strongly it is advised.
    pub strength: Strength,
    /// The reason.
    pub why: Text,
    /// How it is done.
    #[serde(default, skip_serializing_if = "Texts::is_empty")]
    pub steps: Texts,
    /// For other editors.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
    /// What is spread, sprayed or laid.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub materials: Vec<At<String>>,
    /// How much.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub amount: Vec<AmountEntry>,
    /// What may be expected.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub expect: Vec<ExpectEntry>,
    /// Rules that come after this one.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub before: Vec<At<OrderEntry>>,
    /// Rules that come before this one.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub after: Vec<At<OrderEntry>>,
    /// What it is kept apart from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub keep_apart: Vec<ApartEntry>,
    /// Rules that must not be done on the same day.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub clashes: Vec<At<String>>,
    /// How often.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub repeat: Option<RepeatEntry>,
    /// What it takes turns with.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub alternate: Option<AlternateEntry>,
    /// What it blocks, as a guard.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blocks: Option<BlocksEntry>,
    /// The law that a guard speaks of: where nobody told the region, its words stand with the work and hold nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub law: Option<LawEntry>,
    /// Cautions.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<At<String>>,
    /// Why this is work for a licensed professional.
    #[serde(default, skip_serializing_if = "Text::is_empty")]
    pub professional: Text,
    /// Someone or something is in danger: it comes before all else, and nothing ranks with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub emergency: Option<EmergencyEntry>,
    /// Facts of the day must be known.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub strict: bool,
    /// Findings of plain words that are left as they are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plain: Option<PlainEntry>,
    /// When a horticulturist looked it over and would sign it; left out: nobody has yet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reviewed: Option<chrono::NaiveDate>,
    /// Sources.
    #[serde(default)]
    pub sources: Vec<At<String>>,
}

fn no_windows(windows: &OneOrMany<WindowEntry>) -> bool {
    windows.0.is_empty()
}

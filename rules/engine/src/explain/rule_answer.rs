//! A rule in plain words, as it is shown.

use serde::Serialize;

use super::answer::{ApartShown, CautionShown, EmergencyShown, MaterialShown, RepeatShown, RuleSet, SourceShown};
use crate::pack::rule::{Evidence, Kind, Strength};

/// An entry of a vocabulary by its id, with its name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Named {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
}

/// An expression, as it is written and in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Worded {
    /// As the rule writes it.
    pub rule: String,
    /// In words.
    pub words: String,
}

/// Whom a rule is for.
#[derive(Clone, Debug, Serialize)]
pub struct ForShown {
    /// Whether it is for every plant.
    pub every_plant: bool,
    /// The plants.
    pub plants: Vec<Named>,
    /// The problem that it treats.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub problem: Option<Named>,
    /// Which of these plants, by their traits.
    #[serde(rename = "where", skip_serializing_if = "Option::is_none")]
    pub traits: Option<Worded>,
}

/// A window.
#[derive(Clone, Debug, Serialize)]
pub struct SeasonWindow {
    /// Its first day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opens: Option<Worded>,
    /// Its best day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best: Option<Worded>,
    /// Its last day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closes: Option<Worded>,
    /// Whether it is open on all days where its markers never come.
    pub all_year_if_absent: bool,
    /// All of it in one sentence.
    pub words: String,
}

/// What holds a rule back.
#[derive(Clone, Debug, Serialize)]
pub struct HoldShown {
    /// When.
    #[serde(rename = "if")]
    pub condition: Worded,
    /// Why.
    pub because: String,
    /// Whether it holds as long as nobody knows.
    pub strict: bool,
}

/// What is said out of season.
#[derive(Clone, Debug, Serialize)]
pub struct OutsideShown {
    /// Before the window.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub early: Option<String>,
    /// After it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub late: Option<String>,
    /// Where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub never: Option<String>,
}

/// A guard that binds a rule.
#[derive(Clone, Debug, Serialize)]
pub struct GuardShown {
    /// The guard's rule.
    pub id: String,
    /// In few words.
    pub title: String,
    /// When it binds; none: always.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub when: Option<Worded>,
    /// In which part of the year; none: in all of it.
    pub windows: Vec<SeasonWindow>,
    /// Why.
    pub why: String,
}

/// What a guard blocks; everything named must match.
#[derive(Clone, Debug, Serialize)]
pub struct BlocksShown {
    /// Jobs.
    pub jobs: Vec<Named>,
    /// Materials.
    pub materials: Vec<Named>,
    /// Classes of materials.
    pub classes: Vec<Named>,
    /// Rules.
    pub rules: Vec<Named>,
    /// Plants; none named: every plant.
    pub plants: Vec<Named>,
}

/// How much, as far as that can be said without a place and a plant.
#[derive(Clone, Debug, Serialize)]
pub struct AmountTold {
    /// What the number says.
    pub what: String,
    /// The quantity by which it is reckoned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quantity: Option<String>,
    /// What is usual.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub typical: Option<TypicalTold>,
    /// The material whose maximum caps it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_most_of: Option<Named>,
}

/// A usual range.
#[derive(Clone, Debug, Serialize)]
pub struct TypicalTold {
    /// The least.
    pub min: f64,
    /// The most.
    pub max: f64,
    /// Unit.
    pub unit: String,
}

/// What may be expected afterwards.
#[derive(Clone, Debug, Serialize)]
pub struct OutlookTold {
    /// What.
    pub what: Named,
    /// After how long: days, or warmth over 5 °C.
    pub after: String,
}

/// A rule before or after this one.
#[derive(Clone, Debug, Serialize)]
pub struct OrderTold {
    /// The other rule.
    pub rule: Named,
    /// Days between them; 0: only the order matters.
    pub days: u16,
}

/// A rule in plain words.
#[derive(Clone, Debug, Serialize)]
pub struct RuleShown<'a> {
    /// Its id.
    pub id: String,
    /// The set that it stands in.
    pub rule_set: RuleSet<'a>,
    /// Task, avoid or know.
    pub kind: Kind,
    /// The job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<Named>,
    /// In few words.
    pub title: String,
    /// Whom it is for.
    #[serde(rename = "for")]
    pub whom: ForShown,
    /// When in the season, in one sentence.
    pub season: String,
    /// The same, side by side.
    pub windows: Vec<SeasonWindow>,
    /// On what condition; none: on none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub when: Option<Worded>,
    /// What holds it back.
    pub holds: Vec<HoldShown>,
    /// Guards that bind it.
    pub guards: Vec<GuardShown>,
    /// What it blocks, if it is a guard.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blocks: Option<BlocksShown>,
    /// What is said out of season.
    pub outside: OutsideShown,
    /// Why.
    pub why: String,
    /// How it is done.
    pub steps: Vec<String>,
    /// With what.
    pub materials: Vec<MaterialShown>,
    /// How much.
    pub amounts: Vec<AmountTold>,
    /// What may be expected afterwards.
    pub expect: Vec<OutlookTold>,
    /// Rules that come before it.
    pub after: Vec<OrderTold>,
    /// Rules that come after it.
    pub before: Vec<OrderTold>,
    /// What it is kept apart from.
    pub keep_apart: Vec<ApartShown>,
    /// How often.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub repeat: Option<RepeatShown>,
    /// Its cautions and those of its materials.
    pub cautions: Vec<CautionShown>,
    /// Why it is work for a licensed professional.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub professional: Option<String>,
    /// Who to call, where it is an emergency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency: Option<EmergencyShown>,
    /// How well it is founded.
    pub evidence: Evidence,
    /// The same in words.
    pub evidence_words: &'static str,
    /// How strongly it is advised.
    pub strength: Strength,
    /// The same in words.
    pub strength_words: &'static str,
    /// 0 can wait a season .. 3 today or tomorrow.
    pub urgency: u8,
    /// 0 cosmetic .. 3 plant lost or person hurt.
    pub impact: u8,
    /// Sources.
    pub sources: Vec<SourceShown>,
    /// Label and local law.
    pub notice: &'static str,
}

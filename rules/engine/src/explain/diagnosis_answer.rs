//! A diagnosis, as it is shown.

use std::borrow::Cow;

use serde::Serialize;

use super::answer::{CautionShown, ClimateShown, Held, MaterialShown, RuleSet, SourceShown, Task};
use super::ladder::Rung;
use super::rule_answer::{Named, Worded};
use crate::decide::causes::Likelihood;
use crate::pack::problem::{ProblemKind, ResistanceGroups};
use crate::pack::rule::Kind;
use crate::pack::word::{Seen, Where};

/// How regularly a sign comes with a problem, or that it is something that favours it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// With every case.
    Always,
    /// With most.
    Often,
    /// With some.
    Sometimes,
    /// With none.
    Never,
    /// Not a sign: weather, soil or water that favours it.
    Favours,
}

/// What speaks for or against a cause.
#[derive(Clone, Debug, Serialize)]
pub struct Evidence {
    /// The sign; none where it is something that favours the problem.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sign: Option<String>,
    /// In words.
    pub words: String,
    /// How regularly it comes with the problem.
    pub grade: Grade,
    /// Whether it is so; none: nobody knows.
    pub is_so: Option<bool>,
    /// Its points.
    pub points: i32,
}

/// From when on it is worth acting.
#[derive(Clone, Debug, Serialize)]
pub struct Threshold {
    /// The threshold.
    #[serde(flatten)]
    pub said: Worded,
    /// Whether it is reached; none: nobody knows.
    pub reached: Option<bool>,
}

/// A rule that treats a cause, or speaks of it.
#[derive(Clone, Debug, Serialize)]
pub struct Treatment {
    /// The rule.
    pub rule: String,
    /// In few words.
    pub title: String,
    /// Work, something to leave alone, or something worth knowing.
    pub kind: Kind,
    /// Its rung of the ladder.
    pub rung: Rung,
    /// What becomes of it on the day; none: no climate was given to judge it by.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outcome: Option<&'static str>,
    /// Why it is held.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub because: Option<String>,
    /// What it hangs on.
    pub on: Vec<String>,
    /// With what.
    pub materials: Vec<MaterialShown>,
    /// Cautions.
    pub cautions: Vec<CautionShown>,
    /// Why a licensed professional does it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub professional: Option<String>,
}

/// A cause.
#[derive(Clone, Debug, Serialize)]
pub struct CauseWhole {
    /// The problem.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Pest, disease or disorder.
    pub kind: ProblemKind,
    /// What it is.
    pub about: String,
    /// How likely it is.
    pub likelihood: Likelihood,
    /// The sum of its points.
    pub points: i32,
    /// 0 cosmetic .. 3 plant lost.
    pub impact: u8,
    /// The groups of the materials used against it; who treats again takes another.
    #[serde(skip_serializing_if = "ResistanceGroups::is_empty")]
    pub resistance: ResistanceGroups,
    /// What speaks for or against it, in the order of the problem's own lists.
    pub why: Vec<Evidence>,
    /// From when on it is worth acting.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub threshold: Option<Threshold>,
    /// What answers it, gentlest first.
    pub treatments: Vec<Treatment>,
    /// Sources.
    pub sources: Vec<SourceShown>,
}

/// A cause in short.
#[derive(Clone, Debug, Serialize)]
pub struct CauseInBrief {
    /// The problem.
    pub id: String,
    /// Its name.
    pub name: String,
    /// How likely it is then.
    pub likelihood: Likelihood,
    /// Its points then.
    pub points: i32,
}

/// An answer to `look_next`.
#[derive(Clone, Debug, Serialize)]
pub struct LookAnswer {
    /// In words.
    pub text: String,
    /// Where the value goes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pointer: Option<&'static str>,
    /// The value to put there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<serde_json::Value>,
    /// The first causes then; at most 3.
    pub leads_to: Vec<CauseInBrief>,
}

/// The sign that would separate the causes best.
#[derive(Clone, Debug, Serialize)]
pub struct LookNext {
    /// The sign.
    pub sign: String,
    /// Its name.
    pub name: String,
    /// Where it is seen.
    #[serde(rename = "where")]
    pub place: Where,
    /// At a glance, or on a close look only.
    pub seen: Seen,
    /// How to look.
    pub look: String,
    /// What can be answered, and what each answer leads to.
    pub answers: Vec<LookAnswer>,
}

/// A diagnosis.
#[derive(Clone, Debug, Serialize)]
pub struct Diagnosis<'a> {
    /// likely, possible, unlikely, none.
    pub status: &'static str,
    /// The plant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plant: Option<Named>,
    /// The signs that were said to be there.
    pub signs: Vec<Named>,
    /// Causes, the likeliest first.
    pub causes: Vec<CauseWhole>,
    /// What to look at next.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub look_next: Option<LookNext>,
    /// What to do now about the causes, gentlest first.
    pub tasks: Vec<Task<'a>>,
    /// What of it must wait.
    pub held: Vec<Held<'a>>,
    /// What could not be counted, in words.
    pub remarks: Vec<Cow<'static, str>>,
    /// The climate that it stood on, if one was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub climate: Option<ClimateShown<'a>>,
    /// The question as it was understood.
    pub asked: serde_json::Value,
    /// The sets that spoke.
    pub rule_sets: Vec<RuleSet<'a>>,
    /// Label and local law.
    pub notice: &'static str,
}

//! An answer given again, as it is sent.

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use utoipa::ToSchema;

use super::decided::ReplayDiffers;
use crate::v1::advice::answer::{AdviceAnswer, AdviceRuleSet, AdviceWithdrawn};

/// From what an answer was given again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ReplayFrom {
    /// Its recall text.
    Recall,
    /// Its request and its digest.
    Request,
    /// Its spoken reference.
    Reference,
}

/// How an answer that is given again stands to the one that was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ReplaySame {
    /// It is the same, byte for byte, or, of an answer that was sent as an object, member for member.
    Same,
    /// The same question to the same sets, by its digest; how the answer was told is not known.
    SameDecision,
    /// It is another.
    Differs,
    /// There is nothing to compare it with: a reference names sets and a question, not an answer.
    NotCompared,
}

/// The decision version of the engine, then and now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReplayVersions {
    /// Then, if it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub then: Option<u32>,
    /// Now. Where it is another, the same question may be decided in another way.
    pub now: u32,
}

/// An answer given again.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReplayAnswer {
    /// From what it was given again.
    pub from: ReplayFrom,
    /// How it stands to the one that was given.
    pub same: ReplaySame,
    /// The sets that spoke, lowest first.
    pub rule_sets: Vec<AdviceRuleSet>,
    /// Those of them that were taken back since.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub withdrawn: Vec<AdviceWithdrawn>,
    /// The decision version of the engine.
    pub decision_version: ReplayVersions,
    /// The rules of which something else is decided now, and why.
    pub differs: Vec<ReplayDiffers>,
    /// The answer that was sent along, where it is another.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, value_type = Option<Object>)]
    pub then: Option<serde_json::Value>,
    /// The answer as it is given now.
    pub answer: AdviceAnswer,
}

/// The same, with the answer as it was written.
#[derive(Debug, Serialize)]
pub(super) struct Written<'a> {
    pub(super) from: ReplayFrom,
    pub(super) same: ReplaySame,
    pub(super) rule_sets: Vec<AdviceRuleSet>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) withdrawn: Vec<AdviceWithdrawn>,
    pub(super) decision_version: ReplayVersions,
    pub(super) differs: Vec<ReplayDiffers>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) then: Option<&'a serde_json::Value>,
    pub(super) answer: &'a RawValue,
}

//! What is held, as it is sent.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::task::{AdviceCaution, AdviceFact, AdviceSource};
use super::words::HeldKind;
use crate::v1::question::date::Date;

/// Something that must wait, or is to be left alone.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceHeld {
    /// The rule.
    pub id: String,
    /// The rule set that gave it its meaning.
    pub rule_set: String,
    /// Its kind of work.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub job: Option<String>,
    /// What it is about, in few words.
    pub title: String,
    /// Why it is held: the first reason.
    pub kind: HeldKind,
    /// The first reason in words.
    pub because: String,
    /// All reasons.
    pub blocks: Vec<AdviceBlock>,
    /// The facts that they rest on; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub facts: Option<Vec<AdviceFact>>,
    /// The first later day, up to 400 ahead, on which it is held no longer, all else equal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub look_again: Option<Date>,
    /// Where no day brings it: the facts that only the caller can change.
    pub changes_with: Vec<String>,
    /// Cautions.
    pub cautions: Vec<AdviceCaution>,
    /// Sources; not in a brief answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub sources: Option<Vec<AdviceSource>>,
}

/// A reason why something is held.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceBlock {
    /// What kind of reason.
    pub kind: HeldKind,
    /// In words.
    pub because: String,
    /// The rule that stands in the way.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub rule: Option<String>,
}

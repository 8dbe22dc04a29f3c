//! What was heard in the caller's own words.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Words that mean a sign.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceUnderstood {
    /// The sign, by its id.
    pub sign: String,
    /// Its name.
    pub name: String,
    /// The words, as they were sent.
    pub text: String,
}

/// Words that could be one of a few signs.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceUnsure {
    /// The words, as they were sent.
    pub text: String,
    /// The signs, the likeliest first; at most 4.
    pub could_be: Vec<AdviceSign>,
}

/// Words that are not understood.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceNotUnderstood {
    /// The words, as they were sent.
    pub text: String,
}

/// A sign.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceSign {
    /// Its id.
    pub sign: String,
    /// Its name.
    pub name: String,
}

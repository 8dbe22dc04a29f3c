//! What an answer is to be given again from.

use serde::Deserialize;
use serde_json::Value;
use utoipa::ToSchema;

use crate::v1::advice::request::AdviceRequest;

/// One of: the recall text of an answer; the answer as a whole; its request with its digest; its spoken reference.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReplayRequest {
    /// What stands behind `recall` in the answer.
    #[schema(max_length = 4096)]
    pub recall: Option<String>,
    /// The answer as it was given. It is given again from its `recall`, else from `request`, else from its `reference`, and
    /// compared with what comes.
    #[schema(value_type = Option<Object>)]
    pub answer: Option<Value>,
    /// The request of the answer; its `date` must be said.
    pub request: Option<AdviceRequest>,
    /// The digest of the answer, beside its request.
    #[schema(pattern = "^[0-9a-f]{64}$")]
    pub digest: Option<String>,
    /// What stands behind `reference` in the answer.
    #[schema(max_length = 1000, example = "hot-dry-valley/rose/2026-09-15/core@2026.11.1")]
    pub reference: Option<String>,
}

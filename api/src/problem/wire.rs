//! A problem's body, as RFC 9457 lays it out.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// The media type of a problem (RFC 9457, section 3).
pub const MEDIA_TYPE: &str = "application/problem+json";

/// What went wrong with a request, after RFC 9457.
#[derive(Clone, Debug, Serialize, Deserialize, ToSchema)]
#[schema(as = Problem, example = json!({
    "type": "/problems/invalid-request",
    "title": "the request has wrong or missing values",
    "status": 422,
    "detail": "expected a number from -90 to 90 deg, found 97",
    "request_id": "5f0c2a91-000007",
    "errors": [{"pointer": "/inputs/latitude", "detail": "expected a number from -90 to 90 deg, found 97"}]
}))]
pub struct ProblemBody {
    /// The kind of problem, for programs: a path on this service that describes it, or `about:blank`. Never changes
    /// its meaning.
    #[serde(rename = "type")]
    #[schema(format = "uri-reference")]
    pub kind: String,
    /// The kind in words, the same for every occurrence.
    pub title: String,
    /// The HTTP status, repeated.
    #[schema(minimum = 400, maximum = 599)]
    pub status: u16,
    /// What is wrong this time.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub detail: String,
    /// The id of this request, as in the header `x-request-id`: what the operator will ask for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub request_id: Option<String>,
    /// Every place of the request that is wrong, as far as it could be told.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub errors: Vec<FieldError>,
}

/// One wrong place of a request.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct FieldError {
    /// JSON pointer (RFC 6901) into the body; the query and the path are pointed at as if they were objects, and a CSV
    /// file by `/line/column`.
    #[schema(example = "/inputs/latitude")]
    pub pointer: String,
    /// What is wrong there.
    pub detail: String,
}

//! What stands behind a finding: a question that shows it, or a certificate that there is none that doesn't.

use serde::{Serialize, Serializer};

/// A question that shows a finding.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Witness {
    /// The body of `POST /v1/advice`, as JSON.
    #[serde(serialize_with = "as_json")]
    pub request: String,
    /// What its answer shows.
    pub shows: String,
}

/// What was judged to show that something never comes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Certificate {
    /// What never comes.
    pub claim: String,
    /// Reference climates.
    pub climates: usize,
    /// Days of the year.
    pub days: usize,
    /// Cells of climates, days and facts that were judged.
    pub cells: u64,
    /// What was let free and what was not.
    pub scope: &'static str,
}

/// How far a certificate reaches.
pub const SCOPE: &str = "all facts known, each cut at the thresholds that the rules read; the caller's facts, forecasts \
and daily records free, in any combination; dates and climates by the normals of the reference climates";

fn as_json<S: Serializer>(request: &str, serializer: S) -> Result<S::Ok, S::Error> {
    let value: serde_json::Value = serde_json::from_str(request).unwrap_or_default();
    value.serialize(serializer)
}

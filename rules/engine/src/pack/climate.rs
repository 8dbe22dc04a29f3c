//! Climates that stand beside the rules, for scenarios and demonstration.

use serde::{Deserialize, Serialize};

use super::At;
use crate::question::said::ProfileSaid;
use crate::text::Text;

/// An invented climate.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClimateEntry {
    /// Kebab-case.
    pub id: At<String>,
    /// Its name.
    pub name: Text,
    /// How to tell that it is yours.
    pub tell: Text,
    /// IANA time zone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
    /// The profile.
    pub profile: ProfileSaid,
}

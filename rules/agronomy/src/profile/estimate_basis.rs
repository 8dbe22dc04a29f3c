//! What an estimated profile stands on.

use serde::Serialize;

/// What an estimate from coordinates stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct EstimateBasis {
    /// Whether the elevation was said; else that of the map stands in the profile.
    pub elevation_said: bool,
    /// Whether frost dates, the share of years with frost and the coldest night can be told. Where not, they are
    /// unknown unless someone gives them.
    pub cold_told: bool,
}

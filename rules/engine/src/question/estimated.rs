//! How a climate was estimated from coordinates.

use lammas_agronomy::climatology::{Doubt, Estimate, Grade, LikelyErrors};

/// How a climate was estimated from coordinates.
#[derive(Clone, Debug)]
pub struct Estimated {
    /// How far it may be trusted.
    pub grade: Grade,
    /// Why it is not better.
    pub doubts: Vec<Doubt>,
    /// By how much it is likely to be off.
    pub errors: LikelyErrors,
    /// By how much it would be, were the elevation said; none where it was.
    pub errors_with_elevation: Option<LikelyErrors>,
    /// Hash of the grid that it was taken from.
    pub grid_sha256: String,
}

impl Estimated {
    /// What of an estimate stands beside its profile.
    #[must_use]
    pub fn of(estimate: &Estimate, grid_sha256: &str) -> Self {
        Self {
            grade: estimate.grade,
            doubts: estimate.doubts.clone(),
            errors: estimate.errors,
            errors_with_elevation: estimate.errors_with_elevation,
            grid_sha256: grid_sha256.to_owned(),
        }
    }
}

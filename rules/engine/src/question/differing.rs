//! In what a climate differs from another, and which of its markers moved by that.

use lammas_agronomy::marker::{Marker, MarkerState};
use lammas_agronomy::profile::Differences;

use super::climate::Climate;

/// In what a climate differs from another.
#[derive(Clone, Debug)]
pub struct Differing {
    /// The differences that were taken.
    pub differences: Differences,
    /// Hash of the content of the climate from which it differs.
    pub from_sha256: String,
    /// The markers that are not what they are there.
    pub moved: Vec<Moved>,
}

/// A marker that moved, came or went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moved {
    /// The marker.
    pub marker: Marker,
    /// In the climate from which this one differs.
    pub from: MarkerState,
    /// Here.
    pub to: MarkerState,
}

impl Differing {
    /// How one climate differs from another by these differences.
    #[must_use]
    pub fn between(from: &Climate, to: &Climate, differences: Differences) -> Self {
        let moved = Marker::FIXED
            .into_iter()
            .map(|marker| Moved { marker, from: from.season.marker(marker), to: to.season.marker(marker) })
            .filter(|moved| moved.from != moved.to)
            .collect();
        Self { differences, from_sha256: from.sha256.clone(), moved }
    }
}

//! What a node says about the releases that it serves.

use std::sync::{Arc, PoisonError, RwLock};

use serde::Serialize;
use utoipa::ToSchema;

/// What is served from the store, and what was refused.
#[derive(Clone, Debug, Default, Serialize, ToSchema)]
pub struct ServedReleases {
    /// `store`, or `copy`: the last signed copy on this machine, because the store was away at the start.
    #[schema(example = "store")]
    pub from: &'static str,
    /// Whether the store could be reached when it was looked at last. Advice goes on without it.
    pub store_reached: bool,
    /// The newest release of the store that this node has looked at.
    #[schema(example = 12)]
    pub newest: i64,
    /// What is served, set by set.
    pub sets: Vec<ServedSet>,
    /// What the node would not serve; it keeps what it had.
    pub refused: Vec<RefusedRelease>,
}

/// A set that is served.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ServedSet {
    /// Its name.
    #[schema(example = "core")]
    pub name: String,
    /// Its version.
    #[schema(example = "2026.11.1")]
    pub version: String,
    /// SHA-256 over its content.
    #[schema(example = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08")]
    pub sha256: String,
    /// The number of the release in the store.
    #[schema(example = 12)]
    pub release: i64,
}

/// A release that a node would not serve.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct RefusedRelease {
    /// Its number.
    #[schema(example = 13)]
    pub release: i64,
    /// Its set.
    #[schema(example = "core")]
    pub name: String,
    /// Why.
    #[schema(example = "the signature does not fit")]
    pub because: String,
}

/// The state of this node, shared with its calls.
#[derive(Clone, Debug, Default)]
pub struct NodeState(Arc<RwLock<Option<ServedReleases>>>);

impl NodeState {
    /// What there is to say; nothing without a store.
    #[must_use]
    pub fn told(&self) -> Option<ServedReleases> {
        self.0.read().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// Says something else.
    pub fn tell(&self, releases: ServedReleases) {
        *self.0.write().unwrap_or_else(PoisonError::into_inner) = Some(releases);
    }

    /// Changes what is said.
    pub(super) fn change(&self, change: impl FnOnce(&mut ServedReleases)) {
        if let Some(releases) = self.0.write().unwrap_or_else(PoisonError::into_inner).as_mut() {
            change(releases);
        }
    }
}

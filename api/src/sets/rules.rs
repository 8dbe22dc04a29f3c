//! What a running process answers from: the compiled set, and the seasons that were worked out lately.

use std::sync::Arc;

use lammas_engine::compile::set::Set;

use super::{embedded, folder};
use crate::seasons::Seasons;
use crate::settings::rules::RuleSettings;

/// The set that is served, with its seasons. A request takes one [`Arc`] of the set and answers from it alone.
#[derive(Debug)]
pub struct Rules {
    set: Arc<Set>,
    seasons: Seasons,
}

impl Rules {
    /// Loads the set that the settings name.
    ///
    /// # Errors
    /// When a file can't be read or the set has faults.
    pub fn load(settings: &RuleSettings) -> anyhow::Result<Self> {
        let set = match &settings.packs {
            Some(path) => folder::set(path)?,
            None => embedded::set()?,
        };
        Ok(Self { set, seasons: Seasons::new(settings.season_bytes()) })
    }

    /// The set.
    #[must_use]
    pub fn set(&self) -> Arc<Set> {
        Arc::clone(&self.set)
    }

    /// The seasons.
    #[must_use]
    pub fn seasons(&self) -> &Seasons {
        &self.seasons
    }
}

//! What a running process answers from: the compiled set, the weather that is kept, and the seasons and answers that were
//! worked out lately.

use std::sync::{Arc, PoisonError, RwLock};

use lammas_engine::compile::set::Set;

use super::{embedded, folder};
use crate::lately::Lately;
use crate::publishing::gate::Judged;
use crate::seasons::Seasons;
use crate::settings::rules::RuleSettings;
use crate::v1::advice::given::Given;
use crate::weather::board::Board;

/// The set that is served, with its seasons. A request takes one [`Arc`] of the set and answers from it alone.
#[derive(Debug)]
pub struct Rules {
    set: RwLock<Arc<Set>>,
    weather: RwLock<Arc<Board>>,
    seasons: Seasons,
    answers: Lately<Given>,
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
        Ok(Self::of(set, settings))
    }

    /// A set that is loaded already.
    #[must_use]
    pub fn of(set: Arc<Set>, settings: &RuleSettings) -> Self {
        let answers = Lately::new(settings.answer_bytes());
        let seasons = Seasons::new(settings.season_bytes());
        Self { set: RwLock::new(set), weather: RwLock::default(), seasons, answers }
    }

    /// The set.
    #[must_use]
    pub fn set(&self) -> Arc<Set> {
        Arc::clone(&self.set.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// A release takes the place of the set of its name: at once, for every question that comes after.
    pub fn take(&self, judged: &Judged) {
        let mut set = self.set.write().unwrap_or_else(PoisonError::into_inner);
        if set.pack.header.name.value == judged.name() {
            *set = Arc::clone(&judged.set);
        }
    }

    /// The weather that is kept. A question takes one board and asks it once.
    #[must_use]
    pub fn weather(&self) -> Arc<Board> {
        Arc::clone(&self.weather.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Another board takes the place of what was kept.
    pub fn take_weather(&self, board: Board) {
        *self.weather.write().unwrap_or_else(PoisonError::into_inner) = Arc::new(board);
    }

    /// The answers that were given lately.
    #[must_use]
    pub fn answers(&self) -> &Lately<Given> {
        &self.answers
    }

    /// The seasons.
    #[must_use]
    pub fn seasons(&self) -> &Seasons {
        &self.seasons
    }
}

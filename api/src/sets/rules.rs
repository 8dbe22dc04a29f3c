//! What a running process answers from: the library of releases, the sets compiled from it, the weather that is kept, and the
//! seasons and answers that were worked out lately.

use std::sync::{Arc, PoisonError, RwLock};

use lammas_engine::compile::set::Set;
use lammas_engine::pack::layer::Layer;

use super::stacks::{CantBeLaid, Stacks};
use super::{embedded, folder};
use crate::lately::Lately;
use crate::library::{Library, Release};
use crate::seasons::Seasons;
use crate::settings::rules::RuleSettings;
use crate::v1::advice::given::Given;
use crate::weather::board::Board;

/// What is served at one moment: the releases, and the set that answers who names none. A question takes one of these and asks
/// nothing else, so that it never sees half of a change.
#[derive(Debug)]
pub struct Served {
    /// Every release.
    pub library: Library,
    /// The sets of whoever names none, lowest first.
    pub standard: Vec<String>,
    /// These, laid over each other.
    pub set: Arc<Set>,
}

/// What a process answers from.
#[derive(Debug)]
pub struct Rules {
    served: RwLock<Arc<Served>>,
    weather: RwLock<Arc<Board>>,
    stacks: Arc<Stacks>,
    seasons: Arc<Seasons>,
    answers: Lately<Given>,
}

impl Rules {
    /// Loads the sets that the settings name.
    ///
    /// # Errors
    /// When a file can't be read or a set has faults.
    pub fn load(settings: &RuleSettings) -> anyhow::Result<Self> {
        let layers = folder::layers(&settings.packs)?;
        let set = if settings.packs.is_empty() { embedded::set()? } else { folder::set(&layers)? };
        let releases = layers.into_iter().map(|layer| layer.release().map(Arc::new)).collect::<Result<Vec<_>, _>>()?;
        let standard = releases.iter().map(|release| release.set.clone()).collect();
        Ok(Self::serving(Served { library: Library::of(releases), standard, set }, settings))
    }

    /// A set that is loaded already, by itself.
    #[must_use]
    pub fn of(set: Arc<Set>, settings: &RuleSettings) -> Self {
        let release = |layer: &Layer| {
            Arc::new(Release {
                set: layer.name.clone(),
                version: layer.version.clone(),
                sha256: layer.sha256.clone(),
                meaning: String::new(),
                published_at: set.pack.header.published,
                withdrawn: None,
                over: Vec::new(),
                files: Arc::from([]),
            })
        };
        let library = Library::of(set.layers.iter().map(release));
        let standard = set.layers.iter().map(|layer| layer.name.clone()).collect();
        Self::serving(Served { library, standard, set }, settings)
    }

    /// What is served from now on, until another takes its place.
    #[must_use]
    pub fn serving(served: Served, settings: &RuleSettings) -> Self {
        Self {
            served: RwLock::new(Arc::new(served)),
            weather: RwLock::default(),
            stacks: Arc::new(Stacks::new(settings.stacks)),
            seasons: Arc::new(Seasons::new(settings.season_bytes())),
            answers: Lately::new(settings.answer_bytes()),
        }
    }

    /// The same sets with other weather, for an answer that is given again. It keeps no answers.
    #[must_use]
    pub fn with_weather(&self, board: Board) -> Self {
        Self {
            served: RwLock::new(self.served()),
            weather: RwLock::new(Arc::new(board)),
            stacks: Arc::clone(&self.stacks),
            seasons: Arc::clone(&self.seasons),
            answers: Lately::new(0),
        }
    }

    /// What is served at this moment.
    #[must_use]
    pub fn served(&self) -> Arc<Served> {
        Arc::clone(&self.served.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Another library takes the place of what was served, at once, if the sets of whoever names none can be laid over each
    /// other from it; else all stays as it was.
    ///
    /// # Errors
    /// Why they can't.
    pub fn take_library(&self, library: Library, standard: Vec<String>) -> Result<(), CantBeLaid> {
        let set = self.stacks.newest(&library, &standard, &self.served())?;
        *self.served.write().unwrap_or_else(PoisonError::into_inner) = Arc::new(Served { library, standard, set });
        Ok(())
    }

    /// The set of whoever names none.
    #[must_use]
    pub fn set(&self) -> Arc<Set> {
        Arc::clone(&self.served().set)
    }

    /// The sets that were compiled on demand.
    #[must_use]
    pub fn stacks(&self) -> &Stacks {
        &self.stacks
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

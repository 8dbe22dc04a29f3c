//! Sets laid over each other on demand: compiled when first asked for and kept, at most so many.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

use lammas_engine::compile::set::Set;
use lammas_engine::fault::Weight;
use lammas_engine::layer::compile_layers;
use lammas_engine::pack::layer::Layer;
use lammas_engine::read::PackFile;

use super::rules::Served;
use crate::library::{Library, Release};

/// How many earlier releases of the lowest set are tried where the sets above don't fit the newest.
const MOST_EARLIER: usize = 8;

/// Releases that can't be laid over each other, and why.
#[derive(Clone, Debug, thiserror::Error)]
#[error("`{sets}` can't be laid over each other: {why}")]
pub struct CantBeLaid {
    /// The releases: `core@2026.11.1, house@2026.9.1`.
    pub sets: String,
    /// The first fault, in one line.
    pub why: Arc<str>,
}

type Outcome = Result<Arc<Set>, CantBeLaid>;

/// Compiled sets by the hashes of their releases, the one asked for last in front.
#[derive(Debug)]
pub struct Stacks {
    most: usize,
    kept: Mutex<VecDeque<(String, Outcome)>>,
}

impl Stacks {
    /// None yet; at most so many.
    #[must_use]
    pub fn new(most: usize) -> Self {
        Self { most, kept: Mutex::default() }
    }

    /// How many are kept.
    #[must_use]
    pub fn len(&self) -> usize {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner).len()
    }

    /// None is kept.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// These releases, lowest first, laid over each other.
    ///
    /// # Errors
    /// Why they can't be.
    pub fn of(&self, releases: &[Arc<Release>], served: &Served) -> Outcome {
        let is = |(release, layer): (&Arc<Release>, &Layer)| release.sha256 == layer.sha256;
        if releases.len() == served.set.layers.len() && releases.iter().zip(&served.set.layers).all(is) {
            return Ok(Arc::clone(&served.set));
        }
        let key: String = releases.iter().map(|release| release.sha256.as_str()).collect();
        if let Some(found) = self.find(&key) {
            return found;
        }
        // Made outside the lock: two may make the same one, and one of them is then dropped.
        let made = laid(releases);
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.retain(|(known, _)| *known != key);
        kept.push_front((key, made.clone()));
        kept.truncate(self.most);
        made
    }

    fn find(&self, key: &str) -> Option<Outcome> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let at = kept.iter().position(|(known, _)| known == key)?;
        let found = kept.remove(at)?;
        let outcome = found.1.clone();
        kept.push_front(found);
        Some(outcome)
    }

    /// The newest releases of these sets, lowest first.
    ///
    /// # Errors
    /// A set that is not there, or why they can't be laid over each other.
    pub fn newest(&self, library: &Library, sets: &[String], served: &Served) -> Outcome {
        let mut releases = Vec::new();
        for set in sets {
            let newest = library.newest(set).cloned();
            releases.push(newest.ok_or_else(|| CantBeLaid { sets: set.clone(), why: Arc::from("it is not there") })?);
        }
        self.fitting(releases, library, served)
    }

    /// These releases; where the sets above don't fit the lowest one, the latest earlier release of it that they fit. They stay
    /// with it until somebody has looked at them again.
    ///
    /// # Errors
    /// Why the releases that were asked for can't be laid over each other.
    pub fn fitting(&self, mut releases: Vec<Arc<Release>>, library: &Library, served: &Served) -> Outcome {
        let wanted = self.of(&releases, served);
        let Some(lowest) = releases.first().cloned().filter(|_| wanted.is_err() && releases.len() > 1) else {
            return wanted;
        };
        let earlier =
            library.releases(&lowest.set).iter().rev().skip_while(|release| !Arc::ptr_eq(release, &lowest)).skip(1);
        for older in earlier.filter(|release| release.withdrawn.is_none()).take(MOST_EARLIER) {
            if let Some(first) = releases.first_mut() {
                *first = Arc::clone(older);
            }
            if let Ok(set) = self.of(&releases, served) {
                return Ok(set);
            }
        }
        wanted
    }
}

/// Compiles releases, lowest first.
fn laid(releases: &[Arc<Release>]) -> Outcome {
    let layers: Vec<Vec<PackFile>> = releases.iter().map(|release| release.files.to_vec()).collect();
    let (set, faults) = compile_layers(&layers);
    let cant = |why: String| CantBeLaid {
        sets: releases.iter().map(|release| release.pin()).collect::<Vec<_>>().join(", "),
        why: Arc::from(why),
    };
    let error = faults.iter().find(|fault| fault.weight == Weight::Error);
    match (set, error) {
        (Some(set), None) => Ok(Arc::new(set)),
        (_, Some(fault)) => Err(cant(format!("{}: {}", fault.place, fault.message))),
        (None, None) => Err(cant("nothing could be read".to_owned())),
    }
}

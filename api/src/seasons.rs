//! Seasons that were worked out lately, by the content that they were worked out from.
//!
//! A season is a pure function of a climate's profile and of what the site changes, so it is kept by their hash and
//! never grows old. The bytes are bounded; the one that was not asked for the longest goes first.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

use lammas_engine::question::Climate;

/// Rows of days that a season holds once everything in it has been asked for: temperatures, radiation, water, frost.
const ROWS: usize = 24;

/// The same seasons are asked for again and again: this many bytes of them are kept.
#[derive(Debug)]
pub struct Seasons {
    most_bytes: usize,
    kept: Mutex<Kept>,
}

#[derive(Debug, Default)]
struct Kept {
    by_key: BTreeMap<String, Entry>,
    bytes: usize,
    clock: u64,
}

#[derive(Debug)]
struct Entry {
    climate: Arc<Climate>,
    bytes: usize,
    asked: u64,
}

impl Seasons {
    /// None yet; at most so many bytes.
    #[must_use]
    pub fn new(most_bytes: usize) -> Self {
        Self { most_bytes, kept: Mutex::default() }
    }

    /// The climate of this key, made when it is not there.
    ///
    /// # Errors
    /// What making it gives.
    pub fn get<E>(&self, key: String, make: impl FnOnce() -> Result<Climate, E>) -> Result<Arc<Climate>, E> {
        if let Some(found) = self.find(&key) {
            return Ok(found);
        }
        // Made outside the lock: two may make the same one, and one of them is then dropped.
        let climate = Arc::new(make()?);
        self.keep(key, &climate);
        Ok(climate)
    }

    /// How many are kept, and their bytes.
    #[must_use]
    pub fn size(&self) -> (usize, usize) {
        let kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        (kept.by_key.len(), kept.bytes)
    }

    fn find(&self, key: &str) -> Option<Arc<Climate>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.clock += 1;
        let now = kept.clock;
        let entry = kept.by_key.get_mut(key)?;
        entry.asked = now;
        Some(Arc::clone(&entry.climate))
    }

    fn keep(&self, key: String, climate: &Arc<Climate>) {
        let bytes = key.len() + bytes_of(climate);
        if bytes > self.most_bytes {
            return;
        }
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.clock += 1;
        let entry = Entry { climate: Arc::clone(climate), bytes, asked: kept.clock };
        kept.bytes += bytes;
        if let Some(old) = kept.by_key.insert(key, entry) {
            kept.bytes -= old.bytes;
        }
        while kept.bytes > self.most_bytes {
            let Some(oldest) = kept.by_key.iter().min_by_key(|(_, entry)| entry.asked).map(|(key, _)| key.clone())
            else {
                break;
            };
            if let Some(gone) = kept.by_key.remove(&oldest) {
                kept.bytes -= gone.bytes;
            }
        }
    }
}

/// What a climate takes at most once everything in it has been asked for.
fn bytes_of(climate: &Climate) -> usize {
    let days = climate.profile.observations.len()
        + climate.profile.forecast.as_ref().map_or(0, |forecast| forecast.days.len());
    // Each day stands in the profile and, by its parts, in the season.
    size_of::<Climate>() + ROWS * 366 * size_of::<f64>() + days * 256
}

#[cfg(test)]
mod tests {
    use std::convert::Infallible;

    use lammas_agronomy::profile::Profile;
    use lammas_agronomy::season::SiteShift;

    use super::*;

    fn climate(latitude_deg: f64) -> Climate {
        let profile = Profile::of_temperatures(latitude_deg, [5.0; 12], [15.0; 12]);
        Climate::new(None, profile, SiteShift::default())
    }

    fn asked(seasons: &Seasons, key: &str) -> bool {
        let mut made = false;
        let _ = seasons.get(key.to_owned(), || {
            made = true;
            Ok::<_, Infallible>(climate(40.0))
        });
        made
    }

    #[test]
    fn a_season_is_worked_out_once_and_the_one_not_asked_for_the_longest_goes_first() {
        let one = bytes_of(&climate(40.0)) + 1;
        let seasons = Seasons::new(2 * one);
        assert!(asked(&seasons, "a") && asked(&seasons, "b"));
        assert!(!asked(&seasons, "a") && !asked(&seasons, "b") && !asked(&seasons, "a"));
        assert!(asked(&seasons, "c"), "a third one is new");
        assert_eq!(seasons.size(), (2, 2 * one));
        assert!(!asked(&seasons, "a"), "it was asked for lately");
        assert!(asked(&seasons, "b"), "it had to go");
    }

    #[test]
    fn what_is_larger_than_all_room_is_worked_out_and_not_kept() {
        let seasons = Seasons::new(10);
        assert!(asked(&seasons, "a") && asked(&seasons, "a"));
        assert_eq!(seasons.size(), (0, 0));
    }
}

//! Seasons that were worked out lately: a season is a pure function of a climate's profile and of what the site changes.

use std::sync::Arc;

use lammas_engine::decide::almanac::Almanacs;
use lammas_engine::question::Climate;

use crate::lately::Lately;

/// Rows of days that a season holds once everything in it has been asked for: temperatures, radiation, water, frost.
const ROWS: usize = 24;
/// What an almanac of a plant's year holds at most, about: windows, tests and turns of some hundred rules.
const ALMANAC_BYTES: usize = 96 * 1024;

/// Seasons by the content that they were worked out from.
#[derive(Debug)]
pub struct Seasons(Lately<Climate>);

impl Seasons {
    /// None yet; at most so many bytes.
    #[must_use]
    pub fn new(most_bytes: usize) -> Self {
        Self(Lately::new(most_bytes))
    }

    /// The climate of this key, made when it is not there.
    ///
    /// # Errors
    /// What making it gives.
    pub fn get<E>(&self, key: String, make: impl FnOnce() -> Result<Climate, E>) -> Result<Arc<Climate>, E> {
        if let Some(found) = self.0.find(&key) {
            return Ok(found);
        }
        // Made outside the lock: two may make the same one, and one of them is then dropped.
        let climate = Arc::new(make()?);
        self.0.keep(key, &climate, bytes_of(&climate));
        Ok(climate)
    }
}

/// What a climate takes at most once everything in it has been asked for.
fn bytes_of(climate: &Climate) -> usize {
    let days = climate.profile.observations.len()
        + climate.profile.forecast.as_ref().map_or(0, |forecast| forecast.days.len());
    // Each day stands in the profile and, by its parts, in the season.
    size_of::<Climate>() + ROWS * 366 * size_of::<f64>() + days * 256 + Almanacs::MOST * ALMANAC_BYTES
}

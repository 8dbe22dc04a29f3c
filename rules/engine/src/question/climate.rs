//! The climate of a question: a profile, its season, and the hash by which both are known.

use std::sync::Mutex;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::marker::{Marker, MarkerState};
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::{Season, SiteShift};

use super::differing::Differing;
use super::estimated::Estimated;
use super::registered_weather::RegisteredWeather;
use crate::decide::almanac::Almanacs;
use crate::version::hash;

/// A heat sum from a day: °Cd and °C by their bits, the day.
type HeatKey = (u64, u64, Day);

/// How many heat sums are remembered.
const MOST_REMEMBERED: usize = 256;

/// A climate with its season.
#[derive(Debug)]
pub struct Climate {
    /// The registered name, if it has one.
    pub id: Option<String>,
    /// Hash of the profile's content.
    pub sha256: String,
    /// Given, measured or estimated.
    pub origin: Origin,
    /// How it was estimated, if it was.
    pub estimated: Option<Estimated>,
    /// The weather that was kept for it, used or not.
    pub weather: Option<RegisteredWeather>,
    /// How it differs from another, if it was said so.
    pub differing: Option<Differing>,
    /// The profile.
    pub profile: Profile,
    /// Its season, with what the site changes.
    pub season: Season,
    /// What its years make of the plants that were asked about.
    pub almanacs: Almanacs,
    reached: Mutex<Vec<(HeatKey, Option<Day>)>>,
    crossed: Mutex<Vec<(Marker, MarkerState)>>,
}

impl Climate {
    /// The climate of a profile that has passed its check.
    #[must_use]
    pub fn new(id: Option<String>, profile: Profile, shift: SiteShift) -> Self {
        let sha256 = hash::of_value(&serde_json::to_value(&profile).unwrap_or_default());
        Self::with_hash(id, sha256, profile, shift)
    }

    /// The same where the hash is already known.
    #[must_use]
    pub fn with_hash(id: Option<String>, sha256: String, profile: Profile, shift: SiteShift) -> Self {
        let season = Season::new(&profile, shift);
        Self {
            id,
            sha256,
            origin: profile.origin,
            estimated: None,
            weather: None,
            differing: None,
            season,
            profile,
            almanacs: Almanacs::default(),
            reached: Mutex::new(Vec::new()),
            crossed: Mutex::new(Vec::new()),
        }
    }

    /// The same, with how it was estimated.
    #[must_use]
    pub fn with_estimate(self, estimated: Estimated) -> Self {
        Self { estimated: Some(estimated), ..self }
    }

    /// The same, with what became of the weather that was kept for it.
    #[must_use]
    pub fn with_weather(self, weather: RegisteredWeather) -> Self {
        Self { weather: Some(weather), ..self }
    }

    /// The same, with how it differs from another.
    #[must_use]
    pub fn with_differing(self, differing: Differing) -> Self {
        Self { differing: Some(differing), ..self }
    }

    /// The state of a marker; crossings of thresholds are remembered, the fixed markers are known from the beginning.
    #[must_use]
    pub fn marker(&self, marker: Marker) -> MarkerState {
        if marker.index().is_some() {
            return self.season.marker(marker);
        }
        let Ok(mut remembered) = self.crossed.lock() else { return self.season.marker(marker) };
        if let Some((_, state)) = remembered.iter().find(|(known, _)| *known == marker) {
            return *state;
        }
        let state = self.season.marker(marker);
        if remembered.len() >= MOST_REMEMBERED {
            remembered.clear();
        }
        remembered.push((marker, state));
        state
    }

    /// The first day of a heat sum after a day; remembered, since rules ask for the same ones again and again.
    #[must_use]
    pub fn heat_reached(&self, sum_cd: f64, base_c: f64, from: Day) -> Option<Day> {
        let key = (sum_cd.to_bits(), base_c.to_bits(), from);
        let Ok(mut remembered) = self.reached.lock() else {
            return self.season.heat_reached(sum_cd, base_c, from);
        };
        if let Some((_, day)) = remembered.iter().find(|(k, _)| *k == key) {
            return *day;
        }
        let day = self.season.heat_reached(sum_cd, base_c, from);
        if remembered.len() >= MOST_REMEMBERED {
            remembered.clear();
        }
        remembered.push((key, day));
        day
    }
}

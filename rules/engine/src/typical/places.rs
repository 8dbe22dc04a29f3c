//! The places of the grid: the climates that stand beside the rules, and reference places where these are few.

use std::sync::Arc;

use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::SiteShift;

use crate::check::reference;
use crate::compile::set::Set;
use crate::question::Climate;
use crate::question::said::{ClimateSaid, NormalsSaid};
use crate::question::understand::profile;
use crate::text::Text;

/// No grid has fewer places.
pub const FEWEST: usize = 12;

/// Reference places in the order in which they are taken where a set brings too few of its own: dry and wet, warm and
/// cold, both hemispheres, with and without frost.
const SPREAD: [&str; FEWEST] = [
    "Cordoba ES",
    "Ames IA",
    "Rothamsted UK",
    "Gainesville FL",
    "Cordoba AR",
    "Los Banos PH",
    "Chinchina CO",
    "Jornada NM",
    "Delhi IN",
    "Kadoma ZW",
    "Prince George BC",
    "Seattle WA",
];

/// A place of the grid.
#[derive(Clone, Debug)]
pub struct Spot {
    /// The registered climate's id, or the reference place's name.
    pub id: String,
    /// Its name for people.
    pub name: Text,
    /// The climate as a request says it: by its id where every set knows it by the same content.
    pub said: ClimateSaid,
    profile: Profile,
}

impl Spot {
    /// A season of its own: nobody has asked of it yet.
    #[must_use]
    pub fn climate(&self, hollow: bool) -> Arc<Climate> {
        Arc::new(Climate::new(Some(self.id.clone()), self.profile.clone(), SiteShift { frost_hollow: hollow }))
    }
}

/// The places for these sets: the climates registered with them, those of the last set first in doubt, then reference
/// places until there are twelve; with `all` every reference place.
#[must_use]
pub fn of(sets: &[&Set], all: bool) -> Vec<Spot> {
    let mut spots: Vec<Spot> = Vec::new();
    for set in sets.iter().rev() {
        for filed in &set.pack.climates {
            let entry = &filed.entry;
            if spots.iter().any(|spot| spot.id == entry.id.value) {
                continue;
            }
            let Ok(profile) = profile(&entry.profile, "/climate") else { continue };
            let is_the_same = |other: &&Set| content(other, &entry.id.value).as_ref() == Some(&profile);
            let said = if sets.iter().all(is_the_same) {
                ClimateSaid { id: Some(entry.id.value.clone()), ..ClimateSaid::default() }
            } else {
                entry.profile.clone()
            };
            spots.push(Spot { id: entry.id.value.clone(), name: entry.name.clone(), said, profile });
        }
    }
    let rest = reference::places().iter().filter(|place| !SPREAD.contains(&place.name.as_str()));
    let first = SPREAD.iter().filter_map(|name| reference::places().iter().find(|place| place.name == *name));
    let most = if all { usize::MAX } else { FEWEST };
    for place in first.chain(rest) {
        if spots.len() >= most {
            break;
        }
        let profile = place.climate.profile.clone();
        let name = Text(std::iter::once(("en".to_owned(), place.name.clone())).collect());
        spots.push(Spot { id: place.name.clone(), name, said: said(&profile), profile });
    }
    spots
}

/// The profile of a climate registered with a set.
fn content(set: &Set, id: &str) -> Option<Profile> {
    let filed = set.pack.climates.iter().find(|filed| filed.entry.id.value == id)?;
    profile(&filed.entry.profile, "/climate").ok()
}

/// Climates that two sets do not both know by the same content: id, and what became of it.
#[must_use]
pub fn moved(before: &Set, after: &Set) -> Vec<(String, &'static str)> {
    let ids = |set: &Set| -> Vec<String> { set.pack.climates.iter().map(|c| c.entry.id.value.clone()).collect() };
    let mut all = ids(before);
    all.extend(ids(after));
    all.sort();
    all.dedup();
    let what = |id: &String| match (content(before, id), content(after, id)) {
        (Some(a), Some(b)) => (a != b).then_some("changed"),
        (None, _) => Some("added"),
        (_, None) => Some("gone"),
    };
    all.into_iter().filter_map(|id| what(&id).map(|what| (id, what))).collect()
}

/// A profile as a request says it: what the reference table holds.
fn said(profile: &Profile) -> ClimateSaid {
    ClimateSaid {
        latitude: Some(profile.latitude_deg),
        longitude: profile.longitude_deg,
        elevation_m: profile.elevation_m,
        normals: Some(NormalsSaid {
            tmin_c: profile.normals.tmin_c.to_vec(),
            tmax_c: profile.normals.tmax_c.to_vec(),
            rain_mm: profile.normals.rain_mm.map(|rain| rain.to_vec()),
            ..NormalsSaid::default()
        }),
        tmin_sd_k: profile.tmin_sd_k.map(|spread| spread.to_vec()),
        ..ClimateSaid::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reference_place_is_said_so_that_the_same_profile_comes_out() {
        let spots = of(&[], true);
        assert_eq!(spots.len(), 57);
        for spot in &spots {
            assert_eq!(profile(&spot.said, "/climate").as_ref(), Ok(&spot.profile), "{}", spot.id);
        }
        let first: Vec<String> = of(&[], false).into_iter().map(|spot| spot.id).collect();
        assert_eq!(first, SPREAD);
    }
}

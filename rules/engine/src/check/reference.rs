//! The reference climates: 57 places over the world, against which every window of a set is opened and closed.

use std::sync::{Arc, OnceLock};

use lammas_agronomy::calendar::Day;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::SiteShift;

use crate::compile::book::PlantBook;
use crate::compile::set::Set;
use crate::fact::value::{Reading, Truth};
use crate::question::{Climate, Question, SignState, nothing_given};

/// Provenance in `data/README.md`.
static TABLE: &str = include_str!("../../data/reference_climates.csv");

/// The day on which windows are looked at; the years around it are all alike.
const DAY: (i32, u16) = (2025, 181);

/// One place.
#[derive(Debug)]
pub struct Place {
    /// Its name.
    pub name: String,
    /// Its climate.
    pub climate: Arc<Climate>,
}

/// Every place, in the order of the table.
pub fn places() -> &'static [Place] {
    static PLACES: OnceLock<Vec<Place>> = OnceLock::new();
    PLACES.get_or_init(|| read(TABLE))
}

/// One row of twelve a place: `place,lat,lon,elev_m,month,tmin_c,tmax_c,rain_mm,sd_tmin_c,…`. Rain may be empty.
fn read(table: &str) -> Vec<Place> {
    let mut profiles: Vec<(String, Profile)> = Vec::new();
    for line in table.lines().skip(1) {
        let fields: Vec<&str> = line.split(',').collect();
        let text = |at: usize| fields.get(at).copied().unwrap_or_default();
        let number = |at: usize| text(at).parse::<f64>().ok();
        let (Some(latitude), Some(month)) = (number(1), text(4).parse::<usize>().ok().and_then(|m| m.checked_sub(1)))
        else {
            continue;
        };
        if profiles.last().is_none_or(|(name, _)| name != text(0)) {
            let mut profile = Profile::of_temperatures(latitude, [0.0; 12], [0.0; 12]);
            profile.longitude_deg = number(2);
            profile.elevation_m = number(3);
            profile.normals.rain_mm = Some([0.0; 12]);
            profile.tmin_sd_k = Some([0.0; 12]);
            profiles.push((text(0).to_owned(), profile));
        }
        let Some((_, profile)) = profiles.last_mut() else { continue };
        let put = |row: &mut [f64; 12], value: Option<f64>| {
            if let (Some(cell), Some(value)) = (row.get_mut(month), value) {
                *cell = value;
            }
        };
        put(&mut profile.normals.tmin_c, number(5));
        put(&mut profile.normals.tmax_c, number(6));
        match (&mut profile.normals.rain_mm, number(7)) {
            (Some(rain_mm), rain @ Some(_)) => put(rain_mm, rain),
            // A month without a number: the rain of the place is unknown.
            (rain_mm, _) => *rain_mm = None,
        }
        profile.tmin_sd_k.as_mut().into_iter().for_each(|sd| put(sd, number(8)));
    }
    let climate = |profile| Arc::new(Climate::new(None, profile, SiteShift::default()));
    profiles.into_iter().map(|(name, profile)| Place { name, climate: climate(profile) }).collect()
}

/// A question at a place of which nothing is known but the plant: windows hang on nothing else but history and signs,
/// and are unknown where they do.
pub(crate) fn question(set: &Set, book: &PlantBook, place: &Place) -> Question {
    let unseen = SignState { seen: Truth::Unknown, severity: None, share_pct: None, since: None };
    Question {
        plant_is_unknown: false,
        climate: Arc::clone(&place.climate),
        day: day(),
        day_assumed: false,
        plant: book.plant,
        given: nothing_given(),
        traits: vec![Reading::UNKNOWN; book.traits.len()],
        planted: None,
        stage_since: None,
        signs: vec![unseen; set.names.signs.len()],
        heard: None,
        wishes: Vec::new(),
        region: None,
        region_flags: Vec::new(),
        problems: Vec::new(),
        history: None,
        asked: Arc::default(),
    }
}

/// The day on which windows are looked at.
pub(crate) fn day() -> Day {
    use lammas_agronomy::calendar::ClimateDay;
    ClimateDay::around(i32::from(DAY.1)).in_year(DAY.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_are_57_places_and_each_is_a_sound_profile() {
        assert_eq!(places().len(), 57);
        for place in places() {
            assert_eq!(place.climate.profile.check(), Ok(()), "{}", place.name);
        }
    }

    #[test]
    fn a_place_has_its_own_numbers_and_no_others() {
        // The table's first place, and one of those without rain.
        let first = &places()[0].climate.profile;
        assert_eq!(
            (places()[0].name.as_str(), first.latitude_deg, first.elevation_m),
            ("Clanton AL", 32.84, Some(180.0))
        );
        assert_eq!(
            (first.normals.tmin_c[0], first.normals.tmax_c[11], first.normals.rain_mm.unwrap()[2]),
            (-1.1, 14.7, 185.0)
        );
        let dry: Vec<&str> =
            places().iter().filter(|p| p.climate.profile.normals.rain_mm.is_none()).map(|p| p.name.as_str()).collect();
        let written: Vec<&str> =
            TABLE.lines().filter(|l| l.split(',').nth(7) == Some("")).filter_map(|l| l.split(',').next()).collect();
        assert!(!dry.is_empty() && dry.iter().all(|name| written.contains(name)), "{dry:?}");
    }
}

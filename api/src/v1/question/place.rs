//! From a climate as it was said to a climate with its season.

use std::convert::Infallible;
use std::sync::Arc;

use chrono::{DateTime, NaiveDate, Utc};
use lammas_agronomy::climatology::{Coordinates, Refusal};
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::Set;
use lammas_engine::pack::ClimateEntry;
use lammas_engine::question::Climate;
use lammas_engine::question::differing::Differing;
use lammas_engine::question::estimated::Estimated;
use lammas_engine::question::pointer::{Trouble, TroubleKind};
use lammas_engine::question::registered_weather::WeatherState;
use lammas_engine::question::said::{ClimateSaid, DifferencesSaid};
use lammas_engine::question::understand::{self, profile, profile_on};
use lammas_engine::scenario::with_weather;
use lammas_engine::version::hash;

use super::today::Clock;
use crate::climate_grid::{ClimateGrid, climate_grid};
use crate::problem::faults::Faults;
use crate::problem::kinds::{Kind, NOT_AVAILABLE_YET, NOT_ON_LAND, UNKNOWN_CLIMATE, UNKNOWN_PLANT};
use crate::sets::rules::Rules;
use crate::weather::age::Asked;
use crate::weather::kept::Weather;

/// A climate, and what tells the time there.
#[derive(Clone, Debug)]
pub(crate) struct Place {
    pub(crate) climate: Arc<Climate>,
    pub(crate) zone: Option<String>,
    pub(crate) longitude_deg: Option<f64>,
}

impl Place {
    /// The clock there.
    pub(crate) fn clock(&self) -> Clock {
        Clock { zone: self.zone.clone(), longitude_deg: self.longitude_deg }
    }
}

/// When a question is asked, and about which day, if it says one: by that it is judged whether kept weather counts.
#[derive(Clone, Copy, Debug)]
pub(crate) struct When {
    pub(crate) date: Option<NaiveDate>,
    pub(crate) now: DateTime<Utc>,
}

/// The climate of a question; what is wrong with it goes to `faults`.
pub(crate) fn find(
    said: &ClimateSaid,
    hollow: bool,
    when: When,
    rules: &Rules,
    set: &Set,
    faults: &mut Faults,
) -> Option<Place> {
    let Some(differences) = said.differences else { return before(said, hollow, when, rules, set, faults) };
    let place = before(&ClimateSaid { differences: None, ..said.clone() }, hollow, when, rules, set, faults)?;
    differing(place, &differences, hollow, rules, faults)
}

/// The same place in a climate that differs from its own as it is said.
fn differing(
    Place { climate: from, zone, longitude_deg }: Place,
    said: &DifferencesSaid,
    hollow: bool,
    rules: &Rules,
    faults: &mut Faults,
) -> Option<Place> {
    let differences = understand::meant(said);
    let grid = from.estimated.as_ref().map_or("", |estimated| estimated.grid_sha256.as_str());
    let weather = from.weather.as_ref().map(|weather| (&weather.sha256, weather.state));
    let id = from.id.as_deref().unwrap_or_default();
    let key = format!("{}/{id}/{weather:?}/{grid}/{hollow}/{differences:?}", from.sha256);
    let make = || {
        let profile = understand::differing(&from.profile, said, "/climate/differences")?;
        let mut climate = made(from.id.as_deref(), profile, None, hollow);
        climate.estimated.clone_from(&from.estimated);
        climate.weather.clone_from(&from.weather);
        let differing = Differing::between(&from, &climate, differences);
        Ok(climate.with_differing(differing))
    };
    let climate = rules.seasons().get(key, make).map_err(|troubles| note(troubles, faults)).ok()?;
    Some(Place { climate, zone, longitude_deg })
}

fn before(
    said: &ClimateSaid,
    hollow: bool,
    when: When,
    rules: &Rules,
    set: &Set,
    faults: &mut Faults,
) -> Option<Place> {
    if let Some(id) = &said.id {
        return registered(id, said, hollow, Some(when), rules, set, faults);
    }
    if said.area.is_some() {
        let detail =
            "areas need the operator's map, which can't be given yet: give monthly normals or a registered climate";
        faults.add_if_new(Some(NOT_AVAILABLE_YET), "/climate/area".to_owned(), detail.to_owned());
        return None;
    }
    said.latitude?;
    if said.normals.is_none() {
        return by_coordinates(said, hollow, rules, faults);
    }
    let profile = whole(said, faults)?;
    let climate = by_content(None, profile, hollow, rules);
    Some(Place { climate, zone: None, longitude_deg: said.longitude })
}

/// A climate estimated from coordinates, which count to 0.01°. A missing longitude has been named already.
fn by_coordinates(said: &ClimateSaid, hollow: bool, rules: &Rules, faults: &mut Faults) -> Option<Place> {
    let hundredth = |degrees: f64| (degrees * 100.0).round() / 100.0;
    let place = Coordinates {
        latitude_deg: hundredth(said.latitude?),
        longitude_deg: hundredth(said.longitude?),
        elevation_m: said.elevation_m,
    };
    let ClimateGrid { grid, sha256 } = match climate_grid() {
        Ok(read) => read,
        Err(error) => {
            tracing::error!(error, "the climate grid can't be used");
            let detail = "this program's climate grid can't be read: give monthly normals or a registered climate";
            faults.add_if_new(Some(NOT_AVAILABLE_YET), "/climate/latitude".to_owned(), detail.to_owned());
            return None;
        }
    };
    let estimate = match grid.estimate(place) {
        Ok(estimate) => estimate,
        Err(refusal) => {
            let (kind, field) = match &refusal {
                Refusal::OutOfRange { field, .. } => (None, field.trim_end_matches("_deg")),
                Refusal::NotOnLand { .. } | Refusal::TooFarSouth { .. } => (Some(NOT_ON_LAND), "latitude"),
            };
            let cure = if kind.is_some() { "; or give monthly normals" } else { "" };
            faults.add_if_new(kind, format!("/climate/{field}"), format!("{refusal}{cure}"));
            return None;
        }
    };
    let estimated = Estimated::of(&estimate, sha256);
    let completed = profile_on(estimate.profile, said, "/climate");
    let profile = completed.map_err(|troubles| note(troubles.into_iter().map(as_sent).collect(), faults)).ok()?;
    let content = hash::of_value(&serde_json::to_value(&profile).unwrap_or_default());
    let key = format!("{content}/{sha256}/{hollow}");
    let make = || Ok::<_, Infallible>(made(None, profile, Some(content), hollow).with_estimate(estimated));
    let Ok(climate) = rules.seasons().get(key, make);
    Some(Place { climate, zone: None, longitude_deg: Some(place.longitude_deg) })
}

/// A climate of the set, to judge the rest of a question by whose own climate can't be had.
pub(crate) fn stand_in(rules: &Rules, set: &Set) -> Option<Arc<Climate>> {
    let Some(entry) = set.pack.climates.first() else {
        let even = Profile::of_temperatures(45.0, [5.0; 12], [15.0; 12]);
        return Some(by_content(None, even, false, rules));
    };
    let mut unheard = Faults::default();
    let place = registered(&entry.entry.id.value, &ClimateSaid::default(), false, None, rules, set, &mut unheard)?;
    Some(place.climate)
}

/// What the engine found, among the other faults. A place that has been judged already is not judged again.
pub(crate) fn note(troubles: Vec<Trouble>, faults: &mut Faults) {
    for trouble in troubles {
        let kind: Option<Kind> = match trouble.kind {
            TroubleKind::BadValue => None,
            TroubleKind::UnknownPlant => Some(UNKNOWN_PLANT),
            TroubleKind::UnknownClimate => Some(UNKNOWN_CLIMATE),
        };
        faults.add_if_new(kind, trouble.pointer, trouble.detail);
    }
}

/// The entry of a registered climate.
pub(crate) fn entry<'a>(id: &str, set: &'a Set) -> Option<&'a ClimateEntry> {
    set.pack.climates.iter().map(|filed| &filed.entry).find(|entry| entry.id.value == id)
}

/// A registered climate: with the weather that the caller brings, else with what is kept for it where `when` is known.
fn registered(
    id: &str,
    said: &ClimateSaid,
    hollow: bool,
    when: Option<When>,
    rules: &Rules,
    set: &Set,
    faults: &mut Faults,
) -> Option<Place> {
    let Some(entry) = entry(id, set) else {
        let known = set.pack.climates.iter().map(|filed| filed.entry.id.value.as_str());
        let trouble = Trouble::unknown("/climate/id", "climate", id, known).of_kind(TroubleKind::UnknownClimate);
        note(vec![trouble], faults);
        return None;
    };
    let climate = if said.observations.is_none() && said.forecast.is_none() {
        let clock = Clock { zone: entry.zone.clone(), longitude_deg: entry.profile.longitude };
        let asked = when.map(|when| Asked::of(when.date, &clock, when.now));
        // One board for the whole question.
        let board = rules.weather();
        let kept = asked.and_then(|asked| board.find(id, asked));
        as_kept(kept.map(|(weather, state)| (&**weather, state)), entry, hollow, rules, set, faults)?
    } else {
        let profile = whole(&with_weather(&entry.profile, said), faults)?;
        by_content(Some(id), profile, hollow, rules)
    };
    Some(Place { climate, zone: entry.zone.clone(), longitude_deg: entry.profile.longitude })
}

/// A registered climate as it stands in the set, or with its kept weather where that is used. Its id, the set's hash and
/// the weather's say what it is.
fn as_kept(
    kept: Option<(&Weather, WeatherState)>,
    entry: &ClimateEntry,
    hollow: bool,
    rules: &Rules,
    set: &Set,
    faults: &mut Faults,
) -> Option<Arc<Climate>> {
    let id = entry.id.value.as_str();
    let mut key = format!("{}/{id}/{hollow}", set.sha256);
    if let Some((weather, state)) = kept {
        key.push_str(&format!("/{}/{state:?}", weather.sha256));
    }
    let make = || {
        let profile = match kept {
            Some((weather, WeatherState::Used)) => weather.profile.clone(),
            _ => whole(&entry.profile, faults).ok_or(())?,
        };
        let plain = made(Some(id), profile, None, hollow);
        Ok::<_, ()>(match kept {
            Some((weather, state)) => plain.with_weather(weather.beside(state)),
            None => plain,
        })
    };
    rules.seasons().get(key, make).ok()
}

fn whole(said: &ClimateSaid, faults: &mut Faults) -> Option<Profile> {
    profile_of(said).map_err(|troubles| note(troubles, faults)).ok()
}

/// The profile of a climate that is said whole, its places named as a request names them, below `/climate`.
pub(crate) fn profile_of(said: &ClimateSaid) -> Result<Profile, Vec<Trouble>> {
    profile(said, "/climate").map_err(|troubles| troubles.into_iter().map(as_sent).collect())
}

/// Names of a profile's own, and what a request calls them.
const NAMES: [(&str, &str, &str, &str); 4] = [
    ("/normals/rh_pct/rh_mean", "/normals/rh_pct", "rh_mean", "rh_pct"),
    ("/normals/rh_pct/dew_point", "/normals/dew_point_c", "dew_point", "dew_point_c"),
    ("/normals/sunshine_h/sunshine_hours", "/normals/sunshine_h", "sunshine_hours", "sunshine_h"),
    ("/normals/sunshine_h/solar_mj", "/normals/solar_mj", "solar_mj", "solar_mj"),
];

/// A place of the profile as the request calls it.
fn as_sent(mut trouble: Trouble) -> Trouble {
    for (theirs, ours, name, called) in NAMES {
        if let Some(at) = trouble.pointer.find(theirs) {
            trouble.pointer.replace_range(at..at + theirs.len(), ours);
            trouble.detail = trouble.detail.replacen(&format!("{name}["), &format!("{called}["), 1);
        }
    }
    let is_day =
        ["/climate/observations/", "/climate/forecast/days/"].iter().any(|list| trouble.pointer.starts_with(list));
    if is_day {
        for (theirs, ours) in [("/day", "/date"), ("/wind_ms", "/wind_kmh")] {
            if let Some(parent) = trouble.pointer.strip_suffix(theirs) {
                trouble.pointer = format!("{parent}{ours}");
            }
        }
    }
    trouble
}

fn by_content(id: Option<&str>, profile: Profile, hollow: bool, rules: &Rules) -> Arc<Climate> {
    let sha256 = hash::of_value(&serde_json::to_value(&profile).unwrap_or_default());
    let key = format!("{sha256}/{}/{hollow}", id.unwrap_or_default());
    let Ok(climate) = rules.seasons().get(key, || Ok::<_, Infallible>(made(id, profile, Some(sha256), hollow)));
    climate
}

fn made(id: Option<&str>, profile: Profile, sha256: Option<String>, frost_hollow: bool) -> Climate {
    let (id, shift) = (id.map(str::to_owned), SiteShift { frost_hollow });
    match sha256 {
        Some(sha256) => Climate::with_hash(id, sha256, profile, shift),
        None => Climate::new(id, profile, shift),
    }
}

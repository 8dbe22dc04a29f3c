//! Facts of the site, the soil, the water: numbers in range, choices of their lists.

use lammas_agronomy::origin::Origin;

use super::super::pointer::Trouble;
use super::super::said::Said;
use crate::compile::book::PlantBook;
use crate::fact::catalogue::{Fact, FactType, Missing};
use crate::fact::choices;
use crate::fact::value::{Reading, Value};

/// Puts a given value into its place.
pub(super) fn put(given: &mut [Reading], fact: Fact, value: Value, origin: Origin) {
    if let Some(slot) = given.get_mut(fact as usize) {
        *slot = Reading::new(value, origin);
    }
}

/// A number in range, rounded to its step.
pub(super) fn number(fact: Fact, value: Option<f64>, troubles: &mut Vec<Trouble>) -> Option<f64> {
    let value = value?;
    let entry = fact.entry();
    let (low, high) = entry.range.unwrap_or((f64::MIN, f64::MAX));
    if !value.is_finite() || value < low || value > high {
        let unit = if entry.unit.is_empty() { String::new() } else { format!(" {}", entry.unit) };
        troubles.push(Trouble::new(entry.pointer, format!("{value} is out of range, expected {low} to {high}{unit}")));
        return None;
    }
    Some(entry.step.round(value))
}

fn choice(fact: Fact, value: Option<&String>, troubles: &mut Vec<Trouble>) -> Option<u16> {
    let value = value?;
    let entry = fact.entry();
    let FactType::Choice(list) = entry.ty else { return None };
    let found = list.position(value);
    if found.is_none() {
        troubles.push(Trouble::unknown(entry.pointer, list.name, value, list.values.iter().copied()));
    }
    found
}

type Numbers<'a> = [(Fact, Option<f64>); 8];

fn numbers(said: &Said) -> Numbers<'_> {
    let (site, plant) = (&said.site, &said.plant);
    [
        (Fact::SiteContainerVolume, site.container_volume_l),
        (Fact::SoilPh, site.soil.ph),
        (Fact::SoilEc, site.soil.ec_ds_m),
        (Fact::WaterEc, said.water.ec_ds_m),
        (Fact::LeafWet, said.weather.leaf_wet_h),
        (Fact::PlantTrunkDiameter, plant.trunk_diameter_cm),
        (Fact::PlantHeight, plant.height_m),
        (Fact::PlantCanopyDiameter, plant.canopy_diameter_m),
    ]
}

fn choices_said(said: &Said) -> [(Fact, Option<&String>); 9] {
    let site = &said.site;
    [
        (Fact::SitePlanting, site.planting.as_ref()),
        (Fact::SiteContainerMaterial, site.container_material.as_ref()),
        (Fact::SiteExposure, site.exposure.as_ref()),
        (Fact::SiteWind, site.wind.as_ref()),
        (Fact::SoilTexture, site.soil.texture.as_ref()),
        (Fact::SoilDrainage, site.soil.drainage.as_ref()),
        (Fact::SoilMoisture, site.soil.moisture.as_ref()),
        (Fact::WaterMethod, said.water.method.as_ref()),
        (Fact::Vigour, said.condition.as_ref().and_then(|c| c.vigour.as_ref())),
    ]
}

/// Looks at every number and choice without keeping them.
pub(super) fn check_ranges(said: &Said, troubles: &mut Vec<Trouble>) {
    for (fact, value) in numbers(said) {
        number(fact, value, troubles);
    }
    for (fact, value) in choices_said(said) {
        choice(fact, value, troubles);
    }
}

/// Facts of the site, the soil and the water; what is not said is assumed where the catalogue says so.
pub(super) fn site(said: &Said, book: &PlantBook, given: &mut [Reading], troubles: &mut Vec<Trouble>) {
    for (fact, value) in numbers(said) {
        if let Some(value) = number(fact, value, troubles) {
            put(given, fact, Value::Number(value), Origin::Given);
        }
    }
    for (fact, value) in choices_said(said) {
        if let Some(value) = choice(fact, value, troubles) {
            put(given, fact, Value::Choice(value), Origin::Given);
        } else if let (Missing::Assumed(usual), FactType::Choice(list), None) =
            (fact.entry().missing, fact.entry().ty, value)
            && let Some(usual) = list.position(usual)
        {
            put(given, fact, Value::Choice(usual), Origin::Assumed);
        }
    }
    let site = &said.site;
    for (fact, value) in [
        (Fact::SiteReflectedHeat, site.reflected_heat),
        (Fact::SiteMulched, site.mulched),
        (Fact::SiteFrostHollow, site.frost_hollow),
        (Fact::WaterSourceAlkaline, said.water.source_alkaline),
        (Fact::SitePets, site.pets),
        (Fact::SiteChildren, site.children),
        (Fact::SiteNearWater, site.near_water),
        (Fact::SiteBeesWorking, site.bees_working),
        (Fact::SiteFoodUse, site.food_use),
        (Fact::PlantBearing, said.plant.bearing),
        (Fact::PlantHipsWanted, said.plant.hips_wanted),
        (Fact::PlantJustBought, said.plant.just_bought),
        (Fact::PlantInLeaf, said.plant.in_leaf),
    ] {
        match (value, fact.entry().missing) {
            (Some(yes), _) => put(given, fact, Value::Truth(yes), Origin::Given),
            (None, Missing::Assumed("no")) => put(given, fact, Value::Truth(false), Origin::Assumed),
            _ => {}
        }
    }
    if site.food_use.is_none() {
        put(given, Fact::SiteFoodUse, Value::Truth(book.habit.food_use), Origin::Computed);
    }
    for (at, day) in said.water.restricted_days.iter().enumerate() {
        if choices::WEEKDAY.position(day).is_none() {
            let pointer = format!("/water/restricted_days/{at}");
            troubles.push(Trouble::unknown(pointer, "weekday", day, choices::WEEKDAY.values.iter().copied()));
        }
    }
}

/// The region and its flags.
pub(super) fn region(said: &Said, troubles: &mut Vec<Trouble>) -> (Option<String>, Vec<String>) {
    if let Some(code) = &said.site.region {
        let mut parts = code.split('-');
        let country = parts.next().unwrap_or_default();
        let rest: Vec<&str> = parts.collect();
        let upper = |text: &str| text.bytes().all(|b| b.is_ascii_uppercase() || b.is_ascii_digit());
        let fits = country.len() == 2
            && country.bytes().all(|b| b.is_ascii_uppercase())
            && rest.len() <= 1
            && rest.iter().all(|r| (1..=3).contains(&r.len()) && upper(r));
        if !fits {
            troubles.push(Trouble::new(
                "/site/region",
                format!("`{code}` is no ISO 3166 code, expected such as `US-CA` or `GB`"),
            ));
        }
    }
    let mut flags = said.site.region_flags.clone();
    flags.sort();
    flags.dedup();
    (said.site.region.clone(), flags)
}

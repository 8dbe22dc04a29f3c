//! What customers call plants: how many are found, and that a plant which is not there is never taken for another.

use lammas_engine::compile::set::Set;
use lammas_engine::words::plants::{How, PlantFound};
use serde::Deserialize;

use crate::shipped::set;

const NAMES: &str = include_str!("../data/words/plants.yaml");

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Names {
    known: Vec<Meant>,
    misspelt: Vec<Meant>,
    not_there: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Meant {
    plant: String,
    kind: Option<String>,
    names: Vec<String>,
}

fn names() -> Names {
    serde_saphyr::from_str(NAMES).unwrap()
}

fn plant<'a>(set: &'a Set, found: &PlantFound) -> &'a str {
    set.names.plants.name(found.plant)
}

fn kind(set: &Set, found: &PlantFound) -> Option<String> {
    let (part, value) = found.kind?;
    let traits = &set.pack.plants[usize::from(found.plant)].entry.traits;
    Some(traits[usize::from(part)].values[usize::from(value)].id.value.clone())
}

#[test]
fn what_customers_call_a_plant_is_that_plant_and_its_kind() {
    let set = set();
    let (mut right, mut count, mut faults) = (0_u32, 0_u32, Vec::new());
    for meant in &names().known {
        for name in &meant.names {
            count += 1;
            let found = set.words.plant(name);
            let is_right = found.as_ref().is_some_and(|found| {
                plant(&set, found) == meant.plant && found.how < How::Misspelling && kind(&set, found) == meant.kind
            });
            right += u32::from(is_right);
            if !is_right {
                faults.push(format!("{name} ({} {:?}): {found:?}", meant.plant, meant.kind));
            }
        }
    }
    println!("{right} of {count} customers' names");
    assert!(count >= 150, "{count}");
    assert!(f64::from(right) >= 0.98 * f64::from(count), "{faults:#?}");
}

#[test]
fn a_slip_of_the_pen_is_found_and_said_to_be_one() {
    let set = set();
    let (mut right, mut count, mut faults) = (0_u32, 0_u32, Vec::new());
    for meant in &names().misspelt {
        for name in &meant.names {
            count += 1;
            let found = set.words.plants(name);
            let first = found.first().filter(|first| first.how != How::Near && plant(&set, first) == meant.plant);
            right += u32::from(first.is_some());
            if first.is_none() {
                faults.push(format!("{name} ({}): {found:?}", meant.plant));
            }
        }
    }
    println!("{right} of {count} misspelt names");
    assert!(f64::from(right) >= 0.9 * f64::from(count), "{faults:#?}");
}

#[test]
fn a_plant_that_is_not_there_is_not_known_and_never_taken_for_another() {
    let set = set();
    let taken: Vec<String> = names()
        .not_there
        .iter()
        .map(|name| (name, set.words.plants(name)))
        .filter(|(_, found)| found.len() > 3 || found.iter().any(|found| found.how != How::Near))
        .map(|(name, found)| format!("{name}: {found:?}"))
        .collect();
    assert!(taken.is_empty(), "{taken:#?}");
    assert!(names().not_there.iter().all(|name| set.words.plant(name).is_none()));
    // What comes nearest is told.
    assert!(set.words.plants("rose of sharon").iter().any(|found| plant(&set, found) == "rose"));
}

#[test]
fn every_name_in_the_set_finds_its_plant() {
    let set = set();
    for (number, filed) in set.pack.plants.iter().enumerate() {
        let entry = &filed.entry;
        let values = entry.traits.iter().flat_map(|part| &part.values);
        let of_kinds = values.flat_map(|value| value.names.values().flatten());
        for name in entry.name.0.values().chain(entry.names.values().flatten()).chain(of_kinds) {
            let found = set.words.plants(name);
            assert!(
                found.iter().any(|found| usize::from(found.plant) == number && found.how < How::Misspelling),
                "{name} ({}): {found:?}",
                entry.id.value
            );
        }
    }
}

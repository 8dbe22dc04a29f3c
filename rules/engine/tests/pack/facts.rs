//! Facts of the catalogue and the rules that read them.

use lammas_engine::compile::term::Term;
use lammas_engine::explain::term_name::leaves;
use lammas_engine::fact::catalogue::CATALOGUE;

use crate::shipped::set;

/// Facts that no shipped rule reads yet: each waits for the plants or the places that need it.
const WAITING: &[&str] = &[
    "plant.planted_on",
    "plant.stage_since",
    "plant.bearing",
    "site.container_material",
    "site.reflected_heat",
    "site.frost_hollow",
    "water.restricted_days",
    "count",
    "last",
    "harvest_wait",
    "tmin",
    "tmax",
    "tmean",
    "rain",
    "wind",
    "frost.chance",
    "water.depletion",
    "plant.hips_wanted",
    "plant.water_factor",
    "site.mulched",
    "since",
    "et0",
    "chill_hours",
    "climate.zone",
    "climate.heat_days",
    "climate.koppen",
];

#[test]
fn every_fact_is_read_by_a_rule_or_stands_on_the_list_of_those_that_wait() {
    let set = set();
    let mut read: Vec<&str> = Vec::new();
    for book in &set.plants {
        let amounts = book.rules.iter().flat_map(|r| &r.amounts).flat_map(|a| &a.inputs).filter_map(|input| {
            use lammas_engine::compile::amount::InputFrom;
            match &input.from {
                InputFrom::Number(term, _) | InputFrom::Choice(term, _) => Some(term),
                InputFrom::Word(_) => None,
            }
        });
        for leaf in book.probes.iter().chain(amounts).flat_map(leaves) {
            read.extend(leaf.fact().map(|fact| fact.entry().name));
        }
        read.extend(book.rules.iter().flat_map(|r| &r.windows).map(|_| "marker"));
    }
    let is_read = |name: &&str| read.contains(name);
    let unread: Vec<&str> = CATALOGUE.iter().map(|e| e.name).filter(|n| !is_read(n)).collect();
    let forgotten: Vec<&&str> = unread.iter().filter(|name| !WAITING.contains(name)).collect();
    assert!(forgotten.is_empty(), "read by no rule: {forgotten:?}");
    let done_waiting: Vec<&&str> = WAITING.iter().filter(|name| !unread.contains(name)).collect();
    assert!(done_waiting.is_empty(), "read by now, take them off the list: {done_waiting:?}");
}

#[test]
fn a_term_of_the_day_is_known_as_one() {
    let set = set();
    for book in &set.plants {
        for (term, of_the_day) in book.probes.iter().zip(&book.of_the_day) {
            assert_eq!(*of_the_day, term.is_of_the_day());
            if matches!(term, Term::Ahead(..) | Term::FrostAhead(..)) {
                assert!(of_the_day);
            }
        }
    }
}

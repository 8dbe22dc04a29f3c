//! What somebody would write by hand for these rules alone: ids, no reasons, nothing unknown.

use crate::facts::PLANTS;
use crate::making::{Condition, Document, Rule};

fn holds(condition: Condition, document: &Document) -> bool {
    match condition {
        Condition::Range { fact, low, high } => (low..=high).contains(&document.numbers[fact]),
        Condition::OneOf { fact, mask } => mask >> document.choices[fact] & 1 == 1,
        Condition::Flag { fact, yes } => document.flags[fact] == yes,
        Condition::Sign(sign) => document.signs.contains(&sign),
    }
}

fn applies(rule: &Rule, document: &Document) -> bool {
    rule.conditions.iter().all(|condition| holds(*condition, document))
}

/// Rules grouped by plant.
pub(crate) fn grouped(rules: &[Rule]) -> Vec<Vec<Rule>> {
    (0..PLANTS)
        .map(|plant| {
            rules.iter().filter(|rule| rule.plants.iter().any(|p| usize::from(*p) == plant)).cloned().collect()
        })
        .collect()
}

/// The loop over the rules of the plant.
pub(crate) fn of_the_plant(grouped: &[Vec<Rule>], document: &Document) -> Vec<u32> {
    let own = &grouped[usize::from(document.plant)];
    own.iter().filter(|rule| applies(rule, document)).map(|rule| rule.number).collect()
}

/// The loop over all rules.
pub(crate) fn of_all(rules: &[Rule], document: &Document) -> Vec<u32> {
    let is_for = |rule: &&Rule| rule.plants.contains(&document.plant);
    rules.iter().filter(is_for).filter(|rule| applies(rule, document)).map(|rule| rule.number).collect()
}

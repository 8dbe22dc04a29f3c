//! Rules that wait for each other: each comes before the next, and the last before the first.

use std::collections::{BTreeMap, BTreeSet};

use crate::fault::{Fault, Place};
use crate::pack::expression::place;
use crate::pack::{Filed, Pack};

/// For each rule the rules that come after it, with the place where that is said.
type Order<'p> = BTreeMap<&'p str, BTreeMap<&'p str, Place>>;

/// Looks at `before` and `after` of all rules together.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    let order = order(pack);
    let mut told: BTreeSet<&str> = BTreeSet::new();
    for start in order.keys().copied() {
        if told.contains(start) {
            continue;
        }
        let Some(circle) = shortest_circle(start, &order) else { continue };
        told.extend(&circle);
        let steps: Vec<(&str, &str, &Place)> = circle
            .iter()
            .enumerate()
            .filter_map(|(at, first)| {
                let second = circle.get(at + 1).or(circle.first())?;
                Some((*first, *second, order.get(first)?.get(second)?))
            })
            .collect();
        let Some(((_, _, here), others)) = steps.split_first() else { continue };
        let chain: Vec<String> = circle.iter().chain(circle.first()).map(|id| format!("`{id}`")).collect();
        let mut fault = Fault::error(
            "order-in-a-circle",
            (*here).clone(),
            format!("these rules wait for each other: {}", chain.join(" before ")),
        )
        .help("take one of the orders out");
        fault.related.extend(
            others
                .iter()
                .map(|(first, second, there)| ((*there).clone(), format!("here `{first}` comes before `{second}`"))),
        );
        faults.push(fault);
    }
}

fn order(pack: &Pack) -> Order<'_> {
    let mut order: Order<'_> = BTreeMap::new();
    let mut put = |first, second, here: Place| {
        order.entry(first).or_default().entry(second).or_insert(here);
    };
    for Filed { file, entry } in &pack.rules {
        let own = entry.id.value.as_str();
        entry.before.iter().for_each(|other| put(own, other.value.rule.as_str(), place(file, other)));
        entry.after.iter().for_each(|other| put(other.value.rule.as_str(), own, place(file, other)));
    }
    order
}

/// The shortest way from a rule back to itself.
fn shortest_circle<'p>(start: &'p str, order: &Order<'p>) -> Option<Vec<&'p str>> {
    let mut came_from: BTreeMap<&str, &str> = BTreeMap::new();
    let mut row = vec![start];
    while !row.is_empty() {
        let mut next_row = Vec::new();
        for here in row {
            for next in order.get(here).into_iter().flat_map(|after| after.keys().copied()) {
                if next == start {
                    let mut circle = vec![here];
                    while let Some(before) = circle.last().and_then(|last| came_from.get(last)) {
                        circle.push(before);
                    }
                    circle.reverse();
                    return Some(circle);
                }
                if !came_from.contains_key(next) {
                    came_from.insert(next, here);
                    next_row.push(next);
                }
            }
        }
        row = next_row;
    }
    None
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "order-in-a-circle",
    trips: &[
        (
            "rules/rose.yaml",
            "  materials: [granular-feed]\n",
            "  materials: [granular-feed]\n  before: [{rule: rose.soak, days: 1}]\n",
        ),
        ("rules/rose.yaml", "- id: rose.soak\n", "- id: rose.soak\n  before: [rose.renewal-cut]\n"),
    ],
    also: &[],
    at: "{rule: rose.soak, days: 1}",
    says: "rules/rose.yaml:41:12: error[order-in-a-circle]: these rules wait for each other: `rose.feed` before `rose.soak` before `rose.renewal-cut` before `rose.feed`\n  help: take one of the orders out\n  rules/rose.yaml:49:12: here `rose.soak` comes before `rose.renewal-cut`\n  rules/rose.yaml:24:12: here `rose.renewal-cut` comes before `rose.feed`",
    just_not: &[
        (
            "rules/rose.yaml",
            "  materials: [granular-feed]\n",
            "  materials: [granular-feed]\n  before: [{rule: rose.soak, days: 1}]\n",
        ),
        ("rules/rose.yaml", "- id: rose.soak\n", "- id: rose.soak\n  after: [rose.renewal-cut]\n"),
    ],
};

#[cfg(test)]
mod tests {
    use crate::check::cases::said;

    #[test]
    fn a_rule_can_not_wait_for_itself() {
        assert_eq!(
            said(&[("rules/rose.yaml", "- id: rose.soak\n", "- id: rose.soak\n  after: [rose.soak]\n")]),
            "rules/rose.yaml:48:11: error[order-in-a-circle]: these rules wait for each other: `rose.soak` before `rose.soak`\n  help: take one of the orders out"
        );
    }
}

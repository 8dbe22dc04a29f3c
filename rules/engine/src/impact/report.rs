//! The report: the changes by plant, rule and kind, with the places and weeks in which they are, and an example of each.

use std::collections::BTreeMap;

use super::change::How;
use super::grid::{Grid, Part, Portion};
use super::pair::Detail;
use crate::typical::weeks::{WEEKS, Weeks};

/// What another set would change on the grid.
#[derive(Clone, Debug, Default)]
pub struct Report {
    /// Questions that at least one of the sets could answer.
    pub answers: u64,
    /// Those of them that need not be asked, since both sets say the same of the plant.
    pub proven: u64,
    /// Those of which the decision is another.
    pub changed: u64,
    /// The same by plant, in the grid's order.
    pub by_plant: Vec<u64>,
    /// The changes, those of the most answers first.
    pub groups: Vec<Group>,
}

/// A kind of change of a rule.
#[derive(Clone, Debug)]
pub struct Group {
    /// The plant, by its place in the grid's list.
    pub plant: usize,
    /// The rule; empty for what concerns the whole answer.
    pub rule: String,
    /// How it changes.
    pub how: How,
    /// In how many answers.
    pub answers: u64,
    /// By place, the weeks in which it does under at least one condition.
    pub places: Vec<(usize, Weeks)>,
    /// The conditions under which it does, by their place in the plant's list.
    pub cases: Vec<usize>,
    /// One of these answers.
    pub example: Example,
}

/// An answer that changes.
#[derive(Clone, Debug)]
pub struct Example {
    /// Plant and place.
    pub portion: Portion,
    /// The condition.
    pub case: usize,
    /// The week.
    pub week: u8,
    /// Before and after, where there is more to say than the kind of the change.
    pub detail: Detail,
}

impl Report {
    /// The report of portions that were run, in the order of the grid.
    #[must_use]
    pub fn of(grid: &Grid<'_>, parts: &[Part]) -> Self {
        let mut report = Self { by_plant: vec![0; grid.plants.len()], ..Self::default() };
        let mut groups: BTreeMap<(usize, &str, How), Group> = BTreeMap::new();
        for (portion, part) in grid.portions().into_iter().zip(parts) {
            report.answers += part.answers;
            report.proven += part.proven;
            let changed = count(part.changed.values());
            report.changed += changed;
            report.by_plant.iter_mut().skip(portion.plant).take(1).for_each(|of_plant| *of_plant += changed);
            for ((rule, how), found) in &part.found {
                let Some((case, first)) = found.cells.iter().next() else { continue };
                let group = groups.entry((portion.plant, rule, *how)).or_insert_with(|| Group {
                    plant: portion.plant,
                    rule: rule.clone(),
                    how: *how,
                    answers: 0,
                    places: Vec::new(),
                    cases: Vec::new(),
                    example: Example {
                        portion,
                        case: *case,
                        week: first.each().next().unwrap_or(WEEKS),
                        detail: found.detail.clone(),
                    },
                });
                group.answers += count(found.cells.values());
                let weeks = found.cells.values().fold(Weeks::default(), |all, weeks| all.and_those(*weeks));
                group.places.push((portion.place, weeks));
                group.cases.extend(found.cells.keys());
            }
        }
        report.groups = groups.into_values().collect();
        for group in &mut report.groups {
            group.cases.sort_unstable();
            group.cases.dedup();
        }
        report.groups.sort_by_key(|group| std::cmp::Reverse(group.answers));
        report
    }
}

fn count<'w>(weeks: impl Iterator<Item = &'w Weeks>) -> u64 {
    weeks.map(|weeks| u64::from(weeks.count())).sum()
}

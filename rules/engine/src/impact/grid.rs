//! The grid: every plant of both sets, at every place, in every week, under every typical condition.
//!
//! It is cut into portions, a plant at a place each: whoever runs them may do so in any order and side by side, and the report
//! is the same.

use std::collections::BTreeMap;

use super::change::How;
use super::pair::{Asked, Detail, compare};
use super::unmoved;
use crate::compile::set::Set;
use crate::question::Question;
use crate::question::said::Said;
use crate::question::understand::understand;
use crate::typical::cases::{self, Case};
use crate::typical::places::{self, Spot};
use crate::typical::weeks::{self, WEEKS, Weeks};

/// The grid of two sets.
#[derive(Debug)]
pub struct Grid<'a> {
    /// The set as it was.
    pub before: &'a Set,
    /// The set as it would be.
    pub after: &'a Set,
    /// The places.
    pub places: Vec<Spot>,
    /// The plants, by id, each with its conditions.
    pub plants: Vec<(String, Vec<Case>)>,
    /// Of each plant, whether no answer can change.
    unmoved: Vec<bool>,
}

/// A plant at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Portion {
    /// The plant, by its place in the list.
    pub plant: usize,
    /// The place, by its place in the list.
    pub place: usize,
}

/// What one kind of change comes to, in a portion.
#[derive(Clone, Debug, Default)]
pub struct Found {
    /// By condition, the weeks in which it is so.
    pub cells: BTreeMap<usize, Weeks>,
    /// Before and after in the first of them, where there is more to say.
    pub detail: Detail,
}

/// What a portion came to.
#[derive(Clone, Debug, Default)]
pub struct Part {
    /// Questions that at least one of the sets could answer.
    pub answers: u64,
    /// Those of them that need not be asked, since both sets say the same of the plant.
    pub proven: u64,
    /// By condition, the weeks in which the decision is another.
    pub changed: BTreeMap<usize, Weeks>,
    /// By rule and kind of change.
    pub found: BTreeMap<(String, How), Found>,
}

impl<'a> Grid<'a> {
    /// The grid, or that of one plant; with `all_places` every reference place is in it.
    #[must_use]
    pub fn of(before: &'a Set, after: &'a Set, plant: Option<&str>, all_places: bool) -> Self {
        let sets = [before, after];
        let mut ids = ids(before, after);
        ids.retain(|id| plant.is_none_or(|wanted| wanted == *id));
        let plants: Vec<(String, Vec<Case>)> =
            ids.into_iter().map(|id| (id.to_owned(), cases::of(&sets, id))).collect();
        let same_words = unmoved::has_the_same_words(before, after);
        let is_unmoved = |(id, cases): &(String, Vec<Case>)| {
            same_words && unmoved::has_the_same_rules(id, cases.iter().map(Case::said), before, after)
        };
        let unmoved = plants.iter().map(is_unmoved).collect();
        Self { before, after, places: places::of(&sets, all_places), plants, unmoved }
    }

    /// Every portion, in the order of the report.
    #[must_use]
    pub fn portions(&self) -> Vec<Portion> {
        let places = |plant| (0..self.places.len()).map(move |place| Portion { plant, place });
        (0..self.plants.len()).flat_map(places).collect()
    }

    /// How many questions there are.
    #[must_use]
    pub fn size(&self) -> u64 {
        let cases: u64 = self.plants.iter().map(|(_, cases)| cases.len() as u64).sum();
        cases * self.places.len() as u64 * u64::from(WEEKS)
    }

    /// How many questions a portion has.
    #[must_use]
    pub fn size_of(&self, portion: Portion) -> u64 {
        self.plants.get(portion.plant).map_or(0, |(_, cases)| cases.len() as u64) * u64::from(WEEKS)
    }

    /// The request behind a cell.
    #[must_use]
    pub fn request(&self, portion: Portion, case: usize, week: u8) -> Option<Said> {
        let case = self.plants.get(portion.plant)?.1.get(case)?;
        Some(case.at(self.places.get(portion.place)?, weeks::day(week)))
    }

    /// Answers every question of a portion by both sets.
    #[must_use]
    pub fn run(&self, portion: Portion) -> Part {
        let mut part = Part::default();
        let (Some((_, cases)), Some(spot)) = (self.plants.get(portion.plant), self.places.get(portion.place)) else {
            return part;
        };
        // A climate keeps what it worked out for a set: each set has its own, with and without the hollow.
        let climates = [false, true].map(|hollow| [spot.climate(hollow), spot.climate(hollow)]);
        for (number, case) in cases.iter().enumerate() {
            let [plain, hollow] = &climates;
            let [for_before, for_after] = if case.is_hollow() { hollow } else { plain };
            let said = case.at(spot, weeks::day(1));
            let before = understand(&said, self.before, for_before.clone(), None).ok();
            let after = understand(&said, self.after, for_after.clone(), None).ok();
            if self.unmoved.get(portion.plant) == Some(&true) {
                let answers = if before.is_some() { u64::from(WEEKS) } else { 0 };
                part.answers += answers;
                part.proven += answers;
                continue;
            }
            for week in 1..=WEEKS {
                let on_day = |question: &Question| cases::moved(question, weeks::day(week));
                let (before, after) = (before.as_ref().map(on_day), after.as_ref().map(on_day));
                part.look(number, week, (self.before, before.as_ref()), (self.after, after.as_ref()));
            }
        }
        part
    }
}

/// The plants that at least one of two sets knows.
#[must_use]
pub fn ids<'s>(before: &'s Set, after: &'s Set) -> Vec<&'s str> {
    let mut ids: Vec<&str> = [before, after].iter().flat_map(|set| set.names.plants.names()).collect();
    ids.sort_unstable();
    ids.dedup();
    ids
}

impl Part {
    fn look(&mut self, case: usize, week: u8, before: Asked<'_>, after: Asked<'_>) {
        let found = &mut self.found;
        let differs = compare(before, after, &mut |change, detail| {
            let found = found.entry((change.rule.to_owned(), change.how)).or_default();
            if found.cells.is_empty() {
                found.detail = detail();
            }
            found.cells.entry(case).or_default().put(week);
        });
        self.answers += u64::from(differs.is_some());
        if differs == Some(true) {
            self.changed.entry(case).or_default().put(week);
        }
    }
}

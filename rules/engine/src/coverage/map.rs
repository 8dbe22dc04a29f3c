//! The map of a set: every plant at every place.

use super::cell::Cell;
use crate::compile::set::Set;
use crate::typical::cases::Case;
use crate::typical::places::Spot;

/// A plant of the map.
#[derive(Clone, Debug)]
pub struct Plant {
    /// Its id.
    pub id: String,
    /// Its typical conditions.
    pub cases: Vec<Case>,
    /// A row of cells a place, in the order of the places.
    pub rows: Vec<Vec<Cell>>,
}

/// The map.
#[derive(Clone, Debug)]
pub struct Map<'a> {
    /// The set.
    pub set: &'a Set,
    /// The places.
    pub places: Vec<Spot>,
    /// The plants.
    pub plants: Vec<Plant>,
}

impl Map<'_> {
    /// Every place of a plant with its row.
    pub fn rows<'m>(&'m self, plant: &'m Plant) -> impl Iterator<Item = (&'m Spot, &'m [Cell])> {
        self.places.iter().zip(plant.rows.iter().map(Vec::as_slice))
    }

    /// The id of a rule.
    #[must_use]
    pub fn rule(&self, number: u32) -> &str {
        self.set.rules.get(number as usize).map_or("", |info| &info.id)
    }
}

/// How much is advised, in five levels: the fewest tasks of each, and its words.
pub const LEVELS: [(usize, &str); 5] =
    [(1, "1 to 4"), (5, "5 to 9"), (10, "10 to 19"), (20, "20 to 39"), (40, "40 or more")];

/// The level of a cell, 1 to 5; none where no task is advised.
#[must_use]
pub fn level(cell: &Cell) -> Option<usize> {
    LEVELS.iter().rposition(|(least, _)| cell.applies.len() >= *least).map(|at| at + 1)
}

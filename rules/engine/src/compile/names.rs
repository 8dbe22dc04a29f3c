//! Names into numbers: every vocabulary of the pack as a list in the pack's order.

use std::collections::BTreeMap;

use crate::pack::Pack;

/// The names of one vocabulary.
#[derive(Clone, Debug, Default)]
pub struct Index {
    numbers: BTreeMap<String, u32>,
    names: Vec<String>,
}

impl Index {
    /// An index of these names, in this order; a name that comes twice keeps its first number.
    pub fn of<'a>(names: impl IntoIterator<Item = &'a str>) -> Self {
        let mut index = Self::default();
        for name in names {
            let number = u32::try_from(index.names.len()).unwrap_or(u32::MAX);
            index.numbers.entry(name.to_owned()).or_insert(number);
            index.names.push(name.to_owned());
        }
        index
    }

    /// The number of a name.
    #[must_use]
    pub fn number(&self, name: &str) -> Option<u16> {
        self.wide(name).and_then(|number| u16::try_from(number).ok())
    }

    /// The number of a name where there may be very many: rules.
    #[must_use]
    pub fn wide(&self, name: &str) -> Option<u32> {
        self.numbers.get(name).copied()
    }

    /// The name of a number; empty for a number that is none.
    #[must_use]
    pub fn name(&self, number: u16) -> &str {
        self.names.get(usize::from(number)).map_or("", String::as_str)
    }

    /// Every name in order.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.names.iter().map(String::as_str)
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.names.len()
    }

    /// None at all.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.names.is_empty()
    }
}

/// Every vocabulary.
#[derive(Clone, Debug, Default)]
#[expect(missing_docs, reason = "the names are the vocabularies")]
pub struct Names {
    pub jobs: Index,
    pub classes: Index,
    pub stages: Index,
    pub outlooks: Index,
    pub signs: Index,
    pub cautions: Index,
    pub sources: Index,
    pub materials: Index,
    pub problems: Index,
    pub plants: Index,
    pub rules: Index,
    /// For each plant, in the order of `plants`.
    pub plant_names: Vec<PlantNames>,
}

/// What one plant declares.
#[derive(Clone, Debug, Default)]
pub struct PlantNames {
    /// Its traits.
    pub traits: Index,
    /// The values of each trait.
    pub values: Vec<Index>,
    /// Its stages in order.
    pub stages: Index,
}

impl Names {
    /// The names of a pack.
    #[must_use]
    pub fn of(pack: &Pack) -> Self {
        macro_rules! ids {
            ($list:expr) => {
                Index::of($list.iter().map(|e| e.entry.id.value.as_str()))
            };
        }
        Self {
            jobs: ids!(pack.jobs),
            classes: ids!(pack.classes),
            stages: ids!(pack.stages),
            outlooks: ids!(pack.outlooks),
            signs: ids!(pack.signs),
            cautions: ids!(pack.cautions),
            sources: ids!(pack.sources),
            materials: ids!(pack.materials),
            problems: ids!(pack.problems),
            plants: ids!(pack.plants),
            rules: ids!(pack.rules),
            plant_names: pack
                .plants
                .iter()
                .map(|plant| PlantNames {
                    traits: Index::of(plant.entry.traits.iter().map(|t| t.id.value.as_str())),
                    values: plant
                        .entry
                        .traits
                        .iter()
                        .map(|t| Index::of(t.values.iter().map(|v| v.id.value.as_str())))
                        .collect(),
                    stages: Index::of(plant.entry.stages.iter().map(|s| s.value.as_str())),
                })
                .collect(),
        }
    }
}

//! What the knowledge of a set rests on: how its rules are founded, how their sources were read, who has looked over them.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use crate::pack::rule::{Evidence, Kind, RuleEntry};
use crate::pack::{At, Filed, Pack, SourceEntry};
use crate::prove::meaning;

/// How much of a source somebody saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reading {
    /// The publication, or its page.
    Page,
    /// A page or an abstract, as far as a search showed it.
    Part,
    /// A piece that a search quoted.
    Excerpt,
    /// Nothing is cited: the custom of the trade.
    Custom,
    /// Recalled, and to be checked.
    Memory,
}

impl Reading {
    /// Every kind, the best first.
    pub const ALL: [Self; 5] = [Self::Page, Self::Part, Self::Excerpt, Self::Custom, Self::Memory];

    /// The kind that the words of a source say. What says nothing of reading counts as recalled.
    #[must_use]
    pub fn of(how_read: &str) -> Self {
        let says = |word: &str| how_read.contains(word);
        if says("common practice") {
            Self::Custom
        } else if says("memory") || !(says("read") || says("excerpt") || says("seen") || says("page")) {
            Self::Memory
        } else if (says("page") || says("abstract")) && says("excerpt") || says("abstract") {
            Self::Part
        } else if says("excerpt") || says("copy") {
            Self::Excerpt
        } else {
            Self::Page
        }
    }
}

/// Rules of one kind, counted.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Counted {
    /// Tasks.
    pub tasks: usize,
    /// Things to leave alone, guards among them.
    pub avoid: usize,
    /// Notes.
    pub notes: usize,
}

impl Counted {
    fn add(&mut self, kind: Kind) {
        match kind {
            Kind::Task => self.tasks += 1,
            Kind::Avoid => self.avoid += 1,
            Kind::Know => self.notes += 1,
        }
    }

    /// All of them.
    #[must_use]
    pub const fn all(&self) -> usize {
        self.tasks + self.avoid + self.notes
    }
}

/// The whole table.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Table {
    /// The set.
    pub name: String,
    /// Its version.
    pub version: String,
    /// Every rule.
    pub rules: Counted,
    /// Rules that differ in what they mean when the name of the plant is left out: a rule written for five plants alike is one.
    pub distinct: usize,
    /// Emergencies.
    pub emergencies: usize,
    /// By how well they are founded.
    pub by_evidence: BTreeMap<&'static str, Counted>,
    /// By the best reading among their sources.
    pub by_reading: BTreeMap<Reading, Counted>,
    /// Rules all of whose sources are the custom of the trade or recalled.
    pub without_publication: usize,
    /// Rules that a horticulturist has looked over.
    pub reviewed: usize,
    /// Rules that no horticulturist has looked over yet.
    pub not_reviewed: usize,
    /// Plants, problems, materials, signs, sources, climates, scenarios.
    pub entries: BTreeMap<&'static str, usize>,
}

/// Counts a set.
#[must_use]
pub fn of(pack: &Pack) -> Table {
    let mut table = Table {
        name: pack.header.name.value.clone(),
        version: pack.header.version.value.clone(),
        rules: Counted::default(),
        distinct: 0,
        emergencies: 0,
        by_evidence: BTreeMap::new(),
        by_reading: BTreeMap::new(),
        without_publication: 0,
        reviewed: 0,
        not_reviewed: 0,
        entries: BTreeMap::from([
            ("plants", pack.plants.len()),
            ("problems", pack.problems.len()),
            ("materials", pack.materials.len()),
            ("signs", pack.signs.len()),
            ("sources", pack.sources.len()),
            ("climates", pack.climates.len()),
            ("scenarios", pack.scenarios.len()),
        ]),
    };
    let mut meanings = BTreeSet::new();
    for Filed { entry, .. } in &pack.rules {
        let kind = entry.kind;
        table.rules.add(kind);
        table.emergencies += usize::from(entry.emergency.is_some());
        table.by_evidence.entry(evidence(entry.evidence)).or_default().add(kind);
        let best = best(&entry.sources, &pack.sources);
        table.by_reading.entry(best).or_default().add(kind);
        table.without_publication += usize::from(best >= Reading::Custom);
        *(if entry.reviewed.is_some() { &mut table.reviewed } else { &mut table.not_reviewed }) += 1;
        meanings.insert(meaning::of(&of_any_plant(entry)));
    }
    table.distinct = meanings.len();
    table
}

/// The same rule for whichever plant.
fn of_any_plant(entry: &RuleEntry) -> RuleEntry {
    let mut entry = entry.clone();
    entry.whom.plant = None;
    entry.whom.plants = None;
    if let Some(blocks) = &mut entry.blocks {
        blocks.plants.clear();
    }
    entry
}

fn best(names: &[At<String>], sources: &[Filed<SourceEntry>]) -> Reading {
    let read = names.iter().filter_map(|id| sources.iter().find(|source| source.entry.id.value == id.value));
    read.map(|source| Reading::of(&source.entry.how_read)).min().unwrap_or(Reading::Memory)
}

const fn evidence(evidence: Evidence) -> &'static str {
    match evidence {
        Evidence::Consensus => "consensus",
        Evidence::Trial => "trial",
        Evidence::CommonPractice => "common-practice",
        Evidence::Doubtful => "doubtful",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn how_a_source_was_read_is_taken_from_its_words() {
        for (words, reading) in [
            ("page read", Reading::Page),
            ("page read in search excerpt", Reading::Part),
            ("abstract read", Reading::Part),
            ("search excerpt", Reading::Excerpt),
            ("search excerpt of a copy", Reading::Excerpt),
            ("common practice", Reading::Custom),
            ("from memory", Reading::Memory),
            ("", Reading::Memory),
        ] {
            assert_eq!(Reading::of(words), reading, "{words}");
        }
    }
}

//! A set in which one entry says something else: only what that entry can reach is compiled anew.
//!
//! The ids stay, and with them every number by which a question was understood. Such a set is for trying out: its texts are
//! there in its first language only, and its hash tells it apart from others without being that of a published form.

use super::both_ways::{apart_both_ways, both_ways};
use super::plant::{book, is_for};
use super::report::Report;
use super::resolve::rule_info;
use super::rule::RuleInfo;
use super::set::{MaterialInfo, Set, material};
use crate::explain::phrases::Phrases;
use crate::fault::{Fault, Weight};
use crate::pack::{Filed, MaterialEntry, Pack, PlantEntry, RuleEntry};
use crate::version::hash;

impl Set {
    /// The set with another version of a rule, by its number; the id must be the same.
    ///
    /// # Errors
    /// What keeps it from being compiled.
    pub fn with_rule(&self, number: usize, entry: RuleEntry) -> Result<Self, Vec<Fault>> {
        let mut pack = self.pack.clone();
        let Some(filed) = pack.rules.get_mut(number) else { return Err(Vec::new()) };
        let before = filed.clone();
        filed.entry = entry;
        let after = filed.clone();
        let sha256 = self.told_apart(&serde_json::to_string(&after.entry).unwrap_or_default());
        let reaches = |plant: &PlantEntry, pack: &Pack| is_for(&before, plant, pack) || is_for(&after, plant, pack);
        self.again(pack, sha256, &reaches)
    }

    /// The set with another version of a material, by its number; the id must be the same.
    ///
    /// # Errors
    /// What keeps it from being compiled.
    pub fn with_material(&self, number: usize, entry: MaterialEntry) -> Result<Self, Vec<Fault>> {
        let mut pack = self.pack.clone();
        let Some(filed) = pack.materials.get_mut(number) else { return Err(Vec::new()) };
        filed.entry = entry;
        let sha256 = self.told_apart(&serde_json::to_string(&filed.entry).unwrap_or_default());
        self.again(pack, sha256, &|_, _| true)
    }

    fn told_apart(&self, entry: &str) -> String {
        hash::of_text(&format!("{}\n{entry}", self.sha256))
    }

    fn again(
        &self,
        pack: Pack,
        sha256: String,
        reaches: &dyn Fn(&PlantEntry, &Pack) -> bool,
    ) -> Result<Self, Vec<Fault>> {
        let names = &self.names;
        let mut report = Report::new(&pack);
        let materials: Vec<MaterialInfo> = pack.materials.iter().map(|m| material(m, names, &mut report)).collect();
        let mut rules: Vec<RuleInfo> =
            pack.rules.iter().map(|r| rule_info(r, &pack, names, &materials, &mut report)).collect();
        both_ways(&mut rules);
        apart_both_ways(&mut rules, &pack, names, &materials);
        let one = |(number, (plant, kept)): (usize, (&Filed<PlantEntry>, &super::book::PlantBook)),
                   report: &mut Report<'_>| {
            match reaches(&plant.entry, &pack) {
                true => {
                    book(u16::try_from(number).unwrap_or(u16::MAX), plant, &pack, names, (&rules, &materials), report)
                }
                false => kept.clone(),
            }
        };
        let plants = pack.plants.iter().zip(&self.plants).enumerate().map(|item| one(item, &mut report)).collect();
        let faults = report.faults();
        if faults.iter().any(|fault| fault.weight == Weight::Error) {
            return Err(faults);
        }
        let (names, words) = (self.names.clone(), self.words.clone());
        let mut set = Self {
            pack,
            names,
            rules,
            materials,
            plants,
            words,
            sha256,
            layers: self.layers.clone(),
            phrases: Vec::new(),
        };
        set.phrases = set.pack.header.languages.iter().take(1).map(|language| Phrases::of(&set, language)).collect();
        Ok(set)
    }
}

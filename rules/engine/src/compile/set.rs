//! The compiled set, and how a pack becomes one.

use super::book::PlantBook;
use super::both_ways::{apart_both_ways, both_ways};
use super::names::Names;
use super::plant::book;
use super::report::Report;
use super::resolve::{rule_info, separations};
use super::rule::{RuleInfo, Subject};
use crate::explain::phrases::Phrases;
use crate::fault::Fault;
use crate::pack::layer::Layer;
use crate::pack::material::{Hazard, Per};
use crate::pack::{Filed, MaterialEntry, Pack};
use crate::unit::{Dimension, Unit};
use crate::version::hash;
use crate::words::Words;

/// A material, resolved.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialInfo {
    /// Its classes.
    pub classes: Vec<u16>,
    /// How dangerous it is.
    pub hazard: Hazard,
    /// The most of it: on what, how much, in which unit.
    pub maximum: Vec<(Per, f64, &'static Unit)>,
}

/// A set that can be asked.
#[derive(Clone, Debug)]
pub struct Set {
    /// As written: texts, sources, vocabularies.
    pub pack: Pack,
    /// Names into numbers.
    pub names: Names,
    /// What is the same for every plant.
    pub rules: Vec<RuleInfo>,
    /// Materials.
    pub materials: Vec<MaterialInfo>,
    /// What concerns each plant.
    pub plants: Vec<PlantBook>,
    /// What people call its signs.
    pub words: Words,
    /// SHA-256 over the canonical form; of several sets in layers over their hashes.
    pub sha256: String,
    /// The sets that it was laid from, lowest first; of a set by itself that one.
    pub layers: Vec<Layer>,
    /// What is said the same in every answer, in each of its languages.
    pub phrases: Vec<Phrases>,
}

/// Compiles a pack. Every fault that stands in the way is returned; the set is there if there is none of weight error.
#[must_use]
pub fn compile(pack: Pack) -> (Option<Set>, Vec<Fault>) {
    let names = Names::of(&pack);
    let mut report = Report::new(&pack);
    let materials: Vec<MaterialInfo> = pack.materials.iter().map(|m| material(m, &names, &mut report)).collect();
    let mut rules: Vec<RuleInfo> =
        pack.rules.iter().map(|r| rule_info(r, &pack, &names, &materials, &mut report)).collect();
    both_ways(&mut rules);
    apart_both_ways(&mut rules, &pack, &names, &materials);
    let plants: Vec<PlantBook> = pack
        .plants
        .iter()
        .enumerate()
        .map(|(number, plant)| {
            let number = u16::try_from(number).unwrap_or(u16::MAX);
            book(number, plant, &pack, &names, (&rules, &materials), &mut report)
        })
        .collect();
    let faults = report.faults();
    if faults.iter().any(|f| f.weight == crate::fault::Weight::Error) {
        return (None, faults);
    }
    let (sha256, layers) = known_by(&pack);
    let words = Words::of(&pack, &plants);
    let mut set = Set { pack, names, rules, materials, plants, words, sha256, layers, phrases: Vec::new() };
    set.phrases = set.pack.header.languages.iter().map(|language| Phrases::of(&set, language)).collect();
    (Some(set), faults)
}

/// The hash of a pack, and the sets that it was laid from.
fn known_by(pack: &Pack) -> (String, Vec<Layer>) {
    let layers = &pack.laid.layers;
    if !layers.is_empty() {
        return (hash::of_layers(layers.iter().map(|layer| layer.sha256.as_str())), layers.clone());
    }
    let sha256 = hash::of_pack(pack);
    let (name, version) = (pack.header.name.value.clone(), pack.header.version.value.clone());
    (sha256.clone(), vec![Layer { name, version, sha256 }])
}

pub(super) fn material(filed: &Filed<MaterialEntry>, names: &Names, report: &mut Report<'_>) -> MaterialInfo {
    let (file, entry) = (&filed.file, &filed.entry);
    let maximum = entry
        .maximum
        .iter()
        .filter_map(|maximum| {
            let text = &maximum.value;
            let expected = match maximum.per {
                Per::Area => Dimension::MassPerArea,
                Per::Plant | Per::Litre => Dimension::Mass,
            };
            let (value, unit) = report.literal(file, text)?;
            if unit.dimension != expected && !(unit.dimension == Dimension::Volume && maximum.per != Per::Area) {
                report.at(file, text, "wrong-unit", format!("`{}` is not {}", text.value, expected.words()));
                return None;
            }
            Some((maximum.per, value, unit))
        })
        .collect();
    report.ids(file, &entry.cautions, &names.cautions, "caution");
    report.ids(file, &entry.sources, &names.sources, "source");
    separations(file, &entry.keep_apart, names, report);
    MaterialInfo { classes: report.ids(file, &entry.classes, &names.classes, "class"), hazard: entry.hazard, maximum }
}

impl Set {
    /// The phrases of a language; else of English; else of whichever language there is.
    #[must_use]
    pub fn phrases(&self, language: &str) -> Option<&Phrases> {
        let of = |wanted: &str| self.phrases.iter().find(|phrases| phrases.language == wanted);
        of(language).or_else(|| of("en")).or_else(|| self.phrases.first())
    }

    /// The set that gave a rule its present meaning.
    #[must_use]
    pub fn layer_of(&self, info: &RuleInfo) -> Option<&Layer> {
        self.layers.get(info.layer).or_else(|| self.layers.first())
    }

    /// Whether a pest or disease material is, or is among, what a separation speaks of.
    #[must_use]
    pub fn is_hazardous(&self, subject: Subject) -> bool {
        let is_label = |material: &MaterialInfo| material.hazard >= Hazard::Label;
        match subject {
            Subject::Job(_) => false,
            Subject::Material(material) => self.materials.get(usize::from(material)).is_some_and(is_label),
            Subject::Class(class) => {
                self.materials.iter().any(|material| material.classes.contains(&class) && is_label(material))
            }
            Subject::Rule(rule) => self.rules.get(rule as usize).is_some_and(RuleInfo::is_hazardous),
        }
    }
}

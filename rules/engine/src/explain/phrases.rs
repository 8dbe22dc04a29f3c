//! Phrases: what is said the same in every answer, in one language, prepared when the set is compiled.

use lammas_agronomy::units::Conversion;

use super::answer::{ApartShown, CautionShown, EmergencyShown, MaterialShown, Range, SourceShown};
use super::number::us_conversion;
use super::rendered::Rendered;
use super::{amounts, term_name, value, words};
use crate::compile::book::PlantBook;
use crate::compile::rule::{PlantRule, RuleInfo, Subject};
use crate::compile::set::Set;
use crate::compile::term::Term;
use crate::compile::window::Side;
use crate::pack::{Pack, RuleEntry};

/// The phrases of a set in one language.
#[derive(Clone, Debug, Default)]
pub struct Phrases {
    /// The language.
    pub language: String,
    /// Of each rule.
    pub rules: Vec<RulePhrases>,
    /// Of each plant.
    pub plants: Vec<PlantPhrases>,
}

/// What is said of a rule, whatever the plant.
#[derive(Clone, Debug)]
pub struct RulePhrases {
    /// What to do, in few words.
    pub title: Rendered<String>,
    /// Why.
    pub why: Sentence,
    /// How.
    pub steps: Rendered<Vec<String>>,
    /// Why a licensed professional does it.
    pub professional: Option<Rendered<String>>,
    /// Who to call, where it is an emergency.
    pub emergency: Option<Rendered<EmergencyShown>>,
    /// Its cautions, by their numbers.
    pub cautions: Vec<(u16, Rendered<CautionShown>)>,
    /// Its sources.
    pub sources: Rendered<Vec<SourceShown>>,
    /// Its materials.
    pub materials: Rendered<Vec<MaterialShown>>,
    /// What it is kept apart from.
    pub apart: Rendered<Vec<ApartShown>>,
    /// Why each of its holds holds.
    pub holds: Vec<Sentence>,
    /// Before its window, after it, where there is none.
    pub outside: [Sentence; 3],
    /// What may be expected: id and name.
    pub expect: Vec<(String, Rendered<String>)>,
}

/// A text that may quote facts.
#[derive(Clone, Debug)]
pub struct Sentence {
    /// As it is written, with each fact in braces.
    pub text: Rendered<String>,
    /// Whether there are any.
    pub quotes: bool,
}

impl Sentence {
    fn of(text: &str) -> Self {
        Self { text: Rendered::of(text.to_owned()), quotes: text.contains('{') }
    }
}

/// What is said of a plant.
#[derive(Clone, Debug, Default)]
pub struct PlantPhrases {
    /// The facts in each of its terms.
    pub facts: Vec<Vec<FactPhrases>>,
    /// Of each of its rules.
    pub rules: Vec<PlantRulePhrases>,
}

/// What is said of a fact.
#[derive(Clone, Debug)]
pub struct FactPhrases {
    /// The term that reads it by itself.
    pub term: Term,
    /// Whether that is the whole term in which it stands.
    pub whole: bool,
    /// Its name, as rules write it.
    pub name: Rendered<String>,
    /// What it is called.
    pub words: Rendered<String>,
    /// The unit in which it is shown.
    pub unit: &'static str,
}

/// What is said of a rule of a plant.
#[derive(Clone, Debug, Default)]
pub struct PlantRulePhrases {
    /// What each side of its windows hangs on, with each `else`.
    pub sides: Vec<Vec<String>>,
    /// Of each of its amounts.
    pub amounts: Vec<AmountPhrases>,
}

/// What is said of an amount.
#[derive(Clone, Debug)]
pub struct AmountPhrases {
    /// What the number says.
    pub what: Rendered<String>,
    /// What is usual.
    pub typical: Option<Rendered<Range>>,
    /// The way from the quantity's own unit to that of the United States.
    pub us: Option<(Conversion, &'static str)>,
}

impl Phrases {
    /// The phrases of a set in a language.
    #[must_use]
    pub fn of(set: &Set, language: &str) -> Self {
        let pack = &set.pack;
        Self {
            language: language.to_owned(),
            rules: set
                .rules
                .iter()
                .zip(&pack.rules)
                .map(|(info, filed)| rule(info, &filed.entry, pack, language))
                .collect(),
            plants: set.plants.iter().map(|book| plant(book, set, language)).collect(),
        }
    }
}

fn rule(info: &RuleInfo, entry: &RuleEntry, pack: &Pack, language: &str) -> RulePhrases {
    let said = |text: &str| Rendered::of(text.to_owned());
    let text = |text: &crate::text::Text| said(text.get(language));
    let sentence = |text: &crate::text::Text| Sentence::of(text.get(language));
    let cautions = info.cautions.iter().filter_map(|number| {
        let caution = &pack.cautions.get(usize::from(*number))?.entry;
        let shown = CautionShown {
            id: caution.id.value.clone(),
            kind: caution.kind,
            text: caution.text.get(language).to_owned(),
        };
        Some((*number, Rendered::of(shown)))
    });
    let expect = info.expect.iter().map(|(what, _)| {
        let outlook = pack.outlooks.get(usize::from(*what)).map(|outlook| &outlook.entry);
        (
            outlook.map_or_else(String::new, |outlook| outlook.id.value.clone()),
            said(outlook.map_or("", |outlook| outlook.name.get(language))),
        )
    });
    RulePhrases {
        title: text(&entry.title),
        why: sentence(&entry.why),
        steps: Rendered::of(entry.steps.get(language).to_vec()),
        professional: (!entry.professional.get(language).is_empty()).then(|| text(&entry.professional)),
        emergency: entry
            .emergency
            .as_ref()
            .map(|emergency| Rendered::of(EmergencyShown { call: emergency.call.get(language).to_owned() })),
        cautions: cautions.collect(),
        sources: Rendered::of(sources(&info.sources, pack)),
        materials: Rendered::of(materials(info, pack, language)),
        apart: Rendered::of(apart(info, pack, language)),
        holds: entry.hold.iter().map(|hold| sentence(&hold.because)).collect(),
        outside: [sentence(&entry.outside.early), sentence(&entry.outside.late), sentence(&entry.outside.never)],
        expect: expect.collect(),
    }
}

/// Sources by their numbers.
pub(super) fn sources(numbers: &[u16], pack: &Pack) -> Vec<SourceShown> {
    let sources = numbers.iter().filter_map(|number| pack.sources.get(usize::from(*number)));
    sources
        .map(|source| SourceShown {
            id: source.entry.id.value.clone(),
            title: source.entry.title.clone(),
            publisher: source.entry.publisher.clone(),
            year: source.entry.year,
            how_read: source.entry.how_read.clone(),
        })
        .collect()
}

/// The materials of a rule.
pub(super) fn materials(info: &RuleInfo, pack: &Pack, language: &str) -> Vec<MaterialShown> {
    let materials = info.materials.iter().filter_map(|number| pack.materials.get(usize::from(*number)));
    materials
        .map(|material| MaterialShown {
            id: material.entry.id.value.clone(),
            name: material.entry.name.get(language).to_owned(),
            analysis: material.entry.analysis.get(language).to_owned(),
            hazard: material.entry.hazard,
        })
        .collect()
}

/// What the work of a rule is kept apart from.
pub(super) fn apart(info: &RuleInfo, pack: &Pack, language: &str) -> Vec<ApartShown> {
    info.apart
        .iter()
        .filter_map(|apart| {
            let (of, id, name) = match apart.from {
                Subject::Job(job) => {
                    let entry = &pack.jobs.get(usize::from(job))?.entry;
                    ("job", &entry.id.value, entry.name.get(language))
                }
                Subject::Material(material) => {
                    let entry = &pack.materials.get(usize::from(material))?.entry;
                    ("material", &entry.id.value, entry.name.get(language))
                }
                Subject::Class(class) => {
                    let entry = &pack.classes.get(usize::from(class))?.entry;
                    ("class", &entry.id.value, entry.name.get(language))
                }
                Subject::Rule(rule) => {
                    let entry = &pack.rules.get(rule as usize)?.entry;
                    ("rule", &entry.id.value, entry.title.get(language))
                }
            };
            Some(ApartShown { of, id: id.clone(), name: name.to_owned(), days: apart.days })
        })
        .collect()
}

fn plant(book: &PlantBook, set: &Set, language: &str) -> PlantPhrases {
    let facts = |term: &Term| {
        let facts = term_name::leaves(term).into_iter().map(|leaf| FactPhrases {
            term: leaf.clone(),
            whole: std::ptr::eq(leaf, term),
            name: Rendered::of(term_name::of(leaf, set, book)),
            words: Rendered::of(words::term(leaf, set, book, language)),
            unit: value::unit(leaf),
        });
        facts.collect()
    };
    PlantPhrases {
        facts: book.probes.iter().map(facts).collect(),
        rules: book.rules.iter().map(|rule| plant_rule(rule, set, language)).collect(),
    }
}

fn plant_rule(rule: &PlantRule, set: &Set, language: &str) -> PlantRulePhrases {
    let sides = rule.windows.iter().flat_map(|window| [&window.opens, &window.best, &window.closes]).flatten();
    let in_words = |side: &Side| side.iter().map(|at| words::marker(&at.text, language)).collect();
    let written = set.pack.rules.get(rule.rule as usize).map(|filed| filed.entry.amount.as_slice()).unwrap_or_default();
    let amounts = written.iter().zip(&rule.amounts).map(|(entry, amount)| {
        let typical = entry.typical.as_ref().map(|typical| Rendered::of(amounts::range(typical, amount, set)));
        AmountPhrases {
            what: Rendered::of(entry.what.get(language).to_owned()),
            typical,
            us: amount.quantity.and_then(|quantity| us_conversion(quantity.unit)),
        }
    });
    PlantRulePhrases { sides: sides.map(in_words).collect(), amounts: amounts.collect() }
}

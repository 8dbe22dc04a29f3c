//! The bench: the scenarios of a set, ready to be run against its mutants.

use std::sync::Arc;

use lammas_agronomy::season::SiteShift;
use serde::Serialize;

use super::{Mutant, Operator, material, rule};
use crate::compare::{self, Sentence, Words};
use crate::compile::book::PlantBook;
use crate::compile::rule::{Apart, RuleInfo};
use crate::compile::set::Set;
use crate::decide::decision::{Decision, decide};
use crate::decide::moment::Moment;
use crate::explain::voice::Voice;
use crate::explain::whole::{self, Extent};
use crate::fault::Place;
use crate::pack::expression::place;
use crate::pack::material::Hazard;
use crate::pack::scenario::{Expected, ScenarioEntry};
use crate::pack::{Filed, MaterialEntry};
use crate::question::{Climate, Question};
use crate::scenario::{Outcome, expected, question, run};

/// An entry whose mutants are tried, by its number in the set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A rule.
    Rule(usize),
    /// A material.
    Material(usize),
}

/// A mutant that no scenario noticed.
#[derive(Clone, Debug, Serialize)]
pub struct Survivor {
    /// What was done.
    pub operator: Operator,
    /// What that means, in words.
    pub change: String,
    /// Where the changed field stands.
    pub place: Place,
}

/// How much of an entry the scenarios notice.
#[derive(Clone, Debug, Serialize)]
pub struct Score {
    /// rule or material.
    pub entry: &'static str,
    /// Its id.
    pub id: String,
    /// Where it stands.
    pub place: Place,
    /// Whether it is, spreads, or guards against a material whose label says how much, or one that is restricted.
    pub hazardous: bool,
    /// Mutants that count.
    pub mutants: usize,
    /// Those that a scenario noticed.
    pub noticed: usize,
    /// Those that none noticed.
    pub survivors: Vec<Survivor>,
}

impl Score {
    /// Noticed in a hundred; none where nothing counts.
    #[must_use]
    pub fn percent(&self) -> Option<f64> {
        percent(self.noticed, self.mutants)
    }
}

/// So many in a hundred of so many; none of none.
#[must_use]
#[expect(clippy::cast_precision_loss, reason = "counts of mutants are small")]
pub fn percent(noticed: usize, mutants: usize) -> Option<f64> {
    (mutants > 0).then(|| 100.0 * noticed as f64 / mutants as f64)
}

/// A scenario that holds, with what was decided.
#[derive(Debug)]
struct Case<'a> {
    expect: &'a Expected,
    question: Question,
    /// Which of the climates of the bench.
    climate: usize,
    decision: Decision,
    names: Vec<&'a str>,
}

/// The scenarios of a set, ready to be run against its mutants.
#[derive(Debug)]
pub struct Bench<'a> {
    set: &'a Set,
    /// The same without its scenarios: it is copied for each mutant.
    bare: Set,
    cases: Vec<Case<'a>>,
    climates: Vec<(Arc<Climate>, SiteShift)>,
}

impl<'a> Bench<'a> {
    /// A bench for a set.
    ///
    /// # Errors
    /// The scenarios that differ already: they would notice every mutant.
    pub fn new(set: &'a Set) -> Result<Self, Vec<Outcome>> {
        let failed: Vec<Outcome> =
            set.pack.scenarios.iter().map(|one| run(set, one)).filter(|outcome| !outcome.passed()).collect();
        if !failed.is_empty() {
            return Err(failed);
        }
        let mut bare = set.clone();
        bare.pack.scenarios.clear();
        bare.pack.climates.clear();
        bare.pack.files.clear();
        let mut bench = Self { set, bare, cases: Vec::new(), climates: Vec::new() };
        for filed in &set.pack.scenarios {
            bench.add(&filed.entry);
        }
        Ok(bench)
    }

    fn add(&mut self, entry: &'a ScenarioEntry) {
        let Ok(mut question) = question(self.set, &entry.ask) else { return };
        let Some(book) = self.set.plants.get(usize::from(question.plant)) else { return };
        // Scenarios of one climate share it, and with it what its year makes of the windows.
        let shift = SiteShift { frost_hollow: entry.ask.site.frost_hollow == Some(true) };
        let same = |(known, other): &(Arc<Climate>, SiteShift)| {
            known.sha256 == question.climate.sha256 && known.id == question.climate.id && *other == shift
        };
        let climate = self.climates.iter().position(same).unwrap_or(self.climates.len());
        match self.climates.get(climate) {
            Some((known, _)) => question.climate = Arc::clone(known),
            None => self.climates.push((Arc::clone(&question.climate), shift)),
        }
        let moment = Moment::new(self.set, book, &question, question.day);
        let decision = decide(&moment);
        drop(moment);
        self.cases.push(Case { names: named(&entry.expect), expect: &entry.expect, question, climate, decision });
    }

    /// Every rule, and every material that has something to lose.
    #[must_use]
    pub fn subjects(&self) -> Vec<Subject> {
        let rules = (0..self.set.pack.rules.len()).map(Subject::Rule);
        rules.chain((0..self.set.pack.materials.len()).map(Subject::Material)).collect()
    }

    /// The rules and materials with which work can hurt, and the guards against it.
    #[must_use]
    pub fn hazardous(&self) -> Vec<Subject> {
        let mut subjects = self.subjects();
        subjects.retain(|subject| match subject {
            Subject::Rule(number) => self.is_hazardous(*number),
            Subject::Material(number) => self.set.pack.materials.get(*number).is_some_and(is_labelled),
        });
        subjects
    }

    /// The subject of an id, a rule or a material.
    #[must_use]
    pub fn subject(&self, id: &str) -> Option<Subject> {
        let rule = self.set.pack.rules.iter().position(|filed| filed.entry.id.value == id).map(Subject::Rule);
        rule.or_else(|| {
            self.set.pack.materials.iter().position(|filed| filed.entry.id.value == id).map(Subject::Material)
        })
    }

    /// Tries every mutant of an entry.
    #[must_use]
    pub fn score(&self, subject: Subject) -> Option<Score> {
        let words = Words::within(self.set, "en");
        match subject {
            Subject::Rule(number) => {
                let filed = self.set.pack.rules.get(number)?;
                let mutants = rule::mutants(filed);
                let id = &filed.entry.id;
                let mut score = self.empty("rule", &id.value, place(&filed.file, id), self.is_hazardous(number));
                for mutant in mutants {
                    let said = compare::rule::differences(&filed.entry, &mutant.entry, words);
                    self.try_one(&mut score, &said, &mutant, |set, entry| set.with_rule(number, entry).ok(), &[number]);
                }
                Some(score)
            }
            Subject::Material(number) => {
                let filed = self.set.pack.materials.get(number)?;
                let mutants = material::mutants(filed);
                let id = &filed.entry.id;
                let mut score = self.empty("material", &id.value, place(&filed.file, id), is_labelled(filed));
                let with: Vec<usize> = self
                    .set
                    .rules
                    .iter()
                    .enumerate()
                    .filter(|(_, info)| info.materials.iter().any(|material| usize::from(*material) == number))
                    .map(|(at, _)| at)
                    .collect();
                for mutant in mutants {
                    let said = compare::material::differences(&filed.entry, &mutant.entry, words);
                    self.try_one(&mut score, &said, &mutant, |set, entry| set.with_material(number, entry).ok(), &with);
                }
                Some(score)
            }
        }
    }

    fn empty(&self, entry: &'static str, id: &str, place: Place, hazardous: bool) -> Score {
        Score { entry, id: id.to_owned(), place, hazardous, mutants: 0, noticed: 0, survivors: Vec::new() }
    }

    /// Whether a rule works with a hazardous material, or is a guard that binds such a rule.
    fn is_hazardous(&self, number: usize) -> bool {
        let Some(info) = self.set.rules.get(number) else { return false };
        let binds = |blocks: &crate::compile::rule::Blocks| {
            let rules = (0_u32..).zip(&self.set.rules).filter(|(_, other)| other.is_hazardous());
            let plants = 0..u16::try_from(self.set.plants.len()).unwrap_or(u16::MAX);
            rules.into_iter().any(|(own, other)| plants.clone().any(|plant| blocks.binds(other, own, plant)))
        };
        info.is_hazardous() || info.blocks.as_ref().is_some_and(binds)
    }

    fn try_one<T: Clone>(
        &self,
        score: &mut Score,
        said: &[Sentence],
        mutant: &Mutant<T>,
        compiled: impl FnOnce(&Set, T) -> Option<Set>,
        changed: &[usize],
    ) {
        if said.is_empty() {
            return;
        }
        let Some(set) = compiled(&self.bare, mutant.entry.clone()) else { return };
        if is_in_rule_info(mutant.operator) && set.materials == self.set.materials && self.has_same_rules(&set) {
            // Said elsewhere as well, on the other side or by a material: the set is the same.
            return;
        }
        score.mutants += 1;
        if self.is_noticed(&set, changed) {
            score.noticed += 1;
        } else {
            let change = said.iter().map(|sentence| sentence.text.as_str()).collect::<Vec<_>>().join("; ");
            score.survivors.push(Survivor { operator: mutant.operator, change, place: mutant.place.clone() });
        }
    }

    /// Whether the rules of a set are the same. Of two separations from one thing the longer counts.
    fn has_same_rules(&self, set: &Set) -> bool {
        let longest = |rules: &[RuleInfo]| -> Vec<RuleInfo> {
            let one = |info: &RuleInfo| {
                let mut info = info.clone();
                let all = info.apart.clone();
                let is_longest = |one: &Apart| !all.iter().any(|other| other.from == one.from && other.days > one.days);
                info.apart.retain(is_longest);
                info
            };
            rules.iter().map(one).collect()
        };
        longest(&set.rules) == longest(&self.set.rules)
    }

    /// Whether any scenario differs in a set in which these rules changed.
    fn is_noticed(&self, set: &Set, changed: &[usize]) -> bool {
        let ids: Vec<&str> =
            changed.iter().filter_map(|at| self.set.rules.get(*at)).map(|info| info.id.as_str()).collect();
        let mut climates: Vec<Option<Arc<Climate>>> = vec![None; self.climates.len()];
        // Those first that name the rule: most likely they notice.
        let names = |case: &&Case<'_>| case.names.iter().any(|name| ids.contains(name));
        self.cases
            .iter()
            .filter(names)
            .chain(self.cases.iter().filter(|case| !names(case)))
            .any(|case| self.differs(case, set, changed, &mut climates))
    }

    fn differs(&self, case: &Case<'_>, set: &Set, changed: &[usize], climates: &mut [Option<Arc<Climate>>]) -> bool {
        let Some(book) = set.plants.get(usize::from(case.question.plant)) else { return true };
        let has = |book: &PlantBook| book.rules.iter().any(|rule| changed.contains(&(rule.rule as usize)));
        if !has(book) && !self.set.plants.get(usize::from(case.question.plant)).is_some_and(has) {
            return false;
        }
        // What a climate makes of windows is kept by the set: another set, another climate of the same numbers.
        let mut question = case.question.clone();
        if let (Some(slot), Some((known, shift))) = (climates.get_mut(case.climate), self.climates.get(case.climate)) {
            let fresh = || {
                let (id, sha256) = (known.id.clone(), known.sha256.clone());
                Arc::new(Climate::with_hash(id, sha256, known.profile.clone(), *shift))
            };
            question.climate = Arc::clone(slot.get_or_insert_with(fresh));
        }
        let moment = Moment::new(set, book, &question, question.day);
        let decision = decide(&moment);
        let speaks = decision.verdicts.iter().any(|verdict| changed.contains(&(verdict.rule as usize)));
        let asks = !case.expect.asked.is_empty() || case.expect.asked_first.is_some();
        if !speaks && !asks && decision.verdicts == case.decision.verdicts {
            return false;
        }
        let Some(voice) = Voice::new(&moment, "en") else { return true };
        let extent = Extent { most_depends: usize::MAX, ..Extent::STANDARD };
        let answer = whole::explain(&decision, extent, voice);
        !expected::differences(case.expect, &answer, set).is_empty()
    }
}

fn is_labelled(material: &Filed<MaterialEntry>) -> bool {
    material.entry.hazard >= Hazard::Label
}

/// Whether what was changed stands in the rule's or the material's own numbers and nowhere else.
const fn is_in_rule_info(operator: Operator) -> bool {
    matches!(
        operator,
        Operator::SeparationShortened
            | Operator::SeparationDropped
            | Operator::OrderDropped
            | Operator::ClashDropped
            | Operator::TurnsDropped
            | Operator::CautionDropped
            | Operator::ClassDropped
    )
}

/// The rules that an expectation names.
fn named(expect: &Expected) -> Vec<&str> {
    expect
        .advised
        .iter()
        .map(|task| &task.rule)
        .chain(expect.held.iter().map(|held| &held.rule))
        .chain(expect.depends.iter().map(|depends| &depends.rule))
        .chain(&expect.noted)
        .chain(&expect.order)
        .chain(&expect.absent)
        .map(|rule| rule.value.as_str())
        .collect()
}

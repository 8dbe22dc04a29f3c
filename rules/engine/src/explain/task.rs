//! Tasks in words.

use super::answer::{
    ApartShown, CheckShown, FactShown, MaterialShown, Priority, Reason, RepeatShown, SourceShown, Task,
};
use super::{amounts, cautions, certainty, expect, value, window};
use crate::compile::rule::{PlantRule, RuleInfo, Subject};
use crate::compile::term::Term;
use crate::decide::moment::Moment;
use crate::decide::outcome::{CheckFirst, Verdict};
use crate::decide::truth::deciding_atoms;
use crate::fact::value::Truth;
use crate::pack::Pack;
use crate::rank::band;

/// A task that applies; `shown` are the rules of the answer, for the order between them.
#[must_use]
pub fn of(verdict: &Verdict, shown: &[u32], moment: &Moment<'_>, language: &str) -> Option<Task> {
    let set = moment.set;
    let rule = moment.book.rules.get(verdict.at as usize)?;
    let info = set.rules.get(verdict.rule as usize)?;
    let entry = &set.pack.rules.get(verdict.rule as usize)?.entry;
    let some = |text: &str| (!text.is_empty()).then(|| text.to_owned());
    Some(Task {
        id: info.id.clone(),
        rule_set: set.pack.header.name.value.clone(),
        also: Vec::new(),
        version: set.pack.header.version.value.clone(),
        job: info.job.map(|job| set.names.jobs.name(job).to_owned()),
        title: entry.title.get(language).to_owned(),
        status: "applies",
        kind: info.kind,
        priority: Priority {
            score: verdict.score.total,
            band: band(info, &verdict.window, moment),
            parts: verdict.score,
        },
        window: window::shown(rule, &verdict.window, moment, language),
        check_first: check_first(verdict, rule, moment, language),
        steps: entry.steps.get(language).to_vec(),
        amounts: amounts::of(rule, moment, language),
        materials: materials(info, &moment.set.pack, language),
        after: info
            .after
            .iter()
            .filter(|(other, _)| shown.contains(other))
            .filter_map(|(other, _)| set.rules.get(*other as usize).map(|info| info.id.clone()))
            .collect(),
        keep_apart: apart(info, &moment.set.pack, language),
        repeat: repeat(info),
        reasons: vec![reason(entry.why.get(language), rule, moment, language)],
        cautions: cautions::of(info, moment, language),
        professional: some(entry.professional.get(language)),
        expect: expect::of(info, moment, language),
        evidence: info.evidence,
        strength: info.strength,
        certainty: certainty::of(rule, &verdict.window, moment),
        sources: sources(info, moment),
    })
}

/// The reason of a rule, with the facts that decided.
#[must_use]
pub fn reason(text: &str, rule: &PlantRule, moment: &Moment<'_>, language: &str) -> Reason {
    let mut atoms = Vec::new();
    deciding_atoms(&rule.whom, moment, &mut |atom| atoms.push(atom));
    deciding_atoms(&rule.when, moment, &mut |atom| atoms.push(atom));
    let mut shown = signs_of_problem(rule, moment, language);
    shown.extend(facts(&atoms, moment, language));
    Reason { text: filled(text, rule, moment, language), facts: shown }
}

/// The signs that speak for the problem which a rule treats.
fn signs_of_problem(rule: &PlantRule, moment: &Moment<'_>, language: &str) -> Vec<FactShown> {
    let problem = rule.problem.and_then(|number| moment.book.problems.iter().find(|p| p.problem == number));
    let signs = problem.map(|p| p.signs.as_slice()).unwrap_or_default();
    signs
        .iter()
        .filter(|(sign, points, _)| {
            *points > 0 && moment.question.signs.get(usize::from(*sign)).is_some_and(|s| s.seen == Truth::True)
        })
        .map(|(sign, ..)| value::fact(&Term::Sign(*sign), moment, language))
        .collect()
}

/// The facts behind atoms, each once, in the order in which they are read.
#[must_use]
pub fn facts(atoms: &[u32], moment: &Moment<'_>, language: &str) -> Vec<FactShown> {
    let mut out: Vec<FactShown> = Vec::new();
    for atom in atoms {
        let term = moment.book.atoms.get(*atom as usize).and_then(|a| moment.book.probes.get(a.probe as usize));
        for leaf in term.map(super::term_name::leaves).unwrap_or_default() {
            let fact = value::fact(leaf, moment, language);
            if !out.iter().any(|other| other.name == fact.name) {
                out.push(fact);
            }
        }
    }
    out
}

/// A text with its `{fact}` filled in: facts that the rule reads, by their printed names. Anything else in braces stands as it is, without them.
#[must_use]
pub fn filled(text: &str, rule: &PlantRule, moment: &Moment<'_>, language: &str) -> String {
    if !text.contains('{') {
        return text.to_owned();
    }
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        out.push_str(before);
        let Some((name, tail)) = after.split_once('}') else {
            out.push_str(after);
            return out;
        };
        let term = rule
            .reads
            .iter()
            .filter_map(|atom| moment.book.atoms.get(*atom as usize))
            .filter_map(|atom| moment.book.probes.get(atom.probe as usize))
            .flat_map(super::term_name::leaves)
            .find(|leaf| super::term_name::of(leaf, moment.set, moment.book) == name);
        match term {
            Some(term) => out.push_str(&value::in_words(term, moment, language)),
            None => out.push_str(name),
        }
        rest = tail;
    }
    out.push_str(rest);
    out
}

fn check_first(verdict: &Verdict, rule: &PlantRule, moment: &Moment<'_>, language: &str) -> Vec<CheckShown> {
    let entry = moment.set.pack.rules.get(verdict.rule as usize).map(|r| &r.entry);
    verdict
        .check_first
        .iter()
        .filter_map(|check| match check {
            CheckFirst::Hold(at) => {
                let hold = entry?.hold.get(*at)?;
                Some(CheckShown { guard: None, text: filled(hold.because.get(language), rule, moment, language) })
            }
            CheckFirst::Guard(at) => {
                let guard = moment.book.rules.get(*at as usize)?;
                let written = moment.set.pack.rules.get(guard.rule as usize)?;
                Some(CheckShown {
                    guard: Some(written.entry.id.value.clone()),
                    text: filled(written.entry.why.get(language), guard, moment, language),
                })
            }
        })
        .collect()
}

/// The materials of a rule.
pub(super) fn materials(info: &RuleInfo, pack: &Pack, language: &str) -> Vec<MaterialShown> {
    info.materials
        .iter()
        .filter_map(|number| pack.materials.get(usize::from(*number)))
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

/// How often a rule's work is done.
pub(super) fn repeat(info: &RuleInfo) -> Option<RepeatShown> {
    let repeat = &info.repeat;
    (repeat.every.is_some() || repeat.at_most.is_some()).then(|| RepeatShown {
        min_days: repeat.every.map(|(min, _)| min),
        max_days: repeat.every.map(|(_, max)| max),
        times: repeat.at_most.map(|(times, _)| times),
        within_days: repeat.at_most.map(|(_, days)| days),
    })
}

/// The sources of a rule.
#[must_use]
pub fn sources(info: &RuleInfo, moment: &Moment<'_>) -> Vec<SourceShown> {
    sources_by_number(&info.sources, &moment.set.pack)
}

/// Sources by their numbers.
pub(super) fn sources_by_number(numbers: &[u16], pack: &Pack) -> Vec<SourceShown> {
    numbers
        .iter()
        .filter_map(|number| pack.sources.get(usize::from(*number)))
        .map(|source| SourceShown {
            id: source.entry.id.value.clone(),
            title: source.entry.title.clone(),
            publisher: source.entry.publisher.clone(),
            year: source.entry.year,
            how_read: source.entry.how_read.clone(),
        })
        .collect()
}

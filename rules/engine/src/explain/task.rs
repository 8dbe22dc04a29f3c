//! Tasks in words.

use super::answer::{CheckShown, FactShown, Priority, Reason, RepeatShown, Said, Task};
use super::phrases::{FactPhrases, Sentence};
use super::voice::Voice;
use super::{amounts, cautions, certainty, expect, value, window};
use crate::compile::rule::{PlantRule, RuleInfo};
use crate::compile::term::Term;
use crate::decide::outcome::{CheckFirst, Verdict};
use crate::decide::truth::atoms_of_true;
use crate::fact::value::Truth;
use crate::rank::band;

/// A task that applies; `shown` are the rules of the answer, for the order between them. A full one says how its score and
/// its window come about.
#[must_use]
pub fn of<'a>(verdict: &Verdict, shown: &[u32], full: bool, voice: Voice<'_, 'a>) -> Option<Task<'a>> {
    let (moment, set) = (voice.moment, voice.moment.set);
    let rule = moment.book.rules.get(verdict.at as usize)?;
    let info = set.rules.get(verdict.rule as usize)?;
    let phrases = voice.rule(verdict.rule)?;
    let layer = set.layer_of(info)?;
    Some(Task {
        id: &info.id,
        rule_set: &layer.name,
        also: &info.also,
        version: &layer.version,
        job: info.job.map(|job| set.names.jobs.name(job)),
        title: &phrases.title,
        status: "applies",
        kind: info.kind,
        priority: Priority {
            score: verdict.score.total,
            band: band(info, &verdict.window, moment),
            parts: full.then_some(verdict.score),
        },
        window: window::shown(verdict.at, rule, &verdict.window, full, voice),
        check_first: check_first(verdict, rule, voice),
        steps: &phrases.steps,
        amounts: amounts::of(verdict.at, rule, voice),
        materials: &phrases.materials,
        after: info
            .after
            .iter()
            .filter(|(other, _)| shown.contains(other))
            .filter_map(|(other, _)| set.rules.get(*other as usize).map(|info| info.id.as_str()))
            .collect(),
        keep_apart: &phrases.apart,
        repeat: repeat(info),
        reasons: [dated(reason(&phrases.why, rule, voice), rule, verdict, voice)],
        cautions: cautions::of(phrases, moment),
        professional: phrases.professional.as_ref(),
        emergency: phrases.emergency.as_ref(),
        expect: expect::of(info, phrases, moment),
        evidence: info.evidence,
        strength: info.strength,
        certainty: certainty::of(rule, verdict, moment),
        sources: &phrases.sources,
    })
}

/// A reason that also says when the day lies within the likely error of an estimated side of the window.
fn dated<'a>(mut reason: Reason<'a>, rule: &PlantRule, verdict: &Verdict, voice: Voice<'_, 'a>) -> Reason<'a> {
    if let Some(why) = certainty::because_of_a_side(rule, &verdict.window, voice.moment, voice.language) {
        reason.text = Said::Made(format!("{} {why}", &*reason.text));
    }
    reason
}

/// The reason of a rule that applies, with the facts that decided.
#[must_use]
pub fn reason<'a>(text: &'a Sentence, rule: &PlantRule, voice: Voice<'_, 'a>) -> Reason<'a> {
    let mut shown = signs_of_problem(rule, voice);
    atoms_of_true(&rule.whom, voice.moment, &mut |atom| add_facts(atom, voice, &mut shown));
    atoms_of_true(&rule.when, voice.moment, &mut |atom| add_facts(atom, voice, &mut shown));
    Reason { text: filled(text, rule, voice), facts: shown }
}

/// The signs that speak for the problem which a rule treats.
fn signs_of_problem<'a>(rule: &PlantRule, voice: Voice<'_, 'a>) -> Vec<FactShown<'a>> {
    let moment = voice.moment;
    let problem = rule.problem.and_then(|number| moment.book.problems.iter().find(|p| p.problem == number));
    let signs = problem.map(|p| p.signs.as_slice()).unwrap_or_default();
    signs
        .iter()
        .filter(|(sign, points, _)| {
            *points > 0 && moment.question.signs.get(usize::from(*sign)).is_some_and(|s| s.seen == Truth::True)
        })
        .map(|(sign, ..)| value::fact(&Term::Sign(*sign), voice))
        .collect()
}

/// The facts behind atoms, each once, in the order in which they are read.
#[must_use]
pub fn facts<'a>(atoms: &[u32], voice: Voice<'_, 'a>) -> Vec<FactShown<'a>> {
    let mut out = Vec::new();
    for atom in atoms {
        add_facts(*atom, voice, &mut out);
    }
    out
}

fn add_facts<'a>(atom: u32, voice: Voice<'_, 'a>, out: &mut Vec<FactShown<'a>>) {
    let Some(probe) = voice.moment.book.atoms.get(atom as usize).map(|atom| atom.probe) else { return };
    for fact in of_term(probe, voice) {
        if !out.iter().any(|other| *other.name == **fact.name) {
            out.push(value::shown(fact, probe, voice));
        }
    }
}

/// The facts in a term, by its number.
pub(super) fn of_term<'a>(probe: u32, voice: Voice<'_, 'a>) -> &'a [FactPhrases] {
    voice.plant.facts.get(probe as usize).map(Vec::as_slice).unwrap_or_default()
}

/// A text with its `{fact}` filled in: facts that the rule reads, by their printed names. Anything else in braces stands as
/// it is, without them.
#[must_use]
pub fn filled<'a>(sentence: &'a Sentence, rule: &PlantRule, voice: Voice<'_, 'a>) -> Said<'a> {
    if !sentence.quotes {
        return Said::Phrase(&sentence.text);
    }
    let text: &str = &sentence.text;
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        out.push_str(before);
        let Some((name, tail)) = after.split_once('}') else {
            out.push_str(after);
            return Said::Made(out);
        };
        let fact = rule
            .reads
            .iter()
            .filter_map(|atom| voice.moment.book.atoms.get(*atom as usize))
            .flat_map(|atom| of_term(atom.probe, voice).iter().map(|fact| (fact, atom.probe)))
            .find(|(fact, _)| **fact.name == *name);
        match fact {
            Some((fact, probe)) => out.push_str(&value::in_words(fact, probe, voice)),
            None => out.push_str(name),
        }
        rest = tail;
    }
    out.push_str(rest);
    Said::Made(out)
}

fn check_first<'a>(verdict: &Verdict, rule: &PlantRule, voice: Voice<'_, 'a>) -> Vec<CheckShown<'a>> {
    let moment = voice.moment;
    let shown = |check: &CheckFirst| match check {
        CheckFirst::Hold(at) => {
            let because = voice.rule(verdict.rule)?.holds.get(*at)?;
            Some(CheckShown { guard: None, text: filled(because, rule, voice) })
        }
        CheckFirst::Guard(at) => {
            let guard = moment.book.rules.get(*at as usize)?;
            let info = moment.set.rules.get(guard.rule as usize)?;
            Some(CheckShown { guard: Some(&info.id), text: filled(&voice.rule(guard.rule)?.why, guard, voice) })
        }
    };
    verdict.check_first.iter().filter_map(shown).collect()
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

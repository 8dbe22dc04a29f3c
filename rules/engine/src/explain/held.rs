//! Rules that are held: why, and when to look again.

use lammas_agronomy::calendar::Day;

use super::answer::{FactShown, Held, HeldBy, Said};
use super::phrases::Sentence;
use super::voice::Voice;
use super::{cautions, task, words};
use crate::decide::decision::by_itself;
use crate::decide::group::Group;
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, Outcome, Verdict};
use crate::decide::truth::deciding_atoms;
use crate::decide::turns::{self, Turns};

/// How far ahead it is looked.
const FURTHEST: i32 = 400;

/// The held rules in words, with the day on which each is held no longer.
#[must_use]
pub fn of<'a>(verdicts: &[&Verdict], voice: Voice<'_, 'a>) -> Vec<Held<'a>> {
    let days = look_again(verdicts, voice.moment);
    verdicts
        .iter()
        .zip(days)
        .filter_map(|(verdict, day)| {
            let Outcome::Held(blocks) = &verdict.outcome else { return None };
            one(verdict, blocks, day, voice)
        })
        .collect()
}

fn one<'a>(verdict: &Verdict, blocks: &[Block], day: Option<Day>, voice: Voice<'_, 'a>) -> Option<Held<'a>> {
    let (moment, set) = (voice.moment, voice.moment.set);
    let info = set.rules.get(verdict.rule as usize)?;
    let phrases = voice.rule(verdict.rule)?;
    let said: Vec<HeldBy<'_>> = blocks.iter().filter_map(|block| because(block, verdict, voice)).collect();
    let first = said.first();
    let mut atoms = Vec::new();
    if let Some(rule) = moment.book.rules.get(verdict.at as usize) {
        for block in blocks {
            let condition = match block {
                Block::Hold(at) => rule.holds.get(*at).map(|hold| &hold.condition),
                Block::Guard(at) => moment.book.rules.get(*at as usize).map(|guard| &guard.when),
                _ => Some(&rule.when),
            };
            if let Some(condition) = condition {
                deciding_atoms(condition, moment, &mut |atom| atoms.push(atom));
            }
        }
    }
    let facts = task::facts(&atoms, voice);
    let told = |fact: &&FactShown<'_>| fact.origin == "given" || fact.origin == "assumed";
    Some(Held {
        id: &info.id,
        rule_set: &set.layer_of(info)?.name,
        job: info.job.map(|job| set.names.jobs.name(job)),
        title: &phrases.title,
        kind: first.map_or("hold", |b| b.kind),
        because: first.map_or_else(|| Said::Made(String::new()), |b| b.because.clone()),
        blocks: said,
        look_again: day.map(Day::date),
        changes_with: facts.iter().filter(|_| day.is_none()).filter(told).map(|fact| fact.name.clone()).collect(),
        facts,
        cautions: cautions::of(phrases, moment),
        sources: &phrases.sources,
    })
}

/// The first reason of a rule that is held; none of any other.
pub(super) fn first_reason<'a>(verdict: &Verdict, voice: Voice<'_, 'a>) -> Option<Said<'a>> {
    let Outcome::Held(blocks) = &verdict.outcome else { return None };
    Some(because(blocks.first()?, verdict, voice)?.because)
}

/// Why a block holds a rule, in words.
pub(crate) fn because<'a>(block: &Block, verdict: &Verdict, voice: Voice<'_, 'a>) -> Option<HeldBy<'a>> {
    let (moment, language) = (voice.moment, voice.language);
    let rule = moment.book.rules.get(verdict.at as usize)?;
    let phrases = voice.rule(verdict.rule)?;
    let title = |rule: u32| voice.rule(rule).map_or("", |phrases| phrases.title.as_str());
    let id = |rule: u32| moment.set.rules.get(rule as usize).map(|info| info.id.as_str());
    let spanish = words::is_spanish(language);
    let fill = |sentence: &'a Sentence| task::filled(sentence, rule, voice);
    let (kind, because, by) = match block {
        Block::Hold(at) => ("hold", fill(phrases.holds.get(*at)?), None),
        Block::Guard(at) => {
            let guard = moment.book.rules.get(*at as usize)?;
            ("guard", task::filled(&voice.rule(guard.rule)?.why, guard, voice), id(guard.rule))
        }
        Block::Clash(other) => {
            let name = title(*other);
            let text = if spanish {
                format!("No el mismo día que «{name}», que hoy va antes.")
            } else {
                format!("Not on the same day as “{name}”, which goes first today.")
            };
            ("clash", Said::Made(text), id(*other))
        }
        Block::Apart { rule, until } => {
            let day = words::date(*until, language);
            let text = match (rule, spanish) {
                (Some(other), false) => format!("Keep it apart from “{}”: not before {day}.", title(*other)),
                (Some(other), true) => format!("Sepárelo de «{}»: no antes del {day}.", title(*other)),
                (None, false) => format!("Too soon after a work already done: not before {day}."),
                (None, true) => format!("Demasiado pronto tras una labor ya hecha: no antes del {day}."),
            };
            ("apart", Said::Made(text), rule.and_then(id))
        }
        Block::Done { until, at_most } => {
            let day = words::date(*until, language);
            let text = match (at_most, spanish) {
                (false, false) => format!("Done already; due again from {day}."),
                (false, true) => format!("Ya está hecho; toca de nuevo desde el {day}."),
                (true, false) => format!("Done as often as it should be; again from {day}."),
                (true, true) => format!("Ya se hizo cuantas veces conviene; de nuevo desde el {day}."),
            };
            ("done", Said::Made(text), None)
        }
        Block::Turn(other) => {
            let name = title(*other);
            let text = if spanish {
                format!("Se turna con «{name}», que toca ahora.")
            } else {
                format!("It takes turns with “{name}”, which is due now.")
            };
            ("apart", Said::Made(text), id(*other))
        }
        Block::Early => ("early", fill(phrases.outside.first()?), None),
        Block::Late => ("late", fill(phrases.outside.get(1)?), None),
        Block::Never => ("never", fill(phrases.outside.get(2)?), None),
        Block::Avoid => ("avoid", fill(&phrases.why), None),
        Block::Emergency(first) => {
            let name = title(*first);
            let is_one = moment.set.rules.get(verdict.rule as usize).is_some_and(|info| info.emergency);
            let text = match (is_one, spanish) {
                (false, false) => format!("First “{name}”. All else waits until nobody is in danger."),
                (false, true) => format!("Primero «{name}». Todo lo demás espera hasta que nadie corra peligro."),
                (true, false) => format!("This too, as soon as “{name}” is done."),
                (true, true) => format!("También esto, en cuanto esté hecho «{name}»."),
            };
            ("emergency", Said::Made(text), id(*first))
        }
        Block::Withheld => {
            let because = moment.set.pack.laid.withheld.get(id(verdict.rule)?)?;
            ("withheld", Said::Made(because.get(language).to_owned()), None)
        }
    };
    Some(HeldBy { kind, because, rule: by })
}

/// For each held rule the first later day on which it is held no longer, all else equal.
fn look_again(verdicts: &[&Verdict], moment: &Moment<'_>) -> Vec<Option<Day>> {
    let mut found: Vec<Option<Day>> = verdicts
        .iter()
        .map(|verdict| match &verdict.outcome {
            // Of two that take turns the other is done now and this one after the days between.
            Outcome::Held(blocks) => match blocks.as_slice() {
                [Block::Turn(_)] => {
                    let gap = moment
                        .set
                        .rules
                        .get(verdict.rule as usize)
                        .and_then(|info| info.alternate)
                        .map_or(0, |(_, gap, _)| gap);
                    Some(moment.day + i32::from(gap))
                }
                [Block::Apart { rule: Some(_), until }] => Some(*until),
                _ => None,
            },
            _ => None,
        })
        .collect();
    // Nobody knows when an emergency is over.
    let waits = |verdict: &Verdict| matches!(&verdict.outcome, Outcome::Held(blocks) if matches!(blocks.as_slice(), [Block::Emergency(_)]));
    if verdicts.iter().any(|verdict| waits(verdict)) {
        return found;
    }
    let candidates = turns::candidates(moment);
    let mut later = Moment::new(moment.set, moment.book, moment.question, moment.day);
    for (verdict, found) in verdicts.iter().zip(&mut found).filter(|(_, found)| found.is_none()) {
        *found = first_not_held(verdict, &candidates, moment.day, &mut later);
    }
    found
}

/// The first day, up to the furthest, on which a rule is held no longer: it is judged again wherever something turns.
fn first_not_held(verdict: &Verdict, candidates: &[u32], today: Day, later: &mut Moment<'_>) -> Option<Day> {
    let last = today + FURTHEST;
    later.move_to(today);
    // As long as it is held by itself, others don't matter.
    let own = Turns::of(vec![verdict.at], later);
    while matches!(by_itself(verdict.at, later), Some(Outcome::Held(_))) {
        let turn = own.next(later, last);
        if turn > last {
            return None;
        }
        later.move_to(turn);
    }
    let rivals = later.book.rules.get(verdict.at as usize).map(|rule| rule.rivals.as_slice()).unwrap_or_default();
    let rivals = rivals.iter().copied().filter(|at| *at != verdict.at && candidates.binary_search(at).is_ok());
    let mut group = Group::of(rivals.chain([verdict.at]), later, last);
    // Today it is held.
    while later.day == today || matches!(group.outcome(verdict.at, later), Some(Outcome::Held(_))) {
        if !group.go_on(later) {
            return None;
        }
    }
    Some(later.day)
}

//! Rules that are held: why, and when to look again.

use lammas_agronomy::calendar::Day;

use super::answer::{Held, HeldBy};
use super::{cautions, task, words};
use crate::compile::rule::RuleInfo;
use crate::decide::decision::one as one_rule;
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, Outcome, Verdict};
use crate::decide::truth::deciding_atoms;
use crate::decide::turns::Turns;

/// How far ahead it is looked.
const FURTHEST: i32 = 400;

/// The held rules in words, with the day on which each is held no longer.
#[must_use]
pub fn of(verdicts: &[&Verdict], moment: &Moment<'_>, language: &str) -> Vec<Held> {
    let days = look_again(verdicts, moment);
    verdicts
        .iter()
        .zip(days)
        .filter_map(|(verdict, day)| {
            let info = moment.set.rules.get(verdict.rule as usize)?;
            let Outcome::Held(blocks) = &verdict.outcome else { return None };
            Some(one(verdict, info, blocks, day, moment, language))
        })
        .collect()
}

fn one(
    verdict: &Verdict,
    info: &RuleInfo,
    blocks: &[Block],
    day: Option<Day>,
    moment: &Moment<'_>,
    language: &str,
) -> Held {
    let entry = moment.set.pack.rules.get(verdict.rule as usize).map(|r| &r.entry);
    let said: Vec<HeldBy> = blocks.iter().map(|block| because(block, verdict, moment, language)).collect();
    let first = said.first();
    let mut atoms = Vec::new();
    if let Some(rule) = moment.book.rules.get(verdict.at as usize) {
        for block in blocks {
            match block {
                Block::Hold(at) => {
                    if let Some(hold) = rule.holds.get(*at) {
                        deciding_atoms(&hold.condition, moment, &mut |atom| atoms.push(atom));
                    }
                }
                Block::Guard(at) => {
                    if let Some(guard) = moment.book.rules.get(*at as usize) {
                        deciding_atoms(&guard.when, moment, &mut |atom| atoms.push(atom));
                    }
                }
                _ => {
                    deciding_atoms(&rule.when, moment, &mut |atom| atoms.push(atom));
                }
            }
        }
    }
    let facts = task::facts(&atoms, moment, language);
    let changes_with = if day.is_none() {
        facts
            .iter()
            .filter(|fact| fact.origin == "given" || fact.origin == "assumed")
            .map(|fact| fact.name.clone())
            .collect()
    } else {
        Vec::new()
    };
    Held {
        id: info.id.clone(),
        rule_set: moment.set.pack.header.name.value.clone(),
        job: info.job.map(|job| moment.set.names.jobs.name(job).to_owned()),
        title: entry.map_or("", |e| e.title.get(language)).to_owned(),
        kind: first.map_or("hold", |b| b.kind),
        because: first.map(|b| b.because.clone()).unwrap_or_default(),
        blocks: said,
        facts,
        look_again: day.map(Day::date),
        changes_with,
        cautions: cautions::of(info, moment, language),
        sources: task::sources(info, moment),
    }
}

/// The first reason of a rule that is held; none of any other.
pub(super) fn first_reason(verdict: &Verdict, moment: &Moment<'_>, language: &str) -> Option<String> {
    let Outcome::Held(blocks) = &verdict.outcome else { return None };
    blocks.first().map(|block| because(block, verdict, moment, language).because)
}

fn title(rule: u32, moment: &Moment<'_>, language: &str) -> String {
    moment.set.pack.rules.get(rule as usize).map_or("", |r| r.entry.title.get(language)).to_owned()
}

fn rule_id(rule: u32, moment: &Moment<'_>) -> Option<String> {
    moment.set.rules.get(rule as usize).map(|info| info.id.clone())
}

fn because(block: &Block, verdict: &Verdict, moment: &Moment<'_>, language: &str) -> HeldBy {
    let entry = moment.set.pack.rules.get(verdict.rule as usize).map(|r| &r.entry);
    let rule = moment.book.rules.get(verdict.at as usize);
    let fill = |text: &str| rule.map_or_else(|| text.to_owned(), |rule| task::filled(text, rule, moment, language));
    let by = |kind: &'static str, because: String, rule: Option<String>| HeldBy { kind, because, rule };
    match block {
        Block::Hold(at) => {
            let text = entry.and_then(|e| e.hold.get(*at)).map_or("", |hold| hold.because.get(language));
            by("hold", fill(text), None)
        }
        Block::Guard(at) => {
            let guard = moment.book.rules.get(*at as usize);
            let number = guard.map_or(u32::MAX, |g| g.rule);
            let text = moment.set.pack.rules.get(number as usize).map_or("", |g| g.entry.why.get(language));
            let text = guard.map_or_else(|| text.to_owned(), |g| task::filled(text, g, moment, language));
            by("guard", text, rule_id(number, moment))
        }
        Block::Clash(other) => {
            let name = title(*other, moment, language);
            let text = if words::is_spanish(language) {
                format!("No el mismo día que «{name}», que hoy va antes.")
            } else {
                format!("Not on the same day as “{name}”, which goes first today.")
            };
            by("clash", text, rule_id(*other, moment))
        }
        Block::Apart { rule, until } => {
            let day = words::date(*until, language);
            let text = match (rule, words::is_spanish(language)) {
                (Some(other), false) => {
                    format!("Keep it apart from “{}”: not before {day}.", title(*other, moment, language))
                }
                (Some(other), true) => {
                    format!("Sepárelo de «{}»: no antes del {day}.", title(*other, moment, language))
                }
                (None, false) => format!("Too soon after a work already done: not before {day}."),
                (None, true) => format!("Demasiado pronto tras una labor ya hecha: no antes del {day}."),
            };
            by("apart", text, rule.and_then(|other| rule_id(other, moment)))
        }
        Block::Done { until, at_most } => {
            let day = words::date(*until, language);
            let text = match (at_most, words::is_spanish(language)) {
                (false, false) => format!("Done already; due again from {day}."),
                (false, true) => format!("Ya está hecho; toca de nuevo desde el {day}."),
                (true, false) => format!("Done as often as it should be; again from {day}."),
                (true, true) => format!("Ya se hizo cuantas veces conviene; de nuevo desde el {day}."),
            };
            by("done", text, None)
        }
        Block::Turn(other) => {
            let name = title(*other, moment, language);
            let text = if words::is_spanish(language) {
                format!("Se turna con «{name}», que toca ahora.")
            } else {
                format!("It takes turns with “{name}”, which is due now.")
            };
            by("apart", text, rule_id(*other, moment))
        }
        Block::Early => by("early", fill(entry.map_or("", |e| e.outside.early.get(language))), None),
        Block::Late => by("late", fill(entry.map_or("", |e| e.outside.late.get(language))), None),
        Block::Never => by("never", fill(entry.map_or("", |e| e.outside.never.get(language))), None),
        Block::Avoid => by("avoid", fill(entry.map_or("", |e| e.why.get(language))), None),
    }
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
    let mut later = Moment::new(moment.set, moment.book, moment.question, moment.day);
    for (verdict, found) in verdicts.iter().zip(&mut found).filter(|(_, found)| found.is_none()) {
        *found = first_not_held(verdict, moment.day, &mut later);
    }
    found
}

/// The first day, up to the furthest, on which a rule is held no longer: it is judged again wherever something turns.
fn first_not_held(verdict: &Verdict, today: Day, later: &mut Moment<'_>) -> Option<Day> {
    let last = today + FURTHEST;
    later.move_to(today);
    let rivals = later.book.rules.get(verdict.at as usize).map(|rule| rule.rivals.as_slice()).unwrap_or_default();
    let turns = Turns::of(std::iter::once(verdict.at).chain(rivals.iter().copied()), later);
    loop {
        let turn = turns.next(later, last);
        if turn > last {
            return None;
        }
        later.move_to(turn);
        if !matches!(one_rule(verdict.at, later), Some(Outcome::Held(_))) {
            return Some(turn);
        }
    }
}

//! The whole answer to a question.

use super::answer::{
    Answer, Assumption, CauseShown, ClimateShown, Depends, NextChange, NextOpening, Note, RuleSet, Task,
};
use super::{held, season, task, term_name, value, words};
use crate::ask;
use crate::compile::set::Set;
use crate::decide::decision::{Decision, decide};
use crate::decide::moment::Moment;
use crate::decide::outcome::{Could, Hangs, Outcome, Verdict};
use crate::decide::window::{self, State};
use crate::fact::value::Value;
use crate::pack::rule::Kind;
use crate::question::Question;
use crate::rank::order;
use crate::validity;
use crate::version::digest;
use lammas_agronomy::origin::Origin;

/// The most rules that depend which are shown to a caller.
pub const MOST_DEPENDS: usize = 12;

/// Answers a question in a language, with at most so many of the rules that depend; the rest is counted.
#[must_use]
pub fn answer(set: &Set, question: &Question, language: &str, most_depends: usize) -> Option<Answer> {
    let book = set.plants.get(usize::from(question.plant))?;
    let moment = Moment::new(set, book, question, question.day);
    let decision = decide(&moment);
    Some(explain(&decision, &moment, language, most_depends))
}

/// The decision of a moment in words.
#[must_use]
pub fn explain(decision: &Decision, moment: &Moment<'_>, language: &str, most_depends: usize) -> Answer {
    let (set, question) = (moment.set, moment.question);
    let of_kind = |wanted: Kind| {
        move |verdict: &&Verdict| set.rules.get(verdict.rule as usize).is_some_and(|info| info.kind == wanted)
    };
    let applying = || decision.verdicts.iter().filter(|v| v.outcome == Outcome::Applies);
    let mut order: Vec<&Verdict> = applying().filter(of_kind(Kind::Task)).collect();
    order::put(&mut order, moment);
    let shown: Vec<u32> = order.iter().map(|v| v.rule).collect();
    let tasks: Vec<Task> = order.iter().filter_map(|v| task::of(v, &shown, moment, language)).collect();
    let notes = applying().filter(of_kind(Kind::Know)).filter_map(|v| note(v, moment, language)).collect();
    let holding: Vec<&Verdict> = decision.verdicts.iter().filter(|v| matches!(v.outcome, Outcome::Held(_))).collect();
    let mut depends: Vec<&Verdict> =
        decision.verdicts.iter().filter(|v| matches!(v.outcome, Outcome::Depends { .. })).collect();
    depends.sort_by_key(|v| (!could_apply(v), std::cmp::Reverse(v.score.total)));
    let status = if !tasks.is_empty() {
        "advised"
    } else if depends.iter().any(|v| could_apply(v)) {
        "needs-facts"
    } else {
        "nothing-due"
    };
    let valid = validity::of(decision, moment);
    let header = &set.pack.header;
    Answer {
        status,
        tasks,
        held: held::of(&holding, moment, language),
        depends_more: depends.len().saturating_sub(most_depends),
        depends_on: depends.iter().take(most_depends).filter_map(|v| depend(v, moment, language)).collect(),
        questions: ask::next(decision, moment, language),
        notes,
        causes: causes(decision, moment, language),
        season: season::brief(&question.climate, moment.day, language),
        assumptions: assumptions(decision, moment, language),
        climate: climate(moment, language),
        asked: (*question.asked).clone(),
        date_origin: if question.day_assumed { "assumed" } else { "given" },
        rule_sets: vec![RuleSet {
            name: header.name.value.clone(),
            version: header.version.value.clone(),
            sha256: set.sha256.clone(),
        }],
        digest: digest::of(&question.asked, &[&set.sha256]),
        valid_from: valid.from.date(),
        valid_until: valid.until.date(),
        next_change: valid.change.and_then(|(rule, outcome)| {
            Some(NextChange {
                date: (valid.until + 1).date(),
                rule: set.rules.get(rule as usize)?.id.clone(),
                because: becomes(outcome, rule, moment, language),
            })
        }),
        next_opening: (status == "nothing-due").then(|| next_opening(moment, language)).flatten(),
        notice: words::notice(language),
    }
}

/// The climate that an answer stands on.
pub(super) fn climate(moment: &Moment<'_>, language: &str) -> ClimateShown {
    let climate = &moment.question.climate;
    ClimateShown {
        id: climate.id.clone(),
        sha256: climate.sha256.clone(),
        origin: climate.origin.as_str(),
        curve_error_k: super::number::shown(climate.season.largest_residual_k()),
        forecast: season::forecast(climate, moment.day, language),
    }
}

fn could_apply(verdict: &Verdict) -> bool {
    matches!(verdict.outcome, Outcome::Depends { could: Could::Apply, .. })
}

fn becomes(outcome: &str, rule: u32, moment: &Moment<'_>, language: &str) -> String {
    let title = moment.set.pack.rules.get(rule as usize).map_or("", |r| r.entry.title.get(language));
    let what = match outcome {
        "applies" => words::pick(
            language,
            "is due, or its window, amount or place in the list changes",
            "toca, o cambia su plazo, su cantidad o su lugar en la lista",
        ),
        "held" => words::pick(
            language,
            "has to wait, or waits for another reason",
            "tiene que esperar, o espera por otra razón",
        ),
        "depends" => words::pick(language, "depends on something not said", "depende de algo que no se ha dicho"),
        _ => words::pick(language, "is no longer due", "ya no toca"),
    };
    format!("{title}: {what}")
}

fn note(verdict: &Verdict, moment: &Moment<'_>, language: &str) -> Option<Note> {
    let rule = moment.book.rules.get(verdict.at as usize)?;
    let info = moment.set.rules.get(verdict.rule as usize)?;
    let entry = &moment.set.pack.rules.get(verdict.rule as usize)?.entry;
    let reason = task::reason(entry.why.get(language), rule, moment, language);
    Some(Note {
        id: info.id.clone(),
        title: entry.title.get(language).to_owned(),
        text: reason.text,
        facts: reason.facts,
        sources: task::sources(info, moment),
    })
}

/// A rule that depends, with what it hangs on; none of any other.
pub(super) fn depend(verdict: &Verdict, moment: &Moment<'_>, language: &str) -> Option<Depends> {
    let info = moment.set.rules.get(verdict.rule as usize)?;
    let Outcome::Depends { on, could } = &verdict.outcome else { return None };
    let mut facts: Vec<String> = Vec::new();
    let mut add = |name: String| {
        if !name.is_empty() && !facts.contains(&name) {
            facts.push(name);
        }
    };
    for hangs in on {
        match hangs {
            Hangs::Probe(probe) => {
                let term = moment.book.probes.get(*probe as usize);
                for leaf in term.map(term_name::leaves).unwrap_or_default() {
                    if crate::decide::read::term(leaf, moment).value == Value::Unknown || leaf.is_of_the_day() {
                        add(term_name::of(leaf, moment.set, moment.book));
                    }
                }
            }
            Hangs::Problem(problem) => add(format!("problem {}", moment.set.names.problems.name(*problem))),
            Hangs::History => add("history".to_owned()),
            Hangs::Window => {
                let rule = moment.book.rules.get(verdict.at as usize);
                for window in rule.map(|r| r.windows.as_slice()).unwrap_or_default() {
                    for at in [&window.opens, &window.closes].into_iter().flatten().flatten() {
                        if crate::decide::marker_dates::of(&at.marker, moment)
                            == crate::decide::marker_dates::Dates::Unknown
                        {
                            add(at.text.clone());
                        }
                    }
                }
            }
        }
    }
    Some(Depends {
        id: info.id.clone(),
        title: moment.set.pack.rules.get(verdict.rule as usize).map_or("", |r| r.entry.title.get(language)).to_owned(),
        on: facts,
        could_be: if *could == Could::Apply { vec!["applies", "held", "no"] } else { vec!["held", "no"] },
    })
}

fn causes(decision: &Decision, moment: &Moment<'_>, language: &str) -> Vec<CauseShown> {
    decision
        .causes
        .iter()
        .filter_map(|cause| {
            let entry = &moment.set.pack.problems.get(usize::from(cause.problem))?.entry;
            Some(CauseShown {
                id: entry.id.value.clone(),
                name: entry.name.get(language).to_owned(),
                likelihood: cause.likelihood,
                points: cause.points,
            })
        })
        .collect()
}

/// Assumed facts that a rule of the answer read.
fn assumptions(decision: &Decision, moment: &Moment<'_>, language: &str) -> Vec<Assumption> {
    let mut out: Vec<Assumption> = Vec::new();
    for verdict in &decision.verdicts {
        let Some(rule) = moment.book.rules.get(verdict.at as usize) else { continue };
        let Some(info) = moment.set.rules.get(verdict.rule as usize) else { continue };
        let amounts = rule.amounts.iter().flat_map(|a| &a.inputs).filter_map(|input| match &input.from {
            crate::compile::amount::InputFrom::Number(term, _) | crate::compile::amount::InputFrom::Choice(term, _) => {
                Some(term)
            }
            crate::compile::amount::InputFrom::Word(_) => None,
        });
        let terms = rule
            .reads
            .iter()
            .filter_map(|atom| moment.book.atoms.get(*atom as usize))
            .filter_map(|atom| moment.book.probes.get(atom.probe as usize))
            .chain(amounts.filter(|_| verdict.outcome == Outcome::Applies));
        for leaf in terms.flat_map(term_name::leaves) {
            // A work of choice that nobody wished for is no assumption worth a line.
            if matches!(leaf, crate::compile::term::Term::Wants(_)) {
                continue;
            }
            if crate::decide::read::term(leaf, moment).origin != Origin::Assumed {
                continue;
            }
            let name = term_name::of(leaf, moment.set, moment.book);
            match out.iter_mut().find(|a| a.fact.name == name) {
                Some(known) if known.rules.contains(&info.id) => {}
                Some(known) => known.rules.push(info.id.clone()),
                None => {
                    out.push(Assumption { fact: value::fact(leaf, moment, language), rules: vec![info.id.clone()] });
                }
            }
        }
    }
    out
}

/// The window of a task that opens next.
fn next_opening(moment: &Moment<'_>, language: &str) -> Option<NextOpening> {
    moment
        .book
        .rules
        .iter()
        .zip(0..)
        .filter(|(rule, _)| moment.set.rules.get(rule.rule as usize).is_some_and(|info| info.kind == Kind::Task))
        .filter_map(|(rule, at)| match window::of_rule(at, moment) {
            State::Closed { next: Some(next), .. } => Some((next, rule.rule)),
            _ => None,
        })
        .min()
        .and_then(|(day, rule)| {
            Some(NextOpening {
                date: day.date(),
                rule: moment.set.rules.get(rule as usize)?.id.clone(),
                title: moment.set.pack.rules.get(rule as usize)?.entry.title.get(language).to_owned(),
            })
        })
}

//! The whole answer to a question.

use lammas_agronomy::origin::Origin;

use super::answer::{
    Answer, Assumption, CauseShown, ClimateShown, Depends, FactShown, NextChange, NextOpening, Note, RuleSet, Said,
    Task,
};
use super::voice::Voice;
use super::{certainty, differing, estimate, held, season, task, term_name, value, weather, words};
use crate::ask;
use crate::compile::amount::InputFrom;
use crate::compile::set::Set;
use crate::compile::term::Term;
use crate::decide::decision::{Decision, decide};
use crate::decide::marker_dates::{self, Dates};
use crate::decide::moment::Moment;
use crate::decide::outcome::{Could, Hangs, Outcome, Verdict};
use crate::decide::quiet;
use crate::decide::read;
use crate::decide::window::{self, State};
use crate::fact::value::Value;
use crate::pack::rule::Kind;
use crate::question::Question;
use crate::rank::order;
use crate::validity;
use crate::version::digest;

/// The most rules that depend which are shown to a caller.
pub const MOST_DEPENDS: usize = 12;

/// How much is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extent {
    /// Whether it is said how scores and windows come about.
    pub full: bool,
    /// The most rules that depend; the rest is counted.
    pub most_depends: usize,
}

impl Extent {
    /// Everything.
    pub const FULL: Self = Self { full: true, most_depends: MOST_DEPENDS };
    /// What most callers want.
    pub const STANDARD: Self = Self { full: false, ..Self::FULL };
}

/// Answers a question in a language.
#[must_use]
pub fn answer<'a>(set: &'a Set, question: &'a Question, language: &str, extent: Extent) -> Option<Answer<'a>> {
    let book = set.plants.get(usize::from(question.plant))?;
    let moment = Moment::new(set, book, question, question.day);
    let decision = decide(&moment);
    Some(explain(&decision, extent, Voice::new(&moment, language)?))
}

/// The decision of a moment in words.
#[must_use]
pub fn explain<'a>(decision: &Decision, extent: Extent, voice: Voice<'_, 'a>) -> Answer<'a> {
    let moment = voice.moment;
    let (set, question) = (moment.set, moment.question);
    let of_kind = |wanted: Kind| {
        move |verdict: &&Verdict| set.rules.get(verdict.rule as usize).is_some_and(|info| info.kind == wanted)
    };
    let applying = || decision.verdicts.iter().filter(|v| v.outcome == Outcome::Applies);
    let mut order: Vec<&Verdict> = applying().filter(of_kind(Kind::Task)).collect();
    order::put(&mut order, moment);
    let shown: Vec<u32> = order.iter().map(|v| v.rule).collect();
    let mut tasks: Vec<Task<'_>> = Vec::with_capacity(order.len());
    tasks.extend(order.iter().filter_map(|v| task::of(v, &shown, extent.full, voice)));
    let estimated = estimate::note(&question.climate, voice.language);
    let not_used = weather::note(&question.climate, moment.day, voice.language);
    let about_place = estimated.into_iter().chain(not_used);
    let notes = about_place.chain(applying().filter(of_kind(Kind::Know)).filter_map(|v| note(v, voice))).collect();
    let mut holding: Vec<&Verdict> =
        decision.verdicts.iter().filter(|v| matches!(v.outcome, Outcome::Held(_))).collect();
    // A second emergency stands before what only waits.
    holding.sort_by_key(|v| !set.rules.get(v.rule as usize).is_some_and(|info| info.emergency));
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
    let near_edge = order.iter().any(|verdict| {
        let rule = moment.book.rules.get(verdict.at as usize);
        rule.is_some_and(|rule| certainty::is_near_a_side(rule, &verdict.window, moment))
    });
    let valid = validity::of(decision, moment);
    let next_opening = (status == "nothing-due").then(|| next_opening(voice)).flatten();
    let opens_soon = next_opening.as_ref().is_some_and(|next| next.date <= (moment.day + quiet::LONG_DAYS).date());
    let language = voice.language;
    Answer {
        status,
        tasks,
        held: held::of(&holding, voice),
        depends_more: depends.len().saturating_sub(extent.most_depends),
        depends_on: depends.iter().take(extent.most_depends).filter_map(|v| depend(v, voice)).collect(),
        questions: if decision.emergency.is_some() { Vec::new() } else { ask::next(decision, voice) },
        heard: question.heard.as_ref().map(|hearing| super::heard::shown(hearing, set, language)),
        notes,
        causes: if decision.emergency.is_some() { Vec::new() } else { causes(decision, moment, language) },
        season: season::brief(&question.climate, moment.day, extent.full, language),
        assumptions: assumptions(decision, voice),
        climate: climate(moment, near_edge, language),
        asked: &question.asked,
        date_origin: if question.day_assumed { "assumed" } else { "given" },
        rule_sets: set.layers.iter().map(RuleSet::of).collect(),
        digest: digest::of_question(question, set),
        valid_from: valid.from.date(),
        valid_until: valid.until.date(),
        next_change: valid.change.and_then(|(rule, outcome)| {
            Some(NextChange {
                date: (valid.until + 1).date(),
                rule: &set.rules.get(rule as usize)?.id,
                because: becomes(outcome, rule, voice),
            })
        }),
        quiet: if status == "nothing-due" && !opens_soon { why_quiet(moment, voice.language) } else { None },
        next_opening,
        notice: words::notice(language),
        reference: None,
        withdrawn: Vec::new(),
        recall: None,
    }
}

/// The climate that an answer stands on. `near_edge`: the day lies within the likely error of a side of some window.
pub(super) fn climate<'a>(moment: &Moment<'a>, near_edge: bool, language: &str) -> ClimateShown<'a> {
    let climate = &moment.question.climate;
    ClimateShown {
        id: climate.id.as_deref(),
        sha256: &climate.sha256,
        origin: climate.origin.as_str(),
        curve_error_k: super::number::shown(climate.season.largest_residual_k()),
        forecast: weather::forecast(climate, moment.day, language),
        weather: weather::shown(climate, moment.day, language),
        differences: differing::shown(climate, &season::BRIEF, language),
        error: estimate::error(climate, near_edge, language),
        sources: estimate::sources(climate),
    }
}

fn could_apply(verdict: &Verdict) -> bool {
    matches!(verdict.outcome, Outcome::Depends { could: Could::Apply, .. })
}

fn becomes(outcome: &str, rule: u32, voice: Voice<'_, '_>) -> String {
    let language = voice.language;
    let title = voice.rule(rule).map_or("", |phrases| phrases.title.as_str());
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

fn note<'a>(verdict: &Verdict, voice: Voice<'_, 'a>) -> Option<Note<'a>> {
    let rule = voice.moment.book.rules.get(verdict.at as usize)?;
    let phrases = voice.rule(verdict.rule)?;
    let reason = task::reason(&phrases.why, rule, voice);
    Some(Note {
        id: &voice.moment.set.rules.get(verdict.rule as usize)?.id,
        title: &phrases.title,
        text: reason.text,
        facts: reason.facts,
        sources: &phrases.sources,
    })
}

/// A rule that depends, with what it hangs on; none of any other.
pub(super) fn depend<'a>(verdict: &Verdict, voice: Voice<'_, 'a>) -> Option<Depends<'a>> {
    let moment = voice.moment;
    let Outcome::Depends { on, could } = &verdict.outcome else { return None };
    let mut facts: Vec<Said<'_>> = Vec::new();
    let mut add = |name: Said<'a>| {
        if !name.is_empty() && !facts.contains(&name) {
            facts.push(name);
        }
    };
    for hangs in on {
        match hangs {
            Hangs::Probe(probe) => {
                for fact in task::of_term(*probe, voice) {
                    let is_unknown = value::reading(fact, *probe, moment).value == Value::Unknown;
                    if is_unknown || fact.term.is_of_the_day() {
                        add(Said::Phrase(&fact.name));
                    }
                }
            }
            Hangs::Problem(problem) => {
                add(Said::Made(format!("problem {}", moment.set.names.problems.name(*problem))));
            }
            Hangs::History => add(Said::Made("history".to_owned())),
            Hangs::Window => {
                let rule = moment.book.rules.get(verdict.at as usize);
                for window in rule.map(|r| r.windows.as_slice()).unwrap_or_default() {
                    for at in [&window.opens, &window.closes].into_iter().flatten().flatten() {
                        if marker_dates::of(&at.marker, moment) == Dates::Unknown {
                            add(Said::Made(at.text.clone()));
                        }
                    }
                }
            }
        }
    }
    Some(Depends {
        id: &moment.set.rules.get(verdict.rule as usize)?.id,
        title: &voice.rule(verdict.rule)?.title,
        on: facts,
        could_be: if *could == Could::Apply { vec!["applies", "held", "no"] } else { vec!["held", "no"] },
    })
}

fn causes<'a>(decision: &Decision, moment: &Moment<'a>, language: &str) -> Vec<CauseShown<'a>> {
    decision
        .causes
        .iter()
        .filter_map(|cause| {
            let entry = &moment.set.pack.problems.get(usize::from(cause.problem))?.entry;
            Some(CauseShown {
                id: &entry.id.value,
                name: entry.name.get(language),
                likelihood: cause.likelihood,
                points: cause.points,
            })
        })
        .collect()
}

/// Assumed facts that a rule of the answer read.
fn assumptions<'a>(decision: &Decision, voice: Voice<'_, 'a>) -> Vec<Assumption<'a>> {
    let moment = voice.moment;
    let mut out: Vec<Assumption<'a>> = Vec::new();
    let mut add = |fact: FactShown<'a>, id: &'a str| match out.iter_mut().find(|a| a.fact.name == fact.name) {
        Some(known) if known.rules.contains(&id) => {}
        Some(known) => known.rules.push(id),
        None => out.push(Assumption { fact, rules: vec![id] }),
    };
    for verdict in &decision.verdicts {
        let Some(rule) = moment.book.rules.get(verdict.at as usize) else { continue };
        let Some(info) = moment.set.rules.get(verdict.rule as usize) else { continue };
        for probe in &rule.reads_terms {
            // A term is as weak as what is weakest in it.
            if moment.reading(*probe).origin != Origin::Assumed {
                continue;
            }
            for fact in task::of_term(*probe, voice) {
                // A work of choice that nobody wished for is no assumption worth a line.
                let is_assumed = value::reading(fact, *probe, moment).origin == Origin::Assumed;
                if is_assumed && !matches!(fact.term, Term::Wants(_)) {
                    add(value::shown(fact, *probe, voice), &info.id);
                }
            }
        }
        let inputs = rule.amounts.iter().filter(|_| verdict.outcome == Outcome::Applies).flat_map(|a| &a.inputs);
        for input in inputs {
            let (InputFrom::Number(term, _) | InputFrom::Choice(term, _)) = &input.from else { continue };
            for leaf in term_name::leaves(term) {
                if read::term(leaf, moment).origin == Origin::Assumed {
                    add(value::fact(leaf, voice), &info.id);
                }
            }
        }
    }
    out
}

/// Why nothing opens for so long.
fn why_quiet<'a>(moment: &Moment<'a>, language: &str) -> Option<&'a str> {
    let entry = &moment.set.pack.plants.get(usize::from(moment.book.plant))?.entry;
    Some(entry.quiet.get(quiet::because(moment)?)?.because.get(language))
}

/// The window of a task that opens next.
fn next_opening<'a>(voice: Voice<'_, 'a>) -> Option<NextOpening<'a>> {
    let moment = voice.moment;
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
                rule: &moment.set.rules.get(rule as usize)?.id,
                title: &voice.rule(rule)?.title,
            })
        })
}

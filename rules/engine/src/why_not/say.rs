//! In words: what stands in the way, and all of it in a sentence.

use chrono::Datelike as _;
use lammas_agronomy::calendar::Day;

use super::answer::{Looked, Reason, WayShown, WhyNot};
use super::ground::Ground;
use super::obstacle;
use super::search::Way;
use super::told::way_shown;
use crate::compile::set::Set;
use crate::compile::term::Condition;
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, Could, Hangs, Outcome, Verdict};
use crate::decide::truth::{Curve, judge};
use crate::decide::window::{self, State};
use crate::decide::{blocks, causes};
use crate::explain::rule_answer::{Named, RuleShown};
use crate::explain::voice::Voice;
use crate::explain::{held, rule, task, term_name, words};
use crate::fact::value::Truth;
use crate::question::Question;
use crate::rank::Score;

/// A rule that the plant does not have.
pub(super) fn not_for_this_plant<'a>(
    set: &'a Set,
    question: &'a Question,
    id: &str,
    language: &str,
) -> Option<WhyNot<'a>> {
    let shown = rule::shown(set, id, language)?;
    let plants: Vec<&str> = shown.whom.plants.iter().map(|plant| plant.name.as_str()).collect();
    let pick = |en, es| words::pick(language, en, es);
    let text = match (&shown.whom.problem, plants.is_empty()) {
        (_, false) => format!("{} {}.", pick("It is for", "Es para"), plants.join(", ")),
        (Some(problem), true) => format!(
            "{} {}{}.",
            pick("It is against", "Es contra"),
            problem.name,
            pick(", which this plant does not get", ", que esta planta no tiene")
        ),
        (None, true) => pick("It is for other plants.", "Es para otras plantas.").to_owned(),
    };
    Some(WhyNot {
        rule: Named { id: shown.id, name: shown.title },
        plant: plant(set, question, language),
        date: question.day.date(),
        outcome: "no",
        words: text.clone(),
        because: vec![Reason { kind: "plant", text, rule: None, facts: Vec::new() }],
        ways: Vec::new(),
        comes_on: None,
        looked: Looked { most_changes: 0, days: 0, complete: true },
    })
}

fn plant(set: &Set, question: &Question, language: &str) -> Named {
    let name = set.pack.plants.get(usize::from(question.plant)).map_or("", |plant| plant.entry.name.get(language));
    Named { id: set.names.plants.name(question.plant).to_owned(), name: name.to_owned() }
}

/// The whole answer. `ways` have a day where it must be another one.
pub(super) fn shown<'a>(
    ground: &Ground<'a>,
    question: &'a Question,
    outcome: &Outcome,
    ways: &[(Option<Day>, Way)],
    comes_on: Option<Day>,
    looked: Looked,
    language: &str,
) -> Option<WhyNot<'a>> {
    let set = ground.set;
    let moment = Moment::new(set, ground.book, question, question.day);
    let voice = Voice::new(&moment, language)?;
    let info = set.rules.get(ground.book.rules.get(ground.at as usize)?.rule as usize)?;
    let told = rule::shown(set, &info.id, voice.language)?;
    let because = reasons(ground, outcome, &told, voice);
    let ways: Vec<WayShown> = ways.iter().map(|(day, way)| way_shown(ground, *day, way, voice)).collect();
    Some(WhyNot {
        words: sentence(ground, outcome, &ways, comes_on, looked, &moment, voice.language),
        rule: Named { id: told.id, name: told.title },
        plant: plant(set, question, voice.language),
        date: question.day.date(),
        outcome: obstacle::name(outcome),
        because,
        ways,
        comes_on: comes_on.map(Day::date),
        looked,
    })
}

fn sentence(
    ground: &Ground<'_>,
    outcome: &Outcome,
    ways: &[WayShown],
    comes_on: Option<Day>,
    looked: Looked,
    moment: &Moment<'_>,
    language: &str,
) -> String {
    let pick = |en, es| words::pick(language, en, es);
    if super::reached(outcome) {
        return pick("It is there already: nothing has to change.", "Ya está: no hace falta cambiar nada.").to_owned();
    }
    if let Some(first) = ways.first() {
        if first.changes.iter().all(|change| change.pointer == "/date") {
            let day = comes_on.map(|day| dated(day, language)).unwrap_or_default();
            let told =
                pick("Nothing has to be told otherwise: it comes on", "No hay que decir nada distinto: llega el");
            return format!("{told} {day}.");
        }
        let parts: Vec<&str> = first.changes.iter().map(|change| change.text.as_str()).collect();
        return format!("{} {}.", pick("The least that brings it:", "Lo mínimo que lo trae:"), parts.join("; "));
    }
    if matches!(window::of_rule(ground.at, moment), State::Closed { before: None, next: None }) {
        return pick(
            "Its time of the year never comes in this climate, and nobody can change that.",
            "Su época no llega nunca en este clima, y eso nadie puede cambiarlo.",
        )
        .to_owned();
    }
    let far = if looked.complete {
        pick(
            "No change of at most {n} facts brings it in this climate, on this day or within {d} days.",
            "Ningún cambio de hasta {n} datos lo trae en este clima, ni este día ni en {d} días.",
        )
    } else {
        pick(
            "No change was found that brings it; there are more than could be tried, of at most {n} facts and within {d} days.",
            "No se encontró ningún cambio que lo traiga; hay más de los que se pudieron probar, de hasta {n} datos y en {d} días.",
        )
    };
    far.replace("{n}", &looked.most_changes.to_string()).replace("{d}", &looked.days.to_string())
}

/// A day with its year.
pub(super) fn dated(day: Day, language: &str) -> String {
    let year = day.date().year();
    format!("{}{}{year}", words::date(day, language), words::pick(language, " ", " de "))
}

/// What stands in the way, in the order in which it is judged.
fn reasons<'a>(ground: &Ground<'a>, outcome: &Outcome, told: &RuleShown<'a>, voice: Voice<'_, 'a>) -> Vec<Reason<'a>> {
    let (moment, language) = (voice.moment, voice.language);
    let pick = |en, es| words::pick(language, en, es);
    let Some(rule) = moment.book.rules.get(ground.at as usize) else { return Vec::new() };
    let Some(info) = moment.set.rules.get(rule.rule as usize) else { return Vec::new() };
    let mut out = Vec::new();
    if super::reached(outcome) {
        return out;
    }
    let mut asked = |kind, condition: &Condition, so: bool, text: String| {
        let mut atoms = Vec::new();
        wrong_atoms(condition, so, moment, &mut atoms);
        if judge(condition, moment, Curve::Counts) != Truth::known(so) {
            out.push(Reason { kind, text, rule: None, facts: task::facts(&atoms, voice) });
        }
    };
    let of = |worded: Option<&crate::explain::rule_answer::Worded>| worded.map_or("", |w| w.words.as_str()).to_owned();
    let text = format!(
        "{} {}.",
        pick("It is only for plants of this kind:", "Es solo para plantas así:"),
        of(told.whom.traits.as_ref())
    );
    asked("trait", &rule.whom, true, text);
    let text = format!("{} {}.", pick("It comes when", "Sale cuando"), of(told.when.as_ref()));
    asked("condition", &rule.when, true, text);
    if let Some(problem) = rule.problem {
        let name = told.whom.problem.as_ref().map_or("", |problem| problem.name.as_str());
        let has = causes::has(problem, &causes::rank(moment), moment);
        if has != Truth::True {
            let text = format!(
                "{} {name}{}.",
                pick("It is against", "Es contra"),
                pick(", and what is told does not show that it is there", ", y lo que se dice no muestra que lo haya")
            );
            out.push(Reason { kind: "problem", text, rule: None, facts: Vec::new() });
        } else if let Some(threshold) =
            moment.book.problems.iter().find(|p| p.problem == problem).and_then(|p| p.threshold.as_ref())
            && judge(threshold, moment, Curve::Counts) != Truth::True
            && matches!(outcome, Outcome::No | Outcome::Depends { .. })
        {
            let mut atoms = Vec::new();
            wrong_atoms(threshold, true, moment, &mut atoms);
            let text = format!(
                "{} {name}.",
                pick("It is worth it only with enough of", "Solo merece la pena con bastante de")
            );
            out.push(Reason { kind: "problem", text, rule: None, facts: task::facts(&atoms, voice) });
        }
    }
    out.extend(season(ground, told, moment, language));
    let verdict = Verdict {
        at: ground.at,
        rule: rule.rule,
        outcome: outcome.clone(),
        window: window::of_rule(ground.at, moment),
        check_first: Vec::new(),
        overdue: false,
        score: Score::default(),
    };
    let mut holding = blocks::own(rule, info, moment).holding;
    if let Outcome::Held(more) = outcome {
        let new =
            more.iter().filter(|block| !matches!(block, Block::Early | Block::Late | Block::Never | Block::Avoid));
        let new: Vec<Block> = new.filter(|block| !holding.contains(block)).cloned().collect();
        holding.extend(new);
    }
    for block in holding {
        let Some(by) = held::because(&block, &verdict, voice) else { continue };
        let mut atoms = Vec::new();
        let condition = match &block {
            Block::Hold(at) => rule.holds.get(*at).map(|hold| &hold.condition),
            Block::Guard(at) => moment.book.rules.get(*at as usize).map(|guard| &guard.when),
            _ => None,
        };
        if let Some(condition) = condition {
            wrong_atoms(condition, false, moment, &mut atoms);
        }
        out.push(Reason {
            kind: by.kind,
            text: by.because.to_string(),
            rule: by.rule,
            facts: task::facts(&atoms, voice),
        });
    }
    if let Outcome::Depends { on, could } = outcome {
        out.push(unknown(on, *could, voice));
    }
    out
}

/// The season of a rule, where the day does not lie in it.
fn season<'a>(ground: &Ground<'a>, told: &RuleShown<'a>, moment: &Moment<'a>, language: &str) -> Option<Reason<'a>> {
    let pick = |en, es| words::pick(language, en, es);
    let then = match window::of_rule(ground.at, moment) {
        State::AllYear | State::Open(_) => return None,
        State::Closed { next: Some(next), .. } => {
            format!("{} {}.", pick("It opens again on", "Vuelve a abrirse el"), dated(next, language))
        }
        State::Closed { next: None, .. } => pick("That does not come here.", "Eso no llega aquí.").to_owned(),
        State::Unknown => pick(
            "Whether that is now hangs on something that was not told.",
            "Si eso es ahora depende de algo que no se ha dicho.",
        )
        .to_owned(),
    };
    Some(Reason { kind: "window", text: format!("{}. {then}", capital(&told.season)), rule: None, facts: Vec::new() })
}

/// The first letter large: a sentence of its own.
fn capital(text: &str) -> String {
    let mut letters = text.trim_end_matches('.').chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn unknown<'a>(on: &[Hangs], could: Could, voice: Voice<'_, 'a>) -> Reason<'a> {
    let (moment, language) = (voice.moment, voice.language);
    let pick = |en, es| words::pick(language, en, es);
    let mut names: Vec<String> = Vec::new();
    let mut facts = Vec::new();
    for hangs in on {
        let name = match hangs {
            Hangs::Probe(probe) => {
                for fact in moment.book.probes.get(*probe as usize).map(term_name::leaves).unwrap_or_default() {
                    let shown = crate::explain::value::fact(fact, voice);
                    if !facts.iter().any(|known: &crate::explain::answer::FactShown<'_>| *known.name == *shown.name) {
                        names.push(shown.words.to_string());
                        facts.push(shown);
                    }
                }
                continue;
            }
            Hangs::Problem(problem) => moment
                .set
                .pack
                .problems
                .get(usize::from(*problem))
                .map_or("", |p| p.entry.name.get(language))
                .to_owned(),
            Hangs::History => pick("what was done lately", "lo que se ha hecho últimamente").to_owned(),
            Hangs::Window => continue,
        };
        names.push(name);
    }
    let only_held = could == Could::BeHeld;
    let tail = if only_held {
        pick(" Whatever that is, something else holds it.", " Sea lo que sea, otra cosa lo frena.")
    } else {
        ""
    };
    let text = format!(
        "{} {}.{tail}",
        pick("It hangs on what was not told:", "Depende de lo que no se ha dicho:"),
        names.join(", ")
    );
    Reason { kind: "unknown", text, rule: None, facts }
}

/// The atoms of the parts of a condition that are not as they should be.
fn wrong_atoms(condition: &Condition, so: bool, moment: &Moment<'_>, out: &mut Vec<u32>) {
    if judge(condition, moment, Curve::Counts) == Truth::known(so) {
        return;
    }
    match condition {
        Condition::Always => {}
        Condition::Atom(atom) => {
            if !out.contains(atom) {
                out.push(*atom);
            }
        }
        Condition::And(parts) | Condition::Or(parts) => {
            parts.iter().for_each(|part| wrong_atoms(part, so, moment, out));
        }
        Condition::Not(inner) => wrong_atoms(inner, !so, moment, out),
    }
}

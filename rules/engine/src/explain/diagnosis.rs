//! What the signs may show: ranked causes with what speaks for each, the sign to look at next, and what to do.

use std::borrow::Cow;

use super::answer::RuleSet;
use super::diagnosis_answer::{
    CauseInBrief, CauseWhole, Diagnosis, Evidence, Grade, LookAnswer, LookNext, Threshold, Treatment,
};
use super::plain::Plain;
use super::rule_answer::{Named, Worded};
use super::voice::Voice;
use super::{cautions, held, ladder, phrases, task, weather, whole, words};
use crate::compile::book::ProblemInfo;
use crate::compile::set::Set;
use crate::decide::causes::{self, Cause, Likelihood, Mark, Weather};
use crate::decide::decision::{Decision, decide, emergencies_only};
use crate::decide::moment::Moment;
use crate::decide::outcome::{Outcome, Verdict};
use crate::fact::value::Truth;
use crate::pack::problem::ProblemEntry;
use crate::pack::rule::Kind;
use crate::question::Question;
use crate::rank::order;
use ladder::Rung;

/// Causes that an answer of `look_next` names.
const MOST_LED_TO: usize = 3;

/// Diagnoses. Without the weather, what the season favours is unknown and no rule is judged.
#[must_use]
pub fn of<'a>(set: &'a Set, question: &'a Question, weather: Weather, language: &str) -> Option<Diagnosis<'a>> {
    let book = set.plants.get(usize::from(question.plant))?;
    let plant = &set.pack.plants.get(usize::from(question.plant))?.entry;
    let moment = Moment::new(set, book, question, question.day);
    let decision = match weather {
        Weather::Counts => decide(&moment),
        Weather::IsUnknown => {
            let emergencies = emergencies_only(&moment);
            let causes = if emergencies.emergency.is_some() { Vec::new() } else { causes::rank_by(&moment, weather) };
            Decision { causes, ..emergencies }
        }
    };
    let voice = Voice::new(&moment, language)?;
    let about = About { moment: &moment, decision: &decision, weather, voice, language };
    let mut treating: Vec<(Rung, u32)> = Vec::new();
    // In danger nobody looks for causes.
    let looked_for = if decision.emergency.is_some() { &[] } else { decision.causes.as_slice() };
    let causes: Vec<CauseWhole> = looked_for.iter().filter_map(|cause| about.cause(cause, &mut treating)).collect();
    let is_danger = |rule: u32| set.rules.get(rule as usize).is_some_and(|info| info.emergency);
    let is_treating = |verdict: &&Verdict| is_danger(verdict.rule) || treating.iter().any(|(_, at)| *at == verdict.at);
    let mut order: Vec<&Verdict> = decision
        .verdicts
        .iter()
        .filter(|v| v.outcome == Outcome::Applies && about.kind(v.rule) == Some(Kind::Task))
        .filter(is_treating)
        .collect();
    order::put(&mut order, &moment);
    // The order among works of one rung stays.
    order.sort_by_key(|v| treating.iter().find(|(_, at)| *at == v.at).map(|(rung, _)| *rung));
    let shown: Vec<u32> = order.iter().map(|v| v.rule).collect();
    let holding: Vec<&Verdict> =
        decision.verdicts.iter().filter(|v| matches!(v.outcome, Outcome::Held(_))).filter(is_treating).collect();
    let counts = weather == Weather::Counts;
    Some(Diagnosis {
        status: match causes.first().filter(|_| decision.emergency.is_none()).map(|cause| cause.likelihood) {
            Some(Likelihood::Likely) => "likely",
            Some(Likelihood::Possible) => "possible",
            Some(Likelihood::Unlikely) => "unlikely",
            None if decision.emergency.is_some() => "emergency",
            None => "none",
        },
        plant: (!question.plant_is_unknown)
            .then(|| Named { id: plant.id.value.clone(), name: plant.name.get(language).to_owned() }),
        signs: signs(&moment, language),
        look_next: causes::look_next(looked_for, &moment).and_then(|sign| about.look_next(sign)),
        tasks: order.iter().filter_map(|v| task::of(v, &shown, false, voice)).collect(),
        held: held::of(&holding, voice),
        remarks: match decision.emergency {
            Some(_) => vec![Cow::Borrowed(words::told(
                language,
                "What else the signs may mean is looked for once nobody is in danger.",
                "Qué más puedan significar las señales se busca cuando nadie corra peligro.",
            ))],
            None => remarks(&causes, &moment, counts, language),
        },
        climate: counts.then(|| whole::climate(&moment, false, language)),
        asked: asked(question, counts),
        rule_sets: set.layers.iter().map(RuleSet::of).collect(),
        notice: words::notice(language),
        causes,
    })
}

/// The question as it was understood; a climate that only stood in is no part of it.
fn asked(question: &Question, counts: bool) -> serde_json::Value {
    let mut asked = (*question.asked).clone();
    if let Some(members) = asked.as_object_mut().filter(|_| !counts) {
        members.remove("climate");
        if question.day_assumed {
            members.remove("date");
        }
    }
    asked
}

fn signs(moment: &Moment<'_>, language: &str) -> Vec<Named> {
    let states = moment.question.signs.iter().zip(&moment.set.pack.signs);
    states
        .filter(|(state, _)| state.seen == Truth::True)
        .map(|(_, sign)| Named { id: sign.entry.id.value.clone(), name: sign.entry.name.get(language).to_owned() })
        .collect()
}

fn remarks(causes: &[CauseWhole], moment: &Moment<'_>, counts: bool, language: &str) -> Vec<Cow<'static, str>> {
    let mut out: Vec<Cow<'static, str>> = Vec::new();
    if causes.is_empty() {
        out.push(Cow::Borrowed(words::told(
            language,
            "Nothing that is known here of this plant explains these signs: none of its problems has more for it than against it.",
            "Nada de lo que aquí se sabe de esta planta explica estas señales: ningún problema tiene más a favor que en contra.",
        )));
    }
    if !counts {
        out.push(Cow::Borrowed(words::told(
            language,
            "No climate was given: what the weather favours is not counted, and nothing is said about what is due now.",
            "No se dio un clima: no se cuenta lo que el tiempo favorece, ni se dice qué toca hacer ahora.",
        )));
    } else if let Some(text) = weather::not_used(&moment.question.climate, moment.day, language) {
        out.push(Cow::Owned(text));
    }
    out
}

/// What a diagnosis is made from.
struct About<'a, 'm> {
    moment: &'a Moment<'m>,
    voice: Voice<'a, 'm>,
    decision: &'a Decision,
    weather: Weather,
    language: &'a str,
}

impl About<'_, '_> {
    fn kind(&self, rule: u32) -> Option<Kind> {
        self.moment.set.rules.get(rule as usize).map(|info| info.kind)
    }

    fn plain(&self) -> Plain<'_> {
        let plants = &self.moment.set.pack.plants;
        let plant = plants.get(usize::from(self.moment.book.plant)).map(|filed| &filed.entry);
        Plain { set: self.moment.set, plant, language: self.language }
    }

    /// A cause with what speaks for it; the rules that answer it go to `treating` too.
    fn cause(&self, cause: &Cause, treating: &mut Vec<(Rung, u32)>) -> Option<CauseWhole> {
        let (moment, language) = (self.moment, self.language);
        let entry = &moment.set.pack.problems.get(usize::from(cause.problem))?.entry;
        let info = moment.book.problems.iter().find(|p| p.problem == cause.problem)?;
        let ladder = ladder::of(info, moment);
        let new: Vec<(Rung, u32)> = ladder.iter().copied().filter(|(_, at)| is_new(treating, *at)).collect();
        treating.extend(new);
        let source = |id: &crate::pack::At<String>| moment.set.names.sources.number(&id.value);
        let sources: Vec<u16> = entry.sources.iter().filter_map(source).collect();
        Some(CauseWhole {
            id: entry.id.value.clone(),
            name: entry.name.get(language).to_owned(),
            kind: entry.kind,
            about: entry.about.get(language).to_owned(),
            likelihood: cause.likelihood,
            points: cause.points,
            impact: entry.impact,
            resistance: entry.resistance.clone(),
            why: self.why(info, entry),
            threshold: entry.threshold.as_ref().zip(info.threshold.as_ref()).map(|(written, condition)| Threshold {
                said: Worded { rule: written.text().to_owned(), words: self.plain().condition(written) },
                reached: known(causes::judge_by(condition, moment, self.weather)),
            }),
            treatments: ladder.iter().filter_map(|(rung, at)| self.treatment(*rung, *at)).collect(),
            sources: phrases::sources(&sources, &moment.set.pack),
        })
    }

    fn why(&self, info: &ProblemInfo, entry: &ProblemEntry) -> Vec<Evidence> {
        let pack = &self.moment.set.pack;
        causes::marks(info, self.moment, self.weather)
            .filter_map(|(mark, is_so, points)| {
                let (sign, words, grade) = match mark {
                    Mark::Sign(number) => {
                        let sign = &pack.signs.get(usize::from(number))?.entry;
                        (
                            Some(sign.id.value.clone()),
                            sign.name.get(self.language).to_owned(),
                            grade(entry, &sign.id.value),
                        )
                    }
                    Mark::Favour(place) => (None, self.plain().condition(entry.favours.get(place)?), Grade::Favours),
                };
                Some(Evidence { sign, words, grade, is_so: known(is_so), points })
            })
            .collect()
    }

    fn treatment(&self, rung: Rung, at: u32) -> Option<Treatment> {
        let (moment, language) = (self.moment, self.language);
        let rule = moment.book.rules.get(at as usize)?;
        let info = moment.set.rules.get(rule.rule as usize)?;
        let entry = &moment.set.pack.rules.get(rule.rule as usize)?.entry;
        let verdict = self.decision.verdicts.iter().find(|v| v.at == at);
        let outcome = match verdict.map(|v| &v.outcome) {
            _ if self.weather == Weather::IsUnknown => None,
            Some(Outcome::Applies) => Some("applies"),
            Some(Outcome::Held(_)) => Some("held"),
            Some(Outcome::Depends { .. }) => Some("depends"),
            Some(Outcome::No) | None => Some("no"),
        };
        let on = verdict.and_then(|v| whole::depend(v, self.voice)).map(|depends| depends.on);
        Some(Treatment {
            rule: info.id.clone(),
            title: entry.title.get(language).to_owned(),
            kind: entry.kind,
            rung,
            outcome,
            because: verdict.and_then(|v| held::first_reason(v, self.voice)).map(|because| because.to_string()),
            on: on.unwrap_or_default().iter().map(|fact| fact.to_string()).collect(),
            materials: phrases::materials(info, &moment.set.pack, language),
            cautions: cautions::of(self.voice.rule(rule.rule)?, moment)
                .into_iter()
                .map(|caution| (**caution).clone())
                .collect(),
            professional: (!entry.professional.is_empty()).then(|| entry.professional.get(language).to_owned()),
        })
    }

    fn look_next(&self, number: u16) -> Option<LookNext> {
        let sign = &self.moment.set.pack.signs.get(usize::from(number))?.entry;
        let id = &sign.id.value;
        let pick = |en, es| words::pick(self.language, en, es).to_owned();
        Some(LookNext {
            sign: id.clone(),
            name: sign.name.get(self.language).to_owned(),
            place: sign.place,
            seen: sign.seen,
            look: sign.look.get(self.language).to_owned(),
            answers: vec![
                LookAnswer {
                    text: pick("yes, it is there", "sí, está"),
                    pointer: Some("/condition/signs/-"),
                    value: Some(serde_json::json!({"sign": id})),
                    leads_to: self.if_seen(number, Truth::True),
                },
                LookAnswer {
                    text: pick("no, it is not", "no está"),
                    pointer: Some("/condition/not_seen/-"),
                    value: Some(serde_json::json!(id)),
                    leads_to: self.if_seen(number, Truth::False),
                },
                LookAnswer {
                    text: crate::fact::choice_names::CANT_TELL.get(self.language).to_owned(),
                    pointer: None,
                    value: None,
                    leads_to: self.brief(&self.decision.causes),
                },
            ],
        })
    }

    /// The causes if a sign were seen, or were known not to be there.
    fn if_seen(&self, sign: u16, seen: Truth) -> Vec<CauseInBrief> {
        let mut question = self.moment.question.clone();
        if let Some(state) = question.signs.get_mut(usize::from(sign)) {
            state.seen = seen;
        }
        let then = Moment::new(self.moment.set, self.moment.book, &question, self.moment.day);
        self.brief(&causes::rank_by(&then, self.weather))
    }

    fn brief(&self, causes: &[Cause]) -> Vec<CauseInBrief> {
        causes
            .iter()
            .take(MOST_LED_TO)
            .filter_map(|cause| {
                let entry = &self.moment.set.pack.problems.get(usize::from(cause.problem))?.entry;
                Some(CauseInBrief {
                    id: entry.id.value.clone(),
                    name: entry.name.get(self.language).to_owned(),
                    likelihood: cause.likelihood,
                    points: cause.points,
                })
            })
            .collect()
    }
}

fn is_new(treating: &[(Rung, u32)], at: u32) -> bool {
    treating.iter().all(|(_, known)| *known != at)
}

const fn known(truth: Truth) -> Option<bool> {
    match truth {
        Truth::True => Some(true),
        Truth::False => Some(false),
        Truth::Unknown => None,
    }
}

fn grade(entry: &ProblemEntry, sign: &str) -> Grade {
    let signs = &entry.signs;
    let lists = [(&signs.always, Grade::Always), (&signs.often, Grade::Often), (&signs.never, Grade::Never)];
    let found = lists.into_iter().find(|(list, _)| list.iter().any(|id| id.value == sign));
    found.map_or(Grade::Sometimes, |(_, grade)| grade)
}

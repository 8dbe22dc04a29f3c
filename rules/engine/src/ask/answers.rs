//! What can be answered to a question, and the question as it would then be.

use lammas_agronomy::origin::Origin;
use serde_json::{Value as Json, json};

use super::candidates::Candidate;
use crate::compile::term::{Term, Test};
use crate::decide::moment::Moment;
use crate::fact::catalogue::{Fact, FactType};
use crate::fact::choice_names::{NO, YES, choice_name};
use crate::fact::choices::SEVERITY;
use crate::fact::value::{Reading, Truth, Value};
use crate::question::Question;

/// One answer.
#[derive(Debug)]
pub(super) struct Answer {
    pub(super) text: String,
    pub(super) pointer: String,
    pub(super) value: Json,
    /// How likely it is: equal shares.
    pub(super) share: f64,
    /// The question with the answer in it; none: it can't be tried.
    pub(super) then: Option<Box<Question>>,
}

/// The answers of a candidate.
pub(super) fn of(candidate: &Candidate, moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let mut answers = match candidate {
        Candidate::Sign(sign, _) => sign_answers(*sign, moment, language),
        Candidate::Trait(number) => trait_answers(*number, moment, language),
        Candidate::Severity(sign) => severity_answers(*sign, moment, language),
        Candidate::Share(sign) => share_answers(*sign, moment, language),
        Candidate::History => history_answers(moment, language),
        Candidate::LabelDays(place, _) => label_answers(*place, moment, language),
        Candidate::Fact(fact) => fact_answers(*fact, moment, language),
    };
    #[expect(clippy::cast_precision_loss, reason = "a handful of answers")]
    let share = 1.0 / (answers.len().max(1) as f64);
    answers.iter_mut().for_each(|answer| answer.share = share);
    answers
}

fn answer(
    text: impl Into<String>,
    pointer: impl Into<String>,
    value: Json,
    moment: &Moment<'_>,
    change: impl FnOnce(&mut Question),
) -> Answer {
    let mut question = moment.question.clone();
    change(&mut question);
    Answer { text: text.into(), pointer: pointer.into(), value, share: 0.0, then: Some(Box::new(question)) }
}

/// The answer that a sign is seen.
pub(super) fn sign_seen(sign: u16, moment: &Moment<'_>, language: &str) -> Answer {
    let id = moment.set.names.signs.name(sign);
    answer(YES.get(language), "/condition/signs/-", json!({"sign": id}), moment, |question| {
        if let Some(state) = question.signs.get_mut(usize::from(sign)) {
            state.seen = Truth::True;
        }
    })
}

fn sign_answers(sign: u16, moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let id = moment.set.names.signs.name(sign);
    let not_seen = |question: &mut Question| {
        if let Some(state) = question.signs.get_mut(usize::from(sign)) {
            state.seen = Truth::False;
        }
    };
    vec![
        sign_seen(sign, moment, language),
        answer(NO.get(language), "/condition/not_seen/-", json!(id), moment, not_seen),
    ]
}

fn trait_answers(number: u16, moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let name = moment.book.names.traits.name(number);
    let written = moment
        .set
        .pack
        .plants
        .get(usize::from(moment.book.plant))
        .and_then(|p| p.entry.traits.get(usize::from(number)));
    let values = written.map(|t| t.values.as_slice()).unwrap_or_default();
    values
        .iter()
        .enumerate()
        .map(|(at, value)| {
            let choice = u16::try_from(at).unwrap_or(u16::MAX);
            answer(
                value.name.get(language),
                format!("/plant/traits/{name}"),
                json!(value.id.value),
                moment,
                |question| {
                    if let Some(slot) = question.traits.get_mut(usize::from(number)) {
                        *slot = Reading::new(Value::Choice(choice), Origin::Given);
                    }
                },
            )
        })
        .collect()
}

fn severity_answers(sign: u16, moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let id = moment.set.names.signs.name(sign);
    let mut out = Vec::new();
    for (at, severity) in SEVERITY.values.iter().enumerate() {
        let choice = u16::try_from(at).unwrap_or(u16::MAX);
        let text = choice_name(SEVERITY.name, severity).map_or(*severity, |words| words.get(language));
        let value = json!({"sign": id, "severity": severity});
        out.push(answer(text, "/condition/signs/-", value, moment, |question| {
            if let Some(state) = question.signs.get_mut(usize::from(sign)) {
                state.seen = Truth::True;
                state.severity = Some(choice);
            }
        }));
    }
    out
}

/// Points that stand for the stretches between the thresholds which rules read.
fn stretches(thresholds: &[f64], low: f64, high: f64) -> Vec<(f64, f64)> {
    let mut cuts: Vec<f64> = thresholds.iter().copied().filter(|t| *t > low && *t < high).collect();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup();
    let mut edges = vec![low];
    edges.extend(cuts);
    edges.push(high);
    edges.windows(2).filter_map(|pair| Some((*pair.first()?, *pair.get(1)?))).collect()
}

fn thresholds(term: &Term, moment: &Moment<'_>) -> Vec<f64> {
    moment
        .book
        .atoms
        .iter()
        .filter(|atom| moment.book.probes.get(atom.probe as usize) == Some(term))
        .filter_map(|atom| match &atom.test {
            Test::Number(_, n) => Some(vec![*n]),
            Test::OneOfNumbers(list) => Some(list.clone()),
            _ => None,
        })
        .flatten()
        .collect()
}

fn number_answers(
    fact: Fact,
    term: &Term,
    moment: &Moment<'_>,
    language: &str,
    make: impl Fn(f64) -> (Json, Box<dyn FnOnce(&mut Question)>),
) -> Vec<Answer> {
    let entry = fact.entry();
    let (low, high) = entry.range.unwrap_or((0.0, 100.0));
    let thresholds = thresholds(term, moment);
    if thresholds.is_empty() {
        // No rule compares it: any value settles what only needs one.
        let (value, change) = make(entry.step.round((low + high.min(low + 100.0)) / 2.0));
        return vec![answer(crate::explain::number::unit_words(entry.unit), entry.pointer, value, moment, change)];
    }
    let stretches = stretches(&thresholds, low, high);
    let last = stretches.len().saturating_sub(1);
    stretches
        .into_iter()
        .enumerate()
        .map(|(at, (from, to))| {
            let unit = |x: f64| crate::explain::number::unit_behind(entry.unit, x, language);
            let show = |x: f64| crate::explain::number::plain(entry.step.round(x));
            let text = match at {
                0 => format!("< {} {}", show(to), unit(to)),
                at if at == last => format!("≥ {} {}", show(from), unit(from)),
                _ => format!("{} – {} {}", show(from), show(to), unit(to)),
            };
            let middle = if at == 0 {
                to - (to - low).min(1.0) / 2.0
            } else if at == last {
                from + (high - from).min(1.0) / 2.0
            } else {
                (from + to) / 2.0
            };
            let (value, change) = make(entry.step.round(middle));
            answer(text.trim_end().to_owned(), entry.pointer, value, moment, change)
        })
        .collect()
}

fn share_answers(sign: u16, moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let id = moment.set.names.signs.name(sign).to_owned();
    let mut answers = number_answers(Fact::Share, &Term::Share(sign), moment, language, |share| {
        let value = json!({"sign": id, "share_pct": share});
        (
            value,
            Box::new(move |question: &mut Question| {
                if let Some(state) = question.signs.get_mut(usize::from(sign)) {
                    state.seen = Truth::True;
                    state.share_pct = Some(share);
                }
            }),
        )
    });
    for answer in &mut answers {
        answer.pointer = "/condition/signs/-".to_owned();
    }
    answers
}

fn history_answers(moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let text = crate::explain::words::pick(language, "Nothing in the last two months", "Nada en los últimos dos meses");
    vec![answer(text, "/history", json!([]), moment, |question| question.history = Some(Vec::new()))]
}

/// Days that labels ask for, from those of soaps to those of long-lasting materials.
const LABEL_DAYS: [u16; 6] = [0, 1, 3, 7, 14, 30];

fn label_answers(place: usize, moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let pointer = format!("/history/{place}/label_days_to_harvest");
    let word = |days: u16| match days {
        1 => crate::explain::words::pick(language, "day", "día"),
        _ => crate::explain::words::pick(language, "days", "días"),
    };
    let one = |days: u16| {
        answer(format!("{days} {}", word(days)), pointer.clone(), json!(days), moment, |question| {
            let works = question.history.iter_mut().flatten();
            works.filter(|work| work.place == place).for_each(|work| work.label_days_to_harvest = Some(days));
        })
    };
    LABEL_DAYS.into_iter().map(one).collect()
}

fn put(fact: Fact, value: Value) -> impl FnOnce(&mut Question) {
    move |question: &mut Question| {
        if let Some(slot) = question.given.get_mut(fact as usize) {
            *slot = Reading::new(value, Origin::Given);
        }
    }
}

fn fact_answers(fact: Fact, moment: &Moment<'_>, language: &str) -> Vec<Answer> {
    let entry = fact.entry();
    match entry.ty {
        FactType::Truth => vec![
            answer(YES.get(language), entry.pointer, json!(true), moment, put(fact, Value::Truth(true))),
            answer(NO.get(language), entry.pointer, json!(false), moment, put(fact, Value::Truth(false))),
        ],
        FactType::Choice(list) => list
            .values
            .iter()
            .enumerate()
            .map(|(at, word)| {
                let text = choice_name(list.name, word).map_or(*word, |words| words.get(language));
                answer(
                    text,
                    entry.pointer,
                    json!(word),
                    moment,
                    put(fact, Value::Choice(u16::try_from(at).unwrap_or(u16::MAX))),
                )
            })
            .collect(),
        FactType::Stage => moment
            .book
            .names
            .stages
            .names()
            .enumerate()
            .map(|(at, stage)| {
                let number = moment.set.names.stages.number(stage);
                let written = number.and_then(|n| moment.set.pack.stages.get(usize::from(n)));
                let text = written.map_or(stage, |s| s.entry.name.get(language));
                answer(
                    text,
                    entry.pointer,
                    json!(stage),
                    moment,
                    put(fact, Value::Choice(u16::try_from(at).unwrap_or(u16::MAX))),
                )
            })
            .collect(),
        FactType::Number(_) => number_answers(fact, &Term::Fact(fact), moment, language, |number| {
            (json!(number), Box::new(put(fact, Value::Number(number))))
        }),
        FactType::Date if fact == Fact::PlantPlantedOn => {
            let day = moment.day - 30;
            let text = crate::explain::words::pick(
                language,
                "the day, such as a month ago",
                "el día, por ejemplo hace un mes",
            );
            vec![answer(text, entry.pointer, json!(day.date()), moment, |question| question.planted = Some(day))]
        }
        _ => Vec::new(),
    }
}

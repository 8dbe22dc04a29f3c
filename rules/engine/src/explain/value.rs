//! Facts as they are shown.

use serde_json::{Value as Json, json};

use super::answer::{FactShown, Said};
use super::phrases::FactPhrases;
use super::term_name;
use super::voice::Voice;
use crate::compile::path::SERIES;
use crate::compile::term::Term;
use crate::decide::moment::Moment;
use crate::decide::read;
use crate::fact::catalogue::{Fact, FactType};
use crate::fact::value::{Reading, Value};
use lammas_agronomy::season::Aggregate;

/// The unit in which a term is shown.
#[must_use]
pub fn unit(term: &Term) -> &'static str {
    match term {
        Term::Past(Aggregate::Sum, ..) | Term::Ahead(Aggregate::Sum, ..) => "mm",
        Term::Past(_, series, _) | Term::Ahead(_, series, _) => {
            SERIES.iter().find(|(_, row, _)| row == series).map_or("", |(.., fact)| fact.entry().unit)
        }
        other => other.fact().map_or("", |fact| fact.entry().unit),
    }
}

/// A value as it stands in an answer.
#[must_use]
pub fn json(term: &Term, value: Value, moment: &Moment<'_>) -> Json {
    match value {
        Value::Unknown => Json::Null,
        Value::Absent => json!("absent"),
        Value::Truth(yes) => json!(yes),
        Value::Number(number) => json!(number),
        Value::Date(day) => json!(day.date()),
        Value::Choice(choice) => json!(choice_id(term, choice, moment)),
    }
}

fn choice_id(term: &Term, choice: u16, moment: &Moment<'_>) -> String {
    let book = moment.book;
    match term {
        Term::Trait(number) => {
            book.names.values.get(usize::from(*number)).map_or("", |values| values.name(choice)).to_owned()
        }
        Term::Severity(_) => {
            crate::fact::choices::SEVERITY.values.get(usize::from(choice)).copied().unwrap_or_default().to_owned()
        }
        Term::Fact(Fact::PlantStage) => book.names.stages.name(choice).to_owned(),
        Term::Fact(Fact::PlantType) => moment.set.names.plants.name(choice).to_owned(),
        Term::Fact(fact) => match fact.entry().ty {
            FactType::Choice(list) => list.values.get(usize::from(choice)).copied().unwrap_or_default().to_owned(),
            _ => String::new(),
        },
        _ => String::new(),
    }
}

/// A choice by its name.
fn choice_words(term: &Term, choice: u16, moment: &Moment<'_>, language: &str) -> String {
    let pack = &moment.set.pack;
    let id = choice_id(term, choice, moment);
    let list = match term {
        Term::Severity(_) => Some(crate::fact::choices::SEVERITY.name),
        Term::Fact(fact) => match fact.entry().ty {
            FactType::Choice(list) => Some(list.name),
            _ => None,
        },
        _ => None,
    };
    let name = match term {
        Term::Trait(number) => pack
            .plants
            .get(usize::from(moment.book.plant))
            .and_then(|plant| plant.entry.traits.get(usize::from(*number)))
            .and_then(|of| of.values.get(usize::from(choice)))
            .map(|value| value.name.get(language)),
        Term::Fact(Fact::PlantStage) => {
            pack.stages.iter().find(|s| s.entry.id.value == id).map(|s| s.entry.name.get(language))
        }
        Term::Fact(Fact::PlantType) => pack.plants.get(usize::from(choice)).map(|p| p.entry.name.get(language)),
        _ => list.and_then(|list| crate::fact::choice_names::choice_name(list, &id)).map(|words| words.get(language)),
    };
    name.map_or(id.clone(), ToOwned::to_owned)
}

/// A term with its reading.
#[must_use]
pub fn fact<'a>(term: &Term, voice: Voice<'_, 'a>) -> FactShown<'a> {
    let moment = voice.moment;
    let reading = read::term(term, moment);
    FactShown {
        name: Said::Made(term_name::of(term, moment.set, moment.book)),
        words: Said::Made(super::words::term(term, moment.set, moment.book, voice.language)),
        value: json(term, reading.value, moment),
        unit: unit(term),
        origin: reading.origin.as_str(),
    }
}

/// The same of a fact that stands in a term of the plant, by the number of that term.
#[must_use]
pub fn shown<'a>(fact: &'a FactPhrases, probe: u32, voice: Voice<'_, 'a>) -> FactShown<'a> {
    let moment = voice.moment;
    let reading = reading(fact, probe, moment);
    FactShown {
        name: Said::Phrase(&fact.name),
        words: Said::Phrase(&fact.words),
        value: json(&fact.term, reading.value, moment),
        unit: fact.unit,
        origin: reading.origin.as_str(),
    }
}

/// The reading of a fact in a term: the term's own where it is the whole of it.
#[must_use]
pub fn reading(fact: &FactPhrases, probe: u32, moment: &Moment<'_>) -> Reading {
    if fact.whole { moment.reading(probe) } else { read::term(&fact.term, moment) }
}

/// A term's value in words, for the middle of a sentence.
#[must_use]
pub fn in_words(term: &Term, moment: &Moment<'_>, language: &str) -> String {
    match read::term(term, moment).value {
        Value::Number(number) => {
            let unit = unit(term);
            let text = super::number::plain(number);
            let unit = super::number::unit_behind(unit, number, language);
            if unit.is_empty() { text } else { format!("{text} {unit}") }
        }
        Value::Date(day) => super::words::date(day, language),
        Value::Truth(yes) => super::words::yes_no(yes, language).to_owned(),
        Value::Choice(choice) => choice_words(term, choice, moment, language),
        Value::Absent => super::words::none(language).to_owned(),
        Value::Unknown => "?".to_owned(),
    }
}

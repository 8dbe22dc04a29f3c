//! Facts as they are shown.

use super::answer::{FactShown, FactValue, Said};
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
pub fn of<'a>(term: &Term, value: Value, moment: &Moment<'a>) -> FactValue<'a> {
    match value {
        Value::Unknown => FactValue::Unknown,
        Value::Absent => FactValue::Absent,
        Value::Truth(yes) => FactValue::Truth(yes),
        Value::Number(number) => FactValue::Number(number),
        Value::Date(day) => FactValue::Date(day.date()),
        Value::Choice(choice) => FactValue::Choice(choice_id(term, choice, moment)),
    }
}

fn choice_id<'a>(term: &Term, choice: u16, moment: &Moment<'a>) -> &'a str {
    let book = moment.book;
    match term {
        Term::Trait(number) => book.names.values.get(usize::from(*number)).map_or("", |values| values.name(choice)),
        Term::Severity(_) => {
            crate::fact::choices::SEVERITY.values.get(usize::from(choice)).copied().unwrap_or_default()
        }
        Term::Fact(Fact::PlantStage) => book.names.stages.name(choice),
        Term::Fact(Fact::PlantType) => moment.set.names.plants.name(choice),
        Term::Fact(fact) => match fact.entry().ty {
            FactType::Choice(list) => list.values.get(usize::from(choice)).copied().unwrap_or_default(),
            _ => "",
        },
        _ => "",
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
        _ => list.and_then(|list| crate::fact::choice_names::choice_name(list, id)).map(|words| words.get(language)),
    };
    name.unwrap_or(id).to_owned()
}

/// A term with its reading.
#[must_use]
pub fn fact<'a>(term: &Term, voice: Voice<'_, 'a>) -> FactShown<'a> {
    let moment = voice.moment;
    let reading = read::term(term, moment);
    FactShown {
        name: Said::Made(term_name::of(term, moment.set, moment.book)),
        words: Said::Made(super::words::term(term, moment.set, moment.book, voice.language)),
        value: of(term, reading.value, moment),
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
        value: of(&fact.term, reading.value, moment),
        unit: fact.unit,
        origin: reading.origin.as_str(),
    }
}

/// The reading of a fact in a term: the term's own where it is the whole of it.
#[must_use]
pub fn reading(fact: &FactPhrases, probe: u32, moment: &Moment<'_>) -> Reading {
    if fact.whole { moment.reading(probe) } else { read::term(&fact.term, moment) }
}

/// The value of a fact that stands in a term of the plant, by the number of that term, for the middle of a sentence.
#[must_use]
pub fn in_words(fact: &FactPhrases, probe: u32, voice: Voice<'_, '_>) -> String {
    let (moment, language) = (voice.moment, voice.language);
    match reading(fact, probe, moment).value {
        Value::Number(number) => {
            let text = super::number::plain(number);
            let unit = super::number::unit_behind(fact.unit, number, language);
            if unit.is_empty() { text } else { format!("{text} {unit}") }
        }
        Value::Date(day) => super::words::date(day, language),
        Value::Truth(yes) => super::words::yes_no(yes, language).to_owned(),
        Value::Choice(choice) => choice_words(&fact.term, choice, moment, language),
        Value::Absent => super::words::none(language).to_owned(),
        Value::Unknown => "?".to_owned(),
    }
}

//! Facts as they are shown.

use serde_json::{Value as Json, json};

use super::answer::FactShown;
use super::term_name;
use crate::compile::path::SERIES;
use crate::compile::term::Term;
use crate::decide::moment::Moment;
use crate::decide::read;
use crate::fact::catalogue::{Fact, FactType};
use crate::fact::value::Value;
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
pub fn fact(term: &Term, moment: &Moment<'_>, language: &str) -> FactShown {
    let reading = read::term(term, moment);
    FactShown {
        name: term_name::of(term, moment.set, moment.book),
        words: super::words::term(term, moment, language),
        value: json(term, reading.value, moment),
        unit: unit(term).to_owned(),
        origin: reading.origin.as_str(),
    }
}

/// A term's value in words, for the middle of a sentence.
#[must_use]
pub fn in_words(term: &Term, moment: &Moment<'_>, language: &str) -> String {
    match read::term(term, moment).value {
        Value::Number(number) => {
            let unit = unit(term);
            let text = super::number::plain(number);
            let unit = super::number::unit_words(unit);
            if unit.is_empty() { text } else { format!("{text} {unit}") }
        }
        Value::Date(day) => super::words::date(day, language),
        Value::Truth(yes) => super::words::yes_no(yes, language).to_owned(),
        Value::Choice(choice) => choice_words(term, choice, moment, language),
        Value::Absent => super::words::none(language).to_owned(),
        Value::Unknown => "?".to_owned(),
    }
}

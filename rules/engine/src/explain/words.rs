//! Words of the engine's own, in every language it speaks.

use lammas_agronomy::calendar::Day;

use crate::compile::book::PlantBook;
use crate::compile::set::Set;
use crate::compile::term::Term;
use crate::fact::catalogue::Fact;
use crate::fact::wording;

/// Whether a language is Spanish; all else is answered in English.
#[must_use]
pub fn is_spanish(language: &str) -> bool {
    language.split('-').next().is_some_and(|first| first.eq_ignore_ascii_case("es"))
}

/// One of two texts.
#[must_use]
pub fn pick<'a>(language: &str, en: &'a str, es: &'a str) -> &'a str {
    if is_spanish(language) { es } else { en }
}

/// Yes or no.
#[must_use]
pub fn yes_no(yes: bool, language: &str) -> &'static str {
    match (yes, is_spanish(language)) {
        (true, false) => "yes",
        (true, true) => "sí",
        (false, _) => "no",
    }
}

/// One of two texts of the engine's own.
#[must_use]
pub fn told(language: &str, en: &'static str, es: &'static str) -> &'static str {
    if is_spanish(language) { es } else { en }
}

/// What comes before anything said here.
#[must_use]
pub fn notice(language: &str) -> &'static str {
    told(
        language,
        "The label of a product and the rules of your place come before anything said here.",
        "La etiqueta del producto y las normas de su lugar están por encima de lo que aquí se dice.",
    )
}

/// For what does not exist.
#[must_use]
pub fn none(language: &str) -> &'static str {
    pick(language, "none", "no hay")
}

/// A day in words.
#[must_use]
pub fn date(day: Day, language: &str) -> String {
    use chrono::Datelike as _;
    const EN: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    const ES: [&str; 12] = [
        "enero",
        "febrero",
        "marzo",
        "abril",
        "mayo",
        "junio",
        "julio",
        "agosto",
        "septiembre",
        "octubre",
        "noviembre",
        "diciembre",
    ];
    let date = day.date();
    let month = usize::try_from(date.month0()).unwrap_or(0);
    if is_spanish(language) {
        format!("{} de {}", date.day(), ES.get(month).copied().unwrap_or_default())
    } else {
        format!("{} {}", date.day(), EN.get(month).copied().unwrap_or_default())
    }
}

/// What a fact is called, with its arguments in it.
#[must_use]
pub fn term(term: &Term, set: &Set, book: &PlantBook, language: &str) -> String {
    let Some(fact) = term.fact() else { return String::new() };
    let words = wording::words(fact).name.get(language);
    let fill = |name: &str, value: &str| words.replace(&format!("{{{name}}}"), value);
    let sign_name =
        |sign: u16| set.pack.signs.get(usize::from(sign)).map_or("", |s| s.entry.name.get(language)).to_owned();
    match term {
        Term::Sign(sign) => sign_name(*sign),
        Term::Severity(sign) | Term::Share(sign) => fill("name", &sign_name(*sign)),
        Term::Trait(number) => {
            // As it is asked: a trait has no other words.
            let plant = set.pack.plants.get(usize::from(book.plant));
            let asked = plant.and_then(|plant| plant.entry.traits.get(usize::from(*number)));
            asked.map_or_else(
                || fill("name", book.names.traits.name(*number)),
                |asked| asked.ask.get(language).to_owned(),
            )
        }
        Term::Wants(job) => {
            fill("name", set.pack.jobs.get(usize::from(*job)).map_or("", |j| j.entry.name.get(language)))
        }
        Term::Done(work, days) | Term::Count(work, days) => {
            use crate::compile::term::Work;
            let name = match work {
                Work::Job(job) => set.pack.jobs.get(usize::from(*job)).map(|e| e.entry.name.get(language)),
                Work::Material(material) => {
                    set.pack.materials.get(usize::from(*material)).map(|e| e.entry.name.get(language))
                }
                Work::Class(class) => set.pack.classes.get(usize::from(*class)).map(|e| e.entry.name.get(language)),
            };
            fill("name", name.unwrap_or_default()).replace("{days}", &days.to_string())
        }
        Term::Past(aggregate, series, days) | Term::Ahead(aggregate, series, days) => fill("days", &days.to_string())
            .replace(
                "{series}",
                crate::fact::choice_names::choice_name("series", series.as_str()).map_or("", |w| w.get(language)),
            )
            .replace(
                "{aggregate}",
                crate::fact::choice_names::choice_name("aggregate", aggregate_id(*aggregate))
                    .map_or("", |w| w.get(language)),
            ),
        Term::FrostAhead(temperature, days) => {
            fill("temperature", &format!("{temperature} °C")).replace("{days}", &days.to_string())
        }
        Term::RegionFlag(flag) => fill("name", flag),
        Term::HeatSum { from, .. } => fill("marker", &marker(&from.text, language)),
        Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => fill("marker", &marker(&at.text, language)),
        _ if fact == Fact::Marker => fill("marker", ""),
        _ => words.to_owned(),
    }
}

const fn aggregate_id(aggregate: lammas_agronomy::season::Aggregate) -> &'static str {
    use lammas_agronomy::season::Aggregate;
    match aggregate {
        Aggregate::Mean => "mean",
        Aggregate::Min => "min",
        Aggregate::Max => "max",
        Aggregate::Sum => "sum",
    }
}

/// A marker with its offset in words: the fixed ones have names, the others stand as they are written.
#[must_use]
pub fn marker(text: &str, language: &str) -> String {
    let (name, offset) = match text.split_once(" - ") {
        Some((name, offset)) => (name, Some((offset, false))),
        None => match text.split_once(" + ") {
            Some((name, offset)) => (name, Some((offset, true))),
            None => (text, None),
        },
    };
    let words = crate::decide::marker_names::marker_name(name).map_or(name, |w| w.get(language));
    match offset {
        None => words.to_owned(),
        Some((offset, after)) => {
            let offset = if is_spanish(language) {
                offset
                    .replace("weeks", "semanas")
                    .replace("week", "semana")
                    .replace("days", "días")
                    .replace("day", "día")
            } else {
                offset.to_owned()
            };
            if is_spanish(language) {
                format!("{offset} {} {words}", if after { "después de" } else { "antes de" }).replace("de el ", "del ")
            } else {
                format!("{offset} {} {words}", if after { "after" } else { "before" })
            }
        }
    }
}

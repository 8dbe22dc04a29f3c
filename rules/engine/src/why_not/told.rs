//! Changes in words.

use lammas_agronomy::calendar::Day;
use serde_json::{Value as Json, json};

use super::answer::{Change, WayShown};
use super::edit::{self, Edit};
use super::ground::Ground;
use super::lever::Lever;
use super::search::Way;
use super::values::Setting;
use crate::compile::term::Term;
use crate::explain::number::{plain as plain_number, unit_behind};
use crate::explain::voice::Voice;
use crate::explain::{term_name, words};
use crate::fact::catalogue::FactType;
use crate::fact::choice_names::choice_name;
use crate::fact::choices::SEVERITY;

/// A way with its changes in words and its patch; `day` where it must be another one.
pub(super) fn way_shown(ground: &Ground<'_>, day: Option<Day>, way: &Way, voice: Voice<'_, '_>) -> WayShown {
    let language = voice.language;
    let mut edits = way.edits();
    let mut changes: Vec<Change> =
        way.settings.iter().map(|(lever, setting)| change(lever, setting, ground, voice)).collect();
    if let Some(day) = day {
        let to = json!(day.date());
        edits.push(Edit::put("/date", to.clone()));
        changes.push(Change {
            fact: "date".to_owned(),
            text: format!("{} {}", words::pick(language, "on", "el"), super::say::dated(day, language)),
            pointer: "/date".to_owned(),
            from: json!(ground.question.day.date()),
            to,
        });
    }
    WayShown { changes, patch: edit::patch(&ground.document, &edits) }
}

fn change(lever: &Lever, setting: &Setting, ground: &Ground<'_>, voice: Voice<'_, '_>) -> Change {
    let (fact, name) = named(lever, ground, voice);
    let language = voice.language;
    let to = value(lever, &setting.to, setting, ground, language);
    let from = match (&setting.from, assumed(lever, ground)) {
        (Json::Null, None) => None,
        (Json::Null, Some(assumed)) => Some(format!(
            "{} ({})",
            value(lever, &assumed, setting, ground, language),
            words::pick(language, "assumed", "supuesto")
        )),
        (from, _) => Some(value(lever, from, setting, ground, language)),
    };
    let now = words::pick(language, "now", "ahora");
    let text = match from {
        Some(from) => format!("{name}: {to} ({now}: {from})"),
        None => format!("{name}: {to}"),
    };
    Change { fact, text, pointer: setting.pointer.clone(), from: setting.from.clone(), to: setting.to.clone() }
}

/// What counts where nothing was said.
fn assumed(lever: &Lever, ground: &Ground<'_>) -> Option<Json> {
    use crate::fact::value::Value;
    use lammas_agronomy::origin::Origin;
    match lever {
        Lever::Fact(fact) => {
            let reading = ground.question.given(*fact);
            if reading.origin != Origin::Assumed {
                return None;
            }
            match (reading.value, fact.entry().ty) {
                (Value::Choice(choice), FactType::Choice(list)) => Some(json!(list.values.get(usize::from(choice))?)),
                (Value::Truth(yes), _) => Some(json!(yes)),
                (Value::Number(number), _) => Some(json!(number)),
                _ => None,
            }
        }
        Lever::Trait(number) => {
            let reading = ground.question.traits.get(usize::from(*number))?;
            let Value::Choice(choice) = reading.value else { return None };
            let values = ground.book.names.values.get(usize::from(*number))?;
            (reading.origin == Origin::Assumed).then(|| json!(values.name(choice)))
        }
        _ => None,
    }
}

/// The fact's name as rules write it, and what people call it.
fn named(lever: &Lever, ground: &Ground<'_>, voice: Voice<'_, '_>) -> (String, String) {
    let (set, book, language) = (ground.set, ground.book, voice.language);
    let pick = |en: &str, es: &str| words::pick(language, en, es).to_owned();
    let of_term = |term: &Term| (term_name::of(term, set, book), words::term(term, set, book, language));
    let history = |text: String| ("history".to_owned(), text);
    match lever {
        Lever::Fact(fact) => of_term(&Term::Fact(*fact)),
        Lever::Trait(number) => of_term(&Term::Trait(*number)),
        Lever::Sign(sign) => of_term(&Term::Sign(*sign)),
        Lever::NoSigns => ("signs".to_owned(), pick("What is seen", "Lo que se ve")),
        Lever::LookedClosely => ("signs".to_owned(), pick("Looked closely", "Mirado de cerca")),
        Lever::Wish(job) => {
            let name = set.pack.jobs.get(usize::from(*job)).map_or("", |job| job.entry.name.get(language));
            (term_name::of(&Term::Wants(*job), set, book), format!("{} {name}", pick("Wished:", "Se desea:")))
        }
        Lever::Problem(problem) => {
            let name = set.pack.problems.get(usize::from(*problem)).map_or("", |p| p.entry.name.get(language));
            ("problem".to_owned(), name.to_owned())
        }
        Lever::Region(_) => ("region".to_owned(), pick("The place in law", "El lugar ante la ley")),
        Lever::Flag(flag) => of_term(&Term::RegionFlag(flag.clone())),
        Lever::NoHistory => history(pick("What was done", "Lo que se ha hecho")),
        Lever::NotDone(place) | Lever::Label(place) => history(work(
            ground.document.pointer(&format!("/history/{place}")).unwrap_or(&Json::Null),
            ground,
            language,
        )),
        Lever::Done(_) | Lever::DoneRule(_) => history(String::new()),
    }
}

/// A work of the history in words.
fn work(entry: &Json, ground: &Ground<'_>, language: &str) -> String {
    let set = ground.set;
    let text = |member: &str| entry.get(member).and_then(Json::as_str).unwrap_or_default();
    let found = |name: Option<&str>, id: &str| name.map_or_else(|| id.to_owned(), str::to_owned);
    let mut parts = Vec::new();
    let (rule, job, material) = (text("rule"), text("job"), text("material"));
    if !rule.is_empty() {
        let of = set.pack.rules.iter().find(|r| r.entry.id.value == rule);
        parts.push(found(of.map(|rule| rule.entry.title.get(language)), rule));
    }
    if !job.is_empty() {
        let of = set.pack.jobs.iter().find(|j| j.entry.id.value == job);
        parts.push(found(of.map(|job| job.entry.name.get(language)), job));
    }
    if !material.is_empty() {
        let of = set.pack.materials.iter().find(|m| m.entry.id.value == material);
        let class = set.pack.classes.iter().find(|c| c.entry.id.value == material);
        let name = of.map(|m| m.entry.name.get(language)).or_else(|| class.map(|c| c.entry.name.get(language)));
        parts.push(found(name, material));
    }
    format!("{} ({})", parts.join(", "), text("date"))
}

/// A value of a change in words.
fn value(lever: &Lever, json: &Json, setting: &Setting, ground: &Ground<'_>, language: &str) -> String {
    let pick = |en: &str, es: &str| words::pick(language, en, es).to_owned();
    let plain = || json.as_str().map_or_else(|| json.to_string(), str::to_owned);
    let yes = |yes: bool| words::yes_no(yes, language).to_owned();
    match lever {
        Lever::Fact(fact) => match (fact.entry().ty, json) {
            (_, Json::Bool(is)) => yes(*is),
            (FactType::Number(_), number) => {
                let number = number.as_f64().unwrap_or_default();
                let unit = unit_behind(fact.entry().unit, number, language);
                format!("{} {unit}", plain_number(number)).trim_end().to_owned()
            }
            (FactType::Choice(list), Json::String(word)) => {
                choice_name(list.name, word).map_or_else(|| word.clone(), |words| words.get(language).to_owned())
            }
            (FactType::Stage, Json::String(stage)) => {
                let of = ground.set.pack.stages.iter().find(|s| s.entry.id.value == *stage);
                of.map_or_else(|| stage.clone(), |stage| stage.entry.name.get(language).to_owned())
            }
            _ => plain(),
        },
        Lever::Trait(number) => {
            let plant = ground.set.pack.plants.get(usize::from(ground.book.plant));
            let of = plant.and_then(|plant| plant.entry.traits.get(usize::from(*number)));
            let found = of.and_then(|t| t.values.iter().find(|value| json.as_str() == Some(value.id.value.as_str())));
            found.map_or_else(plain, |value| value.name.get(language).to_owned())
        }
        Lever::Sign(_) if setting.pointer.starts_with("/condition/not_seen") && !json.is_object() => {
            pick("looked for and not seen", "buscado y no visto")
        }
        Lever::Sign(_) if json.is_null() => pick("not seen", "no se ve"),
        Lever::Sign(_) => seen(json, language),
        Lever::NoSigns => pick("nothing", "nada"),
        Lever::LookedClosely => yes(true),
        Lever::Wish(_) | Lever::Flag(_) => yes(!json.is_null()),
        Lever::Problem(_) => {
            if json.is_null() {
                pick("not named", "sin nombrar")
            } else {
                pick("named as the problem", "nombrado como problema")
            }
        }
        Lever::Region(_) => plain(),
        Lever::NoHistory => pick("nothing", "nada"),
        Lever::NotDone(_) if json.is_null() => pick("not done", "no hecho"),
        Lever::NotDone(_) => pick("done", "hecho"),
        Lever::Label(_) => {
            format!("{} {}", pick("days to harvest by its label:", "días hasta la cosecha según su etiqueta:"), plain())
        }
        Lever::Done(_) | Lever::DoneRule(_) => format!("{} {}", pick("done:", "hecho:"), work(json, ground, language)),
    }
}

fn seen(entry: &Json, language: &str) -> String {
    let mut parts = vec![words::pick(language, "seen", "se ve").to_owned()];
    if let Some(severity) = entry.get("severity").and_then(Json::as_str) {
        parts.push(choice_name(SEVERITY.name, severity).map_or(severity, |words| words.get(language)).to_owned());
    }
    if let Some(share) = entry.get("share_pct").and_then(Json::as_f64) {
        parts.push(format!("{} %", plain_number(share)));
    }
    if let Some(since) = entry.get("since").and_then(Json::as_str) {
        parts.push(format!("{} {since}", words::pick(language, "since", "desde")));
    }
    parts.join(", ")
}

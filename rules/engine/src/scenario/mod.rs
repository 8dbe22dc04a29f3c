//! Scenarios: a question with its expected answer, run against the set that they stand beside.

use std::sync::Arc;

use serde::Serialize;

use crate::compile::set::Set;
use crate::explain::answer::Answer;
use crate::explain::whole::{self, Extent};
use crate::fault::Place;
use crate::pack::Filed;
use crate::pack::expression::place;
use crate::pack::scenario::{AdvisedExpected, DependsExpected, Expected, HeldExpected, ScenarioEntry};
use crate::question::pointer::Trouble;
use crate::question::said::{ClimateSaid, Said};
use crate::question::understand::{differing, profile, understand};
use crate::question::{Climate, Question};
use lammas_agronomy::season::SiteShift;

/// What came of a scenario.
#[derive(Clone, Debug, Serialize)]
pub struct Outcome {
    /// Its file.
    pub file: String,
    /// What it shows.
    pub name: String,
    /// What differs: expected and got, in words; empty when all is as expected.
    pub differs: Vec<String>,
    /// Where it stands.
    #[serde(skip)]
    pub place: Place,
}

impl Outcome {
    /// Whether all is as expected.
    #[must_use]
    pub fn passed(&self) -> bool {
        self.differs.is_empty()
    }
}

/// Runs every scenario of a set.
#[must_use]
pub fn run_all(set: &Set) -> Vec<Outcome> {
    set.pack.scenarios.iter().map(|scenario| run(set, scenario)).collect()
}

/// Runs one scenario.
#[must_use]
pub fn run(set: &Set, scenario: &Filed<ScenarioEntry>) -> Outcome {
    let entry = &scenario.entry;
    let differs = match question(set, &entry.ask) {
        Err(why) => why.into_iter().map(|why| format!("the question can't be asked: {why}")).collect(),
        Ok(question) => {
            match whole::answer(set, &question, "en", Extent { most_depends: usize::MAX, ..Extent::STANDARD }) {
                Some(answer) => compare(&entry.expect, &answer, set),
                None => vec!["the plant has no rules".to_owned()],
            }
        }
    };
    Outcome {
        file: scenario.file.to_string(),
        name: entry.name.value.clone(),
        differs,
        place: place(&scenario.file, &entry.name),
    }
}

/// The question of a scenario; its climate may be one that stands beside the rules, with weather of its own.
///
/// # Errors
/// Every field that can't be used, in words.
pub fn question(set: &Set, said: &Said) -> Result<Question, Vec<String>> {
    let in_words = |troubles: Vec<Trouble>| -> Vec<String> {
        troubles.into_iter().map(|trouble| format!("{}: {}", trouble.pointer, trouble.detail)).collect()
    };
    let whole = |said: &ClimateSaid| profile(said, "/climate").map_err(in_words);
    let profile = match &said.climate.id {
        None => whole(&said.climate)?,
        Some(id) => {
            let known = set.pack.climates.iter().find(|c| c.entry.id.value == *id);
            let known = known.ok_or_else(|| vec![format!("there is no climate `{id}`")])?;
            let registered = whole(&with_weather(&known.entry.profile, &said.climate))?;
            match &said.climate.differences {
                Some(said) => differing(&registered, said, "/climate/differences").map_err(in_words)?,
                None => registered,
            }
        }
    };
    let shift = SiteShift { frost_hollow: said.site.frost_hollow == Some(true) };
    let climate = Arc::new(Climate::new(said.climate.id.clone(), profile, shift));
    understand(said, set, climate, None).map_err(in_words)
}

/// A registered climate with the days that the caller knows.
#[must_use]
pub fn with_weather(registered: &ClimateSaid, said: &ClimateSaid) -> ClimateSaid {
    let mut whole = registered.clone();
    if said.observations.is_some() {
        whole.observations.clone_from(&said.observations);
    }
    if said.forecast.is_some() {
        whole.forecast.clone_from(&said.forecast);
    }
    whole
}

fn compare(expected: &Expected, answer: &Answer<'_>, set: &Set) -> Vec<String> {
    let mut out = Vec::new();
    if let Some(status) = &expected.status
        && status != answer.status
    {
        out.push(format!("status: expected {status}, got {}", answer.status));
    }
    for advised in &expected.advised {
        advised_as(advised, answer, set, &mut out);
    }
    for held in &expected.held {
        held_as(held, answer, set, &mut out);
    }
    for depends in &expected.depends {
        depends_as(depends, answer, set, &mut out);
    }
    for noted in &expected.noted {
        if !answer.notes.iter().any(|note| note.id == noted.value) {
            out.push(format!("{}: expected among the notes, got {}", noted.value, found(&noted.value, answer, set)));
        }
    }
    for absent in &expected.absent {
        let got = found(&absent.value, answer, set);
        if got != "nothing" {
            out.push(format!("{}: expected nothing, got {got}", absent.value));
        }
    }
    let asked: Vec<&str> = answer.questions.iter().map(|q| q.fact.as_str()).collect();
    let is_asked =
        |fact: &str, question: &str| question == fact || (fact == "signs" && question.starts_with("signs has"));
    for fact in &expected.asked {
        if !asked.iter().any(|question| is_asked(fact, question)) {
            out.push(format!("{fact}: expected to be asked, got questions about {asked:?}"));
        }
    }
    if let Some(first) = &expected.asked_first
        && !asked.first().is_some_and(|question| is_asked(first, question))
    {
        out.push(format!("{first}: expected to be asked first, got questions about {asked:?}"));
    }
    out
}

/// What an answer says of a rule.
fn found(rule: &str, answer: &Answer<'_>, set: &Set) -> String {
    if set.names.rules.wide(rule).is_none() {
        return format!("no rule `{rule}` in the set");
    }
    if let Some(task) = answer.tasks.iter().find(|t| t.id == rule) {
        return format!("advised ({})", task.priority.band.as_str());
    }
    if let Some(held) = answer.held.iter().find(|h| h.id == rule) {
        return format!("held ({}: {})", held.kind, &*held.because);
    }
    if let Some(depends) = answer.depends_on.iter().find(|d| d.id == rule) {
        return format!("depends on {}", depends.on.iter().map(|fact| &**fact).collect::<Vec<&str>>().join(", "));
    }
    if answer.notes.iter().any(|n| n.id == rule) {
        return "noted".to_owned();
    }
    "nothing".to_owned()
}

fn advised_as(expected: &AdvisedExpected, answer: &Answer<'_>, set: &Set, out: &mut Vec<String>) {
    let rule = &expected.rule.value;
    let Some(task) = answer.tasks.iter().find(|t| t.id == *rule) else {
        out.push(format!("{rule}: expected advised, got {}", found(rule, answer, set)));
        return;
    };
    let facts: Vec<&str> = task.reasons.iter().flat_map(|r| &r.facts).map(|f| &*f.name).collect();
    for because in &expected.because {
        if !facts.iter().any(|fact| fact == because || *fact == format!("signs has {because}")) {
            out.push(format!("{rule}: expected because of {because}, got {}", facts.join(", ")));
        }
    }
    if let Some(words) = &expected.check_first
        && !task.check_first.iter().any(|check| check.text.contains(words.as_str()))
    {
        let got: Vec<&str> = task.check_first.iter().map(|c| &*c.text).collect();
        out.push(format!("{rule}: expected to check first `{words}`, got {got:?}"));
    }
    if let Some(band) = &expected.band
        && band != task.priority.band.as_str()
    {
        out.push(format!("{rule}: expected {band}, got {}", task.priority.band.as_str()));
    }
}

fn held_as(expected: &HeldExpected, answer: &Answer<'_>, set: &Set, out: &mut Vec<String>) {
    let rule = &expected.rule.value;
    let Some(held) = answer.held.iter().find(|h| h.id == *rule) else {
        out.push(format!("{rule}: expected held, got {}", found(rule, answer, set)));
        return;
    };
    if let Some(kind) = &expected.kind
        && !held.blocks.iter().any(|block| block.kind == kind)
    {
        out.push(format!("{rule}: expected held by {kind}, got {}", found(rule, answer, set)));
    }
    if let Some(because) = &expected.because
        && !held.blocks.iter().any(|block| block.because.to_lowercase().contains(&because.to_lowercase()))
    {
        out.push(format!("{rule}: expected held because `{because}`, got {}", found(rule, answer, set)));
    }
}

fn depends_as(expected: &DependsExpected, answer: &Answer<'_>, set: &Set, out: &mut Vec<String>) {
    let rule = &expected.rule.value;
    let Some(depends) = answer.depends_on.iter().find(|d| d.id == *rule) else {
        out.push(format!("{rule}: expected to depend, got {}", found(rule, answer, set)));
        return;
    };
    let on: Vec<&str> = depends.on.iter().map(|fact| &**fact).collect();
    for fact in &expected.on {
        if !on.contains(&fact.as_str()) {
            out.push(format!("{rule}: expected to depend on {fact}, got {}", on.join(", ")));
        }
    }
}

//! A scenario run against its set: the question, and what of the answer is not as expected.

use std::sync::Arc;

use lammas_agronomy::season::SiteShift;
use serde::Serialize;

use super::expected;
use crate::compile::set::Set;
use crate::explain::whole::{self, Extent};
use crate::fault::Place;
use crate::pack::Filed;
use crate::pack::expression::place;
use crate::pack::scenario::ScenarioEntry;
use crate::question::pointer::Trouble;
use crate::question::said::{ClimateSaid, Said};
use crate::question::understand::{differing, profile, understand};
use crate::question::{Climate, Question};

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
                Some(answer) => expected::differences(&entry.expect, &answer, set),
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

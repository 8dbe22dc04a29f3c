//! The question: as it was said, and as it was understood.

pub mod asked;
pub mod climate;
pub mod differing;
pub mod estimated;
pub mod pointer;
pub mod profile_said;
pub mod registered_weather;
pub mod said;
pub mod understand;

use std::sync::Arc;

use lammas_agronomy::calendar::Day;

use crate::fact::catalogue::{COUNT, Fact};
use crate::fact::value::{Reading, Truth};
use crate::words::hear::Hearing;
pub use climate::Climate;

/// What is known of a sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SignState {
    /// Whether it is seen.
    pub seen: Truth,
    /// How bad, if said.
    pub severity: Option<u16>,
    /// How much of the plant, %, if said.
    pub share_pct: Option<f64>,
    /// First seen.
    pub since: Option<Day>,
}

/// A work that was done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkDone {
    /// The job.
    pub job: Option<u16>,
    /// The rule.
    pub rule: Option<u32>,
    /// The material.
    pub material: Option<u16>,
    /// The class, where the caller names no more than that.
    pub class: Option<u16>,
    /// The day.
    pub day: Day,
    /// From the label.
    pub label_days_to_harvest: Option<u16>,
    /// Its place in the list as it was told.
    pub place: usize,
}

/// A question as it was understood: names are numbers, values are rounded to their steps, what is assumed stands there.
#[derive(Clone, Debug)]
pub struct Question {
    /// Where.
    pub climate: Arc<Climate>,
    /// When.
    pub day: Day,
    /// Whether the day was not said.
    pub day_assumed: bool,
    /// The plant's number in the set.
    pub plant: u16,
    /// Whether the plant was not told, or is not known here: that of `plant` stands in, and only emergencies are judged.
    pub plant_is_unknown: bool,
    /// Facts that the caller gives and that take no arguments, by their number.
    pub given: Vec<Reading>,
    /// The plant's traits.
    pub traits: Vec<Reading>,
    /// The day on which the plant was planted.
    pub planted: Option<Day>,
    /// Since when the stage that was given lasts.
    pub stage_since: Option<Day>,
    /// Signs by their number.
    pub signs: Vec<SignState>,
    /// What was heard in the caller's own words; none: they said nothing in words.
    pub heard: Option<Arc<Hearing>>,
    /// Works of choice.
    pub wishes: Vec<u16>,
    /// ISO 3166 code.
    pub region: Option<String>,
    /// Flags of the region.
    pub region_flags: Vec<String>,
    /// Problems that the caller names.
    pub problems: Vec<u16>,
    /// Works done, in order of their days; none: not said.
    pub history: Option<Vec<WorkDone>>,
    /// The question as it goes into the digest.
    pub asked: Arc<serde_json::Value>,
}

impl Question {
    /// What the caller gave of a fact without arguments.
    #[must_use]
    pub fn given(&self, fact: Fact) -> Reading {
        self.given.get(fact as usize).copied().unwrap_or(Reading::UNKNOWN)
    }
}

/// No fact given yet.
#[must_use]
pub fn nothing_given() -> Vec<Reading> {
    vec![Reading::UNKNOWN; COUNT]
}

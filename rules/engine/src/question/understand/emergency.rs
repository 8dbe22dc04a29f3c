//! An emergency at a plant that was not told, or that nobody knows here.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;

use super::super::asked;
use super::super::climate::Climate;
use super::super::said::Said;
use super::super::{Question, SignState, nothing_given};
use crate::compile::set::Set;
use crate::decide::emergency;
use crate::decide::moment::Moment;
use crate::fact::value::{Reading, Truth};
use crate::words::hear::Hearing;

/// The question of someone who tells of an emergency; none: nobody does. A plant of the set stands in, and nothing of it
/// is read.
pub(super) fn told(
    said: &Said,
    set: &Set,
    climate: Arc<Climate>,
    day: Day,
    signs: Vec<SignState>,
    heard: Option<Arc<Hearing>>,
) -> Option<Question> {
    let mut both = signs.iter().zip(&set.pack.signs);
    both.find(|(state, sign)| sign.entry.emergency && state.seen == Truth::True)?;
    let book = set.plants.first()?;
    let mut question = Question {
        climate,
        day,
        day_assumed: said.date.is_none(),
        plant: book.plant,
        plant_is_unknown: true,
        given: nothing_given(),
        traits: vec![Reading::UNKNOWN; book.traits.len()],
        planted: None,
        stage_since: None,
        signs,
        heard,
        wishes: Vec::new(),
        region: said.site.region.clone(),
        region_flags: Vec::new(),
        problems: Vec::new(),
        history: None,
        asked: Arc::new(serde_json::Value::Null),
    };
    question.asked = Arc::new(asked::asked(&question, set));
    // One that hangs on a region which nobody told says nothing without its plant.
    emergency::first(&Moment::new(set, book, &question, day))?;
    Some(question)
}

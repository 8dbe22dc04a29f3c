//! The stage of the plant: given beats modelled.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;

use super::marker_dates::{Dates, first_present};
use super::moment::Moment;
use crate::fact::catalogue::Fact;
use crate::fact::value::{Reading, Value};

/// The stage on the day.
#[must_use]
pub fn of(moment: &Moment<'_>) -> Reading {
    let given = moment.question.given(Fact::PlantStage);
    if given.value.is_there() {
        return given;
    }
    match modelled(moment) {
        Some((stage, _)) => Reading::new(Value::Choice(stage), moment.question.climate.season.curve_origin()),
        None => Reading::UNKNOWN,
    }
}

/// Since when the stage lasts.
#[must_use]
pub fn since(moment: &Moment<'_>) -> Reading {
    let question = moment.question;
    if let Some(day) = question.stage_since {
        return Reading::new(Value::Date(day), Origin::Given);
    }
    if question.given(Fact::PlantStage).value.is_there() {
        return Reading::UNKNOWN;
    }
    match modelled(moment) {
        Some((_, day)) => Reading::new(Value::Date(day), question.climate.season.curve_origin()),
        None => Reading::UNKNOWN,
    }
}

/// The stage that began last, by the plant's model. Unknown as soon as one of its markers is.
fn modelled(moment: &Moment<'_>) -> Option<(u16, Day)> {
    let mut latest: Option<(u16, Day)> = None;
    for model in &moment.book.stages {
        match first_present(&model.begins, moment) {
            Dates::Unknown => return None,
            Dates::Absent(_) => {}
            dates => {
                // Of two that begin on one day the later of the plant's order holds.
                if let Some(day) = dates.last(moment.day)
                    && latest.is_none_or(|(_, other)| day >= other)
                {
                    latest = Some((model.stage, day));
                }
            }
        }
    }
    latest
}

/// The days on which a stage begins: given, else modelled, else unknown.
#[must_use]
pub fn begins(stage: u16, moment: &Moment<'_>) -> Dates {
    if let Some(day) = moment.question.stage_since
        && is_given(stage, moment)
    {
        return Dates::once(day);
    }
    match moment.book.stages.iter().find(|model| model.stage == stage) {
        Some(model) => first_present(&model.begins, moment),
        None => Dates::Unknown,
    }
}

/// Whether the caller said that the plant is in a stage, and since when.
#[must_use]
pub fn is_given(stage: u16, moment: &Moment<'_>) -> bool {
    moment.question.stage_since.is_some() && moment.question.given(Fact::PlantStage).value == Value::Choice(stage)
}

/// Whether the plant is in leaf: given, else by its stage.
#[must_use]
pub fn in_leaf(moment: &Moment<'_>) -> Reading {
    let given = moment.question.given(Fact::PlantInLeaf);
    if given.value.is_there() {
        return given;
    }
    let stage = moment.stage();
    match stage.value {
        Value::Choice(number) => {
            let leaf = moment.book.in_leaf.get(usize::from(number)).copied().unwrap_or(false);
            Reading::new(Value::Truth(leaf), stage.origin)
        }
        _ => Reading::UNKNOWN,
    }
}

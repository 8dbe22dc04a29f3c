//! Works that were done.

use lammas_agronomy::calendar::Day;

use super::marker_dates::{Absence, Dates};
use super::moment::Moment;
use crate::compile::rule::RuleInfo;
use crate::compile::set::Set;
use crate::compile::term::Work;
use crate::question::WorkDone;

/// How far back a spray still bears on the harvest, in days.
const HARVEST_DAYS: i32 = 60;

/// Whether a work done is one of these.
#[must_use]
pub fn matches(done: &WorkDone, work: Work, set: &Set) -> bool {
    match work {
        Work::Job(job) => done.job == Some(job),
        Work::Material(material) => has_material(done, material, set),
        Work::Class(class) => has_class(done, class, set),
    }
}

/// Whether a work was done with a material of a class.
#[must_use]
pub fn has_class(done: &WorkDone, class: u16, set: &Set) -> bool {
    match (done.material, done.class) {
        (Some(material), _) => set.materials.get(usize::from(material)).is_some_and(|m| m.classes.contains(&class)),
        (None, Some(named)) => named == class,
        (None, None) => of_rule(done, set).is_some_and(|info| info.classes.contains(&class)),
    }
}

/// Whether a work was done with a material: the one named, else those of the rule that asked for the work.
#[must_use]
pub fn has_material(done: &WorkDone, material: u16, set: &Set) -> bool {
    match (done.material, done.class) {
        (None, None) => of_rule(done, set).is_some_and(|info| info.materials.contains(&material)),
        (named, _) => named == Some(material),
    }
}

fn of_rule<'s>(done: &WorkDone, set: &'s Set) -> Option<&'s RuleInfo> {
    set.rules.get(done.rule? as usize)
}

/// How many of these works were done in the `days` days up to the day, the day itself among them; none: nobody said.
#[must_use]
pub fn count(work: Work, days: u16, moment: &Moment<'_>) -> Option<usize> {
    let history = moment.question.history.as_ref()?;
    let from = moment.day - i32::from(days);
    Some(
        history
            .iter()
            .filter(|done| done.day > from && done.day <= moment.day && matches(done, work, moment.set))
            .count(),
    )
}

/// The last of these works up to the day; `Some(None)`: never; `None`: nobody said.
#[must_use]
pub fn last(work: Work, moment: &Moment<'_>) -> Option<Option<Day>> {
    let history = moment.question.history.as_ref()?;
    Some(
        history
            .iter()
            .filter(|done| done.day <= moment.day && matches(done, work, moment.set))
            .map(|done| done.day)
            .max(),
    )
}

/// The first day on which fruit may be taken after sprays: absent when none lies within 60 days, unknown when one of
/// them does not say how many days its label asks for.
#[must_use]
pub fn harvest_wait(moment: &Moment<'_>) -> Dates {
    if moment.question.history.is_none() {
        return Dates::Unknown;
    }
    let mut until: Option<Day> = None;
    for done in sprays(moment) {
        match done.label_days_to_harvest {
            None => return Dates::Unknown,
            Some(days) => until = until.max(Some(done.day + i32::from(days))),
        }
    }
    until.map_or(Dates::Absent(Absence::Never), Dates::once)
}

/// The sprays against pests and diseases that still bear on the harvest.
fn sprays<'q>(moment: &Moment<'q>) -> impl Iterator<Item = &'q WorkDone> {
    let names = &moment.set.names.jobs;
    let (sprays, day) = ([names.number("treat-pest"), names.number("treat-disease")], moment.day);
    let history = moment.question.history.iter().flatten();
    history.filter(move |done| {
        let is_spray = done.job.is_some() && sprays.contains(&done.job);
        is_spray && done.day <= day && day - done.day <= HARVEST_DAYS
    })
}

/// The last spray of which nobody said how many days its label asks for, by its place among the works.
#[must_use]
pub fn without_label<'q>(moment: &Moment<'q>) -> Option<&'q WorkDone> {
    sprays(moment).filter(|done| done.label_days_to_harvest.is_none()).last()
}

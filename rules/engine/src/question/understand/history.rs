//! Works that were done.

use lammas_agronomy::calendar::Day;

use super::super::WorkDone;
use super::super::pointer::Trouble;
use super::super::said::Said;
use crate::compile::set::Set;

/// The works, in order of their days; none: not said.
pub(super) fn works(said: &Said, set: &Set, day: Day, troubles: &mut Vec<Trouble>) -> Option<Vec<WorkDone>> {
    let history = said.history.as_ref()?;
    let mut works = Vec::new();
    for (at, entry) in history.iter().enumerate() {
        let here = format!("/history/{at}");
        let mut look = |field: &str, what: &str, id: Option<&String>, index: &crate::compile::names::Index| {
            let id = id?;
            let found = index.wide(id);
            if found.is_none() {
                troubles.push(Trouble::unknown(format!("{here}/{field}"), what, id, index.names()));
            }
            found
        };
        let rule = look("rule", "rule", entry.rule.as_ref(), &set.names.rules);
        let job = look("job", "job", entry.job.as_ref(), &set.names.jobs);
        // A caller who knows no more may name the class: `nitrogen`. A material of that name comes first: it is the narrower word.
        let is_material = entry.material.as_ref().is_some_and(|id| set.names.materials.wide(id).is_some());
        let class = entry.material.as_ref().filter(|_| !is_material).and_then(|id| set.names.classes.wide(id));
        let material = if class.is_some() {
            None
        } else {
            look("material", "material or class", entry.material.as_ref(), &set.names.materials)
        };
        if entry.rule.is_none() && entry.job.is_none() && entry.material.is_none() {
            troubles.push(Trouble::new(here.clone(), "a work needs a job, a rule or a material"));
        }
        let Some(date) = entry.date else {
            troubles.push(Trouble::new(format!("{here}/date"), "the date is missing"));
            continue;
        };
        let done = Day::from_date(date);
        if done > day {
            troubles.push(Trouble::new(format!("{here}/date"), format!("`{date}` lies after the date asked")));
        }
        // A rule says which job it was.
        let of_rule = rule.and_then(|rule| set.rules.get(rule as usize)).and_then(|info| info.job);
        let narrow = |number: u32| u16::try_from(number).ok();
        works.push(WorkDone {
            job: job.and_then(narrow).or(of_rule),
            rule,
            material: material.and_then(narrow),
            class: class.and_then(narrow),
            day: done,
            label_days_to_harvest: entry.label_days_to_harvest,
            place: at,
        });
    }
    works.sort_by_key(|work| work.day);
    Some(works)
}

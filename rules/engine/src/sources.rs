//! Sources that age: which should have been looked at again by a day, and what hangs on each.

use chrono::NaiveDate;
use serde::Serialize;

use crate::pack::{At, Pack};

/// A source, and what of its set rests on it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Aged {
    /// The source.
    pub id: String,
    /// Its title.
    pub title: String,
    /// When somebody should look at it again.
    pub review_by: NaiveDate,
    /// The rules that name it, guards and notes among them.
    pub rules: Vec<String>,
    /// The materials that name it.
    pub materials: Vec<String>,
    /// The problems that name it.
    pub problems: Vec<String>,
    /// The rules that name it only by a material they use or a problem they treat.
    pub by_these: Vec<String>,
}

/// The sources of a set whose date to be looked at again lies before a day, the oldest first. A source without such a date does
/// not age.
#[must_use]
pub fn aged(pack: &Pack, on: NaiveDate) -> Vec<Aged> {
    let mut out: Vec<Aged> = pack
        .sources
        .iter()
        .filter_map(|filed| {
            let entry = &filed.entry;
            let review_by = entry.review_by.filter(|review_by| *review_by < on)?;
            Some(resting_on(pack, &entry.id.value, &entry.title, review_by))
        })
        .collect();
    out.sort_by(|a, b| a.review_by.cmp(&b.review_by).then_with(|| a.id.cmp(&b.id)));
    out
}

fn resting_on(pack: &Pack, id: &str, title: &str, review_by: NaiveDate) -> Aged {
    let names = |sources: &[At<String>]| sources.iter().any(|source| source.value == id);
    let materials: Vec<String> = pack
        .materials
        .iter()
        .filter(|filed| names(&filed.entry.sources))
        .map(|filed| filed.entry.id.value.clone())
        .collect();
    let problems: Vec<String> = pack
        .problems
        .iter()
        .filter(|filed| names(&filed.entry.sources))
        .map(|filed| filed.entry.id.value.clone())
        .collect();
    let (mut rules, mut by_these) = (Vec::new(), Vec::new());
    for entry in pack.rules.iter().map(|filed| &filed.entry) {
        if names(&entry.sources) {
            rules.push(entry.id.value.clone());
        } else if entry.materials.iter().any(|material| materials.contains(&material.value))
            || entry.whom.problem.as_ref().is_some_and(|problem| problems.contains(&problem.value))
        {
            by_these.push(entry.id.value.clone());
        }
    }
    Aged { id: id.to_owned(), title: title.to_owned(), review_by, rules, materials, problems, by_these }
}

//! The changes for people.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use lammas_engine::impact::pair::Detail;
use lammas_engine::impact::report::Group;

use super::requests::Asked;
use super::{Found, climates, date, named, title};
use crate::cli::counted::{count, counted, first_of};
use crate::cli::wrapped::lines;

/// No more rules of a plant are shown.
const MOST_RULES: usize = 12;
/// No more runs of weeks.
const MOST_RUNS: usize = 3;
/// No more names in a line.
const MOST_NAMES: usize = 3;
/// No more characters of what was and what is.
const MOST_DETAIL: usize = 160;

/// Everything that was found.
pub(super) fn all(found: &Found<'_>) -> String {
    let (grid, report) = (found.grid, &found.report);
    let mut out = format!("{} → {}\n", named(grid.before), named(grid.after));
    let share = report.changed as f64 * 100.0 / (report.answers.max(1) as f64);
    let _ = writeln!(
        out,
        "{} of {} change ({share:.1} %): {}, {}, 52 weeks, {}",
        count(report.changed),
        counted(report.answers, "answer"),
        counted(grid.plants.len() as u64, "plant"),
        counted(grid.places.len() as u64, "place"),
        counted(grid.plants.iter().map(|(_, cases)| cases.len() as u64).sum(), "typical condition"),
    );
    for (id, what) in climates(grid) {
        let _ = writeln!(out, "the climate `{id}` is {what}: requests that name it change with it");
    }
    for (plant, (id, _)) in grid.plants.iter().enumerate() {
        let changed = report.by_plant.get(plant).copied().unwrap_or(0);
        if changed > 0 {
            let _ = writeln!(out, "\n{}: {}", id.to_uppercase(), counted(changed, "answer"));
            of_plant(plant, found, &mut out);
        }
    }
    if let Some(asked) = &found.requests {
        out.push_str(&of_requests(asked, found));
    }
    out
}

fn of_plant(plant: usize, found: &Found<'_>, out: &mut String) {
    // The rules in the order of their first group: those of the most answers first.
    let mut rules: Vec<(&str, Vec<(usize, &Group)>)> = Vec::new();
    for (number, group) in (1..).zip(&found.report.groups).filter(|(_, group)| group.plant == plant) {
        match rules.iter_mut().find(|(rule, _)| *rule == group.rule) {
            Some((_, groups)) => groups.push((number, group)),
            None => rules.push((&group.rule, vec![(number, group)])),
        }
    }
    for (rule, groups) in rules.iter().take(MOST_RULES) {
        out.push_str(&heading(rule, found));
        for (number, group) in groups {
            one(*number, group, found, out);
        }
    }
    if rules.len() > MOST_RULES {
        let _ = writeln!(
            out,
            "\n  … {} more change; --json has them all",
            counted((rules.len() - MOST_RULES) as u64, "rule")
        );
    }
}

fn heading(rule: &str, found: &Found<'_>) -> String {
    if rule.is_empty() {
        return "\n  the answer as a whole\n".to_owned();
    }
    format!("\n{}", lines(&format!("  {rule}  "), &title(found.grid, rule)))
}

fn one(number: usize, group: &Group, found: &Found<'_>, out: &mut String) {
    let grid = found.grid;
    let words = format!("{}: {}", group.how.words(), counted(group.answers, "answer"));
    out.push_str(&lines(&format!("    {number}. "), &words));
    let name = |place: usize| grid.places.get(place).map_or("", |spot| spot.name.get("en")).to_owned();
    let mut by_weeks: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (place, weeks) in &group.places {
        by_weeks.entry(weeks.words()).or_default().push(name(*place));
    }
    let mut runs: Vec<(String, Vec<String>)> = by_weeks.into_iter().collect();
    runs.sort_by_key(|(_, places)| std::cmp::Reverse(places.len()));
    for (weeks, places) in runs.iter().take(MOST_RUNS) {
        out.push_str(&lines("       ", &format!("{weeks}: {}", first_of(places, MOST_NAMES, ", "))));
    }
    if runs.len() > MOST_RUNS {
        let places: u64 = runs.iter().skip(MOST_RUNS).map(|(_, places)| places.len() as u64).sum();
        let _ = writeln!(out, "       other weeks: {}", counted(places, "more place"));
    }
    let cases = grid.plants.get(group.plant).map(|(_, cases)| cases.as_slice()).unwrap_or_default();
    let names: Vec<String> =
        group.cases.iter().filter_map(|case| cases.get(*case)).map(|case| case.name.clone()).collect();
    out.push_str(&lines("       ", &format!("when {}", first_of(&names, MOST_NAMES, "; "))));
    let example = &group.example;
    let case = cases.get(example.case).map_or("", |case| case.name.as_str());
    let words = format!("e.g. {}, {}, {case}{}", name(example.portion.place), date(group), shown(&example.detail));
    out.push_str(&lines("       ", &words));
}

/// What was and what is, cut where it is long.
fn shown(detail: &Detail) -> String {
    let cut = |text: &str| {
        let short: String = text.chars().take(MOST_DETAIL).collect();
        if short.len() < text.len() { format!("{short}…") } else { short }
    };
    match detail {
        Some((before, after)) if before.is_empty() => format!(": {}", cut(after)),
        Some((before, after)) if after.is_empty() => format!(": no longer {}", cut(before)),
        Some((before, after)) => format!(": {} → {}", cut(before), cut(after)),
        None => String::new(),
    }
}

fn of_requests(asked: &Asked, found: &Found<'_>) -> String {
    let total = &asked.requests;
    let mut out = format!(
        "\nREQUESTS  {} of {} change ({} in `{}`)\n",
        count(total.changed.len() as u64),
        counted(total.answers, "answer"),
        counted(asked.lines, "line"),
        asked.file
    );
    for bad in &asked.bad {
        out.push_str(&lines(&format!("  line {} can't be asked: ", bad.line), &bad.detail));
    }
    let mut last = None;
    for ((plant, rule, how), of) in &total.found {
        if last != Some((plant, rule)) {
            out.push_str(&heading(rule, found));
            last = Some((plant, rule));
        }
        let numbers: Vec<String> = of.lines.iter().map(u64::to_string).collect();
        let which = if numbers.len() == 1 { "line" } else { "lines" };
        let words = format!("{plant}: {}: {which} {}{}", how.words(), first_of(&numbers, 12, ", "), shown(&of.detail));
        out.push_str(&lines("    ", &words));
    }
    out
}

//! The year for people.

use std::fmt::Write as _;

use lammas_agronomy::calendar::Day;
use lammas_engine::explain::words::date;
use lammas_engine::rehearse::plan::{Clash, Week};

use super::Year;
use crate::cli::counted::counted;
use crate::cli::wrapped::lines;

/// The year of a basket.
pub(super) fn all(year: &Year<'_>) -> String {
    let header = &year.set.pack.header;
    let mut out = format!(
        "A year from {} under {} {}: {}\n",
        year.from.date(),
        header.name.value,
        header.version.value,
        counted(year.members.len() as u64, "plant"),
    );
    let days: usize = year.weeks.iter().map(|week| week.separate_days).sum();
    let works: usize = year.weeks.iter().map(|week| week.works.len()).sum();
    let busy = year.weeks.iter().filter(|week| !week.works.is_empty()).count();
    let _ = writeln!(
        out,
        "{} on {} in {}; {} with nothing due\n",
        counted(works as u64, "work"),
        counted(days as u64, "separate day"),
        counted(busy as u64, "week"),
        counted(empty(year).count() as u64, "week"),
    );
    let mut before: &[Clash] = &[];
    for week in &year.weeks {
        if !week.is_empty() {
            out.push_str(&of_week(week, before, year));
        }
        before = &week.clashes;
    }
    if let Some(words) = first_and_last(&empty(year).collect::<Vec<&Week>>()) {
        out.push_str(&lines("Nothing due: ", &words));
    }
    out
}

fn empty<'y>(year: &'y Year<'_>) -> impl Iterator<Item = &'y Week> {
    year.weeks.iter().filter(|week| week.is_empty())
}

/// A week: what is new with its day, what is done again, and what gets in its way for the first time.
fn of_week(week: &Week, before: &[Clash], year: &Year<'_>) -> String {
    let mut days: Vec<Day> = week.works.iter().map(|work| work.day).collect();
    days.dedup();
    let days: Vec<String> = days.into_iter().map(on).collect();
    let going_on = match week.going_on.len() {
        0 => String::new(),
        some => format!("; {some} begun before still due"),
    };
    let on_days = if days.is_empty() { String::new() } else { format!(": {}", days.join(", ")) };
    let mut out =
        format!("{}  {}{on_days}{going_on}\n", date(week.first, "en"), counted(week.separate_days as u64, "day"));
    for (plant, name) in year.members.iter().map(|member| &member.name).enumerate() {
        let of = |again: bool| week.works.iter().filter(move |work| work.plant == plant && work.again == again);
        let new: Vec<String> = of(false).map(|work| format!("{} ({})", year.title(work.rule), on(work.day))).collect();
        let again: Vec<&str> = of(true).map(|work| year.title(work.rule)).collect();
        if !new.is_empty() {
            out.push_str(&lines(&format!("    {name}: "), &new.join("; ")));
        }
        if !again.is_empty() {
            out.push_str(&lines(&format!("    {name}, again: "), &again.join("; ")));
        }
    }
    let is_known = |clash: &Clash| {
        let is_the_same = |other: &Clash| {
            (other.plant, other.rule, other.before.rule) == (clash.plant, clash.rule, clash.before.rule)
        };
        before.iter().any(is_the_same)
    };
    for clash in week.clashes.iter().filter(|clash| !is_known(clash)) {
        out.push_str(&lines("    ! ", &of_clash(clash, year)));
    }
    out
}

/// A day of the week and of the month.
fn on(day: Day) -> String {
    day.date().format("%a %-d").to_string()
}

fn of_clash(clash: &Clash, year: &Year<'_>) -> String {
    let why = match clash.before.kind {
        "apart" => format!("kept {} apart", counted(u64::from(clash.before.days.unsigned_abs()), "day")),
        "turn" => format!("takes turns, {} between", counted(u64::from(clash.before.days.unsigned_abs()), "day")),
        _ => "not on one day".to_owned(),
    };
    format!(
        "{}: “{}” behind “{}”, {why}{}",
        year.plant(clash.plant),
        year.title(clash.rule),
        year.title(clash.before.rule),
        if clash.waits { "; no day for it this week" } else { "" }
    )
}

/// Weeks in runs: the first day of the first to the last day of the last.
fn first_and_last(weeks: &[&Week]) -> Option<String> {
    let mut runs: Vec<(&Week, &Week)> = Vec::new();
    for week in weeks {
        match runs.last_mut() {
            Some((_, last)) if last.last + 1 == week.first => *last = week,
            _ => runs.push((week, week)),
        }
    }
    let each: Vec<String> =
        runs.iter().map(|(first, last)| format!("{} – {}", date(first.first, "en"), date(last.last, "en"))).collect();
    (!each.is_empty()).then(|| each.join("; "))
}

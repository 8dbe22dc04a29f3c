//! The year as JSON.

use lammas_engine::rehearse::days::{Before, Stretch};
use lammas_engine::rehearse::plan::Week;
use serde_json::{Value, json};

use super::Year;

/// The year of a basket.
pub(super) fn all(year: &Year<'_>) -> Value {
    let header = &year.set.pack.header;
    let plants = year.members.iter().zip(&year.stretches).map(|(member, stretches)| {
        let days: Vec<Value> = stretches.iter().map(|stretch| of_days(stretch, year)).collect();
        json!({"name": member.name, "type": member.said.plant.kind, "days": days})
    });
    json!({
        "from": year.from.date(),
        "rule_set": {"name": header.name.value, "version": header.version.value, "sha256": year.set.sha256},
        "weeks": year.weeks.iter().map(|week| of_week(week, year)).collect::<Vec<Value>>(),
        "plants": plants.collect::<Vec<Value>>(),
    })
}

fn of_week(week: &Week, year: &Year<'_>) -> Value {
    let works = week.works.iter().map(|work| {
        json!({
            "plant": year.plant(work.plant),
            "rule": year.rule(work.rule),
            "title": year.title(work.rule),
            "date": work.day.date(),
            "band": work.band,
            "again": work.again,
        })
    });
    let going_on =
        week.going_on.iter().map(|(plant, rule)| json!({"plant": year.plant(*plant), "rule": year.rule(*rule)}));
    let clashes = week.clashes.iter().map(|clash| {
        json!({
            "plant": year.plant(clash.plant),
            "rule": year.rule(clash.rule),
            "before": before(clash.before, year),
            "on_days": clash.days,
            "waits": clash.waits,
        })
    });
    json!({
        "first": week.first.date(),
        "last": week.last.date(),
        "separate_days": week.separate_days,
        "empty": week.is_empty(),
        "works": works.collect::<Vec<Value>>(),
        "going_on": going_on.collect::<Vec<Value>>(),
        "clashes": clashes.collect::<Vec<Value>>(),
    })
}

/// The rule that goes before another.
fn before(before: Before, year: &Year<'_>) -> Value {
    json!({"rule": year.rule(before.rule), "kind": before.kind, "days": before.days})
}

fn of_days(stretch: &Stretch, year: &Year<'_>) -> Value {
    let decided = &stretch.decided;
    let ids = |rules: &[u32]| rules.iter().map(|rule| json!(year.rule(*rule))).collect::<Vec<Value>>();
    let tasks = decided.tasks.iter().map(|(rule, band)| json!({"rule": year.rule(*rule), "band": band}));
    let held = decided.held.iter().map(|(rule, by)| {
        let mut held = json!({"rule": year.rule(*rule)});
        if let Some(by) = by {
            held["before"] = before(*by, year);
        }
        held
    });
    json!({
        "first": stretch.first.date(),
        "last": stretch.last.date(),
        "tasks": tasks.collect::<Vec<Value>>(),
        "held": held.collect::<Vec<Value>>(),
        "depends_on": ids(&decided.depends),
        "notes": ids(&decided.noted),
    })
}

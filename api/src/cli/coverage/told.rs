//! The map as JSON.

use lammas_engine::coverage::cell::Cell;
use lammas_engine::coverage::long_quiet;
use lammas_engine::coverage::map::Map;
use serde_json::{Value, json};

/// The map of every plant.
pub(super) fn all(map: &Map<'_>) -> Value {
    let header = &map.set.pack.header;
    let plants: Vec<Value> = map
        .plants
        .iter()
        .map(|plant| {
            let rows: Vec<Value> = map
                .rows(plant)
                .map(|(spot, row)| {
                    let cells: Vec<Value> = (1_u8..).zip(row).map(|(week, cell)| one(week, cell, map)).collect();
                    let quiet = long_quiet::of(map.set, &plant.id, spot)
                        .map(|quiet| json!({"days": quiet.days, "because": quiet.because}));
                    json!({"place": spot.id, "name": spot.name.get("en"), "cells": cells, "long_quiet": quiet})
                })
                .collect();
            json!({"id": plant.id, "conditions": plant.cases.iter().map(|case| &case.name).collect::<Vec<_>>(), "rows": rows})
        })
        .collect();
    json!({
        "rule_set": {"name": header.name.value, "version": header.version.value, "sha256": map.set.sha256},
        "plants": plants,
    })
}

fn one(week: u8, cell: &Cell, map: &Map<'_>) -> Value {
    let mut out = json!({
        "week": week,
        "applies": cell.applies.len(),
        "applies_untold": cell.untold,
        "noted": cell.noted.len(),
        "held": cell.held.len(),
        "depends": cell.depends.len(),
        "scenarios": cell.scenarios,
    });
    if let Some(evidence) = cell.weakest(map.set) {
        out["weakest_evidence"] = json!(evidence);
    }
    if let Some((day, rule)) = cell.next_opening {
        out["next_opening"] = json!({"date": day.date(), "rule": map.rule(rule)});
    }
    out
}

//! The numbers that rules hang on are those of the publications that they were taken from.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;
use serde_json::Value;

use crate::shipped::set;

const TABLE: &str = include_str!("../../../../tests/published/rule-numbers.yaml");

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    publications: BTreeMap<String, Publication>,
    numbers: Vec<Number>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Publication {
    title: String,
    publisher: String,
    #[serde(default)]
    year: Option<u16>,
    how_read: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Number {
    rule: String,
    field: String,
    value: f64,
    unit: String,
    publication: String,
}

/// What stands at a field such as `hold.0` or `amount.0.typical.min`.
fn at<'v>(rule: &'v Value, field: &str) -> Option<&'v Value> {
    let mut here = rule;
    for step in field.split('.') {
        here = match (here, step.parse::<usize>()) {
            (Value::Array(list), Ok(number)) => list.get(number)?,
            // A single one of what may be several is written without a list.
            (Value::Object(_), Ok(0)) => here,
            (Value::Object(fields), _) => fields.get(step)?,
            _ => return None,
        };
    }
    // A hold's numbers stand in its condition.
    Some(here.get("if").unwrap_or(here))
}

/// The numbers of a text with their units; both ends of a range have its unit.
fn numbers(text: &str) -> Vec<(f64, String)> {
    let mut out: Vec<(f64, String)> = Vec::new();
    let text = text.replace("..", " .. ");
    let words: Vec<&str> = text.split([' ', ',', '(', ')']).filter(|word| !word.is_empty()).collect();
    for (place, word) in words.iter().enumerate() {
        let Ok(value) = word.parse::<f64>() else { continue };
        let is_range = words.get(place + 1) == Some(&"..");
        let unit = words.get(place + if is_range { 3 } else { 1 }).copied().unwrap_or_default();
        let unit = match unit {
            "days" => "day",
            "weeks" => "week",
            other => other,
        };
        out.push((value.abs(), unit.to_owned()));
    }
    out
}

fn stands_there(rule: &Value, number: &Number) -> bool {
    match at(rule, &number.field) {
        Some(Value::String(text)) => {
            numbers(text).iter().any(|(value, unit)| (*value - number.value).abs() < 1e-9 && *unit == number.unit)
        }
        Some(Value::Number(value)) => {
            let beside = number.field.rsplit_once('.').and_then(|(parent, _)| at(rule, parent)?.get("unit")?.as_str());
            let unit = beside.unwrap_or(if number.field.ends_with("days") { "day" } else { "" });
            value.as_f64() == Some(number.value) && unit == number.unit
        }
        _ => false,
    }
}

#[test]
fn numbers_in_rules_are_those_of_the_publications_named_beside_them() {
    let set = set();
    let table: Table = serde_saphyr::from_str(TABLE).unwrap();
    let mut wrong = Vec::new();
    for number in &table.numbers {
        assert!(table.publications.contains_key(&number.publication), "{}: no such publication", number.publication);
        let rule = set.pack.rules.iter().find(|rule| rule.entry.id.value == number.rule);
        let rule = rule.unwrap_or_else(|| panic!("there is no rule `{}`", number.rule));
        let json = serde_json::to_value(&rule.entry).unwrap();
        if !stands_there(&json, number) {
            wrong.push(format!(
                "{} {}: {} {} by {}, the rule has {:?}",
                number.rule,
                number.field,
                number.value,
                number.unit,
                number.publication,
                at(&json, &number.field)
            ));
        }
    }
    let rules: BTreeSet<&str> = table.numbers.iter().map(|number| number.rule.as_str()).collect();
    println!("{} numbers in {} rules by {} publications", table.numbers.len(), rules.len(), table.publications.len());
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(table.numbers.len() >= 100);
    for (id, publication) in &table.publications {
        let Publication { title, publisher, how_read, year } = publication;
        assert!(!title.is_empty() && !publisher.is_empty() && !how_read.is_empty(), "{id}");
        assert!(year.is_none_or(|year| (1900..=2026).contains(&year)), "{id}");
        assert!(table.numbers.iter().any(|number| number.publication == *id), "{id} is named by no number");
    }
}

#[test]
fn another_number_in_a_rule_is_noticed() {
    let rule = serde_json::json!({
        "when": "soil.temp_10cm > 13 °C", "repeat": {"every": "7..14 days", "at_most": {"times": 2}},
        "hold": [{"if": "ahead(max, tmax, 7 days) > 36 °C"}], "window": {"opens": "last_frost.median - 6 weeks"},
        "amount": [{"typical": {"min": 2.5, "max": 4.0, "unit": "g/m²"}}]
    });
    let number = |field: &str, value: f64, unit: &str| Number {
        rule: String::new(),
        field: field.to_owned(),
        value,
        unit: unit.to_owned(),
        publication: String::new(),
    };
    for (field, value, unit, other) in [
        ("when", 13.0, "°C", 12.0),
        ("repeat.every", 7.0, "day", 8.0),
        ("repeat.every", 14.0, "day", 13.0),
        ("repeat.at_most.times", 2.0, "", 3.0),
        ("hold.0", 36.0, "°C", 35.0),
        ("window.0.opens", 6.0, "week", 5.0),
        ("amount.0.typical.min", 2.5, "g/m²", 2.0),
    ] {
        assert!(stands_there(&rule, &number(field, value, unit)), "{field}");
        assert!(!stands_there(&rule, &number(field, other, unit)), "{field}");
        assert!(!stands_there(&rule, &number(field, value, "mm")), "{field}");
    }
}

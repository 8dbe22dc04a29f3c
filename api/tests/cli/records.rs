//! From a daily record to advice, as a shell does it; and a rule in plain words.

use std::fs;

use serde_json::{Value, json};

use super::{run, run_with};

const RECORD: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/data/champion_nebraska_daily_2006_2017.csv");
const PLACE: [&str; 6] = ["--latitude", "40.4", "--longitude", "-101.7", "--elevation", "1000"];

#[test]
fn a_record_becomes_a_climate_and_the_climate_advice() {
    let (code, out, error) = run(&[&["profile", RECORD], PLACE.as_slice()].concat());
    assert_eq!((code, error.as_str()), (Some(0), ""));
    let at = |text: &str| out.find(text).unwrap_or_else(|| panic!("no `{text}` in\n{out}"));
    assert!(out.starts_with("Record from 2006-01-01 to 2017-12-31: 12 years, "), "{out}");
    let places = ["MONTHLY NORMALS", "minimum, °C", "rain, mm", "FROST (0 °C), by", "KNOWN", "NOT KNOWN"].map(at);
    assert!(places.is_sorted(), "{places:?}\n{out}");
    assert!(out.lines().all(|line| line.chars().count() <= 100), "{out}");

    let (code, climate, _) = run(&[&["profile", RECORD, "--json"], PLACE.as_slice()].concat());
    assert_eq!(code, Some(0));
    let read: Value = serde_json::from_str(&climate).expect("JSON");
    assert_eq!((&read["latitude"], &read["origin"]), (&json!(40.4), &json!("measured")));

    let file = std::env::temp_dir().join(format!("lammas-climate-{}.json", std::process::id()));
    fs::write(&file, &climate).expect("written");
    let path = file.to_str().expect("text");
    let question = r#"{"date": "2026-09-15", "plant": {"type": "rose", "age_years": 4}, "condition": {"signs": [{"sign": "spent-blooms"}]}}"#;
    let (code, out, error) = run_with(&["advise", "--climate", path], question);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    assert!(out.contains("Too little warmth is left to ripen new shoots before frost"), "{out}");
    let (code, out, _) = run_with(&["season", "--climate", path, "--json"], r#"{"date": "2026-09-15"}"#);
    assert_eq!(code, Some(0));
    assert_eq!(serde_json::from_str::<Value>(&out).expect("JSON")["date"], "2026-09-15");

    let both = r#"{"climate": {"id": "cold-inland"}, "plant": {"type": "rose"}}"#;
    let (code, _, error) = run_with(&["advise", "--climate", path], both);
    assert!(code == Some(2) && error.contains("has a climate of its own"), "{error}");
    fs::remove_file(&file).expect("gone");
}

#[test]
fn a_record_that_can_not_be_read_is_named_by_line_and_ends_with_2() {
    let text = "date,tmin_c,tmax_c\n2025-01-01,cold,3\n2025-01-02,1\n";
    let (code, out, error) = run_with(&["profile", "-"], text);
    assert_eq!((code, out.as_str()), (Some(2), ""));
    for words in
        ["--latitude: expected the latitude", "line 2, column `tmin_c`: `cold` is not a number", "line 3: 2 fields"]
    {
        assert!(error.contains(words), "{error}");
    }
    let (code, _, error) =
        run_with(&["profile", "-"], r#"{"latitude": 40, "days": [{"date": "2025-01-01", "tmin": 3}]}"#);
    assert!(
        code == Some(2) && error.contains("/days/0/tmin: unknown field `tmin`, expected one of `date`, `tmin_c`"),
        "{error}"
    );
    let (code, _, error) = run(&["profile", "no-such-file.csv", "--latitude", "40"]);
    assert!(code == Some(2) && error.contains("cannot read `no-such-file.csv`"), "{error}");
}

#[test]
fn a_rule_is_printed_in_plain_words() {
    let (code, out, error) = run(&["rule", "rose.aphid-soap"]);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    let at = |text: &str| out.find(text).unwrap_or_else(|| panic!("no `{text}` in\n{out}"));
    let places = [
        "Soap aphids if the jet fails",
        "Against       Aphids",
        "When          plant in leaf: yes",
        "Guarded by",
        "Mind",
        "Grounds",
        "Source",
    ]
    .map(at);
    assert!(places.is_sorted(), "{places:?}\n{out}");
    assert!(out.lines().all(|line| line.chars().count() <= 100), "{out}");
    let (_, spanish, _) = run(&["rule", "rose.aphid-soap", "--language", "es"]);
    assert!(spanish.contains("Contra        Pulgones") && spanish.contains("planta con hojas: sí"), "{spanish}");
    let (code, json, _) = run(&["rule", "rose.aphid-soap", "--json"]);
    assert_eq!(
        (code, &serde_json::from_str::<Value>(&json).expect("JSON")["id"]),
        (Some(0), &json!("rose.aphid-soap"))
    );
    let (code, _, error) = run(&["rule", "rose.aphid-soup"]);
    assert!(code == Some(2) && error.contains("did you mean `rose.aphid-soap`"), "{error}");
}

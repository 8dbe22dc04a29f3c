//! `lammas why-not`, `lammas tidy` and `lammas check --sources`.

use std::fs;
use std::path::PathBuf;

use serde_json::{Value, json};

use super::{run, run_with};

fn question() -> String {
    json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose", "age_years": 0.5},
        "condition": {"signs": [{"sign": "spent-blooms"}]}})
    .to_string()
}

/// A folder of its own for a test.
fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).expect("a folder");
    folder
}

#[test]
fn why_not_says_what_stands_in_the_way_and_where_to_put_what() {
    let (code, out, err) = run_with(&["why-not", "rose.renewal-cut"], &question());
    assert_eq!((code, err.as_str()), (Some(0), ""));
    for piece in ["The least that brings it", "In its way", "put /plant/age_years = 1.0"] {
        assert!(out.contains(piece), "`{piece}` is not in:\n{out}");
    }
    let (_, spanish, _) = run_with(&["why-not", "rose.renewal-cut", "--language", "es"], &question());
    assert!(spanish.contains("Lo mínimo que lo trae") && spanish.contains("ponga /plant/age_years"), "{spanish}");
    let (_, text, _) = run_with(&["why-not", "rose.renewal-cut", "--json"], &question());
    let answer: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(answer["ways"][0]["patch"][0], json!({"op": "add", "path": "/plant/age_years", "value": 1.0}));
}

#[test]
fn why_not_of_no_rule_names_the_nearest() {
    let (code, _, err) = run_with(&["why-not", "rose.renewal-cot"], &question());
    assert_eq!(code, Some(2));
    assert!(err.contains("unknown rule `rose.renewal-cot`, did you mean `rose.renewal-cut`"), "{err}");
}

#[test]
fn tidy_says_what_differs_puts_it_right_and_then_finds_nothing() {
    let folder = folder("tidy");
    let file = folder.join("rose.yaml");
    fs::write(&file, "- title: {en: 'Cut'}  # said\n  id: rose.cut   \n").expect("a file");
    let at = folder.to_str().expect("a path");
    let (code, out, _) = run(&["tidy", at, "--check"]);
    assert_eq!(code, Some(1));
    assert!(out.contains("rose.yaml: differs"), "{out}");
    assert_eq!(run(&["tidy", at]).0, Some(0));
    let text = fs::read_to_string(&file).expect("a text");
    assert_eq!(text, "- id: rose.cut\n  title: {en: \"Cut\"}  # said\n");
    assert_eq!(run(&["tidy", at, "--check"]).0, Some(0));
    fs::write(&file, "- id: a\n  when: \"x and\n    y\"\n").expect("a file");
    let (code, out, _) = run(&["tidy", at]);
    assert_eq!(code, Some(1));
    assert!(out.contains("rose.yaml:2: the expression of `when` goes on over several lines"), "{out}");
    assert_eq!(run(&["tidy", "no/such/folder"]).0, Some(2));
}

#[test]
fn sources_that_are_due_are_listed_with_what_rests_on_them() {
    let (code, out, _) = run(&["check", "--sources", "--on", "2100-01-01"]);
    assert!(out.contains("sources are due on 2100-01-01"), "{out}");
    let (_, text, _) = run(&["check", "--sources", "--on", "2100-01-01", "--json"]);
    let due: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(code == Some(1), due["due"].as_array().is_some_and(|due| !due.is_empty()));
    let (code, _, err) = run(&["check", "--sources", "--on", "soon"]);
    assert_eq!(code, Some(2));
    assert!(err.contains("expected a day such as `2026-09-15`, found `soon`"), "{err}");
}

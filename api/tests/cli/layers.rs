//! House rules over the core, and past answers, as a shell sees them.

use serde_json::Value;

use crate::{run, run_with};

const CORE: &str = "../rules/packs/core";
const NURSERY: &str = "../rules/packs/nursery";
const QUESTION: &str = r#"{"climate": {"id": "hot-dry-valley"}, "date": "2026-06-05", "plant": {"type": "rose", "age_years": 1}, "recall": true}"#;

#[test]
fn house_rules_are_checked_over_the_core_as_a_whole_and_their_scenarios_hold() {
    let (code, out, err) = run(&["check", CORE, NURSERY, "--json"]);
    let checked: Value = serde_json::from_str(&out).unwrap_or_else(|_| panic!("{out}{err}"));
    assert_eq!((code, &checked["errors"]), (Some(0), &Value::from(0)), "{out}");
    let layers: Vec<&str> = checked["rule_set"]["layers"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|layer| layer["name"].as_str())
        .collect();
    assert_eq!(layers, ["core", "nursery"]);
    // The one inside the program is put below a set that lies over it.
    let (code, out, _) = run(&["scenarios", NURSERY]);
    assert_eq!(code, Some(0), "{out}");
    assert!(out.ends_with("8 passed, 0 failed\n"), "{out}");
}

#[test]
fn the_shipped_house_rules_have_one_entry_of_each_word_in_their_usual_form() {
    let (code, out, _) = run(&["tidy", "--check", NURSERY]);
    assert_eq!(code, Some(0), "{out}");
    let (_, out, _) = run(&["compare", "core", NURSERY]);
    for said in ["rose.house-tie-check", "rose.feed-granular", "rose.deadhead", "rose.aphid-oil", "fish-emulsion"] {
        assert!(out.contains(said), "{said} is not in\n{out}");
    }
    let (code, out, _) = run_with(&["advise", "--packs", NURSERY], QUESTION);
    assert_eq!(code, Some(0));
    assert!(out.contains("Look after the tie and the stake") && out.contains("nursery 2026.11.1"), "{out}");
}

#[test]
fn a_past_answer_is_given_again_from_whatever_of_it_was_kept() {
    let (_, answer, _) = run_with(&["advise", "--json"], QUESTION);
    let kept: Value = serde_json::from_str(&answer).expect("JSON");
    let recall = kept["recall"].as_str().expect("a recall text");
    for input in [answer.as_str(), recall] {
        let (code, out, err) = run_with(&["replay"], input);
        assert!(code == Some(0) && out.starts_with("the same answer, byte for byte (core "), "{out}{err}");
    }
    let version = kept["rule_sets"][0]["version"].as_str().expect("a version");
    let (code, out, _) =
        run_with(&["replay", "--language", "es"], &format!("hot-dry-valley/rose/2026-06-05/core@{version}"));
    assert!(code == Some(0) && out.starts_with("dada de nuevo"), "{out}");
    let (code, _, err) = run_with(&["replay"], "hot-dry-valley/rose/2026-06-05/core@1999.1.1");
    assert!(code == Some(2) && err.contains("unknown rule set `core@1999.1.1`"), "{err}");
    let (code, _, err) = run_with(&["replay"], "nothing of the kind");
    assert!(code == Some(2) && err.contains("this is no recall text"), "{err}");
}

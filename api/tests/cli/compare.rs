//! `lammas compare` and `lammas scenarios --mutate`: what they print for people and for programs, and their exit codes.

use serde_json::Value;

use super::rules::Folder;
use super::run;

const OIL: &str = "rules/rose-winter.yaml";

#[test]
fn a_change_is_said_by_rule_with_its_place_and_ends_with_one() {
    let folder = Folder::core_with(
        "compare",
        &[(OIL, "median - 2 weeks else coldest_week + 4 weeks", "median - 4 weeks else coldest_week + 2 weeks")],
    );
    let (code, out, error) = run(&["compare", "core", folder.path()]);
    assert_eq!((code, error.as_str()), (Some(1), ""));
    assert!(out.starts_with("rose.dormant-oil  Spray dormant oil on scale  (rules/rose-winter.yaml:"), "{out}");
    assert!(out.contains("  - closes 2 weeks earlier\n") && out.contains("1 rule changed, "), "{out}");
    let (_, out, _) = run(&["compare", "core", folder.path(), "--language", "es"]);
    assert!(out.contains("  - se cierra 2 semanas antes\n"), "{out}");
    let (code, out, _) = run(&["compare", "core", folder.path(), "--json"]);
    let json: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(code, Some(1));
    assert_eq!(
        (&json["same_meaning"], &json["changes"][0]["sentences"][0]["kind"]),
        (&false.into(), &"closes-moved".into())
    );
    // One file of it, inside its set.
    let file = format!("{}/rules/guards.yaml", folder.path());
    let (code, out, _) = run(&["compare", &file, &file]);
    assert_eq!((code, out.as_str()), (Some(0), "no change of meaning\n"));
}

#[test]
fn formatting_alone_is_no_change_and_bad_input_is_named() {
    let folder = Folder::core_with(
        "compare-form",
        &[(OIL, "closes: last_frost.median - 2 weeks", "closes:   last_frost.median - 14 days")],
    );
    let (code, out, _) = run(&["compare", "core", folder.path()]);
    assert_eq!((code, out.as_str()), (Some(0), "no change of meaning: only written in another way\n"));
    let (code, _, error) = run(&["compare", "core", "no/such/folder"]);
    assert_eq!(code, Some(2));
    assert!(error.contains("cannot read `no/such/folder`"), "{error}");
}

#[test]
fn the_changes_of_a_rule_that_no_scenario_would_notice_are_listed() {
    let (code, out, error) = run(&["scenarios", "--mutate", "guard.no-oil-in-cold"]);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    assert!(out.contains("guard.no-oil-in-cold  rules/guards.yaml:") && out.contains("HAZARDOUS"), "{out}");
    let (code, _, error) = run(&["scenarios", "--mutate", "guard.no-oil-in-colt"]);
    assert_eq!(code, Some(2));
    assert!(
        error.contains("there is no rule or material `guard.no-oil-in-colt`: did you mean `guard.no-oil-in-cold`?"),
        "{error}"
    );
}

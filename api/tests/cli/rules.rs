//! The commands that ask the rule set: what they print for people and for programs, and their exit codes.

use std::fs;
use std::path::PathBuf;

use serde_json::{Value, json};

use super::{run, run_with};

/// The example of the project's first page.
const README: &str = r#"{"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose", "age_years": 4},
    "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "crowded-centre"}]}}"#;

/// A folder with one small rule set, gone when the test is over.
pub(crate) struct Folder(PathBuf);

impl Folder {
    /// A copy of the core set in which each of `changes` replaces a text of a file.
    pub(crate) fn core_with(name: &str, changes: &[(&str, &str, &str)]) -> Self {
        let folder = std::env::temp_dir().join(format!("lammas-{name}-{}", std::process::id()));
        for file in lammas::sets::embedded::files() {
            let mut text = file.text;
            for (_, from, to) in changes.iter().filter(|(path, ..)| *path == file.path) {
                assert!(text.contains(from), "`{from}` is not in `{}`", file.path);
                text = text.replacen(from, to, 1);
            }
            let path = folder.join(&file.path);
            fs::create_dir_all(path.parent().expect("a folder")).expect("made");
            fs::write(path, text).expect("written");
        }
        Self(folder)
    }

    pub(crate) fn path(&self) -> &str {
        self.0.to_str().expect("text")
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

#[test]
fn advice_says_what_it_understood_of_words() {
    let question = r#"{"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose", "age_years": 4},
        "condition": {"words": "buds stay shut and brown. yellow leaves. my car is blue"}}"#;
    let (code, out, error) = run_with(&["advise"], question);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    for text in [
        "Understood: “buds stay shut and brown” → Buds stay shut (buds-stay-shut)",
        "Not sure: “yellow leaves” → ",
        "Not understood: “my car is blue”",
    ] {
        assert!(out.contains(text), "no `{text}` in\n{out}");
    }
}

#[test]
fn advice_is_printed_for_people_in_order_with_what_must_wait() {
    let (code, out, error) = run_with(&["advise"], README);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    let at = |text: &str| out.find(text).unwrap_or_else(|| panic!("no `{text}` in\n{out}"));
    assert!(out.starts_with("rose, 15 September 2026, hot-dry-valley: "), "{out}");
    let places = ["THIS WEEK", "Cut back for the late flush", "LEAVE ALONE, OR WAIT", "Look again: "].map(at);
    assert!(places.is_sorted(), "{places:?}\n{out}");
    assert!(at("LEAVE ALONE") < at("TO SAY MORE, TELL") && at("TO SAY MORE") < at("The label of a product"), "{out}");
    let cut = &out[at("Cut back for the late flush")..];
    let places = ["Check first", "36 °C (97 °F)", "How  ", "1) ", "Why ", "Mind ", "Expect "]
        .map(|text| cut.find(text).expect("it is there"));
    assert!(places.is_sorted(), "{places:?}\n{out}");
    assert!(out.lines().all(|line| line.chars().count() <= 100), "{out}");
}

#[test]
fn advice_speaks_spanish_when_asked_and_the_question_may_name_its_language() {
    let (code, out, _) = run_with(&["advise", "-", "--language", "es"], README);
    assert_eq!(code, Some(0));
    for text in ["ESTA SEMANA", "Antes mire", "DÉJELO ESTAR, O ESPERE", "Vuelva a mirar", "La etiqueta del producto"] {
        assert!(out.contains(text), "no `{text}` in\n{out}");
    }
    let english = README.replacen('{', r#"{"language": "en", "#, 1);
    let (_, out, _) = run_with(&["advise", "--language", "es"], &english);
    assert!(out.contains("THIS WEEK"), "{out}");
    let (code, _, error) = run_with(&["advise", "--language", "fr"], README);
    assert!(code == Some(2) && error.contains("expected `en` or `es`"), "{error}");
}

#[test]
fn the_json_of_advice_has_the_members_of_the_service() {
    let (code, out, _) = run_with(&["advise", "--json"], README);
    assert_eq!(code, Some(0));
    let answer: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(answer["status"], "advised");
    assert!(
        answer["tasks"].as_array().is_some_and(|tasks| tasks.iter().any(|task| task["id"] == "rose.renewal-cut")),
        "{out}"
    );
    serde_json::from_str::<lammas::v1::advice::answer::AdviceAnswer>(&out).expect("it fits the document");
}

#[test]
fn a_bad_question_ends_with_2_and_names_every_place() {
    let bad =
        json!({"climate": {"id": "hot-dry-vally"}, "date": "2026-09-15", "plant": {"type": "roze", "age_years": -1}})
            .to_string();
    let (code, out, error) = run_with(&["advise"], &bad);
    assert_eq!((code, out.as_str()), (Some(2), ""), "{error}");
    for text in
        ["/climate/id: unknown climate `hot-dry-vally`", "/plant/type: unknown plant `roze`", "/plant/age_years: "]
    {
        assert!(error.contains(text), "no `{text}` in\n{error}");
    }
    for (input, words) in
        [("{", "the body is not JSON"), ("{\"plant\": 1}", "/plant: expected an object"), ("", "found none")]
    {
        let (code, _, error) = run_with(&["advise", "-"], input);
        assert!(code == Some(2) && error.contains(words), "{error}");
    }
    let (code, _, error) = run(&["advise", "/no/such/file"]);
    assert!(code == Some(2) && error.contains("cannot read `/no/such/file`"), "{error}");
}

#[test]
fn a_season_is_drawn_as_svg() {
    let question = r#"{"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15"}"#;
    let (code, out, error) = run_with(&["season", "--svg"], question);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    let read = roxmltree::Document::parse(&out).expect("XML");
    assert!(read.root_element().has_tag_name(("http://www.w3.org/2000/svg", "svg")));
    assert!(out.contains("A year in: Hot dry valley") && out.ends_with("</svg>\n"));
    let (code, _, error) = run_with(&["season", "--svg", "--json"], question);
    assert!(code == Some(2) && error.contains("--json"), "{error}");
}

#[test]
fn a_season_is_printed_with_every_marker_and_fact() {
    let question = r#"{"climate": {"id": "tropical-lowland"}, "date": "2026-09-15"}"#;
    let (code, out, error) = run_with(&["season"], question);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    for text in ["MARKERS", "FACTS", "the usual first frost", "its season never comes", "reference evapotranspiration"]
    {
        assert!(out.contains(text), "no `{text}` in\n{out}");
    }
    let (_, out, _) = run_with(&["season", "--language", "es"], question);
    assert!(out.contains("HITOS") && out.contains("su época nunca llega"), "{out}");
    let (code, out, _) = run_with(&["season", "--json"], question);
    assert_eq!(code, Some(0));
    serde_json::from_str::<lammas::v1::season::answer::SeasonAnswer>(&out).expect("it fits the document");
    let (code, out, _) = run_with(&["season"], r#"{"climate": {"latitude": 10, "longitude": 10}}"#);
    assert!(code == Some(0) && out.contains("MARKERS"), "{out}");
    let (code, _, error) = run_with(&["season"], r#"{"climate": {"latitude": 0, "longitude": -30}}"#);
    assert!(code == Some(2) && error.contains("/climate/latitude"), "{error}");
}

#[test]
fn the_set_inside_the_program_passes_its_check_and_its_scenarios() {
    let (code, out, _) = run(&["check"]);
    assert_eq!(code, Some(0), "{out}");
    assert!(out.lines().last().is_some_and(|line| line.starts_with("0 errors, ")), "{out}");
    let (code, out, _) = run(&["scenarios"]);
    assert_eq!(code, Some(0), "{out}");
    assert!(out.ends_with(" passed, 0 failed\n"), "{out}");
}

#[test]
fn a_fault_is_shown_with_its_place_the_line_and_the_cure() {
    let folder = Folder::core_with("faults", &[("rules/rose-cuts.yaml", "spent-blooms", "spent-bloms")]);
    let (code, out, _) = run(&["check", folder.path()]);
    assert_eq!(code, Some(1), "{out}");
    let first = out.lines().next().unwrap_or_default();
    assert!(
        first.starts_with("rules/rose-cuts.yaml:") && first.contains(": error[") && first.contains("`spent-bloms`"),
        "{out}"
    );
    assert!(out.contains("^^^") && out.contains("did you mean `spent-blooms`?"), "{out}");
    assert!(!out.ends_with("\n0 errors, 0 warnings\n"), "{out}");

    let (code, out, _) = run(&["check", folder.path(), "--json"]);
    assert_eq!(code, Some(1));
    let report: Value = serde_json::from_str(&out).expect("JSON");
    assert!(report["errors"].as_u64() >= Some(1) && report["rule_set"].is_null(), "{out}");
    assert_eq!(report["faults"][0]["place"]["file"], "rules/rose-cuts.yaml");

    // A set with faults answers nothing, and a server does not start with it.
    for arguments in
        [vec!["scenarios", folder.path()], vec!["serve", "--listen", "127.0.0.1:0", "--packs", folder.path()]]
    {
        let (code, out, error) = run(&arguments);
        assert_eq!((code, out.as_str()), (Some(1), ""), "{arguments:?}: {error}");
        assert!(error.contains("rules/rose-cuts.yaml:") && error.contains("^^^"), "{error}");
    }
    let (code, _, error) = run_with(&["advise", "--packs", folder.path()], README);
    assert!(code == Some(1) && error.contains("`spent-bloms`"), "{error}");
}

/// Do and don't: a rule that says to leave alone what another orders.
const DONT: &str = "- id: rose.no-deadheading
  kind: avoid
  job: deadhead
  title: {en: \"No deadheading\", es: \"Sin quitar flores\"}
  for: {plant: rose}
  when: \"signs has spent-blooms\"
  evidence: common-practice
  strength: avoid
  why: {en: \"The hips are wanted.\", es: \"Se quieren los escaramujos.\"}
  sources: [common-practice]
- id: rose.deadhead
";

#[test]
fn the_question_behind_a_contradiction_goes_on_to_advise_and_shows_it() {
    let folder = Folder::core_with("contradiction", &[("rules/rose-cuts.yaml", "- id: rose.deadhead\n", DONT)]);
    let (code, out, _) = run(&["check", folder.path()]);
    assert_eq!(code, Some(1), "{out}");
    assert!(out.contains("warning[contradiction]: `rose.no-deadheading` says to leave alone"), "{out}");
    assert!(out.contains("shown by a question: `rose.deadhead` is advised and"), "{out}");
    assert!(out.contains(&format!("the question: lammas check {} --witness=1", folder.path())), "{out}");
    assert!(out.lines().last().is_some_and(|line| line.starts_with("0 errors, 1 proven findings, ")), "{out}");

    let (code, question, error) = run(&["check", folder.path(), "--witness"]);
    assert_eq!((code, error.as_str()), (Some(1), ""));
    let (code, out, error) = run_with(&["advise", "--json", "--packs", folder.path()], &question);
    assert_eq!(code, Some(0), "{error}");
    let answer: Value = serde_json::from_str(&out).expect("JSON");
    let ids = |list: &str| -> Vec<String> {
        answer[list].as_array().into_iter().flatten().filter_map(|e| e["id"].as_str()).map(str::to_owned).collect()
    };
    assert!(ids("tasks").contains(&"rose.deadhead".to_owned()), "{answer}");
    assert!(ids("held").contains(&"rose.no-deadheading".to_owned()), "{answer}");

    let (_, out, _) = run(&["check", folder.path(), "--json"]);
    let report: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!((&report["findings"], &report["proven"]["undecided"]), (&json!(1), &json!([])));
    let shown = report["faults"].as_array().into_iter().flatten().find(|fault| fault["code"] == "contradiction");
    assert_eq!(shown.expect("found")["witness"]["request"]["plant"]["type"], "rose");

    let (code, out, error) = run(&["check", folder.path(), "--witness=2"]);
    assert_eq!((code, out.as_str(), error.contains("expected 1 to 1")), (Some(2), "", true), "{error}");
    let (code, out, error) = run(&["check", "--witness"]);
    assert_eq!((code, out.as_str(), error.contains("no question to show")), (Some(2), "", true), "{error}");
}

#[test]
fn a_scenario_that_comes_out_differently_is_shown_first_and_ends_with_1() {
    let file = "scenarios/rose/september-hot-dry-valley.yaml";
    let folder = Folder::core_with("scenarios", &[(file, "status: advised", "status: nothing-due")]);
    let (code, out, _) = run(&["scenarios", folder.path()]);
    assert_eq!(code, Some(1), "{out}");
    assert!(out.starts_with("DIFFERS      Late summer in a hot dry valley"), "{out}");
    assert!(out.contains("- status: expected nothing-due, got advised") && out.contains(file), "{out}");
    assert!(out.ends_with(" passed, 1 failed\n"), "{out}");
    let (code, out, _) = run(&["scenarios", folder.path(), "--json"]);
    assert_eq!((code, serde_json::from_str::<Value>(&out).expect("JSON")["failed"].as_u64()), (Some(1), Some(1)));
}

#[test]
fn a_folder_may_be_served_instead() {
    let folder = Folder::core_with("served", &[("pack.yaml", "name: core", "name: garden")]);
    let (code, out, error) = run_with(&["advise", "--json", "--packs", folder.path()], README);
    assert_eq!(code, Some(0), "{error}");
    assert_eq!(serde_json::from_str::<Value>(&out).expect("JSON")["rule_sets"][0]["name"], "garden");
    let (code, _, error) = run(&["check", "/no/such/folder"]);
    assert!(code == Some(2) && error.contains("cannot read `/no/such/folder`"), "{error}");
}

#[test]
fn a_code_is_explained_and_all_are_listed() {
    let (code, list, _) = run(&["fault"]);
    assert_eq!(code, Some(0));
    assert!(list.lines().count() > 20, "{list}");
    for code in list.lines().filter_map(|line| line.split_whitespace().next()) {
        let (ended, page, _) = run(&["fault", code]);
        assert_eq!(ended, Some(0), "{code}");
        assert!(page.contains("## What it finds") && page.contains("## How to put it right"), "{page}");
    }
    let (code, _, error) = run(&["fault", "window-never-open"]);
    assert!(code == Some(2) && error.contains("did you mean `window-never-opens`?"), "{error}");
    let (_, out, _) = run(&["fault", "bad-id", "--json"]);
    assert_eq!(serde_json::from_str::<Value>(&out).expect("JSON")["weight"], "error");
}

//! The commands that look at a rule set as a whole: impact, coverage, a year rehearsed. They work on the small pack of the
//! engine's own tests.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};

use super::{run, run_with};

const MINI: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../rules/engine/tests/data/mini");

/// A folder that is gone when the test is over.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Self {
        let folder = std::env::temp_dir().join(format!("lammas-{name}-{}", std::process::id()));
        fs::create_dir_all(&folder).expect("made");
        Self(folder)
    }

    /// A copy of the small pack in which each of `changes` replaces a text of the rules.
    fn mini_with(name: &str, changes: &[(&str, &str)]) -> Self {
        let folder = Self::new(name);
        copy(Path::new(MINI), &folder.0);
        let file = folder.0.join("rules/rose.yaml");
        let mut text = fs::read_to_string(&file).expect("the rules");
        for (from, to) in changes {
            assert!(text.contains(from), "`{from}` is not in the rules");
            text = text.replacen(from, to, 1);
        }
        fs::write(&file, text).expect("written");
        folder
    }

    fn path(&self) -> &str {
        self.0.to_str().expect("text")
    }

    fn file(&self, name: &str, text: &str) -> String {
        let path = self.0.join(name);
        fs::write(&path, text).expect("written");
        path.to_str().expect("text").to_owned()
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).expect("made");
    for entry in fs::read_dir(from).expect("a folder") {
        let path = entry.expect("an entry").path();
        let there = to.join(path.file_name().expect("a name"));
        if path.is_dir() {
            copy(&path, &there);
        } else {
            fs::copy(&path, &there).expect("copied");
        }
    }
}

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).unwrap_or_else(|error| panic!("{error}: {text}"))
}

const LESS_FEED: (&str, &str) = ("typical: {min: 30, max: 60, unit: g}", "typical: {min: 20, max: 60, unit: g}");

#[test]
fn impact_says_which_rule_changes_how_where_and_when_with_an_example_that_can_be_asked() {
    let draft = Folder::mini_with("draft", &[LESS_FEED]);
    let examples = draft.0.join("examples");
    let arguments = ["impact", MINI, draft.path(), "--examples", examples.to_str().expect("text")];
    let (code, out, error) = run(&arguments);
    assert_eq!(code, Some(0), "{error}");
    assert!(error.contains("answers by both sets in "), "{error}");
    let words = out.split_whitespace().collect::<Vec<&str>>().join(" ");
    for text in
        ["ROSE: ", "rose.feed Feed", "1. its amounts are others: ", "usually 30 to 60 g → ", "usually 20 to 60 g"]
    {
        assert!(words.contains(text), "no `{text}` in\n{out}");
    }
    let example = examples.join("1.json");
    let (code, advice, error) = run(&["advise", example.to_str().expect("text"), "--packs", draft.path()]);
    assert_eq!(code, Some(0), "{error}");
    assert!(advice.contains("Feed"), "{advice}");
    let _ = fs::remove_dir_all(&examples);

    let (code, told, _) = run(&["impact", MINI, draft.path(), "--json"]);
    assert_eq!(code, Some(0));
    let told = parsed(&told);
    let changes = told["changes"].as_array().expect("changes");
    let kinds: Vec<(&str, &str)> =
        changes.iter().filter_map(|c| Some((c["rule"].as_str()?, c["kind"].as_str()?))).collect();
    assert_eq!(kinds, [("rose.feed", "amount")]);
    assert_eq!(told["changed"], changes[0]["answers"]);
    assert_eq!(changes[0]["example"]["request"]["plant"], json!({"type": "rose"}));
    assert!(
        changes[0]["places"]
            .as_array()
            .expect("places")
            .iter()
            .all(|p| !p["weeks"].as_array().expect("weeks").is_empty())
    );
}

#[test]
fn impact_of_nothing_is_nothing() {
    let (code, out, error) = run(&["impact", MINI, MINI]);
    assert_eq!(code, Some(0), "{error}");
    assert!(out.contains("\n0 of ") && out.lines().count() == 2, "{out}");
}

#[test]
fn requests_are_asked_of_both_sets_and_no_line_is_lost() {
    let draft = Folder::mini_with("requests", &[LESS_FEED]);
    let rose = |date: &str| json!({"climate": {"id": "valley"}, "date": date, "plant": {"type": "rose"}}).to_string();
    let unknown = json!({"climate": {"id": "valley"}, "date": "2026-05-01", "plant": {"type": "fern"}}).to_string();
    let lines = [rose("2026-05-01"), "{\"climate\"".to_owned(), String::new(), unknown, rose("2026-12-20")].join("\n");
    let file = draft.file("asked.ndjson", &lines);
    let (code, out, _) = run(&["impact", MINI, draft.path(), "--requests", &file]);
    assert_eq!(code, Some(1), "{out}");
    for text in [
        "1 of 2 answers change (4 lines in ",
        "line 2 can't be asked: ",
        "line 4 can't be asked: ",
        "unknown plant `fern`",
        "its amounts are others: line 1",
    ] {
        assert!(out.contains(text), "no `{text}` in\n{out}");
    }
    let (code, told, _) = run_with(&["impact", MINI, draft.path(), "--requests", "-", "--json"], &rose("2026-05-01"));
    assert_eq!(code, Some(0));
    let requests = &parsed(&told)["requests"];
    assert_eq!((&requests["lines"], &requests["changed"], &requests["bad"]), (&json!(1), &json!([1]), &json!([])));
    let (code, _, error) = run(&["impact", MINI, "/no/such/folder"]);
    assert_eq!(code, Some(2));
    assert!(error.contains("cannot read `/no/such/folder`"), "{error}");
    let (code, _, error) = run(&["impact", MINI, MINI, "--plant", "rosa"]);
    assert_eq!(code, Some(2));
    assert!(error.contains("unknown plant `rosa`, did you mean `rose`?"), "{error}");
}

#[test]
fn coverage_has_a_line_a_place_a_character_a_week() {
    let (code, out, error) = run(&["coverage", MINI]);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    let row =
        out.lines().find(|line| line.trim_start().starts_with("Hot dry valley")).unwrap_or_else(|| panic!("{out}"));
    let marks: String = row.split_whitespace().last().expect("marks").to_owned();
    assert!(marks.len() == 52 && marks.chars().all(|mark| ".-12345abcde".contains(mark)), "{row}");
    assert!(out.contains("of 624 cells with nothing due whatever is told"), "12 places of 52 weeks\n{out}");

    let (code, told, _) = run(&["coverage", MINI, "--json"]);
    assert_eq!(code, Some(0));
    let told = parsed(&told);
    let rows = told["plants"][0]["rows"].as_array().expect("rows");
    assert_eq!(rows.len(), 12);
    let cells = rows[0]["cells"].as_array().expect("cells");
    assert_eq!(cells.len(), 52);
    // 15 September lies in the 37th run of seven days.
    assert_eq!((&cells[36]["week"], &cells[36]["scenarios"]), (&json!(37), &json!(1)));
    for (cell, mark) in cells.iter().zip(marks.chars()) {
        assert_eq!(cell["applies"] == 0, ".-".contains(mark), "{cell}");
        assert_eq!(cell["applies_untold"] == 0, ".-abcde".contains(mark), "{cell}");
        assert!(cell["applies"] != 0 || cell["weakest_evidence"].is_null());
    }
}

#[test]
fn coverage_is_drawn_without_script_and_told_in_words() {
    let (code, svg, _) = run(&["coverage", MINI, "--svg"]);
    assert_eq!(code, Some(0));
    for text in [
        "<svg xmlns",
        "<title id=\"title\">Coverage of ",
        "<desc id=\"desc\">",
        "prefers-color-scheme: dark",
        "url(#hatch)",
        "</svg>",
    ] {
        assert!(svg.contains(text), "no `{text}`");
    }
    assert!(!svg.contains("<script") && !svg.contains("href"), "it loads and runs nothing");
    assert_eq!(svg.matches("<g>").count(), 12, "a group a place");
    let (code, _, error) = run(&["coverage", MINI, "--plant", "rosa"]);
    assert_eq!(code, Some(2));
    assert!(error.contains("unknown plant `rosa`, did you mean `rose`?"), "{error}");
    let (code, _, _) = run(&["coverage", MINI, "--svg", "--json"]);
    assert_eq!(code, Some(2));
}

#[test]
fn a_year_is_rehearsed_week_by_week() {
    let basket = json!({
        "climate": {"id": "valley"},
        "plants": [
            {"name": "by the gate", "plant": {"type": "rose", "age_years": 4}, "condition": {"signs": [{"sign": "spent-blooms"}]}},
            {"plant": {"type": "rose"}}
        ]
    })
    .to_string();
    let arguments = ["rehearse", "-", "--from", "2027-01-01", "--packs", MINI];
    let (code, out, error) = run_with(&arguments, &basket);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    for text in [
        "A year from 2027-01-01 under ",
        ": 2 plants\n",
        "separate day",
        "by the gate: ",
        "Cut back for the late flush",
    ] {
        assert!(out.contains(text), "no `{text}` in\n{out}");
    }
    assert!(out.lines().all(|line| line.chars().count() <= 100), "{out}");
    let (code, told, _) = run_with(&[arguments.as_slice(), &["--json"]].concat(), &basket);
    assert_eq!(code, Some(0));
    let told = parsed(&told);
    assert_eq!(told["weeks"].as_array().map(Vec::len), Some(53));
    let days = told["plants"][0]["days"].as_array().expect("stretches");
    assert_eq!((&days[0]["first"], &days[days.len() - 1]["last"]), (&json!("2027-01-01"), &json!("2028-01-01")));
}

#[test]
fn a_basket_that_does_not_fit_is_refused_with_its_places() {
    let basket = |plants: Value| json!({"climate": {"id": "valley"}, "plants": plants}).to_string();
    for (text, words) in [
        (
            basket(json!([{"plant": {"type": "rose"}}, {"plant": {"type": "fern"}}])),
            "/plants/1/plant/type: unknown plant `fern`",
        ),
        (basket(json!([])), "/plants: expected 1 to 200 plants, found 0"),
        (basket(json!([{"plant": {"type": "rose"}, "sight": {}}])), "sight"),
        (json!({"climate": {"id": "vale"}, "plants": [{"plant": {"type": "rose"}}]}).to_string(), "/climate/id: "),
    ] {
        let (code, out, error) = run_with(&["rehearse", "-", "--from", "2027-01-01", "--packs", MINI], &text);
        assert_eq!((code, out.as_str()), (Some(2), ""), "{text}");
        assert!(error.contains(words), "{text}: {error}");
    }
}

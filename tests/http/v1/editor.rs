//! The editors' calls: from a draft to what everybody is answered from, and back.

use std::path::Path;
use std::time::{Duration, Instant};

use lammas::sets::folder;
use lammas_engine::read::PackFile;
use lammas_tests::answer::Answer;
use lammas_tests::editor::Editor;
use serde_json::{Value, json};

fn json_of(answer: &Answer, status: u16) -> Value {
    assert_eq!(answer.status, status, "{answer:?}");
    serde_json::from_str(&answer.body).expect("JSON")
}

/// What the service answers from: its version, as an answer tells it.
fn served(editor: &Editor) -> String {
    let ready = editor.server.get("/health/ready").ok();
    ready["releases"]["sets"][0]["version"].as_str().expect("a version").to_owned()
}

fn until(what: &str, editor: &Editor, version: &str) {
    let begun = Instant::now();
    while served(editor) != version {
        assert!(begun.elapsed() < Duration::from_secs(120), "{what}: still {}", served(editor));
        std::thread::sleep(Duration::from_millis(100));
    }
}

fn mini() -> Vec<PackFile> {
    folder::files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../rules/engine/tests/data/mini")).expect("it is there")
}

/// The small set with another version.
fn versioned(version: &str) -> String {
    let files: Vec<Value> = mini()
        .into_iter()
        .map(|mut file| {
            if file.path == "pack.yaml" {
                let old = file.text.lines().find(|line| line.starts_with("version:")).expect("a version").to_owned();
                file.text = file.text.replacen(&old, &format!("version: \"{version}\""), 1);
            }
            json!({"path": file.path, "text": file.text})
        })
        .collect();
    json!({"note": "next", "files": files}).to_string()
}

#[test]
fn a_draft_becomes_what_everybody_is_answered_from_and_is_undone_in_one_step() {
    let editor = Editor::start();
    let first = served(&editor);
    let import = editor.send("POST", "/v1/editor/drafts", &[("idempotency-key", "i")], &versioned("2099.1.1"));
    let draft = json_of(&import, 201)["id"].as_str().expect("a name").to_owned();
    let again = editor.send("POST", "/v1/editor/drafts", &[("idempotency-key", "i")], &versioned("2099.1.1"));
    assert_eq!((again.status, &again.body), (201, &import.body), "done once");

    let path = format!("/v1/editor/drafts/{draft}");
    let read = editor.send("GET", &path, &[], "");
    assert_eq!(read.header("etag"), "\"1\"");
    assert_eq!(json_of(&read, 200)["files"].as_array().expect("files").len(), mini().len());
    let changed = editor.send("PUT", &path, &[("if-match", "\"1\"")], &versioned("2099.1.2"));
    assert_eq!((changed.status, changed.header("etag")), (200, "\"2\""));
    let late = editor.send("PUT", &path, &[("if-match", "\"1\"")], &versioned("2099.1.3"));
    assert_eq!((late.status, late.header("etag")), (412, "\"2\""), "the tag of what is there now");

    let publish = format!("{path}/publish");
    let half = editor.send("POST", &publish, &[("if-match", "\"2\""), ("idempotency-key", "h")], r#"{"zone": "UTC"}"#);
    assert_eq!(json_of(&half, 422)["errors"][0]["pointer"], "/at");
    let headers = [("if-match", "\"2\""), ("idempotency-key", "p")];
    let release = json_of(&editor.send("POST", &publish, &headers, "{}"), 201);
    assert_eq!((release["version"].as_str(), release["release"].as_i64()), (Some("2099.1.2"), Some(2)));
    let repeated = json_of(&editor.send("POST", &publish, &headers, "{}"), 201);
    assert_eq!(repeated, release, "published once");
    until("publish", &editor, "2099.1.2");
    let question =
        json!({"climate": {"id": "valley"}, "plant": {"type": "rose"}, "date": "2026-09-15", "rule_sets": ["mini"]});
    let answer = editor.server.post("/v1/advice", &question).ok();
    assert_eq!(answer["rule_sets"][0]["version"], "2099.1.2");

    let undo = "/v1/editor/rule-sets/mini/undo";
    let undone = json_of(&editor.send("POST", undo, &[("idempotency-key", "u")], "{}"), 201);
    assert_eq!((undone["how"].as_str(), undone["version"].as_str()), (Some("undo"), Some(first.as_str())));
    until("undo", &editor, &first);

    let hold = json!({"kind": "material", "id": "garden-oil", "because": {"en": "Burnt buds were seen."}});
    let path = "/v1/editor/rule-sets/mini/hold-back";
    let headers = [("idempotency-key", "b")];
    let held = json_of(&editor.send("POST", path, &headers, &hold.to_string()), 201);
    assert_eq!(held["version"], format!("{first}+held.1"));
    until("hold back", &editor, &format!("{first}+held.1"));
    let listed = json_of(&editor.send("GET", "/v1/editor/releases", &[], ""), 200);
    let how: Vec<_> = listed["items"].as_array().expect("releases").iter().map(|item| item["how"].clone()).collect();
    assert_eq!(how, ["hold-back", "undo", "publish", "publish"]);
}

#[test]
fn a_draft_is_checked_as_publishing_does() {
    let editor = Editor::start();
    let draft = editor.draft();
    let checked = json_of(&editor.send("POST", &format!("/v1/editor/drafts/{draft}/check"), &[], ""), 200);
    assert_eq!(checked["publishable"], false);
    assert!(checked["against"].as_array().is_some_and(|against| !against.is_empty()), "{checked}");
}

#[test]
fn without_a_store_nothing_is_said_of_releases() {
    let server = lammas_tests::server::Server::start();
    assert!(server.get("/health/ready").ok().get("releases").is_none());
}

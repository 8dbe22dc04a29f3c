//! Rule sets in layers, pinned, as of a moment; and a past answer given again, over HTTP.

use std::path::Path;

use lammas::problem::kinds::{BAD_QUERY, INVALID_REQUEST, UNKNOWN_RULE_SET};
use lammas_tests::server::{Server, small};
use serde_json::{Value, json};

fn question(more: &Value) -> Value {
    let mut question =
        json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-06-05", "plant": {"type": "rose", "age_years": 1}});
    for (name, value) in more.as_object().into_iter().flatten() {
        question[name] = value.clone();
    }
    question
}

fn with_nursery() -> Server {
    let mut settings = small();
    settings.rules.packs = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("../rules/packs/nursery")];
    Server::with(settings, |_| {})
}

fn names(answer: &Value) -> Vec<&str> {
    answer["rule_sets"].as_array().into_iter().flatten().filter_map(|set| set["name"].as_str()).collect()
}

fn entry<'a>(answer: &'a Value, list: &str, id: &str) -> Option<&'a Value> {
    answer[list].as_array()?.iter().find(|entry| entry["id"] == id)
}

#[test]
fn house_rules_speak_over_the_core_and_whoever_wants_only_the_core_gets_it() {
    let server = with_nursery();
    let both = server.post("/v1/advice", &question(&json!({}))).ok();
    assert_eq!(names(&both), ["core", "nursery"], "the operator's sets");
    let tie = entry(&both, "tasks", "rose.house-tie-check").expect("the house's own rule");
    assert_eq!((&tie["rule_set"], &tie["also"]), (&json!("nursery"), &json!([])));
    let dust = entry(&both, "held", "rose.trace-minerals").expect("it is withheld");
    assert_eq!((&dust["kind"], &dust["rule_set"]), (&json!("withheld"), &json!("core")));
    let named = server.post("/v1/advice", &question(&json!({"rule_sets": ["core", "nursery"]}))).ok();
    assert_eq!(named, both);
    let core = server.post("/v1/advice", &question(&json!({"rule_sets": ["core"]}))).ok();
    assert_eq!(names(&core), ["core"]);
    assert!(entry(&core, "tasks", "rose.house-tie-check").is_none());
    assert!(entry(&core, "held", "rose.trace-minerals").is_none());
    let plain = Server::start().post("/v1/advice", &question(&json!({}))).ok();
    assert_eq!(core["digest"], plain["digest"], "the same core, whatever lies over it elsewhere");
    assert_eq!(core["rule_sets"][0], both["rule_sets"][0]);
    let lacks = server.post("/v1/advice", &question(&json!({"rule_sets": ["nursery"]}))).problem(INVALID_REQUEST);
    assert_eq!(lacks.errors[0].pointer, "/rule_sets/0");
    let by_address =
        server.get("/v1/advice?climate=hot-dry-valley&plant=rose&date=2026-06-05&rule_sets=core,nursery").ok();
    assert_eq!(names(&by_address), ["core", "nursery"]);
    let diagnosis =
        json!({"plant": {"type": "rose"}, "condition": {"signs": [{"sign": "spent-blooms"}]}, "rule_sets": ["core"]});
    assert_eq!(names(&server.post("/v1/diagnosis", &diagnosis).ok()), ["core"]);
}

#[test]
fn as_of_picks_the_release_of_then_or_says_why_there_is_none() {
    let server = Server::start();
    let now = server.post("/v1/advice", &question(&json!({}))).ok();
    let then = server.post("/v1/advice", &question(&json!({"as_of": "2026-11-02T00:00:00Z"}))).ok();
    assert_eq!(then["digest"], now["digest"]);
    let early = server.post("/v1/advice", &question(&json!({"as_of": "1999-01-01"}))).problem(UNKNOWN_RULE_SET);
    assert_eq!(early.errors[0].pointer, "/as_of");
    assert!(early.errors[0].detail.contains("first published at"), "{early:?}");
    let future = server.post("/v1/advice", &question(&json!({"as_of": "2999-01-01"}))).problem(INVALID_REQUEST);
    assert_eq!(future.errors[0].pointer, "/as_of");
    let pinned = format!("core@{}", now["rule_sets"][0]["version"].as_str().expect("a version"));
    let both = server.post("/v1/advice", &question(&json!({"as_of": "2026-11-02", "rule_sets": [pinned]})));
    assert_eq!(both.problem(INVALID_REQUEST).errors[0].pointer, "/as_of");
    let asked = "/v1/advice?climate=hot-dry-valley&plant=rose&as_of=2999-01-01";
    assert_eq!(server.get(asked).problem(BAD_QUERY).errors[0].pointer, "/as_of");
}

#[test]
fn an_answer_is_given_again_from_its_recall_text_and_from_its_reference() {
    let server = with_nursery();
    let answer =
        server.post("/v1/advice", &question(&json!({"recall": true, "language": "es", "detail": "full"}))).ok();
    let recall = answer["recall"].as_str().expect("a recall text");
    assert!(recall.len() < 4096);
    let again = server.post("/v1/replay", &json!({"recall": recall})).ok();
    assert_eq!((&again["same"], &again["answer"]), (&json!("same"), &answer));
    assert_eq!(names(&again), ["core", "nursery"]);
    let bare = json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-06-05", "plant": {"type": "rose"}});
    let short = server.post("/v1/advice", &bare).ok();
    let reference = short["reference"].as_str().expect("a reference");
    assert!(reference.starts_with("hot-dry-valley/rose/2026-06-05/core@"), "{reference}");
    assert!(reference.contains("+nursery@"), "{reference}");
    let again = server.post("/v1/replay", &json!({"reference": reference})).ok();
    assert_eq!((&again["from"], &again["answer"]), (&json!("reference"), &short));
    let elsewhere = Server::start().post("/v1/replay", &json!({"recall": recall})).problem(UNKNOWN_RULE_SET);
    assert!(elsewhere.errors[0].detail.contains("nursery@"), "{elsewhere:?}");
    let nothing = server.post("/v1/replay", &json!({})).problem(INVALID_REQUEST);
    assert_eq!(nothing.errors[0].pointer, "/recall");
}

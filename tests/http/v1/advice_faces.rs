//! Language, units, detail and limit: faces of one decision. What is for safety stands on each.

use lammas_tests::server::Server;
use serde_json::{Value, json};

use super::advice::september_rose;

fn with(members: &Value) -> Value {
    let mut question = september_rose();
    for (name, value) in members.as_object().expect("an object") {
        question[name] = value.clone();
    }
    question
}

fn tasks(answer: &Value) -> &Vec<Value> {
    answer["tasks"].as_array().expect("tasks")
}

#[test]
fn spanish_is_spoken_by_the_field_or_by_the_header_and_the_decision_is_the_same() {
    let server = Server::start();
    let english = server.post("/v1/advice", &september_rose());
    let by_field = server.post("/v1/advice", &with(&json!({"language": "es"})));
    let body = september_rose().to_string();
    let headers = [("content-type", "application/json"), ("accept-language", "de, es-MX;q=0.9, en;q=0.8")];
    let by_header = server.send("POST", "/v1/advice", &headers, body.as_bytes());
    assert_eq!(by_field.body, by_header.body);
    assert_eq!((english.header("content-language"), by_field.header("content-language")), ("en", "es"));
    assert_ne!(english.header("etag"), by_field.header("etag"));
    let (english, spanish) = (english.ok(), by_field.ok());
    assert_eq!(english["digest"], spanish["digest"]);
    assert!(
        spanish["notice"].as_str().is_some_and(|notice| notice.starts_with("La etiqueta")),
        "{}",
        spanish["notice"]
    );
    for (one, other) in tasks(&english).iter().zip(tasks(&spanish)) {
        assert_eq!(
            (&one["id"], &one["priority"], &one["window"]["closes"]),
            (&other["id"], &other["priority"], &other["window"]["closes"])
        );
        assert_ne!(one["title"], other["title"], "{}", one["id"]);
    }
    // A field wins over the header.
    let body = with(&json!({"language": "en"})).to_string();
    assert_eq!(server.send("POST", "/v1/advice", &headers, body.as_bytes()).header("content-language"), "en");
}

#[test]
fn amounts_come_in_the_units_that_are_asked_for() {
    let server = Server::start();
    let soak = |units: &str| {
        let answer = server.post("/v1/advice", &with(&json!({"units": units}))).ok();
        let soak = tasks(&answer).iter().find(|task| task["id"] == "rose.deep-soak").expect("a soak").clone();
        soak["amounts"][0].clone()
    };
    let (both, si, us) = (soak("both"), soak("si"), soak("us"));
    assert_eq!((&both["unit"], &both["us"]["unit"]), (&json!("L"), &json!("gal")));
    assert_eq!((&si["unit"], &si["value"]), (&json!("L"), &both["value"]));
    assert!(si.get("us").is_none() && si["typical"].get("us").is_none(), "{si}");
    assert_eq!((&us["unit"], &us["value"]), (&json!("gal"), &both["us"]["value"]));
    assert_eq!((&us["typical"]["unit"], &us["typical"]["max"]), (&json!("gal"), &both["typical"]["us"]["max"]));
    assert!(us.get("us").is_none(), "{us}");
}

#[test]
fn a_brief_answer_keeps_what_is_for_safety() {
    let server = Server::start();
    let full = server.post("/v1/advice", &with(&json!({"detail": "full"}))).ok();
    for detail in ["brief", "standard"] {
        let less = server.post("/v1/advice", &with(&json!({"detail": detail}))).ok();
        assert_eq!((&less["digest"], tasks(&less).len()), (&full["digest"], tasks(&full).len()));
        for (short, long) in tasks(&less).iter().zip(tasks(&full)) {
            for member in ["id", "title", "check_first", "steps", "amounts", "cautions", "keep_apart"] {
                assert_eq!(short[member], long[member], "{detail} {}", long["id"]);
            }
            assert_eq!(short["priority"]["band"], long["priority"]["band"]);
            assert_eq!(short["reasons"][0]["text"], long["reasons"][0]["text"]);
            assert!(short["priority"].get("parts").is_none() && long["priority"].get("parts").is_some());
            assert_eq!(short.get("sources").is_some(), detail == "standard");
        }
        for (short, long) in less["held"].as_array().expect("held").iter().zip(full["held"].as_array().expect("held")) {
            for member in ["id", "title", "kind", "because", "look_again", "cautions"] {
                assert_eq!(short[member], long[member], "{detail}");
            }
        }
        assert_eq!(less["held"].as_array().map(Vec::len), full["held"].as_array().map(Vec::len));
    }
}

#[test]
fn a_limit_cuts_tasks_and_what_is_for_safety_in_them_stays() {
    let server = Server::start();
    let all = server.post("/v1/advice", &september_rose()).ok();
    assert!(all.get("safety_of_cut").is_none());
    for limit in [1, 3] {
        let cut = server.post("/v1/advice", &with(&json!({"limit": limit}))).ok();
        assert_eq!(tasks(&cut), &tasks(&all)[..limit]);
        let rest = cut["safety_of_cut"].as_array().expect("what was cut");
        assert_eq!(rest.len(), tasks(&all).len() - limit);
        for (left, whole) in rest.iter().zip(&tasks(&all)[limit..]) {
            for member in ["id", "title", "check_first", "cautions", "keep_apart"] {
                assert_eq!(left[member], whole[member], "{}", whole["id"]);
            }
        }
        assert_eq!((&cut["held"], &cut["digest"]), (&all["held"], &all["digest"]));
    }
    let enough = server.post("/v1/advice", &with(&json!({"limit": 200}))).ok();
    assert!(enough.get("safety_of_cut").is_none());
}

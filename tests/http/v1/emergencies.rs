//! Someone or something is in danger: every face of an answer says who to call, first and alone.

use lammas::problem::kinds::UNKNOWN_PLANT;
use lammas_tests::server::Server;
use serde_json::{Value, json};

fn ask(plant: Option<&str>, words: &str) -> Value {
    let mut question =
        json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "condition": {"words": words}});
    if let Some(plant) = plant {
        question["plant"] = json!({"type": plant});
    }
    question
}

#[test]
fn every_face_says_who_to_call_and_nothing_else_is_to_be_done() {
    let server = Server::start();
    for language in ["en", "es"] {
        for detail in ["brief", "standard", "full"] {
            for limit in [Value::Null, json!(1)] {
                for units in ["si", "us", "both"] {
                    let mut question = ask(Some("rose"), "my dog ate the slug pellets");
                    question["language"] = json!(language);
                    question["detail"] = json!(detail);
                    question["units"] = json!(units);
                    question["limit"] = limit.clone();
                    let answer = server.post("/v1/advice", &question).ok();
                    let tasks = answer["tasks"].as_array().expect("tasks");
                    assert_eq!(tasks.len(), 1, "{answer}");
                    assert!(tasks[0]["emergency"]["call"].is_string() && tasks[0]["professional"].is_string());
                    assert!(answer["safety_of_cut"].is_null(), "nothing was cut");
                }
            }
        }
    }
}

#[test]
fn a_plant_that_is_unknown_or_not_told_does_not_stand_before_help() {
    let server = Server::start();
    for plant in [None, Some(""), Some("baobab")] {
        for words in ["our son drank weed killer", "mi hijo bebió herbicida"] {
            let answer = server.post("/v1/advice", &ask(plant, words)).ok();
            assert_eq!(answer["tasks"][0]["id"], "any.emergency-person-swallowed", "{answer}");
            assert_eq!((&answer["held"], &answer["asked"]["plant"]), (&json!([]), &Value::Null));
            let found = server.post("/v1/diagnosis", &json!({"condition": {"words": words}})).ok();
            assert_eq!((&found["status"], &found["plant"]), (&json!("emergency"), &Value::Null));
            assert_eq!(found["tasks"].as_array().map(Vec::len), Some(1));
        }
    }
    let refused = server.post("/v1/advice", &ask(Some("baobab"), "yellow leaves"));
    assert_eq!(refused.problem(UNKNOWN_PLANT).errors[0].pointer, "/plant/type");
    let refused = server.post("/v1/advice", &ask(None, "yellow leaves"));
    assert_eq!(refused.problem(UNKNOWN_PLANT).errors[0].pointer, "/plant/type");
}

//! Questions that can't be answered, and how that is said.

use lammas::problem::kinds::{INVALID_REQUEST, NOT_AVAILABLE_YET, UNKNOWN_CLIMATE, UNKNOWN_PLANT, UNKNOWN_RULE_SET};
use lammas_tests::server::Server;
use serde_json::{Value, json};

use super::advice::september_rose;

fn with(pointer: &str, value: Value) -> Value {
    let mut question = september_rose();
    let (parent, name) = pointer.rsplit_once('/').expect("a pointer");
    question.pointer_mut(parent).expect("an object")[name] = value;
    question
}

#[test]
fn an_unknown_plant_is_answered_with_the_nearest_names_and_nothing_is_advised() {
    let server = Server::start();
    let problem = server.post("/v1/advice", &with("/plant/type", json!("roze"))).problem(UNKNOWN_PLANT);
    assert_eq!(problem.errors[0].pointer, "/plant/type");
    assert!(problem.errors[0].detail.starts_with("unknown plant `roze`, did you mean `rose`"), "{problem:?}");
    let problem = server.post("/v1/advice", &with("/plant/type", json!("baobab"))).problem(UNKNOWN_PLANT);
    assert!(problem.detail.contains("`baobab`"), "{problem:?}");
}

#[test]
fn everything_that_is_wrong_is_named_at_once() {
    let mut question = with("/plant/type", json!("roze"));
    question["climate"] = json!({"id": "hot-dry-vally"});
    question["plant"]["age_years"] = json!(-4);
    question["site"]["soil"]["ph"] = json!(15);
    question["condition"]["signs"] = json!([{"sign": "spent-bloms"}]);
    question["rule_sets"] = json!(["cor"]);
    let answer = Server::start().post("/v1/advice", &question);
    let problem = answer.problem(UNKNOWN_PLANT);
    let mut at: Vec<&str> = problem.errors.iter().map(|error| error.pointer.as_str()).collect();
    at.sort_unstable();
    assert_eq!(
        at,
        ["/climate/id", "/condition/signs/0/sign", "/plant/age_years", "/plant/type", "/rule_sets/0", "/site/soil/ph"]
    );
    let detail = |at: &str| {
        problem.errors.iter().find(|error| error.pointer == at).map(|error| error.detail.clone()).unwrap_or_default()
    };
    assert!(detail("/climate/id").contains("did you mean `hot-dry-valley`?"), "{problem:?}");
    assert!(detail("/condition/signs/0/sign").contains("did you mean `spent-blooms`?"), "{problem:?}");
}

#[test]
fn an_unknown_climate_and_an_unknown_rule_set_are_kinds_of_their_own() {
    let server = Server::start();
    let problem = server.post("/v1/advice", &with("/climate", json!({"id": "nowhere"}))).problem(UNKNOWN_CLIMATE);
    assert_eq!(problem.errors[0].pointer, "/climate/id");
    for (sets, at, words) in [
        (json!(["house"]), "/rule_sets/0", "expected `core` or `core@"),
        (json!(["core", "house"]), "/rule_sets/1", "unknown rule set `house`"),
        (json!(["core@1999.1.1"]), "/rule_sets/0", "unknown rule set `core@1999.1.1`"),
    ] {
        let problem = server.post("/v1/advice", &with("/rule_sets", sets)).problem(UNKNOWN_RULE_SET);
        assert_eq!(problem.errors[0].pointer, at);
        assert!(problem.errors[0].detail.contains(words), "{problem:?}");
    }
    let answer = server.post("/v1/advice", &september_rose()).ok();
    let pinned = format!("core@{}", answer["rule_sets"][0]["version"].as_str().expect("a version"));
    assert_eq!(server.post("/v1/advice", &with("/rule_sets", json!([pinned]))).ok()["digest"], answer["digest"]);
    let twice = server.post("/v1/advice", &with("/rule_sets", json!(["core", "core"])));
    assert_eq!(twice.problem(INVALID_REQUEST).errors[0].pointer, "/rule_sets/1");
}

#[test]
fn what_is_not_available_yet_is_said_and_not_passed_over() {
    let server = Server::start();
    let area = json!({"area": "north"});
    let problem = server.post("/v1/advice", &with("/climate", area.clone())).problem(NOT_AVAILABLE_YET);
    assert_eq!((problem.errors.len(), problem.errors[0].pointer.as_str()), (1, "/climate/area"), "{problem:?}");
    assert!(problem.errors[0].detail.contains("registered climate"), "{problem:?}");
    // Where something is also wrong, that is the kind.
    let mut question = with("/climate", area);
    question["plant"]["age_years"] = json!(-1);
    assert_eq!(server.post("/v1/advice", &question).problem(INVALID_REQUEST).errors.len(), 2);
}

#[test]
fn a_registered_climate_takes_weather_and_nothing_else() {
    let climate = json!({"id": "hot-dry-valley", "elevation_m": 900, "normals": {"tmin_c": [1,1,1,1,1,1,1,1,1,1,1,1],
        "tmax_c": [9,9,9,9,9,9,9,9,9,9,9,9]}, "longitude": 3});
    let problem = Server::start().post("/v1/advice", &with("/climate", climate)).problem(INVALID_REQUEST);
    let at: Vec<&str> = problem.errors.iter().map(|error| error.pointer.as_str()).collect();
    assert_eq!(at, ["/climate/longitude", "/climate/elevation_m", "/climate/normals"]);
}

#[test]
fn months_that_can_not_be_are_named_in_the_words_of_who_typed_them() {
    let mut tmin = vec![5.0; 12];
    tmin[6] = 30.0;
    let climate = json!({"latitude": 34.2, "normals": {"tmin_c": tmin, "tmax_c": vec![15.0; 12]}});
    let problem = Server::start().post("/v1/advice", &with("/climate", climate)).problem(INVALID_REQUEST);
    assert!(problem.errors[0].pointer.starts_with("/climate/normals/tm"), "{problem:?}");
    assert!(problem.errors[0].detail.contains("[6]"), "{problem:?}");
}

use lammas::problem::kinds::{INVALID_REQUEST, RULE_NOT_FOUND};
use lammas_tests::server::Server;
use serde_json::{Value, json};

use super::advice::september_rose;

/// Applies a patch as RFC 6902 has it: `add` puts a member or, at `-`, an entry at the end.
fn patched(mut question: Value, patch: &Value) -> Value {
    for step in patch.as_array().expect("steps") {
        let (parent, last) = step["path"].as_str().expect("a path").rsplit_once('/').expect("a pointer");
        let place = question.pointer_mut(parent).unwrap_or_else(|| panic!("nothing is at {parent}"));
        match (step["op"].as_str().expect("an operation"), place) {
            ("add", Value::Array(list)) if last == "-" => list.push(step["value"].clone()),
            ("add", Value::Object(members)) => {
                members.insert(last.to_owned(), step["value"].clone());
            }
            ("replace", Value::Array(list)) => list[last.parse::<usize>().expect("a place")] = step["value"].clone(),
            ("remove", Value::Array(list)) => {
                list.remove(last.parse().expect("a place"));
            }
            (op, place) => panic!("{op} at {place}"),
        }
    }
    question
}

fn is_advised(server: &Server, question: &Value, rule: &str) -> bool {
    let answer = server.post("/v1/advice", question).ok();
    answer["tasks"].as_array().expect("tasks").iter().any(|task| task["id"] == rule)
}

#[test]
fn a_young_rose_is_not_cut_to_renew_and_each_way_that_is_told_brings_the_cut() {
    let server = Server::start();
    let mut question = september_rose();
    question["plant"]["age_years"] = json!(0.5);
    question["detail"] = json!("standard");
    assert!(!is_advised(&server, &question, "rose.renewal-cut"));
    let answer = server.post("/v1/rules/rose.renewal-cut/why-not", &question).ok();
    assert_eq!(answer["outcome"], "no");
    assert_eq!(answer["because"][0]["kind"], "condition");
    let change = &answer["ways"][0]["changes"][0];
    assert_eq!((&change["fact"], &change["pointer"]), (&json!("plant.age"), &json!("/plant/age_years")));
    // The rule asks for a year; the value nearest to what was told is put there.
    assert_eq!((&change["from"], &change["to"]), (&json!(0.5), &json!(1.0)));
    for way in answer["ways"].as_array().expect("ways") {
        assert!(is_advised(&server, &patched(question.clone(), &way["patch"]), "rose.renewal-cut"), "{way}");
    }
}

#[test]
fn what_only_waits_for_its_season_is_told_with_its_day_and_what_never_comes_too() {
    let server = Server::start();
    let question = |climate: &str| {
        json!({"climate": {"id": climate}, "date": "2026-07-01", "plant": {"type": "rose"},
            "condition": {"signs": []}, "history": []})
    };
    let asked = question("cold-inland");
    let answer = server.post("/v1/rules/rose.mound/why-not", &asked).ok();
    let day = answer["comes_on"].as_str().expect("a day").to_owned();
    assert!(("2026-10-01".."2027-02-01").contains(&day.as_str()), "{day}");
    let way = &answer["ways"][0];
    assert_eq!(way["changes"][0]["pointer"], "/date");
    assert!(is_advised(&server, &patched(asked, &way["patch"]), "rose.mound"));
    let never = server.post("/v1/rules/rose.mound/why-not", &question("tropical-lowland")).ok();
    assert_eq!((&never["ways"], &never["comes_on"]), (&json!([]), &Value::Null));
    assert!(never["words"].as_str().is_some_and(|words| words.contains("climate")), "{never}");
}

#[test]
fn a_rule_of_another_plant_or_one_that_is_there_is_said_to_be_so() {
    let server = Server::start();
    let other = server.post("/v1/rules/lawn.mow-cool/why-not", &september_rose()).ok();
    assert_eq!((&other["because"][0]["kind"], &other["ways"]), (&json!("plant"), &json!([])));
    let there = server.post("/v1/rules/rose.renewal-cut/why-not", &september_rose()).ok();
    assert_eq!((&there["outcome"], &there["because"]), (&json!("applies"), &json!([])));
    let mut spanish = september_rose();
    spanish["language"] = json!("es");
    let there = server.post("/v1/rules/rose.renewal-cut/why-not", &spanish).ok();
    assert!(there["words"].as_str().is_some_and(|words| words.starts_with("Ya está")), "{there}");
}

#[test]
fn an_unknown_rule_is_named_with_its_nearest_and_a_bad_question_by_its_places() {
    let server = Server::start();
    let problem = server.post("/v1/rules/rose.renewal-cot/why-not", &september_rose()).problem(RULE_NOT_FOUND);
    assert!(problem.detail.contains("`rose.renewal-cut`"), "{problem:?}");
    let mut bad = september_rose();
    bad["plant"]["age_years"] = json!(-4);
    let problem = server.post("/v1/rules/rose.renewal-cut/why-not", &bad).problem(INVALID_REQUEST);
    assert_eq!(problem.errors[0].pointer, "/plant/age_years");
}

use lammas::problem::kinds::{INVALID_REQUEST, NOT_AVAILABLE_YET, UNKNOWN_CLIMATE};
use lammas_tests::server::Server;
use serde_json::{Value, json};

fn marker<'a>(season: &'a Value, name: &str) -> &'a Value {
    let markers = season["markers"].as_array().expect("markers");
    markers.iter().find(|marker| marker["name"] == name).unwrap_or_else(|| panic!("no marker `{name}`"))
}

#[test]
fn a_season_has_every_marker_with_its_date_and_how_it_was_computed() {
    let server = Server::start();
    let season = server.post("/v1/season", &json!({"climate": {"id": "cold-inland"}, "date": "2026-09-15"})).ok();
    assert_eq!((&season["date"], &season["half"]), (&json!("2026-09-15"), &json!("cooling")));
    let frost = marker(&season, "first_frost.median");
    assert_eq!(frost["state"], "seasonal");
    assert!(
        frost["nearest"].as_str() > Some("2026-09-15")
            && frost["formula"].as_str().is_some_and(|formula| formula.contains("0 °C")),
        "{frost}"
    );
    // The longest day lies on the June solstice, 21 June in 2026 (almanacs).
    assert_eq!(marker(&season, "longest_day")["nearest"], "2026-06-21");
    assert!(season["facts"].as_array().is_some_and(|facts| facts.iter().any(|fact| fact["name"] == "soil_10cm")));
}

#[test]
fn a_frost_hollow_has_a_shorter_season() {
    let server = Server::start();
    let ask = |hollow: bool| {
        let question =
            json!({"climate": {"id": "mild-maritime"}, "date": "2026-09-15", "site": {"frost_hollow": hollow}});
        marker(&server.post("/v1/season", &question).ok(), "first_frost.median")["days"].as_i64().expect("days")
    };
    assert!(ask(true) < ask(false));
}

#[test]
fn a_season_is_told_in_spanish() {
    let question = json!({"climate": {"id": "cold-inland"}, "date": "2026-09-15", "language": "es"});
    let answer = Server::start().post("/v1/season", &question);
    assert_eq!(answer.header("content-language"), "es");
    assert!(marker(&answer.ok(), "coldest_week")["words"].as_str().is_some_and(|words| words.contains("semana")));
}

#[test]
fn a_season_that_can_not_be_told_is_refused_with_the_place() {
    let server = Server::start();
    let at = |problem: &lammas::problem::wire::ProblemBody| {
        problem.errors.iter().map(|error| error.pointer.clone()).collect::<Vec<_>>()
    };
    let problem = server.post("/v1/season", &json!({"climate": {"id": "cold-inlan"}})).problem(UNKNOWN_CLIMATE);
    assert_eq!(at(&problem), ["/climate/id"]);
    let problem = server.post("/v1/season", &json!({"climate": {"area": "north"}})).problem(NOT_AVAILABLE_YET);
    assert_eq!(at(&problem), ["/climate/area"]);
    let problem = server.post("/v1/season", &json!({"climate": {"id": "cold-inland"}, "date": "0900-01-01"}));
    assert_eq!(at(&problem.problem(INVALID_REQUEST)), ["/date"]);
    let problem = server.post("/v1/season", &json!({"climate": {}, "plant": "rose"})).problem(INVALID_REQUEST);
    assert_eq!(at(&problem), ["/plant"]);
}

use lammas::problem::kinds::{BAD_QUERY, INVALID_REQUEST, NOT_AVAILABLE_YET, UNKNOWN_CLIMATE};
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

#[test]
fn a_season_by_address_is_the_one_that_is_posted() {
    let server = Server::start();
    let posted = server.post("/v1/season", &json!({"climate": {"id": "cold-inland"}, "date": "2026-09-15"}));
    let got = server.get("/v1/season?climate=cold-inland&date=2026-09-15");
    assert_eq!(got.ok(), posted.ok());
    assert_eq!(got.header("etag"), posted.header("etag"));
    assert_eq!(got.header("cache-control"), "public, max-age=3600");
    let known = [("if-none-match", got.header("etag"))];
    assert_eq!(server.send("GET", "/v1/season?climate=cold-inland&date=2026-09-15", &known, b"").status, 304);
    let spanish = server.get("/v1/season?climate=cold-inland&date=2026-09-15&language=es");
    assert_eq!((spanish.header("content-language"), spanish.status), ("es", 200));
    assert_eq!(server.get("/v1/season?climate=cold-inland").status, 200);
}

#[test]
fn every_parameter_of_a_season_by_address_that_is_broken_is_named() {
    let server = Server::start();
    for (query, kind, at) in [
        ("date=2026-09-15", BAD_QUERY, "/climate"),
        ("climate=cold-inlan", UNKNOWN_CLIMATE, "/climate"),
        ("climate=cold-inland&date=tomorrow", BAD_QUERY, "/date"),
        ("climate=cold-inland&date=0900-01-01", BAD_QUERY, "/date"),
        ("climate=cold-inland&language=fr", BAD_QUERY, "/language"),
        ("climate=cold-inland&plant=rose", BAD_QUERY, "/plant"),
    ] {
        let problem = server.get(&format!("/v1/season?{query}")).problem(kind);
        assert_eq!(problem.errors.iter().map(|e| e.pointer.as_str()).collect::<Vec<_>>(), [at], "{query}");
    }
}

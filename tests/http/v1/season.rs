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

/// What a browser sends for an `<img>` (from memory).
const IMG: &str = "image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8";

#[test]
fn an_image_gets_the_year_as_a_picture_and_everybody_else_json() {
    let server = Server::start();
    let path = "/v1/season?climate=cold-inland&date=2026-09-15";
    let json = server.get(path);
    for accept in ["*/*", "application/json", "text/html,*/*;q=0.8"] {
        let answer = server.send("GET", path, &[("accept", accept)], b"");
        assert_eq!(answer.header("content-type"), "application/json", "{accept}");
        assert_eq!(answer.body, json.body, "{accept}");
        assert_eq!(answer.header("vary"), "accept, accept-language", "{accept}");
    }
    for accept in [IMG, "image/*", "image/svg+xml"] {
        let answer = server.send("GET", path, &[("accept", accept)], b"");
        assert_eq!((answer.status, answer.header("content-type")), (200, "image/svg+xml"), "{accept}");
        assert_eq!(answer.header("vary"), "accept, accept-language", "{accept}");
        assert_eq!(answer.header("cache-control"), "public, max-age=3600", "{accept}");
        assert!(answer.header("content-security-policy").contains("style-src 'unsafe-inline'"), "{accept}");
        assert!(answer.body.starts_with("<svg "), "{accept}");
        assert_ne!(answer.header("etag"), json.header("etag"), "{accept}");
        let known = [("accept", accept), ("if-none-match", answer.header("etag"))];
        let again = server.send("GET", path, &known, b"");
        assert_eq!((again.status, again.header("vary")), (304, "accept, accept-language"), "{accept}");
        // The tag of the one face is not known as the other.
        let other = [("accept", "application/json"), ("if-none-match", answer.header("etag"))];
        assert_eq!(server.send("GET", path, &other, b"").status, 200, "{accept}");
    }
}

#[test]
fn a_picture_is_told_in_spanish_and_named_after_the_place() {
    let server = Server::start();
    let asked = |question: Value| {
        let headers = [("accept", "image/svg+xml"), ("content-type", "application/json")];
        server.send("POST", "/v1/season", &headers, question.to_string().as_bytes())
    };
    let answer = asked(json!({"climate": {"id": "cold-inland"}, "date": "2026-09-15", "language": "es"}));
    assert_eq!((answer.header("content-language"), answer.header("cache-control")), ("es", "no-store"));
    assert!(answer.body.contains("<title id=\"lammas-title\">Un año en: Interior frío</title>"), "{}", answer.body);
    let answer = asked(json!({"climate": {"latitude": 34.2, "longitude": -118.6}, "date": "2026-09-15"}));
    assert!(answer.body.contains("A year in: 34.2° N, 118.6° W"), "{}", answer.body);
    // An estimate is never shown without its grade and its notice.
    assert!(answer.body.contains("The climate is estimated from coordinates"), "{}", answer.body);
    assert!(answer.body.contains("Contains modified Copernicus Climate Change Service information"), "{}", answer.body);
}

#[test]
fn a_picture_that_can_not_be_drawn_is_a_problem_like_any_other() {
    let server = Server::start();
    let answer = server.send("GET", "/v1/season?climate=cold-inlan", &[("accept", IMG)], b"");
    assert_eq!(answer.problem(UNKNOWN_CLIMATE).errors[0].pointer, "/climate");
}

//! A climate that differs from another in ways that a gardener can say.

use lammas::problem::kinds::{BAD_QUERY, INVALID_REQUEST};
use lammas::problem::wire::ProblemBody;
use lammas_tests::server::Server;
use serde_json::{Value, json};

fn season(server: &Server, climate: &Value) -> Value {
    server.post("/v1/season", &json!({"climate": climate, "date": "2026-09-15"})).ok()
}

fn moved<'a>(differing: &'a Value, name: &str) -> &'a Value {
    let markers = differing["markers"].as_array().expect("markers");
    markers.iter().find(|marker| marker["name"] == name).unwrap_or_else(|| panic!("`{name}` did not move"))
}

fn places(problem: &ProblemBody) -> Vec<&str> {
    problem.errors.iter().map(|error| error.pointer.as_str()).collect()
}

#[test]
fn the_season_says_what_was_taken_and_which_markers_moved() {
    let server = Server::start();
    let said = json!({"nights_k": -2.0, "summer_afternoons_k": -4.0, "first_frost_days": -21});
    let cooler = season(&server, &json!({"id": "cold-inland", "differences": said}));
    let as_it_is = season(&server, &json!({"id": "cold-inland"}));
    assert!(as_it_is["climate_differences"].is_null());
    let differing = &cooler["climate_differences"];
    assert_eq!(differing["from_sha256"], as_it_is["climate_sha256"]);
    assert_ne!(cooler["climate_sha256"], as_it_is["climate_sha256"]);
    let taken: Vec<&str> =
        differing["taken"].as_array().expect("a list").iter().filter_map(|taken| taken["text"].as_str()).collect();
    assert_eq!(taken, ["nights 2 °C colder", "summer afternoons 4 °C cooler", "first frosts 21 days earlier"]);
    let frost = moved(differing, "first_frost.median");
    assert_eq!(
        (&frost["change"], &frost["days"], &frost["text"]),
        (&json!("moved"), &json!(-21), &json!("21 days earlier"))
    );
    // What moved is what the two seasons say, marker by marker; what did not move is not listed.
    let day = |season: &Value, name: &str| {
        let marker = season["markers"].as_array().expect("markers").iter().find(|marker| marker["name"] == name);
        marker.and_then(|marker| marker["nearest"].as_str()).and_then(|date| date.get(5..)).map(str::to_owned)
    };
    for marker in cooler["markers"].as_array().expect("markers") {
        let name = marker["name"].as_str().expect("a name");
        let (here, there) = (day(&cooler, name), day(&as_it_is, name));
        let listed = differing["markers"].as_array().expect("markers").iter().find(|moved| moved["name"] == name);
        match listed {
            Some(listed) => {
                assert_ne!(here, there, "{name}");
                assert_eq!((listed["to"].as_str(), listed["from"].as_str()), (here.as_deref(), there.as_deref()));
            }
            None => assert_eq!(here, there, "{name}"),
        }
    }
}

#[test]
fn markers_that_come_and_go_are_told_in_both_languages() {
    let server = Server::start();
    let ask = |language: &str| {
        let climate = json!({"id": "cold-inland", "differences": {"roof": true}});
        server.post("/v1/season", &json!({"climate": climate, "date": "2026-09-15", "language": language})).ok()
    };
    let (english, spanish) = (ask("en"), ask("es"));
    let came = moved(&english["climate_differences"], "hot_season.start");
    assert_eq!(
        (&came["change"], &came["from_state"], &came["to_state"]),
        (&json!("came"), &json!("never"), &json!("seasonal"))
    );
    assert_eq!((&came["text"], &came["from"]), (&json!("comes here"), &Value::Null));
    assert_eq!(moved(&spanish["climate_differences"], "hot_season.start")["text"], "aquí llega");
    let text = spanish["climate_differences"]["taken"][0]["text"].as_str().expect("a text");
    assert!(text.starts_with("en una azotea"), "{text}");
    let climate = json!({"id": "mild-maritime", "differences": {"nights_k": 9.0}});
    let mild = season(&server, &climate);
    let went = moved(&mild["climate_differences"], "first_frost.median");
    assert_eq!((&went["change"], &went["to"]), (&json!("went"), &Value::Null));
}

#[test]
fn given_frost_dates_bend_with_the_nights_and_still_win() {
    let server = Server::start();
    let normals = json!({"tmin_c": [-6, -5, -2, 2, 7, 11, 13, 12, 8, 4, 0, -4], "tmax_c": [2, 4, 9, 14, 19, 23, 25, 25, 20, 14, 7, 3]});
    let climate = |differences: Value| json!({"latitude": 48.0, "normals": normals, "frost": {"first": {"median": "11-01"}}, "differences": differences});
    let colder = season(&server, &climate(json!({"nights_k": -2.0})));
    let frost = moved(&colder["climate_differences"], "first_frost.median");
    assert_eq!(frost["from"], "11-01");
    assert!(frost["days"].as_i64().is_some_and(|days| days < -4), "{frost}");
    // Stated days win over bending.
    let stated = season(&server, &climate(json!({"nights_k": -2.0, "first_frost_days": -10})));
    assert_eq!(moved(&stated["climate_differences"], "first_frost.median")["to"], "10-22");
}

#[test]
fn advice_tells_it_in_short_and_stands_on_the_resulting_climate() {
    let server = Server::start();
    let ask = |climate: Value| {
        server.post("/v1/advice", &json!({"climate": climate, "date": "2026-09-15", "plant": {"type": "rose"}})).ok()
    };
    let (as_it_is, colder) =
        (ask(json!({"id": "cold-inland"})), ask(json!({"id": "cold-inland", "differences": {"frost_pocket": true}})));
    let differing = &colder["climate"]["differences"];
    assert_eq!(differing["taken"][0]["id"], "frost_pocket");
    let names: Vec<&str> =
        differing["markers"].as_array().expect("a list").iter().filter_map(|marker| marker["name"].as_str()).collect();
    assert_eq!(names, ["last_frost.median", "first_frost.median", "growing.start", "growing.end"]);
    assert!(differing["markers_more"].as_u64().is_some_and(|more| more >= 4));
    assert_eq!(colder["climate"]["id"], "cold-inland");
    assert_eq!(colder["asked"]["climate"], colder["climate"]["sha256"]);
    assert_ne!(colder["digest"], as_it_is["digest"]);
    // Two ways to the same climate: one digest, and each is told its own.
    let other = ask(json!({"id": "cold-inland", "differences": {"nights_k": -2.0}}));
    assert_eq!(other["digest"], colder["digest"]);
    assert_eq!(other["climate"]["differences"]["taken"][0]["id"], "nights_k");
    // The weather of the day differs likewise; a diagnosis takes differences too.
    let diagnosis = json!({"climate": {"id": "cold-inland", "differences": {"warm_wall": true}}, "date": "2026-09-15",
        "plant": {"type": "rose"}, "condition": {"signs": [{"sign": "scorched-petals"}]}});
    assert_eq!(server.post("/v1/diagnosis", &diagnosis).ok()["climate"]["differences"]["taken"][0]["id"], "warm_wall");
}

#[test]
fn an_estimated_climate_may_differ_too_and_says_so() {
    let server = Server::start();
    let here = season(&server, &json!({"latitude": 44.0, "longitude": 3.5, "differences": {"nights_k": -1.5}}));
    assert_eq!(here["climate_origin"], "estimated");
    assert!(here["climate_error"].is_object() && here["climate_differences"]["markers"].is_array());
}

#[test]
fn an_address_may_say_what_differs() {
    let server = Server::start();
    let got = server.get("/v1/season?climate=cold-inland&date=2026-09-15&differ=nights:-2,first-frost:-21").ok();
    let posted =
        season(&server, &json!({"id": "cold-inland", "differences": {"nights_k": -2.0, "first_frost_days": -21}}));
    assert_eq!(got, posted);
    let advice = server.get("/v1/advice?climate=cold-inland&plant=rose&date=2026-09-15&differ=frost-pocket").ok();
    assert_eq!(advice["climate"]["differences"]["taken"][0]["id"], "frost_pocket");
    let problem = server.get("/v1/season?climate=cold-inland&differ=nights:-99,winters:2").problem(BAD_QUERY);
    assert_eq!(places(&problem), ["/differ"]);
    assert!(problem.errors[0].detail.contains("unknown difference `winters:2`"));
    let problem = server.get("/v1/season?climate=cold-inland&differ=nights:-99").problem(BAD_QUERY);
    assert_eq!(places(&problem), ["/differ"]);
}

#[test]
fn every_difference_that_can_not_be_is_named_at_once() {
    let server = Server::start();
    let refused = |climate: Value| {
        server.post("/v1/season", &json!({"climate": climate, "date": "0900-01-01"})).problem(INVALID_REQUEST)
    };
    let problem = refused(json!({"id": "cold-inland", "elevation_m": 3,
        "differences": {"nights_k": -20, "afternoons_k": 16, "first_frost_days": 100}}));
    assert_eq!(
        places(&problem),
        [
            "/climate/elevation_m",
            "/climate/differences/nights_k",
            "/climate/differences/afternoons_k",
            "/climate/differences/first_frost_days",
            "/date"
        ]
    );
    let problem =
        refused(json!({"id": "tropical-lowland", "differences": {"last_frost_days": 3, "first_frost_days": -3}}));
    assert_eq!(
        places(&problem),
        ["/climate/differences/last_frost_days", "/climate/differences/first_frost_days", "/date"]
    );
    assert!(problem.errors[0].detail.contains("has no such frost to move"), "{problem:?}");
    let problem = refused(json!({"id": "cold-inland", "differences": {"first_frost_days": -21.5, "winters_k": 1}}));
    assert_eq!(places(&problem), ["/climate/differences/first_frost_days", "/climate/differences/winters_k"]);
    let problem = refused(json!({"id": "cold-inland", "differences": {"first_frost_days": 100_000}}));
    assert!(!problem.errors[0].detail.contains("i16"), "{problem:?}");
}

//! The same rose where only the coordinates are known: the season follows from the place, and the answer says how sure
//! that is.

use lammas::problem::kinds::{INVALID_REQUEST, NOT_ON_LAND};
use lammas_tests::server::Server;
use serde_json::{Value, json};

fn rose(latitude: f64, longitude: f64) -> Value {
    json!({"climate": {"latitude": latitude, "longitude": longitude}, "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 4},
        "site": {"planting": "ground", "soil": {"texture": "clay-loam", "ph": 8.2}},
        "water": {"method": "basin", "source_alkaline": true},
        "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "crowded-centre"}]}, "detail": "full"})
}

fn has(answer: &Value, list: &str, id: &str) -> bool {
    answer[list].as_array().expect("a list").iter().any(|entry| entry["id"] == id)
}

fn note(answer: &Value) -> &Value {
    let notes = answer["notes"].as_array().expect("a list");
    notes.iter().find(|note| note["id"] == "climate.estimated").expect("the note of the estimate")
}

#[test]
fn a_rose_in_four_places_known_only_by_coordinates_gets_four_right_answers() {
    let server = Server::start();
    let ask = |latitude, longitude| server.post("/v1/advice", &rose(latitude, longitude)).ok();

    // The Central Valley of California: heat behind it, much warmth left, so the late flush is cut for.
    let valley = ask(36.75, -119.77);
    assert!(has(&valley, "tasks", "rose.renewal-cut"), "{}", valley["tasks"]);
    assert_eq!(valley["season"]["half"], "cooling");

    // Central Manitoba: frost is near, nothing may be forced into growth.
    let prairie = ask(49.9, -99.9);
    assert!(!has(&prairie, "tasks", "rose.renewal-cut") && has(&prairie, "held", "rose.renewal-cut"), "{prairie}");
    assert!(!has(&prairie, "tasks", "rose.feed-liquid"), "{}", prairie["tasks"]);

    // The Pampas: spring.
    let pampas = ask(-34.6, -60.9);
    assert_eq!(pampas["season"]["half"], "warming");
    assert!(!has(&pampas, "tasks", "rose.renewal-cut"), "{}", pampas["tasks"]);

    // The lowland of Malaya: no frost, no seasons of warmth.
    let lowland = ask(3.8, 103.0);
    assert_eq!((&lowland["season"]["half"], &lowland["season"]["frost_chance_pct"]), (&json!("even"), &json!(0.0)));

    let days = |answer: &Value, name: &str| {
        let markers = answer["season"]["markers"].as_array().expect("markers").clone();
        markers.into_iter().find(|marker| marker["name"] == name).expect("a marker")["days"].as_i64()
    };
    assert!(days(&prairie, "first_frost.median").is_some_and(|days| (-10..30).contains(&days)), "{prairie}");
    assert_eq!(days(&lowland, "first_frost.median"), None);
    let digests: Vec<&Value> = [&valley, &prairie, &pampas, &lowland].iter().map(|answer| &answer["digest"]).collect();
    assert!(digests.iter().enumerate().all(|(at, digest)| !digests[..at].contains(digest)));
    for answer in [&valley, &prairie, &pampas, &lowland] {
        assert_eq!(answer["climate"]["origin"], "estimated");
        assert!(answer["climate"]["sources"][0]["title"].as_str().is_some_and(|title| title.contains("Copernicus")));
        let facts = answer["tasks"]
            .as_array()
            .into_iter()
            .flatten()
            .flat_map(|task| task["reasons"].as_array().expect("reasons"));
        for fact in facts.flat_map(|reason| reason["facts"].as_array().expect("facts")) {
            assert_ne!(fact["origin"], "computed", "{fact} stands on estimated normals");
        }
    }
}

#[test]
fn an_estimate_says_its_grade_its_errors_and_what_would_be_better() {
    let server = Server::start();
    let alps = |elevation: Value, language: &str| {
        let mut question = rose(46.1, 11.1);
        question["climate"]["elevation_m"] = elevation;
        question["language"] = json!(language);
        server.post("/v1/advice", &question).ok()
    };
    let unsaid = alps(Value::Null, "en");
    let error = &unsaid["climate"]["error"];
    assert_eq!((&error["grade"], &error["doubts"][0]["id"]), (&json!("fair"), &json!("elevation-not-said")));
    assert!(error["better"].as_str().is_some_and(|text| text.contains("climate.elevation_m")), "{error}");
    // Mean errors of frost dates over all three shares: 14.6 days without elevation, 12.1 with it.
    assert_eq!((&error["frost_days"], &error["extreme_min_k"]), (&json!(15.0), &json!(3.3)));
    assert!(note(&unsaid)["text"].as_str().is_some_and(|text| text.contains("elevation was not said")));

    let said = alps(json!(300), "es");
    assert_eq!(
        (&said["climate"]["error"]["grade"], &said["climate"]["error"]["frost_days"]),
        (&json!("good"), &json!(12.0))
    );
    assert!(note(&said)["text"].as_str().is_some_and(|text| text.contains("estación")));
    assert_ne!(said["digest"], unsaid["digest"]);

    // The notice stays on the short face too.
    let mut brief = rose(46.1, 11.1);
    brief["detail"] = json!("brief");
    let brief = server.post("/v1/advice", &brief).ok();
    assert!(brief["climate"]["sources"][0]["title"].as_str().is_some_and(|title| title.contains("ERA5")));
    // A climate that was not estimated has neither.
    let mut registered = rose(46.1, 11.1);
    registered["climate"] = json!({"id": "hot-dry-valley"});
    let registered = server.post("/v1/advice", &registered).ok();
    assert!(registered["climate"]["error"].is_null() && registered["climate"]["sources"].is_null());
}

#[test]
fn a_day_within_the_likely_error_of_a_frost_date_lowers_certainty_and_the_reason_says_so() {
    let server = Server::start();
    let mut met = 0;
    for month in 1..=12 {
        for day in [1, 8, 15, 22] {
            let mut question = rose(49.9, -99.9);
            question["date"] = json!(format!("2026-{month:02}-{day:02}"));
            let answer = server.post("/v1/advice", &question).ok();
            for task in answer["tasks"].as_array().into_iter().flatten() {
                let says =
                    task["reasons"][0]["text"].as_str().is_some_and(|text| text.contains("estimated from coordinates"));
                if says {
                    met += 1;
                    assert_eq!(task["certainty"], "low", "{task}");
                }
            }
        }
    }
    assert!(met > 0, "no day of the year lay near a frost date");
}

#[test]
fn coordinates_of_which_nothing_is_known_are_refused_with_the_field() {
    let server = Server::start();
    let at = |climate: Value| {
        let advice = json!({"climate": climate, "plant": {"type": "rose"}, "date": "2026-09-15"});
        let season = json!({"climate": climate, "date": "2026-09-15"});
        [server.post("/v1/advice", &advice), server.post("/v1/season", &season)]
    };
    // The South Pacific, and Antarctica.
    for (climate, words) in [
        (json!({"latitude": -40, "longitude": -120}), "south and west are negative"),
        (json!({"latitude": -75.5, "longitude": 20}), "south of 60° S"),
    ] {
        for answer in at(climate) {
            let problem = answer.problem(NOT_ON_LAND);
            assert_eq!((problem.errors.len(), problem.errors[0].pointer.as_str()), (1, "/climate/latitude"));
            assert!(problem.errors[0].detail.contains(words), "{problem:?}");
        }
    }
    for (climate, pointer) in [
        (json!({"latitude": 91, "longitude": 0}), "/climate/latitude"),
        (json!({"latitude": 45, "longitude": 181}), "/climate/longitude"),
        (json!({"latitude": 45, "longitude": 5, "elevation_m": 9500}), "/climate/elevation_m"),
        (json!({"latitude": 45}), "/climate/longitude"),
        (
            json!({"latitude": 45, "longitude": 5, "frost": {"last": {"early": "05-01", "late": "04-01"}}}),
            "/climate/frost/last/late",
        ),
    ] {
        for answer in at(climate) {
            let problem = answer.problem(INVALID_REQUEST);
            assert_eq!((problem.errors.len(), problem.errors[0].pointer.as_str()), (1, pointer), "{problem:?}");
        }
    }
}

#[test]
fn frost_that_can_not_be_told_is_left_open_and_frost_that_is_given_wins() {
    let server = Server::start();
    let ask = |climate: Value| server.post("/v1/season", &json!({"climate": climate, "date": "2026-07-01"})).ok();
    let marker = |season: &Value, name: &str| {
        let markers = season["markers"].as_array().expect("markers").clone();
        markers.into_iter().find(|marker| marker["name"] == name).expect("a marker")
    };
    // Yakutsk: the range of the year is above 40 K.
    let open = ask(json!({"latitude": 62.03, "longitude": 129.73, "elevation_m": 100}));
    assert_eq!(marker(&open, "first_frost.median")["state"], "unknown");
    assert!(open["frost_chance_pct"].is_null() && open["climate_error"]["frost_days"].is_null());
    assert_eq!((&open["climate_origin"], &open["climate_error"]["grade"]), (&json!("estimated"), &json!("poor")));
    let given = ask(json!({"latitude": 62.03, "longitude": 129.73, "elevation_m": 100,
        "frost": {"last": {"median": "05-25"}, "first": {"median": "09-05"}}}));
    let first = marker(&given, "first_frost.median");
    assert_eq!((&first["nearest"], &first["origin"]), (&json!("2026-09-05"), &json!("given")));
}

/// Coordinates count to 0.01°, and the digest is the same in every process.
#[test]
fn the_same_place_gives_the_same_answer() {
    let (one, other) = (Server::start(), Server::start());
    let digest = |server: &Server, latitude| server.post("/v1/advice", &rose(latitude, -119.77)).ok()["digest"].clone();
    assert_eq!(digest(&one, 36.7512), digest(&other, 36.7488));
    assert_ne!(digest(&one, 36.75), digest(&one, 36.76));
}

#[test]
fn the_elevation_is_asked_for_where_the_ground_is_rough() {
    let server = Server::start();
    let error = |climate: Value| {
        server.post("/v1/season", &json!({"climate": climate, "date": "2026-07-01"})).ok()["climate_error"].clone()
    };
    // A valley of the Alps, and a plain by the sea.
    let rough = error(json!({"latitude": 46.5, "longitude": 7.9}));
    let ask = &rough["ask"];
    assert_eq!((&ask["pointer"], &ask["because"]), (&json!("/climate/elevation_m"), &json!("rough-ground")));
    assert_eq!((&ask["least"], &ask["most"], &ask["unit"]), (&json!(-500.0), &json!(9000.0), &json!("m")));
    // What is left is what the error is once it is said.
    let said = error(json!({"latitude": 46.5, "longitude": 7.9, "elevation_m": 800.0}));
    assert!(said["ask"].is_null(), "{said}");
    for name in ["tmean_k", "frost_days", "extreme_min_k"] {
        assert_eq!(ask[name], said[name], "{name}");
        assert!(ask[name].as_f64() < rough[name].as_f64(), "{name}");
    }
    assert!(
        ask["narrows"].as_str().is_some_and(|words| words.starts_with("error of frost dates: 15 → 12 days")),
        "{ask}"
    );
    assert!(error(json!({"latitude": 52.1, "longitude": 5.18}))["ask"].is_null(), "flat, and no frost date is near");
}

#[test]
fn the_elevation_is_asked_for_where_the_day_lies_near_an_edge() {
    let server = Server::start();
    let climate = json!({"latitude": 52.1, "longitude": 5.18});
    let season = |date: &str| server.post("/v1/season", &json!({"climate": climate, "date": date})).ok();
    let summer = season("2026-07-01");
    let markers = summer["markers"].as_array().expect("markers");
    let frost = markers.iter().find(|marker| marker["name"] == "first_frost.median").expect("the first frost");
    let near = season(frost["nearest"].as_str().expect("a date"));
    assert_eq!(near["climate_error"]["ask"]["because"], "near-edge");
    let mut asked = 0;
    let first = chrono::NaiveDate::from_ymd_opt(2026, 1, 4).expect("a date");
    for date in first.iter_weeks().take(52) {
        let question = json!({"climate": climate, "date": date, "plant": {"type": "rose", "age_years": 4}});
        let advice = server.post("/v1/advice", &question).ok();
        let reasons = advice["tasks"].to_string();
        let asks = advice["climate"]["error"]["ask"].is_object();
        assert_eq!(asks, reasons.contains("lies within that"), "{date}");
        asked += u32::from(asks);
    }
    assert!((1..52).contains(&asked), "{asked}");
}

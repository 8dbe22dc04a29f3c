use lammas::problem::kinds::{BAD_QUERY, BODY_TOO_LARGE, INVALID_REQUEST, UNSUPPORTED_MEDIA_TYPE};
use lammas_tests::answer::Answer;
use lammas_tests::server::{Server, small};
use serde_json::{Value, json};

const PATH: &str = "/v1/climate-profiles";

fn csv(server: &Server, query: &str, text: &str) -> Answer {
    server.send("POST", &format!("{PATH}{query}"), &[("content-type", "text/csv; charset=utf-8")], text.as_bytes())
}

/// A year of days, each the same but for what `change` makes of it: none leaves the day out.
fn year(change: impl Fn(usize, &str) -> Option<String>) -> String {
    let first = chrono::NaiveDate::from_ymd_opt(2025, 1, 1).expect("a date");
    let lines: Vec<String> =
        first.iter_days().take(365).enumerate().filter_map(|(at, date)| change(at, &date.to_string())).collect();
    format!("date,tmin_c,tmax_c,precip_mm\n{}\n", lines.join("\n"))
}

#[test]
fn a_record_in_csv_and_the_same_in_json_are_one_climate() {
    let server = Server::start();
    let text = year(|at, date| Some(format!("{date},{},{},{}", at % 7, 12 + at % 5, at % 3)));
    let mut from_csv = csv(&server, "?latitude=40.4&longitude=-101.7&elevation_m=1000", &text).ok();
    let days: Vec<Value> = text
        .lines()
        .skip(1)
        .map(|line| {
            let cells: Vec<&str> = line.split(',').collect();
            let number = |at: usize| cells[at].parse::<f64>().expect("a number");
            json!({"date": cells[0], "tmin_c": number(1), "tmax_c": number(2), "precip_mm": number(3)})
        })
        .collect();
    let body = json!({"latitude": 40.4, "longitude": -101.7, "elevation_m": 1000, "days": days});
    let mut from_json = server.post(PATH, &body).ok();
    // How it was written is all that differs.
    let [in_json, in_csv] = [&mut from_json, &mut from_csv].map(|made| made["layout"].take());
    assert_eq!((&in_json["form"], &in_csv["form"]), (&json!("json"), &json!("plain")));
    assert_eq!(from_json, from_csv);
    // By hand: the same rain every third day and double every next, 121 to 122 of each in a year of 365 mm.
    let rain: f64 =
        from_csv["climate"]["normals"]["rain_mm"].as_array().expect("rain").iter().filter_map(Value::as_f64).sum();
    assert!((rain - 364.0).abs() <= 2.0, "{rain}");
    assert_eq!(from_csv["climate"]["observations"].as_array().map(Vec::len), Some(365));
}

#[test]
fn gaps_are_listed_and_nothing_is_filled_in() {
    let text = year(|at, date| match at {
        40..50 => None,
        100 => Some(format!("{date},,14,0")),
        _ => Some(format!("{date},2,14,0")),
    });
    let made = csv(&Server::start(), "?latitude=52", &text).ok();
    let quality = &made["quality"];
    assert_eq!(
        (&quality["days"], &quality["recorded_days"], &quality["gap_count"]),
        (&json!(365), &json!(354), &json!(2))
    );
    assert_eq!(quality["gaps"][0], json!({"first": "2025-02-10", "last": "2025-02-19", "days": 10}));
    assert_eq!(quality["gaps"][1]["days"], 1);
    assert!(made["known"][0]["words"].as_str().is_some_and(|words| words.contains("11 are missing")), "{made}");
}

#[test]
fn what_the_record_does_not_tell_is_said_in_words() {
    let server = Server::start();
    let text = year(|_, date| Some(format!("{date},2,14,")));
    let about = |made: &Value| -> Vec<String> {
        made["unknown"]
            .as_array()
            .expect("a list")
            .iter()
            .filter_map(|one| one["about"].as_str().map(str::to_owned))
            .collect()
    };
    let made = csv(&server, "?latitude=52", &text).ok();
    assert_eq!(about(&made), ["frost", "rain", "evaporation", "place", "place"]);
    assert!(made["climate"]["normals"]["rain_mm"].is_null(), "no rain is not zero rain");
    let spanish = csv(&server, "?latitude=52&language=es", &text);
    assert_eq!(spanish.header("content-language"), "es");
    assert!(
        spanish.ok()["unknown"][1]["words"]
            .as_str()
            .is_some_and(|words| words.starts_with("El registro no trae lluvia"))
    );
    // And a question that stands on it says that it does not know either.
    let season = server.post("/v1/season", &json!({"climate": made["climate"], "date": "2026-05-01"})).ok();
    let fact = season["facts"].as_array().expect("facts").iter().find(|fact| fact["name"] == "rain").expect("rain");
    assert!(fact["value"].is_null(), "{fact}");
}

#[test]
fn only_so_many_days_go_along_as_recent_weather() {
    let server = Server::start();
    let text = year(|_, date| Some(format!("{date},2,14,0")));
    let made = csv(&server, "?latitude=52&recent_days=7", &text).ok();
    let recent = made["climate"]["observations"].as_array().expect("days");
    assert_eq!((recent.len(), &recent[6]["date"]), (7, &json!("2025-12-31")));
    assert!(csv(&server, "?latitude=52&recent_days=0", &text).ok()["climate"]["observations"].is_null());
}

#[test]
fn every_wrong_row_is_named_by_its_line_and_column() {
    let server = Server::start();
    let text = year(|at, date| {
        Some(match at {
            1 => format!("{date},cold,14,0"),
            3 => "2025-13-01,2,14,0".to_owned(),
            5 => format!("{date},2"),
            _ => format!("{date},2,14,0"),
        })
    });
    let errors = csv(&server, "?longitude=400", &text).problem(INVALID_REQUEST).errors;
    let at: Vec<&str> = errors.iter().map(|error| error.pointer.as_str()).collect();
    assert_eq!(at, ["/latitude", "/longitude", "/3/tmin_c", "/5/date", "/7"]);
    assert!(errors[2].detail.contains("line 3") && errors[2].detail.contains("`cold`"), "{errors:?}");
    let text = year(|at, date| {
        Some(match at {
            1 => format!("{date},99,14,0"),
            2 => format!("{date},20,14,0"),
            3 => "2025-01-03,2,14,-1".to_owned(),
            _ => format!("{date},2,14,0"),
        })
    });
    let errors = csv(&server, "?latitude=52", &text).problem(INVALID_REQUEST).errors;
    let at: Vec<&str> = errors.iter().map(|error| error.pointer.as_str()).collect();
    assert_eq!(at, ["/3/tmin_c", "/3/tmax_c", "/4/tmax_c", "/5/date", "/5/precip_mm"], "{errors:?}");
}

#[test]
fn wrong_rows_are_named_to_a_bound() {
    let text = year(|_, date| Some(format!("{date},a,b,c")));
    let errors = csv(&Server::start(), "?latitude=52", &text).problem(INVALID_REQUEST).errors;
    assert!((10..=50).contains(&errors.len()), "{}", errors.len());
}

#[test]
fn wrong_days_in_json_are_pointed_at() {
    let server = Server::start();
    let body = json!({"latitude": 40, "days": [{"date": "2025-01-01", "tmin_c": 3, "tmax_c": 2},
        {"date": "2025-01-01", "tmin_c": 1, "tmax_c": 90}, {"date": "1850-01-01"}]});
    let problem = server.send(
        "POST",
        &format!("{PATH}?latitude=41"),
        &[("content-type", "application/json")],
        body.to_string().as_bytes(),
    );
    let mut at: Vec<String> = problem.problem(INVALID_REQUEST).errors.into_iter().map(|error| error.pointer).collect();
    at.sort();
    assert_eq!(at, ["/days/0/tmax_c", "/days/1/date", "/days/1/tmax_c", "/days/2/date", "/latitude"]);
    let problem = server.post(PATH, &json!({"latitude": 40, "days": []})).problem(INVALID_REQUEST);
    assert_eq!(problem.errors[0].pointer, "/days");
}

#[test]
fn a_record_that_is_too_short_or_has_a_thin_month_is_refused() {
    let server = Server::start();
    let short = csv(&server, "?latitude=52", "date,tmin_c,tmax_c\n2025-01-01,1,2\n").problem(INVALID_REQUEST);
    assert!(short.detail.contains("record spans 1 days, expected 365 or more"), "{short:?}");
    let thin = year(|at, date| (!(181..200).contains(&at)).then(|| format!("{date},2,14,0")));
    let problem = csv(&server, "?latitude=52", &thin).problem(INVALID_REQUEST);
    assert!(problem.detail.contains("month 7"), "{problem:?}");
}

#[test]
fn a_record_has_a_bound_of_its_own_and_two_media_types() {
    let mut settings = small();
    settings.limits.record_bytes = 1000;
    let server = Server::with(settings, |_| {});
    let text = year(|_, date| Some(format!("{date},2,14,0")));
    let problem = csv(&server, "?latitude=52", &text).problem(BODY_TOO_LARGE);
    assert!(problem.detail.contains("1000 bytes"), "{problem:?}");
    let problem = server.send("POST", PATH, &[("content-type", "text/plain")], b"x").problem(UNSUPPORTED_MEDIA_TYPE);
    assert!(problem.detail.contains("`text/csv`"), "{problem:?}");
    // A record is the only body that may be CSV.
    let _ = server.send("POST", "/v1/advice", &[("content-type", "text/csv")], b"x").problem(UNSUPPORTED_MEDIA_TYPE);
    let problem = server.send("POST", PATH, &[("content-type", "text/csv")], b"date\xff").problem(INVALID_REQUEST);
    assert!(problem.detail.contains("UTF-8"), "{problem:?}");
}

#[test]
fn every_parameter_that_is_broken_is_named() {
    let server = Server::start();
    let text = year(|_, date| Some(format!("{date},2,14,0")));
    for (query, kind, at) in [
        ("latitude=north", BAD_QUERY, "/latitude"),
        ("latitude=91", INVALID_REQUEST, "/latitude"),
        ("latitude=52&longitude=-181", INVALID_REQUEST, "/longitude"),
        ("latitude=52&elevation_m=9001", INVALID_REQUEST, "/elevation_m"),
        ("latitude=52&recent_days=401", INVALID_REQUEST, "/recent_days"),
        ("latitude=52&recent_days=-1", BAD_QUERY, "/recent_days"),
        ("latitude=52&language=fr", BAD_QUERY, "/language"),
        ("latitude=52&units=si", BAD_QUERY, "/units"),
    ] {
        let problem = csv(&server, &format!("?{query}"), &text).problem(kind);
        assert_eq!(problem.errors.iter().map(|e| e.pointer.as_str()).collect::<Vec<_>>(), [at], "{query}");
    }
}

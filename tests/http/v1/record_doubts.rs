//! Units, suspicions and the sureness of a daily record.

use std::fmt::Write as _;
use std::path::Path;

use chrono::Datelike as _;
use lammas::problem::kinds::INVALID_REQUEST;
use lammas_tests::answer::Answer;
use lammas_tests::server::Server;
use serde_json::{Value, json};

fn send(server: &Server, query: &str, text: &str) -> Answer {
    let path = format!("/v1/climate-profiles?latitude=52&recent_days=0{query}");
    server.send("POST", &path, &[("content-type", "text/csv")], text.as_bytes())
}

/// Days of a station export from 2025 on: what a line says of a day's minimum and maximum, tenths of °C.
fn station(days: usize, line: impl Fn(usize, &str) -> String) -> String {
    let first = chrono::NaiveDate::from_ymd_opt(2025, 1, 1).expect("a date");
    let mut text = "STATION,DATE,TMAX,TMIN,PRCP\n".to_owned();
    for (at, date) in first.iter_days().take(days).enumerate() {
        let _ = writeln!(text, "X0001,{}", line(at, &date.to_string()));
    }
    text
}

fn tenths(at: usize) -> i64 {
    let place = (at % 365) as i64;
    100 - (place - 182).abs()
}

/// A swing of 18 K with 14 K between night and day.
fn in_tenths(days: usize) -> String {
    station(days, |at, date| format!("{date},{},{},{}", tenths(at) + 140, tenths(at), 12 * (at % 3)))
}

fn in_degrees(days: usize) -> String {
    station(days, |at, date| {
        let degrees = |tenths: i64| format!("{:.1}", tenths as f64 / 10.0);
        format!("{date},{},{},{:.1}", degrees(tenths(at) + 140), degrees(tenths(at)), 1.2 * (at % 3) as f64)
    })
}

fn kinds(made: &Value) -> Vec<&str> {
    let suspicions = made["quality"]["suspicions"].as_array().expect("a list");
    suspicions.iter().filter_map(|one| one["kind"].as_str()).collect()
}

#[test]
fn units_are_detected_and_said_or_declared() {
    let server = Server::start();
    let detected = send(&server, "", &in_tenths(365)).ok();
    let layout = &detected["layout"];
    assert_eq!(
        (&layout["form"], &layout["station"], &layout["units"], &layout["units_declared"]),
        (&json!("station"), &json!("X0001"), &json!("tenths"), &json!(false))
    );
    let declared = send(&server, "&units=tenths", &in_tenths(365)).ok();
    assert_eq!((&declared["climate"], &declared["layout"]["units_declared"]), (&detected["climate"], &json!(true)));
    let metric = send(&server, "", &in_degrees(365)).ok();
    assert_eq!((&metric["climate"], &metric["layout"]["units"]), (&detected["climate"], &json!("metric")));
    assert!(kinds(&detected).is_empty() && kinds(&metric).is_empty());
    let spanish = send(&server, "&language=es", &in_tenths(365)).ok();
    assert!(spanish["layout"]["words"].as_str().is_some_and(|words| words.contains("décimas")), "{spanish}");
}

#[test]
fn a_unit_that_the_values_contradict_is_a_stated_suspicion() {
    let server = Server::start();
    let made = send(&server, "&units=tenths", &in_degrees(365)).ok();
    assert_eq!(kinds(&made), ["declared"]);
    assert_eq!(made["quality"]["suspicion_count"], 1);
    assert!(made["climate"]["normals"]["tmax_c"][6].as_f64().is_some_and(|tmax_c| tmax_c < 3.0), "as declared");
    let errors = send(&server, "&units=metric", &in_tenths(365)).problem(INVALID_REQUEST).errors;
    assert!(
        errors.iter().any(|error| error.pointer.is_empty() && error.detail.contains("they look like tenths")),
        "{errors:?}"
    );
    assert!(errors[0].pointer.ends_with("/TMAX") && errors[0].detail.contains("TMAX"), "{errors:?}");
    let plain = "date,tmin_c,tmax_c\n2025-01-01,1,2\n";
    let errors = send(&server, "&units=tenths", plain).problem(INVALID_REQUEST).errors;
    assert_eq!(errors[0].pointer, "/units");
    let days = json!({"latitude": 52, "days": []});
    let errors = server.post("/v1/climate-profiles?units=tenths", &days).problem(INVALID_REQUEST).errors;
    assert_eq!(errors[0].pointer, "/units");
}

#[test]
fn a_stuck_instrument_and_swapped_columns_are_found() {
    let server = Server::start();
    let stuck = station(365, |at, date| {
        let tmin = if (40..60).contains(&at) { 17 } else { tenths(at) };
        format!("{date},{},{tmin},0", tenths(at) + 240)
    });
    let made = send(&server, "", &stuck).ok();
    assert_eq!(kinds(&made), ["stuck"]);
    let found = &made["quality"]["suspicions"][0];
    assert_eq!((&found["first"], &found["last"]), (&json!("2025-02-10"), &json!("2025-03-01")));
    assert!(found["words"].as_str().is_some_and(|words| words.contains("1.7 °C for 20 recorded days")), "{found}");
    assert_eq!(made["quality"]["years_used"], json!([2025]));
    let swapped = in_tenths(365).replacen("TMAX,TMIN", "TMIN,TMAX", 1);
    let errors = send(&server, "", &swapped).problem(INVALID_REQUEST).errors;
    assert!(errors[0].detail.contains("TMAX (-8.2) is below TMIN (5.8)"), "{errors:?}");
    let whole = errors.iter().find(|error| error.pointer.is_empty()).expect("a word on the whole");
    assert_eq!(whole.detail, "TMAX is below TMIN on 365 of 365 days: are the two columns swapped?");
    // Degrees Fahrenheit: 105 is none of °C, and the mean is told as a whole.
    let fahrenheit = station(365, |at, date| format!("{date},{}.5,{},0", 60 + at % 46, 40 + at % 2));
    let errors = send(&server, "", &fahrenheit).problem(INVALID_REQUEST).errors;
    assert!(errors.iter().any(|error| error.pointer.is_empty() && error.detail.contains("°F")), "{errors:?}");
}

#[test]
fn fifty_years_of_days_go_through_and_counted_frost_says_how_sure_it_is() {
    let server = Server::start();
    // Nights wander by some days from year to year, so that frost dates do.
    let text = station(50 * 365 + 12, |at, date| {
        let day: chrono::NaiveDate = date.parse().expect("a date");
        let early = i64::from(day.year() * 7 % 13) - 6;
        let place = (i64::from(day.ordinal0()) + early).rem_euclid(365) as usize;
        format!("{date},{},{},{}", tenths(place) + 140, tenths(place), 12 * (at % 3))
    });
    let made = send(&server, "", &text).ok();
    assert_eq!(made["quality"]["years_used"].as_array().map(Vec::len), Some(50));
    assert_eq!((&made["quality"]["frost_seasons"], &made["quality"]["gap_count"]), (&json!(49), &json!(0)));
    // By hand: the dates spread evenly over 13 days, with a standard deviation of sqrt((13² - 1)/12) = 3.7 days; the error
    // of the median is 1.2533 x 3.7 / 7 = 0.67 days, 90 % within 1.1.
    let error = &made["frost_error"];
    assert_eq!((&error["level_pct"], &error["first"]["median_days"]), (&json!(90), &json!(1)));
    assert!(error["method"].as_str().is_some_and(|method| method.contains("Kendall and Stuart")), "{error}");
}

#[test]
fn twelve_years_know_a_frost_date_to_a_week() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/champion_nebraska_daily_2006_2017.csv");
    let text = std::fs::read_to_string(&path).expect("the record");
    let server = Server::start();
    let made = send(&server, "", &text).ok();
    // The last frosts there spread by some 11 days (the record): 1.2533 x 11 / sqrt(11 seasons) x 1.645 is about 7.
    let last = &made["frost_error"]["last"];
    let days = |name: &str| last[name].as_u64().expect("days");
    assert!((4..=10).contains(&days("median_days")) && days("early_days") > days("median_days"), "{last}");
    assert_eq!(made["layout"]["form"], "plain");
    // A single year has no counted frost, and no error of it.
    assert!(send(&server, "", &in_tenths(365)).ok()["frost_error"].is_null());
}

use serde_json::{Value, json};

use super::*;
use crate::problem::kinds::{Kind, UNKNOWN_CLIMATE};
use crate::sets::embedded;

fn valley() -> Value {
    json!({"climate": "hot-dry-valley", "issued": "2026-09-15T06:00:00-07:00",
        "observed": [{"date": "2026-09-13", "tmin_c": 18, "tmax_c": 35, "rain_mm": 0},
            {"date": "2026-09-14", "tmin_c": 18.5, "tmax_c": 35.5}],
        "forecast": [{"date": "2026-09-15", "tmin_c": 20, "tmax_c": 39, "wind_kmh": 9},
            {"date": "2026-09-16", "tmin_c": 21, "tmax_c": 41}]})
}

fn read(text: &str) -> Result<Weather, Problem> {
    super::read(text.as_bytes(), &embedded::set().expect("it loads"))
}

fn refused(weather: &Value) -> (Kind, Vec<String>) {
    let problem = read(&weather.to_string()).expect_err("it is refused");
    (problem.kind(), problem.errors().iter().map(|error| format!("{}: {}", error.pointer, error.detail)).collect())
}

#[test]
fn weather_holds_its_days_its_issue_and_the_climate_with_them() {
    let weather = read(&valley().to_string()).expect("weather");
    assert_eq!(
        (weather.issued.to_rfc3339(), weather.issued_on.to_string().as_str()),
        ("2026-09-15T13:00:00+00:00".to_owned(), "2026-09-15")
    );
    let span = weather.observed.expect("observed");
    assert_eq!(
        (span.from.to_string().as_str(), span.to.to_string().as_str(), span.days),
        ("2026-09-13", "2026-09-14", 2)
    );
    assert_eq!(weather.profile.observations.len(), 2);
    let forecast = weather.profile.forecast.expect("a forecast");
    assert_eq!((forecast.days.len(), forecast.issued.date()), (2, weather.issued_on));
    // 9 km/h are 2.5 m/s.
    assert_eq!(forecast.days[0].wind_ms, Some(2.5));
}

#[test]
fn the_hash_is_that_of_the_content_and_the_file_reads_back_as_it_was() {
    let weather = read(&valley().to_string()).expect("weather");
    assert_eq!(read(&weather.text).expect("weather"), weather);
    let mut same = valley();
    same["issued"] = json!("2026-09-15T13:00:00Z");
    let same = read(&serde_json::to_string_pretty(&same).expect("JSON")).expect("weather");
    assert_eq!(same.sha256, weather.sha256);
    let mut other = valley();
    other["forecast"][1]["tmax_c"] = json!(40);
    assert_ne!(read(&other.to_string()).expect("weather").sha256, weather.sha256);
}

#[test]
fn every_field_that_does_not_fit_is_named() {
    let mut weather = valley();
    weather["issued"] = json!("15 September");
    weather["observed"][1]["tmax_c"] = json!("warm");
    weather["forecast"][0]["date"] = json!("2026-9-15");
    weather["place"] = json!("here");
    let (kind, words) = refused(&weather);
    assert_eq!(kind, INVALID_REQUEST);
    let all = words.join("\n");
    for place in
        ["/issued: expected an instant", "/observed/1/tmax_c: ", "/forecast/0/date: expected a date", "/place: "]
    {
        assert!(all.contains(place), "{place}\n{all}");
    }
}

#[test]
fn every_value_that_can_not_be_is_named_in_the_words_of_a_profile() {
    let mut weather = valley();
    weather["observed"][0]["tmin_c"] = json!(99);
    weather["observed"][1]["date"] = json!("2026-09-13");
    weather["forecast"][0]["tmax_c"] = json!(2);
    weather["forecast"][0]["wind_kmh"] = json!(500);
    weather["forecast"][1]["date"] = json!("2026-12-24");
    let (kind, mut words) = refused(&weather);
    words.sort();
    assert_eq!(kind, INVALID_REQUEST);
    let starts = [
        "/forecast/0/tmax_c: tmax_c (2) is below tmin_c (20)",
        "/forecast/0/wind_kmh: expected a number from 0 to 144 km/h, found `500`",
        "/forecast/1/date: day `2026-12-24` lies more than 30 days after the day of issue `2026-09-15`",
        "/observed/0/tmax_c: tmax_c (35) is below tmin_c (99)",
        "/observed/0/tmin_c: tmin_c",
        "/observed/1/date: day `2026-09-13` comes twice",
    ];
    assert_eq!(words.len(), starts.len(), "{words:?}");
    for (words, start) in words.iter().zip(starts) {
        assert!(words.starts_with(start), "{words}, expected {start}");
    }
}

#[test]
fn days_stand_on_their_side_of_the_issue_at_the_place() {
    let mut weather = valley();
    // 23:30 on the 14th at the place (UTC-7), though the 15th in UTC.
    weather["issued"] = json!("2026-09-15T06:30:00Z");
    read(&weather.to_string()).expect("the day of issue is the 14th");
    weather["observed"][1]["date"] = json!("2026-09-15");
    assert_eq!(refused(&weather).1, ["/observed/1/date: day `2026-09-15` lies after the day of issue `2026-09-14`"]);
    weather["observed"] = json!([]);
    weather["issued"] = json!("2026-09-16T12:00:00Z");
    assert_eq!(refused(&weather).1, ["/forecast/0/date: day `2026-09-15` lies before the day of issue `2026-09-16`"]);
}

#[test]
fn what_is_too_much_too_little_or_elsewhere_is_refused() {
    let mut weather = valley();
    weather["climate"] = json!("hot-dry-vally");
    let (kind, words) = refused(&weather);
    assert_eq!(
        (kind, words),
        (UNKNOWN_CLIMATE, vec!["/climate: unknown climate `hot-dry-vally`, did you mean `hot-dry-valley`?".to_owned()])
    );
    let mut weather = valley();
    for list in ["observed", "forecast"] {
        weather[list] = json!([]);
    }
    assert_eq!(refused(&weather).1, [": expected days in `observed` or `forecast`, found none"]);
    let mut weather = valley();
    weather["forecast"] = json!(vec![weather["forecast"][0].clone(); 17]);
    assert_eq!(refused(&weather).1, ["/forecast: expected at most 16 entries, found 17"]);
    assert_eq!(read(&" ".repeat(MOST_BYTES + 1)).expect_err("too large").kind(), BODY_TOO_LARGE);
    assert!(read("{\"climate\": ").is_err() && read("").is_err());
}

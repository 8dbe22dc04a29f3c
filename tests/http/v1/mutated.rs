//! Readers of records, climates and weather can't be broken: whatever comes is read, or refused at its field or line.
//!
//! `LAMMAS_MUTATIONS=20000 cargo test -p lammas-tests --test http mutated` goes on for long.

use lammas_agronomy::record::{Place, Record, read_csv};
use lammas_tests::answer::Answer;
use lammas_tests::server::Server;
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use serde_json::{Value, json};

use crate::mutate::{changed, changes};

const BOUNDED: u32 = 150;

fn runner(share: u32) -> TestRunner {
    let cases = std::env::var("LAMMAS_MUTATIONS").ok().and_then(|text| text.parse().ok()).unwrap_or(BOUNDED);
    // A case that failed is printed whole: nothing is written beside the sources.
    TestRunner::new(Config {
        cases: cases * share,
        failure_persistence: None,
        max_shrink_iters: 200,
        ..Config::default()
    })
}

/// A year of days in a form: `{date}`, minimum, maximum, rain.
fn year(header: &str, line: impl Fn(&str, i64) -> String) -> String {
    let first = chrono::NaiveDate::from_ymd_opt(2025, 1, 1).expect("a date");
    let lines: Vec<String> =
        first.iter_days().take(365).zip(0..).map(|(date, at)| line(&date.to_string(), at)).collect();
    format!("{header}\n{}\n", lines.join("\n"))
}

fn plain() -> String {
    year("date,tmin_c,tmax_c,precip_mm", |date, at| {
        format!("{date},{}.5,{}.25,{}", 10 - (at - 182).abs() / 9, 24 - (at - 182).abs() / 9, at % 4)
    })
}

fn station() -> String {
    year("\"STATION\",\"DATE\",\"PRCP\",\"TMAX\",\"TMIN\"", |date, at| {
        let warmth = 100 - (at - 182).abs();
        format!("\"X0001\",\"{date}\",\"{}\",\"{}\",\"{}\"", 12 * (at % 3), warmth + 140, warmth)
    })
}

fn places(refused: &Answer) -> Result<(), TestCaseError> {
    let problem = refused.any_problem();
    prop_assert!(matches!(refused.status, 400 | 413 | 422), "{refused:?}");
    // Text that is no JSON has no fields: its line is named; and where there is none, that.
    let named = !problem.errors.is_empty() || refused.body.contains("line ") || refused.body.contains("found none");
    prop_assert!(named, "{refused:?}");
    for error in &problem.errors {
        prop_assert!(error.pointer.is_empty() || error.pointer.starts_with('/'), "{error:?}");
        prop_assert!(!error.detail.is_empty() && error.detail.chars().count() < 400, "{error:?}");
        for word in ["f64", "i16", "u16", "usize", "panicked", "Option"] {
            prop_assert!(!error.detail.contains(word), "{error:?}");
        }
    }
    Ok(())
}

fn no_number_is_null(climate: &Value) -> Result<(), TestCaseError> {
    for name in ["tmin_c", "tmax_c"] {
        let year = climate["normals"][name].as_array().expect("twelve months");
        prop_assert!(year.len() == 12 && year.iter().all(Value::is_number), "{year:?}");
    }
    Ok(())
}

#[test]
fn a_record_that_was_spoiled_is_read_or_every_fault_has_its_line() {
    for good in [plain(), station()] {
        let read = |changes: &Vec<_>| {
            let bytes = changed(&good, changes);
            let text = String::from_utf8_lossy(&bytes);
            let rows = match read_csv(&text) {
                Err(faults) => {
                    prop_assert!((1..=20).contains(&faults.len()), "{}", faults.len());
                    for fault in faults {
                        prop_assert!(fault.line >= 1 && fault.to_string().starts_with("line "), "{fault}");
                        prop_assert!(!fault.to_string().chars().any(char::is_control), "{fault:?}");
                    }
                    return Ok(());
                }
                Ok(read) => read.rows,
            };
            let place = Place { latitude_deg: 52.0, longitude_deg: None, elevation_m: None };
            match Record::new(rows).and_then(|record| record.profile(&place)) {
                Ok(made) => prop_assert_eq!(made.profile.check(), Ok(())),
                Err(faults) => {
                    for fault in faults {
                        let words = fault.to_string();
                        let names = ["day `", "date `", "record ", "month "].iter().any(|name| words.starts_with(name));
                        prop_assert!(names, "{words}");
                    }
                }
            }
            Ok(())
        };
        runner(4).run(&changes(), |changes| read(&changes)).unwrap_or_else(|failed| panic!("{failed}"));
    }
}

#[test]
fn the_service_reads_a_spoiled_record_or_names_what_is_wrong() {
    let server = Server::start();
    for good in [plain(), station()] {
        let ask = |changes: &Vec<_>| {
            let body = changed(&good, changes);
            let path = "/v1/climate-profiles?latitude=52&recent_days=3";
            let answer = server.send("POST", path, &[("content-type", "text/csv")], &body);
            if answer.status == 200 { no_number_is_null(&answer.json()["climate"]) } else { places(&answer) }
        };
        runner(1).run(&changes(), |changes| ask(&changes)).unwrap_or_else(|failed| panic!("{failed}"));
    }
}

#[test]
fn the_service_reads_a_spoiled_climate_or_names_what_is_wrong() {
    let server = Server::start();
    let day = |date: &str| json!({"date": date, "tmin_c": 14.0, "tmax_c": 33.5, "rain_mm": 0.5, "wind_kmh": 9.0});
    let year = |value: f64| json!(vec![value; 12]);
    let good = json!({"date": "2026-09-15", "climate": {"latitude": 44.2, "longitude": -108.6, "elevation_m": 1230.0,
        "normals": {"tmin_c": [-12.0, -9.0, -4.0, 0.5, 5.5, 10.0, 13.5, 12.5, 7.0, 1.0, -5.5, -11.0],
            "tmax_c": [1.0, 4.0, 10.0, 15.0, 20.5, 26.5, 31.0, 30.0, 24.0, 16.5, 7.0, 1.0],
            "rain_mm": year(12.0), "dew_point_c": year(-2.0), "wind_ms": year(2.0), "solar_mj": year(15.0)},
        "frost": {"last": {"median": "05-20"}, "first": {"early": "09-10", "median": "09-22"}},
        "extreme_min_c": -29.5, "tmin_sd_k": year(4.5),
        "observations": [day("2026-09-13"), day("2026-09-14")],
        "forecast": {"issued": "2026-09-15", "days": [day("2026-09-15"), day("2026-09-16")]},
        "differences": {"nights_k": -2.0, "first_frost_days": -21, "frost_pocket": true}}});
    let text = serde_json::to_string_pretty(&good).expect("JSON");
    assert_eq!(server.post_text("/v1/season", &text).status, 200);
    let ask = |changes: &Vec<_>| {
        let body = changed(&text, changes);
        let answer = server.send("POST", "/v1/season", &[("content-type", "application/json")], &body);
        if answer.status != 200 {
            return places(&answer);
        }
        let season = answer.json();
        for name in ["tmin_c", "tmax_c", "et0_mm_day", "daylength_h", "heat_left_cd", "curve_error_k"] {
            prop_assert!(season[name].is_number(), "{name}: {season}");
        }
        Ok(())
    };
    runner(2).run(&changes(), |changes| ask(&changes)).unwrap_or_else(|failed| panic!("{failed}"));
}

#[test]
fn a_line_without_end_is_refused_by_its_number() {
    let long = format!("date,tmin_c,tmax_c\n2025-01-01,1,2\n{}\n2025-01-02,1,2\n", "9".repeat(10_000_000));
    assert_eq!(read_csv(&long).unwrap_err()[0].to_string(), "line 3: longer than 1000 bytes");
    let header = format!("date,tmin_c,{}\n2025-01-01,1,2\n", "x".repeat(10_000_000));
    let refused = read_csv(&header).unwrap_err();
    assert!(refused[0].line == 1 && refused[0].to_string().len() < 200, "{}", refused[0]);
    let server = Server::start();
    let send =
        |body: &[u8]| server.send("POST", "/v1/climate-profiles?latitude=52", &[("content-type", "text/csv")], body);
    assert_eq!(send(long.as_bytes()).status, 413);
    let shorter = format!("date,tmin_c,tmax_c\n{}\n", "9".repeat(7_000_000));
    assert_eq!(send(shorter.as_bytes()).any_problem().errors[0].pointer, "/2");
    let wide: Vec<u8> = [0xff, 0xfe].into_iter().chain(plain().encode_utf16().flat_map(u16::to_le_bytes)).collect();
    let refused = send(&wide).any_problem();
    assert!(refused.errors[0].detail.contains("UTF-16"), "{refused:?}");
}

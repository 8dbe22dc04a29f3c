//! Any date from 1900 to 2200, at any place: leap days, New Year, polar day and night.

use lammas::problem::kinds::INVALID_REQUEST;
use lammas_tests::server::Server;
use serde_json::{Value, json};

const DAYS: [&str; 12] = [
    "1900-01-01",
    "1900-02-28",
    "1900-12-31",
    "1904-02-29",
    "2000-02-29",
    "2026-06-21",
    "2026-12-31",
    "2027-01-01",
    "2100-02-28",
    "2100-03-01",
    "2196-02-29",
    "2200-12-31",
];

fn places() -> [Value; 9] {
    let even = |tmin_c: f64, tmax_c: f64| json!({"tmin_c": vec![tmin_c; 12], "tmax_c": vec![tmax_c; 12]});
    [
        json!({"id": "cold-inland"}),
        json!({"id": "southern-temperate"}),
        json!({"id": "tropical-lowland"}),
        json!({"latitude": 78.2, "longitude": 15.6}),
        json!({"latitude": -54.8, "longitude": -68.3, "elevation_m": 10.0}),
        json!({"latitude": 31.5, "longitude": 35.4, "elevation_m": -430.0}),
        json!({"latitude": 90.0, "elevation_m": 9000.0, "normals": even(-40.0, -30.0)}),
        json!({"latitude": -90.0, "elevation_m": 2800.0, "normals": even(-30.0, 1.0)}),
        json!({"latitude": 0.0, "longitude": -180.0, "normals": even(24.0, 31.0)}),
    ]
}

/// Numbers that are not finite would be written as `null`.
fn whole(season: &Value) {
    for name in ["tmin_c", "tmax_c", "et0_mm_day", "daylength_h", "heat_left_cd"] {
        assert!(season[name].is_number(), "{name}: {season}");
    }
}

#[test]
fn every_place_has_a_season_and_advice_on_every_day() {
    let server = Server::start();
    for climate in places() {
        for date in DAYS {
            whole(&server.post("/v1/season", &json!({"climate": climate, "date": date})).ok());
            let plant = json!({"type": "rose", "age_years": 4});
            let advice = server.post("/v1/advice", &json!({"climate": climate, "date": date, "plant": plant})).ok();
            whole(&advice["season"]);
            let day = |name: &str| advice[name].as_str().map(str::to_owned).expect("a day");
            assert!(day("valid_from").as_str() <= date && date <= day("valid_until").as_str(), "{climate} {date}");
            for task in advice["tasks"].as_array().expect("tasks") {
                let side = |name: &str| task["window"][name].as_str().map(str::to_owned);
                // A window may lie over New Year; the day lies within it.
                assert!(side("opens").is_none_or(|opens| opens.as_str() <= date), "{climate} {date}: {task}");
                assert!(side("closes").is_none_or(|closes| date <= closes.as_str()), "{climate} {date}: {task}");
            }
        }
    }
}

#[test]
fn days_beyond_the_range_are_refused_by_name() {
    let server = Server::start();
    for date in ["1899-12-31", "2201-01-01", "0001-01-01", "9999-12-31"] {
        let refused = server.post("/v1/season", &json!({"climate": {"id": "cold-inland"}, "date": date}));
        let errors = refused.problem(INVALID_REQUEST).errors;
        assert_eq!((errors.len(), errors[0].pointer.as_str()), (1, "/date"), "{date}");
        assert!(errors[0].detail.contains("1900") && errors[0].detail.contains("2200"), "{errors:?}");
    }
    let errors = server.post("/v1/season", &json!({"climate": {"id": "cold-inland"}, "date": "2100-02-29"}));
    assert_eq!(errors.problem(INVALID_REQUEST).errors[0].pointer, "/date");
}

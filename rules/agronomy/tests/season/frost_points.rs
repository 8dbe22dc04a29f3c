//! Frost dates and extreme minimum against a separate program (see `check_points.json`).

use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::curve::{Harmonics, straight_lines};
use lammas_agronomy::frost::{ColdNights, Turning, extreme_min_c, spread_from_gradient};

use crate::place::{json, near, season};
use lammas_agronomy::marker::{Marker, MarkerState, Share};
use lammas_agronomy::profile::Profile;
use serde_json::Value;

struct Point {
    name: String,
    latitude_deg: f64,
    tmean_c: [f64; 12],
    tmin_c: [f64; 12],
    tmax_c: [f64; 12],
    gradient: [f64; 12],
    sd_k: [f64; 12],
    last: [Option<ClimateDay>; 3],
    first: [Option<ClimateDay>; 3],
    extreme_min_c: f64,
}

fn points() -> Vec<Point> {
    let months = |value: &Value| -> [f64; 12] {
        let values: Vec<f64> = value.as_array().unwrap().iter().map(|month| month.as_f64().unwrap()).collect();
        values.try_into().unwrap()
    };
    let dates = |value: &Value| -> [Option<ClimateDay>; 3] {
        let dates: Vec<Option<ClimateDay>> =
            value.as_array().unwrap().iter().map(|date| date.as_str().map(|date| date.parse().unwrap())).collect();
        dates.try_into().unwrap()
    };
    let read = |point: &Value| Point {
        name: point["name"].as_str().unwrap().to_owned(),
        latitude_deg: point["lat"].as_f64().unwrap(),
        tmean_c: months(&point["tmean_c"]),
        tmin_c: months(&point["tmin_c"]),
        tmax_c: months(&point["tmax_c"]),
        gradient: months(&point["poleward_gradient_k_per_100km"]),
        sd_k: months(&point["sd_tmin_c"]),
        last: dates(&point["last_frost_10_50_90"]),
        first: dates(&point["first_frost_10_50_90"]),
        extreme_min_c: point["extreme_min_c"].as_f64().unwrap(),
    };
    let points: Vec<Point> = json("check_points.json")["points"].as_array().unwrap().iter().map(read).collect();
    assert_eq!(points.len(), 9);
    points
}

fn within_a_day(what: &str, got: Option<ClimateDay>, expected: Option<ClimateDay>) {
    match (got, expected) {
        (Some(got), Some(expected)) => {
            assert!(got.days_from(expected).abs() <= 1, "{what}: {got}, expected {expected}");
        }
        _ => assert_eq!(got, expected, "{what}"),
    }
}

#[test]
fn frost_dates_agree_with_the_separate_program_within_a_day() {
    for point in points() {
        let tmin = Harmonics::of_months(&point.tmin_c);
        let nights = ColdNights::new(0.0, &tmin.row(), &straight_lines(&point.sd_k), Turning::of(&tmin));
        for (share, (last, first)) in [0.1, 0.5, 0.9].into_iter().zip(point.last.into_iter().zip(point.first)) {
            let what = format!("{} {share}", point.name);
            within_a_day(&what, nights.last(share), last);
            within_a_day(&what, nights.first(share), first);
        }
    }
}

#[test]
fn extreme_minima_agree_with_the_separate_program() {
    for point in points() {
        let tmin_c = Harmonics::of_months(&point.tmin_c).row();
        let extreme_c = extreme_min_c(&tmin_c, &straight_lines(&point.sd_k));
        // 0.05 for the printed digit, 0.04 for the rounded inputs
        near(extreme_c, point.extreme_min_c, 0.09);
    }
}

#[test]
fn the_spread_from_the_gradient_agrees_with_the_separate_program() {
    for point in points() {
        let spread_k = spread_from_gradient(&point.tmean_c, &point.gradient);
        for (got, expected) in spread_k.into_iter().zip(point.sd_k) {
            near(got, expected, 0.011);
        }
    }
}

/// 10 % of years in the Sahara have their last frost before midwinter, so it has no date; then the
/// latest first frost has none either.
#[test]
fn the_season_keeps_the_dates_that_exist_in_pairs() {
    for point in points() {
        let mut profile = Profile::of_temperatures(point.latitude_deg, point.tmin_c, point.tmax_c);
        profile.tmin_sd_k = Some(point.sd_k);
        let season = season(&profile);
        for (share, (last, first)) in Share::ALL.into_iter().zip(point.last.into_iter().zip(point.first)) {
            let state = season.marker(Marker::LastFrost(share));
            let across = match share {
                Share::Early => point.first[2],
                Share::Median => first,
                Share::Late => point.first[0],
            };
            let expected = if across.is_some() { last } else { None };
            within_a_day(&format!("{} last {share:?}", point.name), state.day(), expected);
        }
        if point.name.contains("Sahara") {
            assert_eq!(season.marker(Marker::FirstFrost(Share::Late)), MarkerState::Never);
            let remark = season.marker_remark(Marker::FirstFrost(Share::Late));
            assert_eq!(remark, Some("frost in some years"));
        }
        if point.name.contains("Fiji") {
            assert_eq!(season.marker_remark(Marker::FirstFrost(Share::Early)), None);
            assert_eq!(season.climate().frost_free, Some(true));
        }
    }
}

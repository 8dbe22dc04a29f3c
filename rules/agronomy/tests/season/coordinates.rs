//! Profiles from coordinates against a separate program (see `check_points.json`).

use std::sync::LazyLock;

use lammas_agronomy::climatology::{Coordinates, Estimate, Grid};
use serde_json::Value;

use crate::place::{climate_grid, json, near, season};
use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::marker::{Marker, Share};

pub(crate) static GRID: LazyLock<Grid> = LazyLock::new(|| Grid::read(&climate_grid()).unwrap());

pub(crate) fn at(latitude_deg: f64, longitude_deg: f64, elevation_m: Option<f64>) -> Estimate {
    GRID.estimate(Coordinates { latitude_deg, longitude_deg, elevation_m }).unwrap()
}

fn points() -> Vec<(Value, Estimate)> {
    let points = json("check_points.json")["points"].as_array().unwrap().clone();
    assert_eq!(points.len(), 9);
    let estimate = |point: &Value| {
        at(point["lat"].as_f64().unwrap(), point["lon"].as_f64().unwrap(), point["elevation_m"].as_f64())
    };
    points.into_iter().map(|point| (point.clone(), estimate(&point))).collect()
}

fn months(point: &Value, name: &str, got: &[f64; 12], tolerance: f64) {
    let expected = point[name].as_array().unwrap();
    assert_eq!(expected.len(), 12);
    for (month, (got, expected)) in got.iter().zip(expected).enumerate() {
        let expected = expected.as_f64().unwrap();
        assert!((got - expected).abs() <= tolerance, "{} {name} {month}: {got}, expected {expected}", point["name"]);
    }
}

/// Two writings of the formulas agreed to 0.006 °C and 0.05 mm; beside that, half the last digit of each value.
#[test]
fn every_step_agrees_with_the_separate_program() {
    for (point, estimate) in points() {
        near(estimate.altitude_m, point["grid_altitude_m"].as_f64().unwrap(), 0.051);
        near(estimate.land_50_km, point["land_50km"].as_f64().unwrap(), 0.00051);
        months(&point, "tmean_c", &estimate.tmean_c, 0.0051);
        months(&point, "rain_mm", &estimate.rain_mm, 0.051);
        months(&point, "ra_mj", &estimate.ra_mj, 0.011);
        months(&point, "pet_mm", &estimate.wetness.pet_mm, 0.11);
        months(&point, "wetness", &estimate.wetness.month, 0.0011);
        months(&point, "tmin_c", &estimate.profile.normals.tmin_c, 0.011);
        months(&point, "tmax_c", &estimate.profile.normals.tmax_c, 0.011);
        months(&point, "poleward_gradient_k_per_100km", &estimate.poleward_gradient, 0.00051);
        months(&point, "sd_tmin_c", &estimate.profile.tmin_sd_k.unwrap(), 0.006);
    }
}

/// The frost dates that the season keeps (they exist in pairs) lie within a day of the separate program's, the coldest
/// night within 0.04 K beside half the last digit.
#[test]
fn frost_and_the_coldest_night_agree_with_the_separate_program() {
    let mut compared = 0;
    for (point, mut estimate) in points() {
        // The separate program tells them everywhere; whether they are to be told is another question.
        estimate.profile.estimate = None;
        let season = season(&estimate.profile);
        for (place, share) in Share::ALL.into_iter().enumerate() {
            for (name, marker) in
                [("last_frost_10_50_90", Marker::LastFrost(share)), ("first_frost_10_50_90", Marker::FirstFrost(share))]
            {
                let Some(got) = season.marker(marker).day() else { continue };
                let expected: ClimateDay = point[name][place].as_str().unwrap().parse().unwrap();
                assert!(got.days_from(expected).abs() <= 1, "{} {name} {place}: {got}, {expected}", point["name"]);
                compared += 1;
            }
        }
        near(season.extreme_min_c().unwrap().0, point["extreme_min_c"].as_f64().unwrap(), 0.09);
    }
    assert!(compared >= 30, "{compared}");
}

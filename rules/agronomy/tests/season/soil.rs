//! Soil temperature.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;
use lammas_agronomy::season::Series;

use crate::place::{day, near, season, station, weather};

#[test]
fn soil_follows_the_air_damped_and_late() {
    let season = season(&station("Ames IA"));
    let new_year = day("2026-01-01");
    let soil: Vec<f64> = (0..365).map(|at| season.soil_10cm_c(new_year + at).0).collect();
    let air: Vec<f64> =
        (0..365).map(|at| season.curve(Series::Tmean, (new_year + at).climate_day()).unwrap()).collect();
    let range = |values: &[f64]| {
        values.iter().copied().fold(f64::MIN, f64::max) - values.iter().copied().fold(f64::MAX, f64::min)
    };
    // exp(-z/D) of the yearly wave: z 0.10 m, D = sqrt(2 * 0.043 * 365 / 2 pi) = 2.235 m
    let ratio = range(&soil) / range(&air);
    assert!((0.94..0.965).contains(&ratio), "{ratio}");
    let peak = |values: &[f64]| (0..365).max_by(|a, b| values[*a].total_cmp(&values[*b])).unwrap() as i32;
    // z/D of a year's circle: 0.0447 / 2 pi * 365 = 2.6 days
    assert!((1..=4).contains(&(peak(&soil) - peak(&air))));
    let mean = |values: &[f64]| values.iter().sum::<f64>() / 365.0;
    near(mean(&soil), mean(&air), 1e-9);
}

#[test]
fn recorded_warmth_reaches_the_soil_in_a_few_days() {
    let mut profile = station("De Bilt NL");
    let on = day("2026-04-22");
    let back = |days: i32| -> Day { on - days };
    profile.observations = (1..=21).rev().map(|at| weather(back(at), 15.0, 25.0)).collect();
    let warm = season(&profile);
    let (soil_c, origin) = warm.soil_10cm_c(on);
    assert_eq!(origin, Origin::Measured);
    near(soil_c, 20.0, 0.05); // 0.75^21 = 0.24 % of the start is left
    profile.observations.drain(..5);
    let (_, origin) = season(&profile).soil_10cm_c(on);
    assert_eq!(origin, Origin::Computed);
}

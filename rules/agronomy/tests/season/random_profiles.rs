//! Whatever a valid profile says, the season answers with finite numbers and in its ranges.

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::marker::{Marker, MarkerState, Threshold};
use lammas_agronomy::profile::{DailyWeather, Forecast, Humidity, Profile, Radiation};
use lammas_agronomy::season::{Aggregate, Season, Series, SiteShift};
use proptest::prelude::*;

use crate::place::{day, mirrored};

type Months = [f64; 12];

fn months(range: std::ops::RangeInclusive<f64>) -> impl Strategy<Value = Months> {
    proptest::array::uniform12(range)
}

/// Any valid profile, however odd: months need not follow each other smoothly.
fn profiles() -> impl Strategy<Value = Profile> {
    let temperatures = (months(-88.0..=45.0), months(0.0..=15.0));
    let air = (
        proptest::option::of(months(0.0..=900.0)),
        proptest::option::of(months(0.0..=100.0)),
        proptest::option::of(months(0.0..=15.0)),
        proptest::option::of(months(0.0..=24.0)),
        proptest::option::of(months(0.1..=12.0)),
    );
    let weather = proptest::collection::vec((0_i32..3, -40.0..30.0, 0.0..20.0), 0..40);
    (-90.0..=90.0_f64, proptest::option::of(-400.0..5000.0_f64), temperatures, air, weather).prop_map(
        |(latitude_deg, elevation_m, (tmin_c, range_k), (rain, rh, wind, sunshine, sd), weather)| {
            let mut tmax_c = tmin_c;
            for (tmax_c, range_k) in tmax_c.iter_mut().zip(range_k) {
                *tmax_c += range_k;
            }
            let mut profile = Profile::of_temperatures(latitude_deg, tmin_c, tmax_c);
            profile.elevation_m = elevation_m;
            profile.normals.rain_mm = rain;
            profile.normals.humidity = rh.map(Humidity::RhMean);
            profile.normals.wind_ms = wind;
            profile.normals.radiation = sunshine.map(Radiation::SunshineHours);
            profile.tmin_sd_k = sd;
            let mut on = day("2026-01-01");
            let mut days: Vec<DailyWeather> = Vec::new();
            for (skip, tmin_c, range_k) in weather {
                on = on + skip + 1;
                days.push(crate::place::weather(on, tmin_c, tmin_c + range_k));
            }
            if let Some(last) = days.last() {
                let issued = last.day + 1;
                let days = (0..5).map(|at| crate::place::weather(issued + at, -3.0, 8.0)).collect();
                profile.forecast = Some(Forecast { issued, days });
            }
            profile.observations = days;
            profile
        },
    )
}

fn check_finite(season: &Season) {
    let finite = |value: f64| assert!(value.is_finite());
    for series in Series::ALL {
        for day in ClimateDay::all() {
            if let Some(value) = season.curve(series, day) {
                finite(value);
                if !series.is_temperature() {
                    assert!(value >= 0.0, "{series:?} {value}");
                }
            }
        }
    }
    assert!(season.frost_chance_pct().is_some_and(|pct| (0.0..=100.0).contains(&pct)));
    finite(season.extreme_min_c().unwrap().0);
    finite(season.largest_residual_k());
    let _ = season.climate();
    for on in [day("2026-01-20"), day("2026-02-28"), day("2028-02-29"), day("2200-12-31")] {
        for aggregate in [Aggregate::Mean, Aggregate::Min, Aggregate::Max, Aggregate::Sum] {
            for series in Series::ALL {
                for value in [season.past(aggregate, series, 14, on), season.ahead(aggregate, series, 14, on)] {
                    finite(value.map_or(0.0, |value| value.0));
                }
            }
        }
        assert!(season.heat_left_cd(on) >= 0.0);
        finite(season.heat_left_cd(on));
        finite(season.soil_10cm_c(on).0);
        finite(season.heat_sum(5.0, Some(30.0), on, on + 40));
        let _ = season.heat_reached(200.0, 5.0, on);
        let _ = season.frost_ahead(0.0, 14, on);
    }
}

fn check_markers(season: &Season) {
    let crossings = Series::ALL.into_iter().flat_map(|series| {
        let at = Threshold::new(10.0).unwrap();
        [Marker::Rises(series, at), Marker::Falls(series, at)]
    });
    for marker in Marker::FIXED.into_iter().chain(crossings) {
        let state = season.marker(marker);
        if let Some(error_days) = season.marker_error_days(marker) {
            assert!((0.0..=20.0).contains(&error_days) && state.day().is_some());
        }
        if let Some(partner) = marker.season_partner() {
            assert_eq!(state.as_str(), season.marker(partner).as_str(), "{marker}");
        }
        if let MarkerState::Seasonal(day) = state {
            for year in [1900, 2024, 2026, 2200] {
                let on: Day = day.in_year(year);
                assert_eq!((on.year(), on.climate_day()), (year, day));
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn every_valid_profile_gives_finite_answers(profile in profiles(), frost_hollow: bool) {
        prop_assert_eq!(profile.check(), Ok(()));
        let season = Season::new(&profile, SiteShift { frost_hollow });
        check_finite(&season);
        check_markers(&season);
    }

    #[test]
    fn a_smooth_climate_is_mirrored_in_the_south(
        latitude_deg in 6.0..65.0_f64,
        mean_c in -5.0..24.0_f64,
        swing_k in 3.0..18.0_f64,
        range_k in 4.0..16.0_f64,
        lag in 0.0..1.5_f64,
    ) {
        let month = |at: usize, above_k: f64| {
            mean_c + above_k - swing_k * libm::cos((at as f64 - lag) / 12.0 * std::f64::consts::TAU)
        };
        let profile = Profile::of_temperatures(
            latitude_deg,
            std::array::from_fn(|at| month(at, -range_k / 2.0)),
            std::array::from_fn(|at| month(at, range_k / 2.0)),
        );
        let north = Season::new(&profile, SiteShift::default());
        let south = Season::new(&mirrored(&profile), SiteShift::default());
        prop_assert!((north.frost_chance_pct().unwrap() - south.frost_chance_pct().unwrap()).abs() < 5.0);
        for marker in Marker::FIXED {
            if let (Some(here), Some(there)) = (north.marker(marker).day(), south.marker(marker).day()) {
                let off = there.days_from(here.plus(182));
                prop_assert!(off.abs() <= 3, "{} {} {}", marker, here, there);
            }
        }
    }

    #[test]
    fn the_same_profile_gives_the_same_bits(profile in profiles()) {
        let (a, b) = (
            Season::new(&profile, SiteShift::default()),
            Season::new(&profile, SiteShift::default()),
        );
        for series in Series::ALL {
            for day in ClimateDay::all().step_by(11) {
                let bits = |season: &Season| season.curve(series, day).map(f64::to_bits);
                prop_assert_eq!(bits(&a), bits(&b));
            }
        }
        prop_assert_eq!(Marker::FIXED.map(|m| a.marker(m)), Marker::FIXED.map(|m| b.marker(m)));
    }
}

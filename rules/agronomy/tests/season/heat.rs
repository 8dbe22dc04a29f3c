//! Warmth collected and warmth left.

use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::marker::{Marker, MarkerState, Share};
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::{FrostTriple, GivenFrost, Profile};
use lammas_agronomy::season::Series;

use crate::place::{day, near, season, station, stations, weather};

/// The definition, written out: from the day to the day before the earlier of the next first frost and
/// the next end of growth; 0 between the frosts and while nothing grows.
#[test]
fn warmth_left_is_the_sum_up_to_frost_or_to_the_end_of_growth() {
    for place in stations() {
        let season = season(&place.profile);
        let at = |marker: Marker| season.marker(marker).day();
        let first = at(Marker::FirstFrost(Share::Median));
        let last = at(Marker::LastFrost(Share::Median));
        let (start, end) = (at(Marker::GrowingStart), at(Marker::GrowingEnd));
        for day in ClimateDay::all().step_by(7) {
            let mut rests = false;
            for (from, to) in [(first, last), (end, start)] {
                let mut night = from;
                while let (Some(resting), Some(to)) = (night, to) {
                    if resting == to {
                        break;
                    }
                    rests |= resting == day;
                    night = Some(resting.plus(1));
                }
            }
            let mut expected = 0.0;
            let mut ahead = day;
            for _ in 0..365 {
                if rests || Some(ahead) == first || Some(ahead) == end {
                    break;
                }
                expected += (season.curve(Series::Tmean, ahead).unwrap() - 5.0).max(0.0);
                ahead = ahead.plus(1);
            }
            near(season.heat_left_cd(day.in_year(2027)), expected, 1e-6);
        }
    }
}

#[test]
fn warmth_left_never_jumps_to_the_next_year_after_the_first_frost() {
    let season = season(&station("Ames IA"));
    let first = season.marker(Marker::FirstFrost(Share::Median)).day().unwrap().in_year(2026);
    let last = season.marker(Marker::LastFrost(Share::Median)).day().unwrap().in_year(2027);
    near(season.heat_left_cd(first), 0.0, 0.0);
    near(season.heat_left_cd(last - 1), 0.0, 0.0);
    assert!(season.heat_left_cd(first - 7) > 0.0 && season.heat_left_cd(first - 7) < 150.0);
    // about 2,500 degree days over 5 °C in an Iowa summer (own sum of the normals)
    assert!((1_800.0..3_200.0).contains(&season.heat_left_cd(last + 14)));
}

#[test]
fn where_frost_knows_no_summer_no_warmth_is_left() {
    // half of the years have frost on the warmest days too, though the days are mild
    let month = |at: usize, above_c: f64| above_c - 8.0 * libm::cos(at as f64 * std::f64::consts::FRAC_PI_6);
    let mut profile = Profile::of_temperatures(
        45.0,
        std::array::from_fn(|at| month(at, -10.0)),
        std::array::from_fn(|at| month(at, 5.0)),
    );
    let cold = season(&profile);
    assert!(cold.marker(Marker::GrowingStart).day().is_some());
    let warmest_c = cold.curve(Series::Tmean, "07-16".parse().unwrap()).unwrap();
    for day in ClimateDay::all() {
        // by the formula two days in a spell of frost are needed for half of the years
        let left_cd = cold.heat_left_cd(day.in_year(2026));
        assert!(left_cd <= 3.0 * (warmest_c - 5.0), "{day}: {left_cd}");
    }

    let same: Option<ClimateDay> = Some("07-20".parse().unwrap());
    let only = FrostTriple { early: None, median: same, late: None };
    profile.frost = Some(GivenFrost { last: only, first: only });
    let given = season(&profile);
    for day in ClimateDay::all() {
        near(given.heat_left_cd(day.in_year(2026)), 0.0, 0.0);
    }
}

#[test]
fn without_frost_and_rest_a_whole_year_of_warmth_is_left() {
    let season = season(&station("Los Banos PH"));
    assert_eq!(season.marker(Marker::GrowingEnd), MarkerState::Always);
    let year: f64 = ClimateDay::all().map(|day| season.curve(Series::Tmean, day).unwrap() - 5.0).sum();
    near(season.heat_left_cd(day("2026-05-05")), year, 1e-6);
}

#[test]
fn a_heat_sum_is_reached_on_the_first_day_on_which_it_is_collected() {
    for place in stations() {
        let season = season(&place.profile);
        let from = day("2026-02-01");
        let Some(reached) = season.heat_reached(300.0, 5.0, from) else {
            continue;
        };
        assert!(season.heat_sum(5.0, None, from, reached) >= 300.0, "{}", place.name);
        assert!(season.heat_sum(5.0, None, from, reached - 1) < 300.0, "{}", place.name);
    }
}

#[test]
fn a_sum_that_does_not_come_within_a_year_is_not_reached() {
    let season = season(&station("Lake Yellowstone WY"));
    assert_eq!(season.heat_reached(5_000.0, 10.0, day("2026-01-01")), None);
    assert_eq!(season.heat_reached(0.0, 10.0, day("2026-01-01")), Some(day("2026-01-01")));
}

#[test]
fn recorded_days_count_before_the_curve() {
    let mut profile = station("De Bilt NL");
    profile.observations = (0..10).map(|at| weather(day("2026-03-01") + at, 12.0, 22.0)).collect();
    let season = season(&profile);
    let (from, to) = (day("2026-03-01"), day("2026-03-11"));
    // 10 days, mean 17 °C, all above 10 °C: 7 each
    near(season.heat_sum(10.0, None, from, to), 70.0, 1e-9);
    assert_eq!(season.heat_sum_origin(from, to), Origin::Measured);
    assert_eq!(season.heat_sum_origin(from, to + 10), Origin::Computed);
    // above an upper cut-off of 12 °C nothing more is gained: 2 each
    near(season.heat_sum(10.0, Some(12.0), from, to), 20.0, 1e-9);
    assert_eq!(season.heat_reached(70.0, 10.0, from), Some(to));
    near(season.heat_sum(10.0, None, to, from), 0.0, 0.0);
}

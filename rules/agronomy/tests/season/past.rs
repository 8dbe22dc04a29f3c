//! The days before a day.

use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::{Aggregate, Season, Series, SiteShift};

use crate::place::{day, near, season, station, weather};

/// De Bilt with ten recorded days before 11 May 2026: minima 1 to 10 °C, 10 K more by day.
fn recorded() -> Profile {
    let mut profile = station("De Bilt NL");
    profile.observations =
        (1..=10).map(|at| weather(day("2026-04-30") + at, f64::from(at), f64::from(at) + 10.0)).collect();
    profile
}

#[test]
fn recorded_days_before_the_day_are_measured() {
    let season = season(&recorded());
    let on = day("2026-05-11");
    let past = |aggregate, series| season.past(aggregate, series, 7, on).unwrap();
    // 4 to 10 May
    assert_eq!(past(Aggregate::Min, Series::Tmin), (4.0, Origin::Measured));
    assert_eq!(past(Aggregate::Max, Series::Tmax), (20.0, Origin::Measured));
    assert_eq!(past(Aggregate::Mean, Series::Tmean), (12.0, Origin::Measured));
    assert_eq!(past(Aggregate::Sum, Series::Tmin), (49.0, Origin::Measured));
    let (et0_mm, origin) = past(Aggregate::Sum, Series::Et0);
    assert_eq!(origin, Origin::Measured);
    assert!((14.0..28.0).contains(&et0_mm), "{et0_mm}");
}

#[test]
fn four_of_five_days_are_enough_and_a_sum_is_scaled_up() {
    let mut profile = recorded();
    for (at, weather) in profile.observations.iter_mut().enumerate() {
        weather.rain_mm = if at % 5 == 0 { None } else { Some(2.0) };
    }
    let season_8 = season(&profile);
    let on = day("2026-05-11");
    let sum = season_8.past(Aggregate::Sum, Series::Rain, 10, on).unwrap();
    assert_eq!(sum, (20.0, Origin::Measured));

    profile.observations[1].rain_mm = None;
    let (_, origin) = season(&profile).past(Aggregate::Sum, Series::Rain, 10, on).unwrap();
    assert_eq!(origin, Origin::Computed);
}

#[test]
fn without_records_the_curve_speaks() {
    let mut profile = station("De Bilt NL");
    let on = day("2026-05-11");
    let whole = season(&profile);
    let (mean_c, origin) = whole.past(Aggregate::Mean, Series::Tmax, 31, day("2026-06-01")).unwrap();
    assert_eq!(origin, Origin::Computed);
    near(mean_c, 18.2, 0.3); // May of the normals
    let (rain_mm, _) = whole.past(Aggregate::Sum, Series::Rain, 31, day("2026-06-01")).unwrap();
    near(rain_mm, 58.0, 1e-9);

    profile.origin = Origin::Estimated;
    let (_, origin) = season(&profile).past(Aggregate::Min, Series::Tmin, 7, on).unwrap();
    assert_eq!(origin, Origin::Estimated);

    profile.normals.rain_mm = None;
    let dry = season(&profile);
    assert_eq!(dry.past(Aggregate::Sum, Series::Rain, 7, on), None);
    assert_eq!(dry.past(Aggregate::Mean, Series::Rh, 7, on), None);
    assert_eq!(dry.past(Aggregate::Mean, Series::Tmin, 0, on), None);
}

#[test]
fn a_frost_hollow_lowers_every_minimum_by_two_kelvin() {
    let profile = recorded();
    let hollow = Season::new(&profile, SiteShift { frost_hollow: true });
    let level = season(&profile);
    let on = day("2026-05-11");
    for days in [7, 60] {
        let low = hollow.past(Aggregate::Min, Series::Tmin, days, on).unwrap();
        let high = level.past(Aggregate::Min, Series::Tmin, days, on).unwrap();
        near(high.0 - low.0, 2.0, 1e-9);
        assert_eq!(low.1, high.1);
        let (a, b) = (
            hollow.past(Aggregate::Max, Series::Tmax, days, on).unwrap(),
            level.past(Aggregate::Max, Series::Tmax, days, on).unwrap(),
        );
        near(a.0, b.0, 1e-9);
    }
    assert!(hollow.frost_chance_pct() >= level.frost_chance_pct());
    near(level.extreme_min_c().unwrap().0 - hollow.extreme_min_c().unwrap().0, 2.0, 1e-5);
}

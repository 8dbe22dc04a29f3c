//! Poles, equator, no seasons, no rain, nothing but frost.

use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::marker::{Marker, MarkerState, Share};
use lammas_agronomy::profile::{FrostTriple, GivenFrost, Profile};
use lammas_agronomy::season::{Half, Season, Series, SiteShift};

use crate::place::{day, near, season, station};

/// A year that swings by a cosine, coldest in mid-January.
fn swinging(latitude_deg: f64, mean_c: f64, swing_k: f64) -> Profile {
    let month =
        |at: usize, above_k: f64| mean_c + above_k - swing_k * libm::cos(at as f64 / 12.0 * std::f64::consts::TAU);
    let tmin_c = std::array::from_fn(|at| month(at, -5.0));
    let tmax_c = std::array::from_fn(|at| month(at, 5.0));
    Profile::of_temperatures(latitude_deg, tmin_c, tmax_c)
}

#[test]
fn a_place_of_nothing_but_frost_has_it_always() {
    let season = season(&swinging(75.0, -20.0, 10.0));
    for share in Share::ALL {
        assert_eq!(season.marker(Marker::LastFrost(share)), MarkerState::Always);
        assert_eq!(season.marker(Marker::FirstFrost(share)), MarkerState::Always);
    }
    assert_eq!(season.marker(Marker::GrowingStart), MarkerState::Never);
    near(season.heat_left_cd(day("2026-07-01")), 0.0, 0.0);
    assert_eq!(season.climate().short_season, Some(true));
    assert_eq!(season.marker_remark(Marker::FirstFrost(Share::Late)), None);
}

#[test]
fn polar_day_and_night_are_ordinary_days() {
    for latitude_deg in [-90.0, -78.0, 70.0, 90.0] {
        let season = season(&swinging(latitude_deg, -2.0, 12.0));
        for day in ClimateDay::all() {
            for series in [Series::Daylength, Series::Et0, Series::Tmin] {
                assert!(season.curve(series, day).unwrap().is_finite());
            }
        }
        assert!(season.marker(Marker::LongestDay).day().is_some());
    }
}

#[test]
fn the_equator_without_seasons_is_even() {
    let mut profile = Profile::of_temperatures(1.0, [21.0; 12], [29.0; 12]);
    profile.normals.rain_mm = Some([150.0; 12]);
    let season = season(&profile);
    for marker in
        [Marker::WarmestWeek, Marker::ColdestWeek, Marker::LongestDay, Marker::SpringEquinox, Marker::RainsStart]
    {
        assert_eq!(season.marker(marker), MarkerState::Even, "{marker}");
    }
    assert_eq!(season.marker(Marker::GrowingEnd), MarkerState::Always);
    assert_eq!(season.marker(Marker::HotSeasonStart), MarkerState::Never);
    assert_eq!(season.marker(Marker::LastFrost(Share::Late)), MarkerState::Never);
    assert_eq!(season.half(ClimateDay::around(40)), Half::Even);
    assert_eq!(season.climate().frost_free, Some(true));
    let near_the_threshold = Profile::of_temperatures(1.0, [20.0; 12], [31.0; 12]);
    let season = crate::place::season(&near_the_threshold);
    assert_eq!(season.marker(Marker::HotSeasonStart), MarkerState::Even);
}

#[test]
fn without_rain_what_hangs_on_rain_is_unknown() {
    let mut profile = station("Tunis TN");
    profile.normals.rain_mm = None;
    let season = season(&profile);
    for marker in [Marker::RainsStart, Marker::RainsEnd, Marker::SecondRainsStart, Marker::SecondRainsEnd] {
        assert_eq!(season.marker(marker), MarkerState::Unknown);
    }
    let climate = season.climate();
    assert_eq!(
        (climate.wet_winter, climate.dry_winter, climate.dry_coldest, climate.dry_spring),
        (None, None, None, None)
    );
    assert_eq!(climate.mild_winter, Some(true));
    assert_eq!(season.curve(Series::Rain, ClimateDay::around(0)), None);
}

#[test]
fn a_spring_that_has_no_start_is_not_dry() {
    let climate = season(&station("Death Valley CA")).climate();
    assert_eq!(climate.dry_spring, Some(false));
}

#[test]
fn given_frost_dates_win() {
    let mut profile = station("De Bilt NL");
    let read = |text: &str| Some(text.parse().unwrap());
    profile.frost = Some(GivenFrost {
        last: FrostTriple { early: None, median: read("05-01"), late: read("05-20") },
        first: FrostTriple::default(),
    });
    let season = season(&profile);
    let day = |marker| season.marker(marker).day().unwrap().to_string();
    assert_eq!(day(Marker::LastFrost(Share::Median)), "05-01");
    assert_eq!(day(Marker::LastFrost(Share::Late)), "05-20");
    assert_eq!(season.marker_error_days(Marker::LastFrost(Share::Late)), Some(0.0));
    assert_eq!(season.marker_error_days(Marker::LastFrost(Share::Early)), Some(6.0));
    // the hollow moves them on
    let hollow = Season::new(&profile, SiteShift { frost_hollow: true });
    let later = hollow.marker(Marker::LastFrost(Share::Median)).day().unwrap();
    assert!(later > "05-01".parse().unwrap());
}

#[test]
fn a_season_can_be_shared_between_threads() {
    fn shared<T: Send + Sync>(value: T) -> T {
        value
    }
    let season = shared(season(&station("Ames IA")));
    let ask = || season.curve(Series::Et0, ClimateDay::around(150)).map(f64::to_bits);
    let (a, b) = std::thread::scope(|scope| {
        let (a, b) = (scope.spawn(ask), scope.spawn(ask));
        (a.join().unwrap(), b.join().unwrap())
    });
    assert_eq!(a, b);
}

#[test]
fn the_29th_of_february_takes_the_values_of_the_28th() {
    let season = season(&station("Ames IA"));
    let (leap, before) = (day("2028-02-29"), day("2028-02-28"));
    assert_eq!(leap.climate_day(), before.climate_day());
    assert_eq!(season.heat_left_cd(leap).to_bits(), season.heat_left_cd(before).to_bits());
    assert_eq!(season.soil_10cm_c(leap), season.soil_10cm_c(before));
}

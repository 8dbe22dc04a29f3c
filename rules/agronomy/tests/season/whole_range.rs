//! Every latitude, height and day from 1900 to 2200; leap days, New Year, polar day and night, no frost and nothing else.

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::climatology::{Coordinates, Grid};
use lammas_agronomy::marker::{Marker, MarkerState, Share, Turn};
use lammas_agronomy::profile::{Differences, Humidity, Profile, differences};
use lammas_agronomy::season::{Aggregate, Season, Series, SiteShift};
use proptest::prelude::*;
use std::sync::LazyLock;

use crate::place::{climate_grid, day, mirrored, season, stations};

/// Lowest and highest ground that there is, m: the shore of the Dead Sea and the highest mountain, and beyond.
const HEIGHTS_M: [f64; 4] = [-430.0, 0.0, 4000.0, 9000.0];

/// A year that swings by a cosine, coldest in mid-January; turned by half a year in the south.
fn swinging(latitude_deg: f64, mean_c: f64, swing_k: f64) -> Profile {
    let turned = if latitude_deg < 0.0 { -swing_k } else { swing_k };
    let month =
        |at: usize, above_k: f64| mean_c + above_k - turned * libm::cos(at as f64 / 12.0 * std::f64::consts::TAU);
    let mut profile = Profile::of_temperatures(
        latitude_deg,
        std::array::from_fn(|at| month(at, -5.0)),
        std::array::from_fn(|at| month(at, 5.0)),
    );
    profile.normals.rain_mm = Some([40.0; 12]);
    profile
}

/// No frost, some frost, nothing but frost, and no seasons at all.
fn climates(latitude_deg: f64) -> [Profile; 4] {
    [(24.0, 4.0), (9.0, 11.0), (-25.0, 12.0), (26.0, 0.0)]
        .map(|(mean_c, swing_k)| swinging(latitude_deg, mean_c, swing_k))
}

fn latitudes() -> impl Iterator<Item = f64> {
    (-90..=90).step_by(10).map(f64::from).chain([-66.6, -66.5, -23.44, -0.01, 0.01, 23.44, 66.5, 66.6])
}

fn check_day(season: &Season, on: Day) {
    let finite = |value: f64| assert!(value.is_finite(), "{}", on.date());
    let left_cd = season.heat_left_cd(on);
    finite(left_cd);
    assert!(left_cd >= 0.0);
    finite(season.soil_10cm_c(on).0);
    let _ = season.frost_ahead(0.0, 7, on);
    for value in [
        season.past(Aggregate::Mean, Series::Tmax, 7, on),
        season.past(Aggregate::Sum, Series::Rain, 31, on),
        season.ahead(Aggregate::Min, Series::Tmin, 7, on),
        season.ahead(Aggregate::Sum, Series::Et0, 7, on),
    ] {
        finite(value.map_or(0.0, |value| value.0));
    }
}

#[test]
fn every_day_of_sampled_years_has_its_numbers_at_every_latitude() {
    // the ends of the supported range, a century that leaps and two that don't, and years beside them
    let years = [1900, 1904, 1999, 2000, 2001, 2100, 2196, 2200];
    for (at, latitude_deg) in latitudes().enumerate() {
        for (kind, profile) in climates(latitude_deg).into_iter().enumerate() {
            let season = season(&profile);
            // each place has one of the years whole, so that all of them come at many latitudes
            let year = years[(at + 3 * kind) % years.len()];
            let (mut on, last) = (day(&format!("{year}-01-01")), day(&format!("{year}-12-31")));
            let mut days = 0;
            while on <= last {
                check_day(&season, on);
                on = on + 1;
                days += 1;
            }
            assert_eq!(days, if matches!(year, 1904 | 2000 | 2196) { 366 } else { 365 }, "{year}");
        }
    }
}

#[test]
fn every_height_has_its_water_and_its_sun() {
    for latitude_deg in latitudes() {
        for height_m in HEIGHTS_M {
            for mut profile in climates(latitude_deg) {
                profile.elevation_m = Some(height_m);
                profile.normals.humidity = Some(Humidity::RhMean([60.0; 12]));
                assert_eq!(profile.check(), Ok(()));
                let season = season(&profile);
                for on in ClimateDay::all() {
                    let et0_mm = season.curve(Series::Et0, on).unwrap();
                    assert!((0.0..30.0).contains(&et0_mm), "{latitude_deg}° {height_m} m {on}: {et0_mm}");
                    let hours = season.daylength_h(on);
                    assert!((0.0..=24.0).contains(&hours), "{latitude_deg}° {on}: {hours}");
                }
            }
        }
    }
}

#[test]
fn a_marker_stands_on_one_month_and_day_in_every_year_and_counts_on_over_new_year() {
    for profile in climates(48.0).into_iter().chain(climates(-48.0)) {
        let season = season(&profile);
        for marker in Marker::FIXED {
            let MarkerState::Seasonal(on) = season.marker(marker) else { continue };
            for year in 1900..2200 {
                let (this, next) = (on.in_year(year), on.in_year(year + 1));
                assert_eq!((this.year(), this.climate_day()), (year, on), "{marker}");
                assert!(matches!(next - this, 365 | 366), "{marker} {year}");
            }
        }
        // what is left of the warmth falls from day to day over New Year as over any other night
        for year in [1999, 2000, 2099, 2199] {
            let (eve, new_year) = (day(&format!("{year}-12-31")), day(&format!("{}-01-01", year + 1)));
            let fell_cd = season.heat_left_cd(eve) - season.heat_left_cd(new_year);
            let summer_day_cd = 40.0;
            assert!(fell_cd.abs() <= summer_day_cd, "{year}: {fell_cd}");
        }
    }
}

/// Differing and turning to the other hemisphere come to the same in either order, but for the short February.
#[test]
fn a_climate_that_differs_is_mirrored_in_the_south() {
    let said = Differences {
        nights_k: -1.5,
        summer_afternoons_k: -3.0,
        first_frost_days: Some(-14),
        ..Differences::default()
    };
    let (mut compared, mut grazing) = (0, 0);
    for place in stations() {
        let (here, there) = (differences(&place.profile, &said), differences(&mirrored(&place.profile), &said));
        assert_eq!(here.is_ok(), there.is_ok(), "{}", place.name);
        let (Ok(here), Ok(there)) = (here, there) else { continue };
        let (north, south) = (season(&here), season(&there));
        for marker in Marker::FIXED.into_iter().filter(|marker| marker.turn() != Turn::Wet) {
            let (here, there) = (north.marker(marker), south.marker(marker));
            if let (Some(here), Some(there)) = (here.day(), there.day()) {
                let off = there.days_from(here.plus(182));
                assert!(off.abs() <= 3, "{} {marker}: {here} and {there}", place.name);
                compared += 1;
            } else if here.as_str() != there.as_str() {
                // a season that just grazes its threshold may fall short of 21 days on one side of the equator
                let side = if here.day().is_some() { &north } else { &south };
                let partner = marker.season_partner().expect("only seasons can be grazed");
                let days = [marker, partner].map(|marker| side.marker(marker).day().expect("a day"));
                let length = days[0].days_from(days[1]).abs();
                assert!((21..=26).contains(&length), "{} {marker}: {here:?} and {there:?}", place.name);
                grazing += 1;
            }
        }
    }
    assert!(compared > 300 && grazing <= 4, "{compared}, {grazing}");
}

static GRID: LazyLock<Grid> = LazyLock::new(|| Grid::read(&climate_grid()).unwrap());

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, ..ProptestConfig::default() })]

    #[test]
    fn any_coordinates_are_refused_in_words_or_give_a_sound_season(
        latitude_deg in -90.0..=90.0_f64,
        longitude_deg in -180.0..=180.0_f64,
        elevation_m in proptest::option::of(-430.0..=9000.0_f64),
        nights_k in -15.0..=15.0_f64,
        days in -90_i16..=90,
        at in 0_i32..109_938,
    ) {
        match GRID.estimate(Coordinates { latitude_deg, longitude_deg, elevation_m }) {
            Err(refusal) => prop_assert!(!refusal.to_string().is_empty()),
            Ok(estimate) => {
                prop_assert_eq!(estimate.profile.check(), Ok(()));
                prop_assert_eq!(estimate.errors_with_elevation.is_none(), elevation_m.is_some());
                let on = day("1900-01-01") + at;
                check_day(&season(&estimate.profile), on);
                let said = Differences { nights_k, last_frost_days: Some(days), ..Differences::default() };
                match differences(&estimate.profile, &said) {
                    Ok(differing) => {
                        prop_assert_eq!(differing.check(), Ok(()));
                        check_day(&Season::new(&differing, SiteShift { frost_hollow: days % 2 == 0 }), on);
                    }
                    Err(faults) => prop_assert!(faults.iter().all(|fault| fault.path.starts_with('/'))),
                }
            }
        }
    }

    #[test]
    fn stated_days_move_frost_by_as_many_days(nights_k in -4.0..=4.0_f64, days in -60_i16..=60) {
        let from = swinging(48.0, 9.0, 11.0);
        let said = Differences { nights_k, first_frost_days: Some(days), ..Differences::default() };
        let to = differences(&from, &said).unwrap();
        for share in Share::ALL {
            let marker = Marker::FirstFrost(share);
            let (Some(before), Some(after)) = (season(&from).marker(marker).day(), season(&to).marker(marker).day())
            else { continue };
            prop_assert_eq!(after.days_from(before), i32::from(days), "{}", marker);
        }
    }
}

//! What estimates from coordinates promise everywhere: a profile or a named refusal, doubts where they belong.

use lammas_agronomy::climatology::{Coordinates, Doubt, Grade, Refusal};
use lammas_agronomy::marker::{Marker, MarkerState, Share};
use lammas_agronomy::origin::Origin;
use lammas_agronomy::season::Series;

use crate::coordinates::{GRID, at};
use crate::place::{day, near, season};

/// The points of each row are moved by another part of a cell, so that they lie on and between the grid's.
#[test]
fn every_half_degree_of_the_world_gives_a_profile_or_a_named_refusal() {
    let (mut told, mut sea, mut south, mut seasons) = (0, 0, 0, 0);
    for row in 0..=360 {
        let latitude_deg = (90.0 - f64::from(row) * 0.5 - f64::from(row % 4) * 0.06).max(-90.0);
        for column in 0..720 {
            let longitude_deg = f64::from(column) * 0.5 - 180.0 + f64::from(row % 3) * 0.09;
            let elevation_m = (column % 7 == 0).then(|| f64::from(column % 50) * 100.0);
            let place = Coordinates { latitude_deg, longitude_deg, elevation_m };
            match GRID.estimate(place) {
                Ok(estimate) => {
                    told += 1;
                    assert_eq!(estimate.profile.check(), Ok(()), "{place:?}");
                    assert_eq!(estimate.doubts.iter().map(Doubt::grade).max().unwrap_or(Grade::Good), estimate.grade);
                    if told % 97 == 0 {
                        seasons += 1;
                        let season = season(&estimate.profile);
                        for at in [0, 100, 200, 300] {
                            let at = lammas_agronomy::calendar::ClimateDay::around(at);
                            for series in [Series::Tmin, Series::Tmax, Series::Et0] {
                                assert!(season.curve(series, at).unwrap().is_finite(), "{place:?}");
                            }
                        }
                        let cold = season.extreme_min_c();
                        assert!(
                            cold.is_none_or(|(c, origin)| c.is_finite() && origin == Origin::Estimated),
                            "{place:?}"
                        );
                    }
                }
                Err(Refusal::NotOnLand { .. }) => sea += 1,
                Err(Refusal::TooFarSouth { .. }) => {
                    assert!(latitude_deg < -60.0, "{place:?}");
                    south += 1;
                }
                Err(refusal) => panic!("{place:?}: {refusal}"),
            }
        }
    }
    // 314,911 of the grid's 1,038,240 points are stored; the world's land is some 29 % of it, and Antarctica is left out.
    assert!((75_000..110_000).contains(&told), "{told}");
    assert!(sea > 120_000 && south > 40_000 && seasons > 700, "{sea} {south} {seasons}");
}

#[test]
fn places_of_which_nothing_is_known_are_refused_by_name() {
    let refused = |latitude_deg, longitude_deg, elevation_m| {
        GRID.estimate(Coordinates { latitude_deg, longitude_deg, elevation_m }).unwrap_err().to_string()
    };
    // the middle of the South Pacific
    assert_eq!(
        refused(-40.0, -120.0, None),
        "there is no land near latitude -40, longitude -120, and a climate can be estimated on land only: check the signs, \
         south and west are negative"
    );
    assert_eq!(refused(-75.0, 20.0, None), "latitude -75 lies south of 60° S, of which nothing is known here");
    assert_eq!(refused(91.0, 0.0, None), "latitude_deg is 91, expected -90 to 90°");
    assert_eq!(refused(45.0, f64::NAN, None), "longitude_deg is not a finite number, expected -180 to 180°");
    assert_eq!(refused(45.0, 5.0, Some(9500.0)), "elevation_m is 9500, expected -500 to 9000 m");
}

#[test]
fn doubts_stand_where_they_belong() {
    let ids = |latitude_deg, longitude_deg, elevation_m| {
        let estimate = at(latitude_deg, longitude_deg, elevation_m);
        (estimate.grade, estimate.doubts.iter().map(Doubt::id).collect::<Vec<_>>())
    };
    // flat inland country
    assert_eq!(ids(52.1, 5.18, None), (Grade::Good, vec![]));
    // an Alpine valley: the elevation makes it good
    assert_eq!(ids(46.1, 11.1, None), (Grade::Fair, vec!["elevation-not-said"]));
    assert_eq!(ids(46.1, 11.1, Some(300.0)), (Grade::Good, vec![]));
    assert_eq!(ids(46.55, 10.3, None), (Grade::Poor, vec!["elevation-not-said"]));
    assert!(ids(46.1, 11.1, Some(3500.0)).1.contains(&"far-above-or-below"));
    // Lima, on the coast of a cold current
    assert!(ids(-12.05, -77.05, Some(100.0)).1.contains(&"cool-coast"));
    // Yakutsk: warmest less coldest month is some 58 K (from memory)
    assert_eq!(ids(62.03, 129.73, Some(100.0)), (Grade::Poor, vec!["cold-not-told"]));
    // Tromso, beyond 66° N
    assert!(ids(69.65, 18.96, Some(10.0)).1.contains(&"cold-not-told"));
    // wet slopes of the Andes, where the grid rains 16,900 mm a year against 2,430 measured
    let chinchina = at(4.97, -75.6, Some(1400.0));
    assert!(chinchina.doubts.iter().any(|doubt| doubt.id() == "rain-not-believed"));
    assert_eq!((chinchina.profile.normals.rain_mm, chinchina.errors.rain_mm), (None, None));
}

#[test]
fn where_the_cold_can_not_be_told_frost_is_unknown_unless_someone_gives_it() {
    let mut estimate = at(62.03, 129.73, Some(100.0));
    assert_eq!((estimate.errors.frost_days, estimate.errors.extreme_min_k), (None, None));
    let unknown = season(&estimate.profile);
    assert_eq!(unknown.frost_chance_pct(), None);
    assert_eq!(unknown.extreme_min_c(), None);
    assert_eq!(unknown.climate().frost_free, None);
    assert_eq!(unknown.climate().short_season, None);
    let first = Marker::FirstFrost(Share::Median);
    assert_eq!(unknown.marker(first), MarkerState::Unknown);
    assert!(unknown.heat_left_cd(day("2026-06-15")) > 0.0);

    let mut frost = lammas_agronomy::profile::GivenFrost::default();
    (frost.first.median, frost.last.median) = ("09-05".parse().ok(), "05-25".parse().ok());
    estimate.profile.frost = Some(frost);
    estimate.profile.extreme_min_c = Some(-52.0);
    let given = season(&estimate.profile);
    assert_eq!(given.marker(first), MarkerState::Seasonal("09-05".parse().unwrap()));
    assert_eq!(given.extreme_min_c(), Some((-52.0, Origin::Given)));
}

#[test]
fn what_hangs_on_an_estimate_says_so_and_frost_dates_carry_their_error() {
    let first = Marker::FirstFrost(Share::Median);
    for (elevation_m, days, kelvin) in [(None, 14.0, 0.87), (Some(2.0), 12.0, 0.9)] {
        let estimate = at(52.1, 5.18, elevation_m);
        near(estimate.errors.tmean_k, kelvin, 1e-9);
        let season = season(&estimate.profile);
        assert_eq!(season.curve_origin(), Origin::Estimated);
        assert_eq!(season.marker_origin(first), Origin::Estimated);
        assert_eq!(season.marker_error_days(first), Some(days));
    }
}

/// 0.0055 K/m is the lapse of the method.
#[test]
fn a_higher_garden_is_cooler() {
    let (low, high) = (at(46.1, 11.1, Some(300.0)), at(46.1, 11.1, Some(1300.0)));
    for (low, high) in low.tmean_c.iter().zip(high.tmean_c) {
        near(low - high, 5.5, 1e-9);
    }
}

/// The coast of a cell's land counts, not the sea beside it: the date line and the meridian of Greenwich are places like
/// any other.
#[test]
fn the_edges_of_the_map_join() {
    for latitude_deg in [-16.8, 51.5, 30.0] {
        for longitude_deg in [0.0, 180.0] {
            let Ok(west) =
                GRID.estimate(Coordinates { latitude_deg, longitude_deg: longitude_deg - 1e-9, elevation_m: None })
            else {
                continue;
            };
            let longitude_deg = if longitude_deg > 90.0 { -180.0 } else { 0.0 } + 1e-9;
            let east = at(latitude_deg, longitude_deg, None);
            for (west, east) in west.tmean_c.iter().zip(east.tmean_c) {
                near(*west, east, 1e-6);
            }
        }
    }
}

//! Climates that differ from others in stated ways.

use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::marker::{Marker, Share};
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::{Differences, FrostTriple, GivenFrost, differences};
use lammas_agronomy::season::{Season, SiteShift};

use crate::place::{near, season, station, stations};
use crate::records::record_of;

const FIRST: Marker = Marker::FirstFrost(Share::Median);
const LAST: Marker = Marker::LastFrost(Share::Median);

fn on(season: &Season, marker: Marker) -> ClimateDay {
    season.marker(marker).day().unwrap()
}

#[test]
fn no_difference_leaves_the_seasons_as_they_were() {
    for place in stations() {
        let same = differences(&place.profile, &Differences::default()).unwrap();
        assert_eq!(same, place.profile, "{}", place.name);
    }
}

/// The same as a frost hollow of the site, which is worked out elsewhere.
#[test]
fn a_frost_pocket_has_the_frost_of_a_frost_hollow() {
    for place in stations() {
        // the spread is measured here, so that colder normals change no spread
        let pocket =
            differences(&place.profile, &Differences { frost_pocket: true, ..Differences::default() }).unwrap();
        let pocket = season(&pocket);
        let hollow = Season::new(&place.profile, SiteShift { frost_hollow: true });
        for marker in Marker::FIXED {
            assert_eq!(pocket.marker(marker), hollow.marker(marker), "{}: {marker}", place.name);
        }
        near(pocket.extreme_min_c().unwrap().0, hollow.extreme_min_c().unwrap().0, 1e-9);
    }
}

#[test]
fn colder_nights_and_cooler_summer_afternoons_are_what_was_said() {
    let from = station("Champion NE");
    let said = Differences { nights_k: -2.0, summer_afternoons_k: -4.0, ..Differences::default() };
    let cooler = differences(&from, &said).unwrap();
    for month in 0..12 {
        near(cooler.normals.tmin_c[month], from.normals.tmin_c[month] - 2.0, 1e-9);
    }
    near(cooler.normals.tmax_c[6], from.normals.tmax_c[6] - 4.0, 0.15);
    near(cooler.normals.tmax_c[0], from.normals.tmax_c[0], 0.15);
    let (before, after) = (season(&from), season(&cooler));
    assert!(on(&after, FIRST).days_from(on(&before, FIRST)) < -3);
    assert!(on(&after, LAST).days_from(on(&before, LAST)) > 3);
    assert!(after.heat_days().0 < before.heat_days().0 - 15.0);
    near(after.extreme_min_c().unwrap().0, before.extreme_min_c().unwrap().0 - 2.0, 1e-3);
}

#[test]
fn given_frost_dates_bend_with_colder_nights_and_still_win() {
    let mut from = station("De Bilt NL");
    let given = ClimateDay::from_month_day(11, 12).unwrap();
    from.frost = Some(GivenFrost {
        first: FrostTriple { median: Some(given), ..FrostTriple::default() },
        last: FrostTriple::default(),
    });
    let colder = differences(&from, &Differences { nights_k: -2.0, ..Differences::default() }).unwrap();
    let bare = differences(&station("De Bilt NL"), &Differences { nights_k: -2.0, ..Differences::default() }).unwrap();
    let moved = on(&season(&bare), FIRST).days_from(on(&season(&station("De Bilt NL")), FIRST));
    assert!(moved < -5);
    let after = season(&colder);
    assert_eq!(on(&after, FIRST), given.plus(moved));
    assert_eq!(after.marker_origin(FIRST), Origin::Given);
    assert_eq!(colder.frost.unwrap().last, FrostTriple::default());
}

#[test]
fn stated_days_win_over_bending_and_move_counted_dates_too() {
    let from = record_of("champion_nebraska_daily_2006_2017.csv").profile;
    let said = Differences { nights_k: -3.0, first_frost_days: Some(-21), ..Differences::default() };
    let after = season(&differences(&from, &said).unwrap());
    let before = season(&from);
    assert_eq!(on(&after, FIRST).days_from(on(&before, FIRST)), -21);
    // nothing was said of the last frost: it bends
    assert!(on(&after, LAST).days_from(on(&before, LAST)) > 3);
    assert_eq!(after.marker_origin(LAST), Origin::Given);
}

#[test]
fn walls_and_roofs_are_warm() {
    let mut from = station("De Bilt NL");
    from.normals.wind_ms = Some([4.0; 12]);
    let wall = differences(&from, &Differences { warm_wall: true, ..Differences::default() }).unwrap();
    assert!(season(&wall).frost_chance_pct() <= season(&from).frost_chance_pct());
    assert!(on(&season(&wall), LAST).days_from(on(&season(&from), LAST)) < 0);
    let roof = differences(&from, &Differences { roof: true, ..Differences::default() }).unwrap();
    near(roof.normals.wind_ms.unwrap()[3], 6.0, 1e-9);
    near(roof.normals.tmax_c[6] - from.normals.tmax_c[6], 2.0, 0.1);
    near(roof.normals.tmin_c[6], from.normals.tmin_c[6], 1e-12);
}

#[test]
fn what_cannot_be_is_named_with_its_field() {
    let said = Differences { nights_k: f64::NAN, first_frost_days: Some(-120), ..Differences::default() };
    let words: Vec<String> =
        differences(&station("De Bilt NL"), &said).unwrap_err().iter().map(ToString::to_string).collect();
    assert_eq!(
        words,
        [
            "/nights_k: nights_k is not a finite number, expected -15 to 15 K",
            "/first_frost_days: first_frost_days is -120, expected -90 to 90 days"
        ]
    );
    let said = Differences { last_frost_days: Some(7), ..Differences::default() };
    let found = differences(&station("Tunis TN"), &said).unwrap_err();
    assert_eq!(
        found[0].to_string(),
        "/last_frost_days: last_frost_days is given, but this climate has no such frost to move"
    );
}

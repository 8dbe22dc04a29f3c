//! Winter chill of real years and of normals.

use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::{Season, SiteShift};

use crate::place::{day, near, record_csv, season, station, stations};

/// De Bilt with the days of one winter as its record.
fn de_bilt_with(from: &str, to: &str) -> Season {
    let rows = lammas_agronomy::record::read_csv(&record_csv("de_bilt_daily_2010_2019.csv")).unwrap().rows;
    let mut profile = station("De Bilt NL");
    profile.observations = rows.into_iter().filter(|row| row.day >= day(from) && row.day <= day(to)).collect();
    season(&profile)
}

/// Hours and portions by chillR 0.77 from the same record with Linvill's curve: 1562 h within 6 %, 83.84 portions
/// within 5 %, 1 November 2011 to 28 February 2012.
#[test]
fn a_recorded_winter_agrees_with_another_program() {
    let season = de_bilt_with("2011-10-01", "2012-04-30");
    let chill = season.chill_between(day("2011-11-01"), day("2012-02-29"));
    near(chill.hours, 1562.0, 0.06 * 1562.0);
    near(chill.portions, 83.84, 0.05 * 83.84);
}

#[test]
fn what_is_kept_is_what_is_summed_and_the_order_of_questions_changes_nothing() {
    let days = ["2011-12-31", "2012-02-29", "2012-03-15", "2013-01-20", "2016-03-03", "2010-10-30"].map(day);
    let forward = de_bilt_with("2011-10-01", "2012-04-30");
    let backward = de_bilt_with("2011-10-01", "2012-04-30");
    let found = days.map(|on| forward.chill(on).unwrap());
    for (on, expected) in days.into_iter().zip(found).rev() {
        assert_eq!(backward.chill(on).unwrap(), expected);
        let start = forward.chill_start().unwrap();
        let from =
            [start.in_year(on.year()), start.in_year(on.year() - 1)].into_iter().find(|from| *from <= on).unwrap();
        let summed = forward.chill_between(from, on);
        near(expected.0.hours, summed.hours, 1e-9);
        near(expected.0.portions, summed.portions, 1e-9);
    }
    assert_eq!(found[0].1, Origin::Measured);
    assert_eq!(found[3].1, Origin::Computed);
}

#[test]
fn chill_is_reached_on_the_day_after_the_one_that_brought_it() {
    for season in [de_bilt_with("2011-10-01", "2012-04-30"), season(&station("De Bilt NL"))] {
        for year in [2010, 2011, 2015] {
            for wanted in [1.0, 400.0, 800.0, 1200.0] {
                let reached = season.chill_reached(wanted, year).unwrap();
                assert!(season.chill(reached).unwrap().0.hours >= wanted);
                assert!(season.chill(reached - 1).unwrap().0.hours < wanted);
            }
            assert_eq!(season.chill_reached(9000.0, year), None);
        }
    }
}

#[test]
fn chill_grows_through_the_winter_and_starts_anew_with_the_next() {
    for place in stations() {
        let season = season(&place.profile);
        let Some(start) = season.chill_start() else { continue };
        let start = start.in_year(2026);
        let mut before = season.chill(start).unwrap().0;
        assert_eq!((before.hours, before.portions), (0.0, 0.0), "{}", place.name);
        for ahead in 1..365 {
            let now = season.chill(start + ahead).unwrap().0;
            assert!(now.hours >= before.hours && now.portions >= before.portions && now.portions.is_finite());
            before = now;
        }
        assert!(before.hours <= 365.0 * 24.0);
    }
}

#[test]
fn the_equator_with_its_even_year_has_no_winter_to_count_from() {
    let even = Profile::of_temperatures(1.0, [22.0; 12], [31.0; 12]);
    let season = Season::new(&even, SiteShift::default());
    assert_eq!((season.chill_start(), season.chill(day("2026-01-01"))), (None, None));
    assert_eq!(season.chill_reached(100.0, 2026), None);
}

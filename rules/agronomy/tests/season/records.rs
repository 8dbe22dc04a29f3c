//! Profiles made of daily records.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::DailyWeather;
use lammas_agronomy::record::{Place, Record, RecordProfile, read_csv};

use crate::place::{day, near, record_csv, station, weather};

pub(crate) fn record_of(series: &str) -> RecordProfile {
    let latitude_deg = match series.split('_').next().unwrap() {
        "de" => 52.1,
        "champion" => 40.4,
        "cordoba" => -31.4,
        "tunis" => 36.8,
        "seattle" => 47.45,
        other => panic!("{other}"),
    };
    let rows = read_csv(&record_csv(series)).unwrap().rows;
    let place = Place { latitude_deg, longitude_deg: None, elevation_m: None };
    Record::new(rows).unwrap().profile(&place).unwrap()
}

/// `station_normals.csv` was made of the same records by a separate program in Python.
#[test]
fn normals_and_spread_agree_with_those_made_separately() {
    for (series, name) in [
        ("champion_nebraska_daily_2006_2017.csv", "Champion NE"),
        ("cordoba_south_daily_2010_2021.csv", "Cordoba AR"),
        ("de_bilt_daily_2010_2019.csv", "De Bilt NL"),
        ("tunis_daily_1994_2001.csv", "Tunis TN"),
    ] {
        let built = record_of(series).profile;
        let expected = station(name);
        assert_eq!(built.check(), Ok(()), "{series}");
        assert_eq!(built.origin, Origin::Measured);
        for month in 0..12 {
            near(built.normals.tmin_c[month], expected.normals.tmin_c[month], 0.051);
            near(built.normals.tmax_c[month], expected.normals.tmax_c[month], 0.051);
            near(built.tmin_sd_k.unwrap()[month], expected.tmin_sd_k.unwrap()[month], 0.101);
            // February of 28 days against the mean of sums of real Februaries
            let rain_mm = expected.normals.rain_mm.unwrap()[month];
            near(built.normals.rain_mm.unwrap()[month], rain_mm, 0.51 + 0.02 * rain_mm);
        }
    }
}

#[test]
fn a_record_says_how_complete_it_is() {
    let built = record_of("de_bilt_daily_2010_2019.csv");
    let quality = built.quality;
    assert_eq!((quality.days, quality.recorded_days, quality.gap_count), (3652, 3652, 0));
    near(quality.years, 10.0, 0.01);
    assert_eq!(quality.frost_seasons, 9);
    assert_eq!(quality.years_used, (2010..=2019).collect::<Vec<_>>());
    assert_eq!((quality.suspicions.swapped_count, quality.suspicions.stuck_count), (0, 0));
    assert!(quality.suspicions.units.is_empty());
    let sampling = quality.frost_sampling.unwrap();
    // Nine last frosts of spring from 6 April to 10 May have a standard deviation of some 11 days.
    near(sampling.last_days[1], 1.2533 * 11.0 / 3.0, 1.5);
    assert!(sampling.last_days[0] > sampling.last_days[1]);
    assert_eq!(built.profile.observations.len(), 400);
    assert_eq!(built.profile.observations[399].day, day("2019-12-31"));
}

/// Means of the lowest minima of July to June (calendar years in the south) by numpy: -16.23, 15.26 and
/// 26.19 °F. Our seasons run from warmest day to warmest day, which holds the same winters.
#[test]
fn the_extreme_minimum_is_the_mean_of_the_winters() {
    for (series, expected_f) in [
        ("champion_nebraska_daily_2006_2017.csv", -16.23),
        ("de_bilt_daily_2010_2019.csv", 15.26),
        ("cordoba_south_daily_2010_2021.csv", 26.19),
    ] {
        let extreme_c = record_of(series).profile.extreme_min_c.unwrap();
        near(extreme_c * 1.8 + 32.0, expected_f, 0.0051);
    }
}

#[test]
fn a_short_record_reckons_frost_from_its_own_normals() {
    let built = record_of("seattle_daily_2012_2015.csv");
    assert_eq!(built.quality.frost_seasons, 3);
    assert_eq!(built.profile.counted_frost, None);
    assert_eq!(built.profile.extreme_min_c, None);
    assert!(built.profile.tmin_sd_k.is_some());
}

fn year_from(first: Day, days: i32) -> Vec<DailyWeather> {
    (0..days).map(|ahead| weather(first + ahead, 4.0, 12.0)).collect()
}

const PLACE: Place = Place { latitude_deg: 45.0, longitude_deg: None, elevation_m: None };

fn words(days: Vec<DailyWeather>) -> Vec<String> {
    let faults = Record::new(days).and_then(|record| record.profile(&PLACE)).unwrap_err();
    faults.iter().map(ToString::to_string).collect()
}

#[test]
fn gaps_are_allowed_and_reported() {
    let mut days = year_from(day("2024-01-01"), 731);
    days.drain(100..110);
    days[300].tmin_c = None;
    let built = Record::new(days).unwrap().profile(&PLACE).unwrap();
    assert_eq!(built.quality.gap_count, 2);
    assert_eq!(built.quality.gaps[0].days, 10);
    assert_eq!(built.quality.gaps[0].first, day("2024-04-10"));
    assert_eq!(built.profile.normals.rain_mm, None);
    assert_eq!(built.profile.check(), Ok(()));
}

#[test]
fn too_little_of_a_record_is_refused_with_the_reason() {
    assert_eq!(words(Vec::new()), ["record spans 0 days, expected 365 or more"]);
    assert_eq!(words(year_from(day("2024-01-01"), 200)), ["record spans 200 days, expected 365 or more"]);
    let mut days = year_from(day("2023-01-01"), 365);
    days.drain(31..50);
    assert_eq!(words(days), ["month 2 has 9 days with tmin_c and tmax_c, expected 15 or more"]);
}

#[test]
fn wrong_days_are_named_by_date_and_field() {
    let mut days = year_from(day("2023-01-01"), 365);
    days[1].tmin_c = Some(20.0);
    days[2].rain_mm = Some(-1.0);
    days[3].tmax_c = Some(f64::NAN);
    days[5].day = days[4].day;
    assert_eq!(
        words(days),
        [
            "day `2023-01-02`: tmax_c (12) is below tmin_c (20)",
            "day `2023-01-03`: rain_mm is -1, expected 0 to 2000 mm",
            "day `2023-01-04`: tmax_c is not a finite number, expected -90 to 60 °C",
            "day `2023-01-05` comes twice",
        ]
    );
}

//! Frost counted from daily records, against dates and quantiles by pandas and numpy.
//!
//! Those count calendar halves (spring January to June, autumn July to December; the other way round in
//! the south) of calendar years, we count seasons from one warmest day to the next: the single dates
//! are the same, but a season joins an autumn with the spring after it, and the first spring and the last
//! autumn of a record belong to seasons that are not whole. So the quantiles are compared over the
//! dates that both have.

use chrono::{Datelike, NaiveDate};
use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::curve::Harmonics;
use lammas_agronomy::frost::Turning;
use lammas_agronomy::profile::DailyWeather;
use lammas_agronomy::record::{FrostSeason, frost_seasons, quantile_type_8, read_csv};
use serde_json::Value;

use crate::place::{json, near, record_csv, season, station};
use crate::records::record_of;

struct Yearly {
    year: i32,
    last_spring: Option<NaiveDate>,
    first_autumn: Option<NaiveDate>,
}

fn case<'a>(cases: &'a Value, quantity: &str, series: &str, threshold: f64) -> Option<&'a Value> {
    cases["cases"].as_array().unwrap().iter().find(|case| {
        case["quantity"] == quantity
            && case["inputs"]["series"]["value"].as_str().unwrap().ends_with(series)
            && (case["inputs"]["threshold"]["value"].as_f64().unwrap() - threshold).abs() < 1e-9
    })
}

fn yearly(cases: &Value, series: &str, threshold: f64) -> Vec<Yearly> {
    let case = case(cases, "frost_dates_by_year", series, threshold).unwrap();
    let date = |value: &Value| value.as_str().map(|date| date.parse().unwrap());
    case["expected"]["value"]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| Yearly {
            year: row["season"].as_i64().unwrap() as i32,
            last_spring: date(&row["last_spring"]),
            first_autumn: date(&row["first_autumn"]),
        })
        .collect()
}

fn seasons_of(series: &str) -> Vec<FrostSeason> {
    let days: Vec<DailyWeather> = read_csv(&record_csv(series)).unwrap().rows;
    let built = record_of(series);
    frost_seasons(&days, Turning::of(&Harmonics::of_months(&built.profile.normals.tmin_c)))
}

/// Type 8 is the third of the cross-check values of each quantile case.
#[test]
fn quantiles_of_type_8_agree_with_numpy() {
    let cases = json("frost.json");
    let mut compared = 0;
    for series in ["champion_nebraska_daily_2006_2017.csv", "de_bilt_daily_2010_2019.csv"] {
        for threshold in [0.0, -2.2] {
            let yearly = yearly(&cases, series, threshold);
            let day_of_year = |date: Option<NaiveDate>| date.map(|date| f64::from(date.ordinal()));
            for (name, share) in [("p10", 0.1), ("p50", 0.5), ("p90", 0.9)] {
                for last in [true, false] {
                    let quantity = if last { "last_spring_frost_day" } else { "first_autumn_frost_day" };
                    let quantity = format!("{quantity}_{name}");
                    let Some(case) = case(&cases, &quantity, series, threshold) else {
                        continue;
                    };
                    let mut days: Vec<f64> = yearly
                        .iter()
                        .filter_map(|row| day_of_year(if last { row.last_spring } else { row.first_autumn }))
                        .collect();
                    days.sort_by(f64::total_cmp);
                    let type_8 = case["cross_check"]["values"][2].as_f64().unwrap();
                    near(quantile_type_8(&days, share).unwrap(), type_8, 0.0051);
                    compared += 1;
                }
            }
        }
    }
    assert_eq!(compared, 18);
}

#[test]
fn dates_of_each_season_agree_with_the_years_in_the_north() {
    let cases = json("frost.json");
    for (series, whole_seasons) in [("champion_nebraska_daily_2006_2017.csv", 11), ("de_bilt_daily_2010_2019.csv", 9)] {
        let seasons = seasons_of(series);
        assert_eq!(seasons.len(), whole_seasons, "{series}");
        for threshold in [0.0, -2.2] {
            let years = yearly(&cases, series, threshold);
            let of = |year: i32| years.iter().find(|row| row.year == year).unwrap();
            for season in &seasons {
                let year = season.start.year();
                let (first, last) = if threshold < 0.0 {
                    (season.first_killing, season.last_killing)
                } else {
                    (season.first, season.last)
                };
                let new_year = Day::from_date(NaiveDate::from_ymd_opt(year + 1, 1, 1).unwrap());
                // an autumn or a spring without frost: ours lies in the other one
                match of(year).first_autumn {
                    Some(date) => assert_eq!(first, Some(Day::from_date(date)), "{series} {year}"),
                    None => assert!(first.is_none_or(|first| first >= new_year)),
                }
                match of(year + 1).last_spring {
                    Some(date) => assert_eq!(last, Some(Day::from_date(date)), "{series} {year}"),
                    None => assert!(last.is_none_or(|last| last < new_year)),
                }
            }
        }
    }
}

#[test]
fn dates_of_each_season_agree_with_the_years_in_the_south() {
    let cases = json("frost.json");
    let series = "cordoba_south_daily_2010_2021.csv";
    let years = yearly(&cases, series, 0.0);
    let of = |year: i32| years.iter().find(|row| row.year == year);
    let seasons = seasons_of(series);
    assert!(seasons.len() >= 11);
    for season in seasons {
        // theirs run July to June: our first frost of 2011 is the autumn of their 2010
        let year = season.start.year();
        let july = Day::from_date(NaiveDate::from_ymd_opt(year, 7, 1).unwrap());
        match of(year - 1).and_then(|row| row.first_autumn) {
            Some(date) => assert_eq!(season.first, Some(Day::from_date(date)), "{year}"),
            None if of(year - 1).is_some() => {
                assert!(season.first.is_none_or(|first| first >= july));
            }
            None => {}
        }
        if let Some(date) = of(year).and_then(|row| row.last_spring) {
            assert_eq!(season.last, Some(Day::from_date(date)), "{year}");
        }
    }
}

#[test]
fn counted_dates_are_the_quantiles_over_all_seasons() {
    let cases = json("frost.json");
    for series in ["champion_nebraska_daily_2006_2017.csv", "de_bilt_daily_2010_2019.csv"] {
        let counted = record_of(series).profile.counted_frost.unwrap();
        let years = yearly(&cases, series, 0.0);
        let day = |date: NaiveDate| f64::from(Day::from_date(date).climate_day().day_of_year());
        // the first spring and the last autumn lie in seasons that are not whole
        let mut last: Vec<f64> = years.iter().skip(1).map(|row| day(row.last_spring.unwrap())).collect();
        let mut first: Vec<f64> = years.iter().rev().skip(1).map(|row| day(row.first_autumn.unwrap())).collect();
        last.sort_by(f64::total_cmp);
        first.sort_by(f64::total_cmp);
        assert_eq!(usize::from(counted.seasons), last.len());
        for (share, (got_last, got_first)) in
            [0.1, 0.5, 0.9].into_iter().zip(counted.last.days().into_iter().zip(counted.first.days()))
        {
            for (got, days) in [(got_last, &last), (got_first, &first)] {
                let expected = quantile_type_8(days, share).unwrap().round() as i32 - 1;
                let expected = ClimateDay::around(expected);
                assert!(got.unwrap().days_from(expected).abs() <= 1, "{series} {share} {got:?} {expected}");
            }
        }
        near(counted.share_with_frost, 1.0, 1e-12);
    }
}

#[test]
fn tunis_counts_no_frost_and_knows_it() {
    let built = record_of("tunis_daily_1994_2001.csv");
    // 8 calendar years are 7 whole seasons: too few to count, so its own normals speak
    assert_eq!(built.quality.frost_seasons, 7);
    assert_eq!(built.profile.counted_frost, None);
    assert_eq!(season(&built.profile).climate().frost_free, Some(true));
}

/// Frost from the normals and the measured spread of the same record: the method's mean error is 4 to
/// 7 days on 89 stations, 90 % within 10.
#[test]
fn reckoned_frost_lies_near_the_counted_one() {
    use lammas_agronomy::marker::{Marker, Share};
    for (series, name) in
        [("champion_nebraska_daily_2006_2017.csv", "Champion NE"), ("de_bilt_daily_2010_2019.csv", "De Bilt NL")]
    {
        let counted = season(&record_of(series).profile);
        let reckoned = season(&station(name));
        for marker in [Marker::LastFrost(Share::Median), Marker::FirstFrost(Share::Median)] {
            let (a, b) = (counted.marker(marker).day().unwrap(), reckoned.marker(marker).day().unwrap());
            println!("{series} {marker}: counted {a}, reckoned {b}");
            assert!(a.days_from(b).abs() <= 10, "{series} {marker}: {a} {b}");
        }
        assert_eq!(counted.marker_error_days(Marker::LastFrost(Share::Median)), Some(0.0));
    }
}

//! A day and the days after it: forecast, curve and both.

use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::{Forecast, Profile};
use lammas_agronomy::season::{Aggregate, ForecastState, Series};

use crate::place::{day, near, season, station, weather};

/// De Bilt with a forecast of five days from 1 May 2026, minima 8, 7, 6, 5, 9 °C.
fn foretold() -> Profile {
    let mut profile = station("De Bilt NL");
    let issued = day("2026-05-01");
    let days = [8.0, 7.0, 6.0, 5.0, 9.0];
    profile.forecast = Some(Forecast {
        issued,
        days: (0..).zip(days).map(|(at, tmin_c)| weather(issued + at, tmin_c, tmin_c + 10.0)).collect(),
    });
    assert_eq!(profile.check(), Ok(()));
    profile
}

#[test]
fn a_forecast_counts_for_three_days_and_says_why_not() {
    let season = season(&foretold());
    let state = |date| season.forecast_state(day(date));
    assert_eq!(state("2026-04-30"), ForecastState::FromTheFuture);
    assert_eq!(state("2026-05-01"), ForecastState::Used);
    assert_eq!(state("2026-05-04"), ForecastState::Used);
    assert_eq!(state("2026-05-05"), ForecastState::Stale { days_old: 4 });
    assert_eq!(crate::place::season(&station("De Bilt NL")).forecast_state(day("2026-05-01")), ForecastState::None);
    let stale = season.ahead(Aggregate::Min, Series::Tmin, 1, day("2026-05-05")).unwrap();
    assert_eq!(stale.1, Origin::Computed);
}

#[test]
fn the_day_that_decides_gives_the_origin() {
    let season = season(&foretold());
    let on = day("2026-05-01");
    let ahead = |aggregate, days| season.ahead(aggregate, Series::Tmin, days, on).unwrap();
    assert_eq!(ahead(Aggregate::Min, 5), (5.0, Origin::Forecast));
    assert_eq!(ahead(Aggregate::Mean, 5), (7.0, Origin::Forecast));
    // the curve's minimum is over 5 °C in May at De Bilt: the forecast still decides
    assert_eq!(ahead(Aggregate::Min, 14), (5.0, Origin::Forecast));
    // 5 of 10 days are forecast, 5 of 11 are not half
    assert_eq!(ahead(Aggregate::Mean, 10).1, Origin::Forecast);
    assert_eq!(ahead(Aggregate::Mean, 11).1, Origin::Computed);
    // the warmest night of the next eight weeks is the curve's
    assert_eq!(ahead(Aggregate::Max, 56).1, Origin::Computed);
    assert_eq!(season.ahead(Aggregate::Min, Series::Tmin, 0, on), None);
}

#[test]
fn days_beyond_the_forecast_are_the_curves() {
    let season = season(&foretold());
    let on = day("2026-05-01");
    let (sum, _) = season.ahead(Aggregate::Sum, Series::Tmax, 7, on).unwrap();
    let curve: f64 = (5..7).map(|at| season.curve(Series::Tmax, (on + at).climate_day()).unwrap()).sum();
    near(sum, 85.0 + curve, 1e-9);
}

#[test]
fn a_frost_ahead_is_told_by_the_forecast_or_by_the_years() {
    let foretold = season(&foretold());
    let plain = season(&station("De Bilt NL"));
    let may = day("2026-05-01");
    assert_eq!(foretold.frost_ahead(5.0, 5, may), (true, Origin::Forecast));
    assert_eq!(foretold.frost_ahead(0.0, 5, may), (false, Origin::Forecast));
    // beyond the forecast the share of years decides
    assert_eq!(foretold.frost_ahead(0.0, 14, may), (true, Origin::Computed));
    assert_eq!(plain.frost_ahead(0.0, 7, may), (true, Origin::Computed));
    assert_eq!(plain.frost_ahead(0.0, 7, day("2026-07-20")), (false, Origin::Computed));
    assert_eq!(plain.frost_ahead(0.0, 7, day("2026-01-10")), (true, Origin::Computed));
    // by definition of the date: 10 % of years have a first frost up to and on it
    let first = plain
        .marker(lammas_agronomy::marker::Marker::FirstFrost(lammas_agronomy::marker::Share::Early))
        .day()
        .unwrap()
        .in_year(2026);
    let summer = day("2026-07-27");
    assert!(plain.frost_ahead(0.0, (first - summer + 1) as u16, summer).0);
    assert!(!plain.frost_ahead(0.0, (first - summer) as u16, summer).0);
}

#[test]
fn each_day_says_whether_it_is_recorded_forecast_or_the_curves() {
    let mut profile = foretold();
    profile.observations = (27..=30).map(|at| weather(day("2026-04-01") + (at - 1), 3.0, 12.0)).collect();
    let season = season(&profile);
    let told = |date, on| season.told_by(day(date), day(on));
    for (date, on, origin) in [
        ("2026-04-26", "2026-05-01", Origin::Computed),
        ("2026-04-27", "2026-05-01", Origin::Measured),
        ("2026-04-30", "2026-05-01", Origin::Measured),
        ("2026-05-01", "2026-05-01", Origin::Forecast),
        ("2026-05-05", "2026-05-01", Origin::Forecast),
        ("2026-05-06", "2026-05-01", Origin::Computed),
        // A day that was forecast and is over, but was not recorded.
        ("2026-05-01", "2026-05-02", Origin::Computed),
        // The forecast is too old for the day asked.
        ("2026-05-05", "2026-05-05", Origin::Computed),
    ] {
        assert_eq!(told(date, on), origin, "{date}, asked on {on}");
    }
    assert_eq!(season.recorded(), Some((day("2026-04-27"), day("2026-04-30"))));
    assert_eq!(season.foretold(), Some((day("2026-05-01"), day("2026-05-01"), day("2026-05-05"))));
}

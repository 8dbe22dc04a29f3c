//! What is wrong with a profile is said all at once, each with its place.

use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::{DailyWeather, Forecast, FrostTriple, GivenFrost, Humidity, Profile, Radiation};

use crate::place::{day, station, weather};

fn words(profile: &Profile) -> Vec<String> {
    profile.check().unwrap_err().iter().map(ToString::to_string).collect()
}

#[test]
fn all_faults_of_the_normals_come_at_once() {
    let mut profile = station("De Bilt NL");
    profile.latitude_deg = 91.0;
    profile.elevation_m = Some(9500.0);
    profile.normals.tmin_c[2] = f64::NAN;
    profile.normals.tmax_c[6] = 1.0;
    profile.normals.rain_mm.as_mut().unwrap()[0] = -3.0;
    profile.normals.humidity = Some(Humidity::RhMean([140.0; 12]));
    profile.normals.radiation = Some(Radiation::SolarMj([46.0; 12]));
    profile.tmin_sd_k = Some([0.0; 12]);
    profile.extreme_min_c = Some(5.0);
    profile.origin = Origin::Assumed;
    let words = words(&profile);
    for expected in [
        "/latitude_deg: latitude_deg is 91, expected -90 to 90°",
        "/elevation_m: elevation_m is 9500, expected -500 to 9000 m",
        "/origin: origin is `assumed`, expected `given`, `measured` or `estimated`",
        "/normals/tmin_c/2: tmin_c[2] is not a finite number, expected -90 to 60 °C",
        "/normals/tmax_c/6: tmax_c[6] is below tmin_c[6]",
        "/normals/rain_mm/0: rain_mm[0] is -3, expected 0 to 5000 mm",
        "/normals/humidity/rh_mean/11: rh_mean[11] is 140, expected 0 to 100 %",
        "/normals/radiation/solar_mj/4: solar_mj[4] is 46, expected 0 to 45 MJ/m²",
        "/tmin_sd_k/9: tmin_sd_k[9] is 0, expected 0.1 to 20 K",
        "/extreme_min_c: extreme_min_c (5) is above the coldest month's tmin_c (0.3)",
    ] {
        assert!(words.iter().any(|fault| fault == expected), "{expected}\nnot in {words:#?}");
    }
    assert_eq!(words.len(), 7 + 12 * 3);
}

#[test]
fn dew_points_above_the_maximum_are_named() {
    let mut profile = station("De Bilt NL");
    profile.normals.humidity = Some(Humidity::DewPoint([10.0; 12]));
    assert_eq!(
        words(&profile),
        [0, 1, 11].map(|m| format!("/normals/humidity/dew_point/{m}: tmax_c[{m}] is below dew_point[{m}]"))
    );
}

#[test]
fn frost_dates_out_of_order_are_named() {
    let read = |text: &str| Some(text.parse().unwrap());
    let mut profile = station("De Bilt NL");
    profile.frost = Some(GivenFrost {
        last: FrostTriple { early: read("04-20"), median: read("04-01"), late: read("05-01") },
        first: FrostTriple { early: read("12-20"), median: read("01-05"), late: read("01-25") },
    });
    assert_eq!(words(&profile), ["/frost/last/median: median (04-01) lies before early (04-20)"]);
    profile.frost = Some(GivenFrost {
        last: FrostTriple { early: read("01-01"), median: read("05-01"), late: read("08-01") },
        first: FrostTriple::default(),
    });
    assert_eq!(words(&profile), ["/frost/last/late: late (08-01) lies more than half a year after early (01-01)"]);
}

#[test]
fn weather_out_of_order_doubled_or_too_much_is_named() {
    let mut profile = station("De Bilt NL");
    let first = day("2026-05-01");
    profile.observations = vec![weather(first + 1, 3.0, 9.0), weather(first, 9.0, 3.0), weather(first + 1, 3.0, 9.0)];
    assert_eq!(
        words(&profile),
        [
            "/observations/1/day: day `2026-05-01` follows `2026-05-02`, expected them in order",
            "/observations/1/tmax_c: tmax_c (3) is below tmin_c (9)",
            "/observations/2/day: day `2026-05-02` comes twice",
        ]
    );
    profile.observations = (0..401).map(|at| DailyWeather::unknown(first + at)).collect();
    assert_eq!(words(&profile), ["/observations: 401 days, expected at most 400"]);
}

#[test]
fn a_forecast_has_days_and_they_follow_its_issue() {
    let mut profile = station("De Bilt NL");
    let issued = day("2026-05-01");
    profile.forecast = Some(Forecast { issued, days: Vec::new() });
    assert_eq!(words(&profile), ["/forecast/days: 0 days, expected 1 to 16"]);
    let days = vec![weather(issued - 1, 3.0, 9.0), weather(issued + 31, 3.0, 9.0)];
    profile.forecast = Some(Forecast { issued, days });
    assert_eq!(
        words(&profile),
        [
            "/forecast/days/0/day: day `2026-04-30` lies before the day of issue `2026-05-01`",
            "/forecast/days/1/day: day `2026-06-01` lies more than 30 days after the day of issue `2026-05-01`",
        ]
    );
}

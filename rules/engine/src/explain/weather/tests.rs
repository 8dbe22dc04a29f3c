use lammas_agronomy::profile::{DailyWeather, Forecast, Profile};
use lammas_agronomy::season::SiteShift;

use super::*;
use crate::question::registered_weather::RegisteredWeather;

fn day(text: &str) -> Day {
    Day::from_date(text.parse().expect("a date"))
}

fn weather(day: Day, tmax_c: f64) -> DailyWeather {
    let mut weather = DailyWeather::unknown(day);
    (weather.tmin_c, weather.tmax_c) = (Some(8.0), Some(tmax_c));
    weather
}

/// Three observed days to 14 September, and a forecast of two issued on the 15th.
fn told() -> Climate {
    let mut profile = Profile::of_temperatures(45.0, [5.0; 12], [15.0; 12]);
    profile.observations = (0..3).map(|at| weather(day("2026-09-12") + at, 20.0)).collect();
    let issued = day("2026-09-15");
    profile.forecast = Some(Forecast { issued, days: vec![weather(issued, 31.0), weather(issued + 1, 32.0)] });
    Climate::new(None, profile, SiteShift::default())
}

#[test]
fn a_forecast_of_the_caller_counts_from_its_issue_to_three_days_later() {
    let climate = told();
    for (date, why) in [
        ("2026-09-14", Some(("not used: issued after the day asked", "después del día"))),
        ("2026-09-15", None),
        ("2026-09-18", None),
        ("2026-09-19", Some(("not used: issued more than 3 days before the day asked", "más de 3 días antes"))),
    ] {
        let seen = shown(&climate, day(date), "en").expect("there is weather");
        assert_eq!((seen.used, seen.why), (why.is_none(), why.map(|(english, _)| english)), "{date}");
        assert_eq!(forecast(&climate, day(date), "en"), Some(why.map_or("used", |(english, _)| english)), "{date}");
        let note = note(&climate, day(date), "es");
        match why {
            None => assert!(note.is_none(), "{date}"),
            Some((_, spanish)) => {
                let text = note.expect("a note").text;
                assert!(text.contains(spanish) && text.contains("15 de septiembre de 2026"), "{date}: {}", &*text);
            }
        }
    }
}

#[test]
fn the_days_around_say_what_tells_them() {
    let runs = days(&told(), day("2026-09-15"));
    let run = |from: &str, to: &str, origin| DaysShown {
        from: from.parse().expect("a date"),
        to: to.parse().expect("a date"),
        origin,
    };
    assert_eq!(
        runs,
        [
            run("2026-09-01", "2026-09-11", "computed"),
            run("2026-09-12", "2026-09-14", "measured"),
            run("2026-09-15", "2026-09-16", "forecast"),
            run("2026-09-17", "2026-09-30", "computed"),
        ]
    );
}

#[test]
fn weather_that_was_kept_is_named_by_its_hash_and_issue_also_when_it_is_too_old() {
    let plain = Profile::of_temperatures(45.0, [5.0; 12], [15.0; 12]);
    let kept = |state| {
        let issued_on = "2026-09-13".parse().expect("a date");
        let span = WeatherSpan { from: issued_on, to: issued_on, days: 1 };
        let weather = RegisteredWeather {
            sha256: "ab".repeat(32),
            issued: "2026-09-13T06:00:00Z".parse().expect("a moment"),
            issued_on,
            observed: None,
            forecast: Some(span),
            state,
        };
        Climate::new(None, plain.clone(), SiteShift::default()).with_weather(weather)
    };
    let old = kept(WeatherState::TooOld);
    let seen = serde_json::to_value(shown(&old, day("2026-09-15"), "en")).expect("JSON");
    assert_eq!(
        seen,
        serde_json::json!({
            "from": "registered", "sha256": "ab".repeat(32), "issued": "2026-09-13T06:00:00Z", "issued_on": "2026-09-13",
            "forecast": {"from": "2026-09-13", "to": "2026-09-13", "days": 1}, "used": false,
            "why": "not used: issued more than 36 hours before the moment asked about"
        })
    );
    assert_eq!(
        not_used(&old, day("2026-09-15"), "en").as_deref(),
        Some(
            "It was issued on 13 September 2026, more than 36 hours before the moment asked about, and so counts as not there. \
             Heat, frost and rain to come are taken as usual for these days: look at a forecast before you start."
        )
    );
    assert_eq!(not_used(&kept(WeatherState::Used), day("2026-09-15"), "en"), None);
    assert!(shown(&Climate::new(None, plain, SiteShift::default()), day("2026-09-15"), "en").is_none());
}

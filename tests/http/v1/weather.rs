//! Weather in a folder: whoever names a climate by its id is told of the heat wave.

use std::fs;
use std::path::PathBuf;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use chrono::{DateTime, SecondsFormat, Utc};
use lammas_tests::server::{Server, small};
use serde_json::{Value, json};

const ROSE: &str = "/v1/advice?climate=hot-dry-valley&plant=rose&date=2026-09-15&detail=full";
const SEASON: &str = "/v1/season?climate=hot-dry-valley&date=2026-09-15";

/// A server that watches a folder of its own.
struct Watching {
    server: Server,
    folder: PathBuf,
}

impl Watching {
    fn start(files: &[(&str, &Value)]) -> Self {
        static MADE: AtomicUsize = AtomicUsize::new(0);
        let number = MADE.fetch_add(1, Ordering::Relaxed);
        let folder = std::env::temp_dir().join(format!("lammas-watched-{}-{number}", std::process::id()));
        fs::create_dir(&folder).expect("a folder");
        for (name, weather) in files {
            fs::write(folder.join(name), weather.to_string()).expect("written");
        }
        let mut settings = small();
        settings.weather.folder = Some(folder.clone());
        Self { server: Server::with(settings, |_| {}), folder }
    }

    fn write(&self, name: &str, text: &str) {
        // As `lammas weather --into` does it: never half a file.
        let hidden = self.folder.join(format!(".{name}"));
        fs::write(&hidden, text).expect("written");
        fs::rename(hidden, self.folder.join(name)).expect("renamed");
    }

    /// Asks until the answer is as it should be; the folder is looked at every second.
    fn until(&self, path: &str, is_there: impl Fn(&Value) -> bool) -> Value {
        let begun = Instant::now();
        loop {
            let answer = self.server.get(path).ok();
            if is_there(&answer) {
                return answer;
            }
            assert!(begun.elapsed() < Duration::from_secs(20), "it never came: {}", answer["climate"]);
            std::thread::sleep(Duration::from_millis(100));
        }
    }
}

impl Drop for Watching {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.folder);
    }
}

fn day(date: &str, tmax_c: f64) -> Value {
    json!({"date": date, "tmin_c": 19, "tmax_c": tmax_c, "rain_mm": 4})
}

/// 41 °C from the 16th on, issued at 6:00 on the 15th at the place; seven of the eight days before are observed.
fn heat_wave() -> Value {
    let observed: Vec<Value> =
        (7..=14).filter(|at| *at != 9).map(|at| day(&format!("2026-09-{at:02}"), 38.0)).collect();
    json!({"climate": "hot-dry-valley", "issued": "2026-09-15T06:00:00-07:00", "observed": observed,
        "forecast": [day("2026-09-15", 39.0), day("2026-09-16", 41.0), day("2026-09-17", 41.0), day("2026-09-18", 37.0)]})
}

fn has(answer: &Value, list: &str, id: &str) -> bool {
    answer[list].as_array().expect("a list").iter().any(|entry| entry["id"] == id)
}

fn weather_sha(answer: &Value) -> Option<String> {
    answer["climate"]["weather"]["sha256"].as_str().map(str::to_owned)
}

/// Every fact of an answer, by its name.
fn facts<'a>(answer: &'a Value, name: &str) -> Vec<&'a Value> {
    fn walk<'a>(value: &'a Value, name: &str, found: &mut Vec<&'a Value>) {
        match value {
            Value::Object(members) => {
                if members.get("name").is_some_and(|named| named == name) && members.contains_key("origin") {
                    found.push(value);
                }
                members.values().for_each(|value| walk(value, name, found));
            }
            Value::Array(list) => list.iter().for_each(|value| walk(value, name, found)),
            _ => {}
        }
    }
    let mut found = Vec::new();
    walk(answer, name, &mut found);
    found
}

#[test]
fn a_heat_wave_that_comes_into_the_folder_is_told_and_when_its_file_is_gone_all_is_as_before() {
    let watching = Watching::start(&[]);
    let before = watching.server.get(ROSE);
    assert_eq!(before.ok()["climate"]["weather"], Value::Null);
    assert!(!has(&before.ok(), "tasks", "rose.shade-heat"));

    watching.write("wave.json", &heat_wave().to_string());
    let hot = watching.until(ROSE, |answer| weather_sha(answer).is_some());
    assert!(has(&hot, "tasks", "rose.shade-heat"), "{}", hot["tasks"]);
    assert_eq!(hot["valid_until"], "2026-09-15");
    let weather = &hot["climate"]["weather"];
    assert_eq!(
        (&weather["from"], &weather["used"], &weather["issued"], &weather["issued_on"]),
        (&json!("registered"), &json!(true), &json!("2026-09-15T13:00:00Z"), &json!("2026-09-15"))
    );
    assert_eq!(weather["observed"], json!({"from": "2026-09-07", "to": "2026-09-14", "days": 7}));
    assert_eq!(weather["forecast"], json!({"from": "2026-09-15", "to": "2026-09-18", "days": 4}));
    let before = before.ok();
    for part in ["/climate/sha256", "/digest", "/asked/climate"] {
        assert_ne!(hot.pointer(part), before.pointer(part), "{part}");
    }
    assert_eq!(hot["asked"]["climate"], hot["climate"]["sha256"]);

    // The posted question is the same one, and so is a diagnosis's climate.
    let question = json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose"},
        "condition": {"signs": [{"sign": "scorched-petals"}]}});
    for call in ["/v1/advice", "/v1/diagnosis"] {
        let answer = watching.server.post(call, &question).ok();
        assert_eq!(answer["climate"], hot["climate"], "{call}");
    }

    let other = heat_wave().to_string().replace("41.0", "42.5");
    watching.write("wave.json", &other);
    let hotter = watching.until(ROSE, |answer| weather_sha(answer) != weather_sha(&hot));
    assert_ne!(hotter["digest"], hot["digest"], "new weather, new answer");
    fs::remove_file(watching.folder.join("wave.json")).expect("gone");
    assert_eq!(watching.until(ROSE, |answer| weather_sha(answer).is_none()), before);
}

#[test]
fn what_was_measured_and_what_is_forecast_is_told_as_such() {
    let watching = Watching::start(&[("wave.json", &heat_wave())]);
    let answer = watching.server.get(&format!("{ROSE}&traits=flowering:repeat")).ok();
    // Six of the seven days before are there, more than 80 %: all of them at 38 °C.
    let mean = facts(&answer, "mean(tmax, 7 days)");
    assert!(!mean.is_empty());
    for fact in mean {
        assert_eq!((&fact["value"], &fact["origin"]), (&json!(38.0), &json!("measured")));
    }
    let ahead = facts(&answer, "ahead(max, tmax, 3 days)");
    assert!(!ahead.is_empty());
    for fact in ahead {
        assert_eq!((&fact["value"], &fact["origin"]), (&json!(41.0), &json!("forecast")));
    }
}

#[test]
fn the_rain_of_the_last_week_is_measured_and_holds_the_soak() {
    let mut weather = heat_wave();
    weather["forecast"] = json!([]);
    for day in weather["observed"].as_array_mut().expect("days") {
        day["tmax_c"] = json!(29);
    }
    let watching = Watching::start(&[("rain.json", &weather)]);
    let question = json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose", "in_leaf": true},
        "site": {"planting": "ground"}, "detail": "full"});
    let answer = watching.server.post("/v1/advice", &question).ok();
    // 4 mm on six of the seven days before stand for 28 mm in seven; the soak waits above 25 mm.
    assert!(has(&answer, "held", "rose.deep-soak"), "{}", answer["held"]);
    let rain = facts(&answer, "sum(rain, 7 days)");
    assert!(!rain.is_empty());
    for fact in rain {
        assert_eq!((&fact["value"], &fact["origin"]), (&json!(28.0), &json!("measured")));
    }
}

#[test]
fn a_frost_that_is_forecast_is_a_fact() {
    let frost = json!({"climate": "cold-inland", "issued": "2026-09-15T12:00:00Z", "forecast": [
        {"date": "2026-09-15", "tmin_c": 3, "tmax_c": 14}, {"date": "2026-09-16", "tmin_c": -1, "tmax_c": 12}]});
    let watching = Watching::start(&[("frost.json", &frost)]);
    let path = "/v1/advice?climate=cold-inland&plant=lawn&date=2026-09-15&detail=full";
    let told =
        facts(&watching.server.get(path).ok(), "frost_ahead(0 °C, 2 days)").into_iter().cloned().collect::<Vec<_>>();
    assert!(!told.is_empty());
    assert!(told.iter().all(|fact| fact["origin"] == "forecast" && fact["value"] == true), "{told:?}");
}

#[test]
fn weather_counts_for_36_hours_to_noon_of_the_day_asked_and_then_the_answer_says_so() {
    let watching = Watching::start(&[("wave.json", &heat_wave())]);
    let ask = |date: &str, language: &str| {
        let path = format!("/v1/advice?climate=hot-dry-valley&plant=rose&date={date}&language={language}");
        (watching.server.get(&path).ok(), {
            let path = format!("/v1/season?climate=hot-dry-valley&date={date}&language={language}");
            watching.server.get(&path).ok()
        })
    };
    let plain = Server::start().get("/v1/season?climate=hot-dry-valley&date=2026-09-15").ok();
    // 6:00 on the 15th to noon on the 16th are 30 hours, to noon on the 17th 54.
    for (date, used) in [("2026-09-14", false), ("2026-09-15", true), ("2026-09-16", true), ("2026-09-17", false)] {
        for (language, words) in [("en", "counts as not there"), ("es", "cuenta como si no lo hubiera")] {
            let (advice, season) = ask(date, language);
            let note =
                advice["notes"].as_array().expect("notes").iter().find(|note| note["id"] == "climate.weather-not-used");
            assert_eq!(advice["climate"]["weather"]["used"], used, "{date}");
            assert_eq!(season["weather"], advice["climate"]["weather"], "{date}");
            assert_eq!(season["weather_note"].is_string(), !used, "{date}");
            assert_eq!(note.map(|note| &note["text"]), (!used).then_some(&season["weather_note"]), "{date}");
            assert!(
                used || season["weather_note"].as_str().is_some_and(|note| note.contains(words)),
                "{date} {season}"
            );
            assert_eq!(season["climate_sha256"] == plain["climate_sha256"], !used, "none of its days counts: {date}");
        }
    }
    let why = |date: &str| ask(date, "en").1["weather"]["why"].clone();
    assert_eq!(why("2026-09-14"), "not used: issued after the day asked");
    assert_eq!(why("2026-09-17"), "not used: issued more than 36 hours before the moment asked about");
}

#[test]
fn a_season_says_which_days_are_observed_forecast_and_the_normals() {
    let watching = Watching::start(&[("wave.json", &heat_wave())]);
    let run = |from: &str, to: &str, origin: &str| json!({"from": from, "to": to, "origin": origin});
    let season = watching.server.get(SEASON).ok();
    assert_eq!(
        season["days"],
        json!([
            run("2026-09-01", "2026-09-06", "computed"),
            run("2026-09-07", "2026-09-08", "measured"),
            run("2026-09-09", "2026-09-09", "computed"),
            run("2026-09-10", "2026-09-14", "measured"),
            run("2026-09-15", "2026-09-18", "forecast"),
            run("2026-09-19", "2026-09-30", "computed"),
        ])
    );
    assert_eq!(watching.server.get(SEASON).header("etag"), watching.server.get(SEASON).header("etag"));
    let bare = Server::start().get(SEASON);
    assert_eq!(bare.ok()["days"], json!([run("2026-09-01", "2026-09-30", "computed")]));
    assert_ne!(bare.header("etag"), watching.server.get(SEASON).header("etag"));
}

#[test]
fn a_caller_who_brings_weather_gets_that_alone_and_is_told_when_it_does_not_count() {
    let watching = Watching::start(&[("wave.json", &heat_wave())]);
    let ask = |date: &str, language: &str| {
        let climate = json!({"id": "hot-dry-valley", "forecast": {"issued": "2026-09-15", "days": [
            {"date": "2026-09-15", "tmin_c": 16, "tmax_c": 30}]}});
        let season = json!({"climate": climate.clone(), "date": date, "language": language});
        let question = json!({"climate": climate, "date": date, "language": language, "plant": {"type": "rose"}});
        (watching.server.post("/v1/advice", &question).ok(), watching.server.post("/v1/season", &season).ok())
    };
    let (advice, season) = ask("2026-09-15", "en");
    let weather = json!({"from": "request", "issued_on": "2026-09-15",
        "forecast": {"from": "2026-09-15", "to": "2026-09-15", "days": 1}, "used": true});
    assert_eq!((&advice["climate"]["weather"], &season["weather"]), (&weather, &weather));
    assert!(!has(&advice, "tasks", "rose.shade-heat"), "30 °C, whatever is kept for the climate");
    for (date, language, words) in [
        (
            "2026-09-14",
            "en",
            "It was issued on 15 September 2026, after the day asked about, and so counts as not there.",
        ),
        ("2026-09-14", "es", "Se emitió el 15 de septiembre de 2026, después del día por el que se pregunta"),
        ("2026-09-19", "en", "It was issued on 15 September 2026, more than 3 days before the day asked about"),
        (
            "2026-09-19",
            "es",
            "Se emitió el 15 de septiembre de 2026, más de 3 días antes del día por el que se pregunta",
        ),
    ] {
        let (advice, season) = ask(date, language);
        let told = season["weather_note"].as_str().expect("a note");
        assert!(told.starts_with(words), "{told}");
        let note =
            advice["notes"].as_array().expect("notes").iter().find(|note| note["id"] == "climate.weather-not-used");
        assert_eq!(note.map(|note| &note["text"]), Some(&season["weather_note"]));
        assert_eq!(advice["climate"]["weather"]["used"], false);
    }
}

#[test]
fn an_answer_for_today_is_not_kept_past_the_36_hours_of_its_weather() {
    let issued = |minutes: i64| {
        let now: DateTime<Utc> = std::time::SystemTime::now().into();
        let issued = now - chrono::Duration::minutes(36 * 60 - minutes);
        json!({"climate": "mild-maritime", "issued": issued.to_rfc3339_opts(SecondsFormat::Secs, true),
            "observed": [{"date": (issued - chrono::Duration::days(3)).format("%Y-%m-%d").to_string(), "tmin_c": 5, "tmax_c": 9}]})
    };
    for call in ["/v1/advice?climate=mild-maritime&plant=rose", "/v1/season?climate=mild-maritime"] {
        let seconds = |minutes: i64| {
            let watching = Watching::start(&[("w.json", &issued(minutes))]);
            let answer = watching.server.get(call);
            let body = answer.ok();
            let weather =
                [&body["weather"], &body["climate"]["weather"]].into_iter().find(|weather| weather.is_object());
            let used = weather.expect("weather")["used"].clone();
            let kept = answer.header("cache-control").strip_prefix("public, max-age=").and_then(|age| age.parse().ok());
            (used, kept.expect("seconds"))
        };
        let (used, kept): (Value, u64) = seconds(10);
        assert!(used == true && kept <= 600, "{call}: {kept} s");
        assert_eq!(seconds(-1).0, false, "{call}: its time is over");
    }
}

#[test]
fn a_bad_file_is_passed_over_and_a_folder_that_is_not_there_stops_the_start() {
    let watching = Watching::start(&[("bad.json", &json!({"climate": "hot-dry-valley"})), ("wave.json", &heat_wave())]);
    let hot = watching.server.get(ROSE).ok();
    assert!(weather_sha(&hot).is_some());
    watching.write("wave.json", "{");
    watching
        .write("more.json", &heat_wave().to_string().replace("hot-dry-valley", "cold-inland").replace("-07:00", "Z"));
    let more = "/v1/season?climate=cold-inland&date=2026-09-15";
    watching.until(more, |season| season["weather"].is_object());
    assert_eq!(watching.server.get(ROSE).ok(), hot, "the good older one stays");

    let mut settings = small();
    settings.weather.folder = Some(watching.folder.join("none"));
    let refused = lammas::startup::bind(settings).err().expect("it does not start");
    assert!(refused.to_string().contains("cannot read the folder of weather"), "{refused}");
}

//! Weather into a folder, and from the folder into advice.

use std::fs;
use std::path::PathBuf;

use chrono::{DateTime, Duration, SecondsFormat, Utc};
use serde_json::{Value, json};

use super::{run, run_with};

/// A folder of its own, gone when the test is over.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("lammas-cli-{name}-{}", std::process::id()));
        fs::create_dir(&path).expect("a folder");
        Self(path)
    }

    fn path(&self) -> &str {
        self.0.to_str().expect("text")
    }

    fn files(&self) -> Vec<String> {
        let entries = fs::read_dir(&self.0).expect("it is there");
        entries.map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned()).collect()
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

fn valley(issued: &str, tmax_c: f64) -> String {
    let date = &issued[..10];
    json!({"climate": "mild-maritime", "issued": issued, "forecast": [{"date": date, "tmin_c": 12, "tmax_c": tmax_c}]})
        .to_string()
}

#[test]
fn weather_is_shown_for_people_and_for_programs() {
    let text = r#"{"climate": "hot-dry-valley", "issued": "2026-09-15T06:00:00-07:00",
        "observed": [{"date": "2026-09-13", "tmin_c": 18, "tmax_c": 35}, {"date": "2026-09-14", "tmin_c": 18, "tmax_c": 36}],
        "forecast": [{"date": "2026-09-15", "tmin_c": 20, "tmax_c": 39}]}"#;
    let (code, out, error) = run_with(&["weather"], text);
    assert_eq!((code, error.as_str()), (Some(0), ""));
    for line in [
        "Weather of hot-dry-valley",
        "  issued        2026-09-15T13:00:00Z (2026-09-15 there)",
        "  counts until  2026-09-17T01:00:00Z",
        "  observed      2 days, 2026-09-13 to 2026-09-14",
        "  forecast      1 day, 2026-09-15",
    ] {
        assert!(out.lines().any(|found| found == line), "no `{line}` in\n{out}");
    }
    let (code, json, _) = run_with(&["weather", "-", "--json"], text);
    assert_eq!(code, Some(0));
    let read: Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(read["observed"], json!({"from": "2026-09-13", "to": "2026-09-14", "days": 2}));
    assert!(out.contains(read["sha256"].as_str().expect("a hash")), "{out}");
    assert!(
        run_with(&["weather", "--language", "es"], text).1.contains("observado     2 días, 2026-09-13 a 2026-09-14")
    );
}

#[test]
fn bad_weather_is_named_field_by_field_and_ends_with_2() {
    let text = r#"{"climate": "hot-dry-vally", "issued": "2026-09-15T06:00:00Z", "forecast": [{"date": "2026-09-15", "tmin_c": 20, "tmax_c": 39}]}"#;
    let (code, out, error) = run_with(&["weather"], text);
    assert_eq!((code, out.as_str()), (Some(2), ""));
    assert!(error.contains("/climate: unknown climate `hot-dry-vally`, did you mean `hot-dry-valley`?"), "{error}");
    let (code, _, error) = run_with(&["weather"], r#"{"climate": "hot-dry-valley", "forecast": [{"date": "soon"}]}"#);
    assert!(
        code == Some(2) && error.contains("/issued: ") && error.contains("/forecast/0/date: expected a date"),
        "{error}"
    );
    let (code, _, error) = run(&["weather", "/no/such/file"]);
    assert!(code == Some(2) && error.contains("cannot read `/no/such/file`"), "{error}");
    let (code, _, error) = run_with(&["weather", "--into", "/no/such/folder"], &valley("2026-07-01T06:00:00Z", 25.0));
    assert!(code == Some(2) && error.contains("cannot write into `/no/such/folder`"), "{error}");
    let (code, _, error) = run(&["serve", "--listen", "127.0.0.1:0", "--weather", "/no/such/folder"]);
    assert!(code == Some(2) && error.contains("cannot read the folder of weather `/no/such/folder`"), "{error}");
}

#[test]
fn the_newest_issue_lies_in_the_folder_under_its_climate_and_hash() {
    let folder = Folder::new("newest");
    let put = |text: &str| {
        let (code, out, error) = run_with(&["weather", "-", "--into", folder.path(), "--json"], text);
        assert_eq!(error, "");
        (code, serde_json::from_str::<Value>(&out).expect("JSON"))
    };
    let now: DateTime<Utc> = std::time::SystemTime::now().into();
    let hours_ago = |hours| (now - Duration::hours(hours)).to_rfc3339_opts(SecondsFormat::Secs, true);
    let (code, first) = put(&valley(&hours_ago(30), 25.0));
    assert_eq!((code, &first["put"]), (Some(0), &json!("new")));
    let (code, newer) = put(&valley(&hours_ago(3), 31.0));
    assert_eq!((code, &newer["put"]), (Some(0), &json!("new")));
    let name = format!("mild-maritime.{}.json", newer["sha256"].as_str().expect("a hash"));
    assert_eq!(folder.files(), std::slice::from_ref(&name));
    let (code, same) = put(&valley(&hours_ago(3), 31.0));
    assert_eq!((code, &same["put"]), (Some(0), &json!("same")));
    let (code, older) = put(&valley(&hours_ago(30), 25.0));
    assert_eq!((code, &older["put"]), (Some(1), &json!("older")));
    assert_eq!(folder.files(), [name]);

    let (code, out, error) = run_with(&["weather", "-", "--into", folder.path()], &valley(&hours_ago(-48), 25.0));
    assert!((code, out.as_str()) == (Some(2), "") && error.contains("lies in the future"), "{error}");
}

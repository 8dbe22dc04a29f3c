use std::sync::atomic::{AtomicUsize, Ordering};

use super::*;
use crate::sets::embedded;

/// A folder of its own, gone when the test is over.
pub(in crate::weather) struct Scratch(pub(in crate::weather) PathBuf);

impl Scratch {
    pub(in crate::weather) fn new() -> Self {
        static MADE: AtomicUsize = AtomicUsize::new(0);
        let number = MADE.fetch_add(1, Ordering::Relaxed);
        let path = std::env::temp_dir().join(format!("lammas-weather-{}-{number}", std::process::id()));
        fs::create_dir(&path).expect("a folder");
        Self(path)
    }

    pub(in crate::weather) fn names(&self) -> Vec<String> {
        let entries = fs::read_dir(&self.0).expect("it is there");
        let mut names: Vec<_> =
            entries.map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned()).collect();
        names.sort();
        names
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

pub(in crate::weather) fn text(climate: &str, issued: &str, tmax_c: f64) -> String {
    let date = &issued[..10];
    format!(
        r#"{{"climate": "{climate}", "issued": "{issued}", "forecast": [{{"date": "{date}", "tmin_c": 9, "tmax_c": {tmax_c}}}]}}"#
    )
}

fn weather(issued: &str, tmax_c: f64) -> Weather {
    let set = embedded::set().expect("it loads");
    sent::read(text("mild-maritime", issued, tmax_c).as_bytes(), &set).expect("weather")
}

fn put(weather: &Weather, folder: &Scratch) -> Put {
    let now = "2026-07-02T12:00:00Z".parse().expect("a moment");
    super::put(weather, &folder.0, &embedded::set().expect("it loads"), now).expect("it is written")
}

#[test]
fn the_newest_issue_of_a_climate_stays_and_nothing_half_written_is_left() {
    let folder = Scratch::new();
    let first = weather("2026-07-01T06:00:00Z", 25.0);
    let file = folder.0.join(name(&first));
    assert_eq!(put(&first, &folder), Put::New(file.clone(), 0));
    assert_eq!(put(&first, &folder), Put::Same(file));
    assert_eq!(read(&folder.0.join(name(&first)), &embedded::set().expect("it loads")).expect("weather"), first);

    let newer = weather("2026-07-02T06:00:00Z", 30.0);
    assert_eq!(put(&newer, &folder), Put::New(folder.0.join(name(&newer)), 1));
    assert_eq!(folder.names(), [name(&newer)]);
    assert_eq!(put(&first, &folder), Put::Older(folder.0.join(name(&newer)), newer.issued));
    // A correction of the same issue takes its place.
    let corrected = weather("2026-07-02T06:00:00Z", 31.0);
    assert_eq!(put(&corrected, &folder), Put::New(folder.0.join(name(&corrected)), 1));
    assert_eq!(folder.names(), [name(&corrected)]);
}

#[test]
fn files_that_it_did_not_put_there_are_left_alone() {
    let folder = Scratch::new();
    let others = [
        ("by-hand.json", text("mild-maritime", "2026-07-01T00:00:00Z", 20.0)),
        ("bad.json", "{".to_owned()),
        ("notes.txt", "water the roses".to_owned()),
        ("elsewhere.json", text("cold-inland", "2026-07-02T09:00:00Z", 20.0)),
        ("far.json", text("mild-maritime", "2099-01-01T00:00:00Z", 20.0)),
    ];
    for (name, text) in &others {
        fs::write(folder.0.join(name), text).expect("written");
    }
    assert!(matches!(put(&weather("2026-07-01T06:00:00Z", 25.0), &folder), Put::New(_, 0)));
    assert_eq!(folder.names().len(), others.len() + 1);
    fs::write(folder.0.join("by-hand.json"), text("mild-maritime", "2026-07-02T00:00:00Z", 20.0)).expect("written");
    assert!(matches!(put(&weather("2026-07-01T07:00:00Z", 25.0), &folder), Put::Older(..)));
}

#[test]
fn an_issue_in_the_future_is_not_put_and_an_absent_folder_is_an_error() {
    let folder = Scratch::new();
    assert_eq!(put(&weather("2026-07-02T13:00:01Z", 25.0), &folder), Put::FromTheFuture);
    assert_eq!(folder.names(), Vec::<String>::new());
    let (set, now) = (embedded::set().expect("it loads"), "2026-07-02T12:00:00Z".parse().expect("a moment"));
    assert!(super::put(&weather("2026-07-01T06:00:00Z", 25.0), &folder.0.join("no"), &set, now).is_err());
}

#[test]
fn a_folder_or_a_pipe_is_no_file_of_weather() {
    let folder = Scratch::new();
    let refused = read(&folder.0, &embedded::set().expect("it loads")).expect_err("it is a folder");
    assert_eq!(refused.to_string(), "it is not a file");
}

use super::super::folder::tests::{Scratch, text};
use super::*;
use crate::sets::embedded;
use crate::v1::question::today::Clock;
use crate::weather::age::Asked;

const CLIMATE: &str = "mild-maritime";
const ISSUED: &str = "2026-07-01T06:00:00Z";

fn watch(folder: &Scratch) -> Watch {
    Watch::new(folder.0.clone(), embedded::set().expect("it loads"))
}

/// The highest temperature that is forecast on the day of issue.
fn warmest(board: &Board) -> Option<f64> {
    let asked =
        Asked::of("2026-07-01".parse().ok(), &Clock::default(), "2026-07-01T12:00:00Z".parse().expect("a moment"));
    board.find(CLIMATE, asked)?.0.profile.forecast.as_ref()?.days.first()?.tmax_c
}

fn seen(watch: &mut Watch) -> Option<Option<f64>> {
    watch.look().expect("it can be read").map(|board| warmest(&board))
}

#[test]
fn a_file_that_comes_changes_and_goes_is_seen_each_time_and_only_then() {
    let folder = Scratch::new();
    let mut watch = watch(&folder);
    assert_eq!(seen(&mut watch), None, "an empty folder is nothing new");
    let file = folder.0.join("a.json");
    fs::write(&file, text(CLIMATE, ISSUED, 25.0)).expect("written");
    assert_eq!(seen(&mut watch), Some(Some(25.0)));
    assert_eq!(seen(&mut watch), None);
    // As many bytes, and perhaps within one tick of the file system's clock.
    fs::write(&file, text(CLIMATE, ISSUED, 35.0)).expect("written");
    assert_eq!(seen(&mut watch), Some(Some(35.0)));
    fs::remove_file(&file).expect("gone");
    assert_eq!(seen(&mut watch), Some(None), "a deleted file means no weather");
    assert_eq!(seen(&mut watch), None);
}

#[test]
fn a_bad_file_leaves_what_was_read_before() {
    let folder = Scratch::new();
    let mut watch = watch(&folder);
    let file = folder.0.join("a.json");
    fs::write(&file, text(CLIMATE, ISSUED, 25.0)).expect("written");
    assert_eq!(seen(&mut watch), Some(Some(25.0)));
    fs::write(&file, "{\"climate\": ").expect("written");
    assert_eq!(seen(&mut watch), None, "the good older one stays");
    assert!(watch.files["a.json"].fault.is_some() && watch.files["a.json"].weather.is_some());
    // Another file comes: what was read from the bad one before is still on the board.
    fs::write(folder.0.join("b.json"), text("cold-inland", ISSUED, 20.0)).expect("written");
    assert_eq!(seen(&mut watch), Some(Some(25.0)));
    fs::write(&file, text(CLIMATE, ISSUED, 30.0)).expect("written");
    assert_eq!(seen(&mut watch), Some(Some(30.0)));
    assert!(watch.files["a.json"].fault.is_none());
}

#[test]
fn hidden_files_and_other_files_are_not_read() {
    let folder = Scratch::new();
    for name in [".a.json.123", ".a.json", "a.json.part", "readme.md"] {
        fs::write(folder.0.join(name), text(CLIMATE, ISSUED, 25.0)).expect("written");
    }
    fs::create_dir(folder.0.join("old.json")).expect("a folder");
    let mut watch = watch(&folder);
    assert_eq!(seen(&mut watch), None);
    assert_eq!(watch.files.keys().collect::<Vec<_>>(), ["old.json"]);
}

#[test]
fn a_folder_that_can_not_be_read_keeps_what_there_is() {
    let folder = Scratch::new();
    fs::write(folder.0.join("a.json"), text(CLIMATE, ISSUED, 25.0)).expect("written");
    let mut watch = watch(&folder);
    assert_eq!(seen(&mut watch), Some(Some(25.0)));
    let aside = folder.0.with_extension("aside");
    fs::rename(&folder.0, &aside).expect("moved");
    assert!(watch.look().is_err());
    assert_eq!(watch.files.len(), 1);
    fs::rename(&aside, &folder.0).expect("moved back");
    assert_eq!(seen(&mut watch), None);
}

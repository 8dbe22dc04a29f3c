//! Sources that are due, and what rests on them, held against the text of the files.

use chrono::NaiveDate;
use lammas_engine::read::{PackFile, read};
use lammas_engine::sources::aged;

use crate::shipped::files;

/// The ids of the entries of a folder that name a source, as their text has it.
fn naming(files: &[PackFile], folder: &str, source: &str) -> Vec<String> {
    let mut out = Vec::new();
    for file in files.iter().filter(|file| file.path.starts_with(folder)) {
        for entry in file.text.split("- id: ").skip(1) {
            let id = entry.lines().next().unwrap().trim().to_owned();
            let listed = entry.lines().filter_map(|line| line.trim().strip_prefix("sources:"));
            let words = listed.flat_map(|list| list.split(['[', ']', ',', ' ']));
            if words.into_iter().any(|word| word == source) {
                out.push(id);
            }
        }
    }
    out.sort();
    out
}

fn sorted(mut list: Vec<String>) -> Vec<String> {
    list.sort();
    list
}

#[test]
fn what_rests_on_a_source_is_what_the_files_say() {
    let files = files();
    let mut pack = read(&files).unwrap();
    let day = |text: &str| text.parse::<NaiveDate>().unwrap();
    assert!(aged(&pack, day("2026-11-25")).iter().all(|source| source.review_by < day("2026-11-25")));
    let marked = pack.sources.len();
    for filed in &mut pack.sources {
        filed.entry.review_by = Some(day("2027-03-01"));
    }
    assert!(aged(&pack, day("2027-03-01")).is_empty(), "on its day a source is not yet due");
    let due = aged(&pack, day("2027-03-02"));
    assert_eq!(due.len(), marked);
    let mut resting = 0;
    for source in due {
        assert_eq!(sorted(source.rules.clone()), naming(&files, "rules/", &source.id), "{}", source.id);
        assert_eq!(sorted(source.materials), naming(&files, "materials/", &source.id), "{}", source.id);
        assert_eq!(sorted(source.problems), naming(&files, "problems/", &source.id), "{}", source.id);
        assert!(source.by_these.iter().all(|rule| !source.rules.contains(rule)));
        resting += source.rules.len();
    }
    println!("{marked} sources marked, {resting} rules rest on them");
    assert!(marked >= 30 && resting > 100);
}

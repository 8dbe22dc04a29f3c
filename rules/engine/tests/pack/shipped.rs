//! The shipped set as a whole.

use std::fs;
use std::path::Path;

use lammas_engine::compile::set::{Set, compile};
use lammas_engine::read::{PackFile, read};
use lammas_engine::scenario;

#[expect(clippy::disallowed_methods, reason = "a test may read the files that it tests")]
fn walk(root: &Path, folder: &Path, out: &mut Vec<PackFile>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            walk(root, &path, out);
        } else if path.extension().is_some_and(|e| e == "yaml") {
            let name = path.strip_prefix(root).unwrap().to_string_lossy().replace('\\', "/");
            out.push(PackFile { path: name, text: fs::read_to_string(&path).unwrap() });
        }
    }
}

pub(crate) fn files() -> Vec<PackFile> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../packs/core");
    let mut files = Vec::new();
    walk(&root, &root, &mut files);
    files
}

pub(crate) fn set() -> Set {
    let pack = read(&files()).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let (set, faults) = compile(pack);
    assert!(faults.is_empty(), "{faults:#?}");
    set.unwrap()
}

#[test]
fn every_scenario_holds() {
    let outcomes = scenario::run_all(&set());
    assert!(outcomes.len() >= 80, "{} scenarios", outcomes.len());
    let failed: Vec<_> = outcomes.iter().filter(|o| !o.passed()).collect();
    assert!(failed.is_empty(), "{failed:#?}");
}

#[test]
fn the_order_of_files_comments_and_spaces_do_not_change_the_hash() {
    let whole = set();
    let mut other = files();
    other.reverse();
    for file in &mut other {
        file.text = format!("# a remark\n{}", file.text);
    }
    let (again, _) = compile(read(&other).unwrap());
    assert_eq!(again.unwrap().sha256, whole.sha256);
}

#[test]
fn another_word_changes_the_hash() {
    let mut other = files();
    let file = other.iter_mut().find(|f| f.path == "words/jobs.yaml").unwrap();
    file.text = file.text.replacen("Prune", "Cut", 1);
    let (again, _) = compile(read(&other).unwrap());
    assert_ne!(again.unwrap().sha256, set().sha256);
}

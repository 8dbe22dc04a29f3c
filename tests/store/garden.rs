//! A small rule set to publish.

use std::path::Path;

use lammas::sets::folder;
use lammas_engine::read::PackFile;

/// The small set of the engine's tests.
pub(crate) fn mini() -> Vec<PackFile> {
    folder::files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../rules/engine/tests/data/mini")).expect("it is there")
}

/// The same with another version.
pub(crate) fn renamed(version: &str) -> Vec<PackFile> {
    edited("pack.yaml", "version: \"2026.11.1\"", &format!("version: \"{version}\""))
}

/// The same with an edit of one file.
pub(crate) fn edited(path: &str, from: &str, to: &str) -> Vec<PackFile> {
    let mut files = mini();
    let file = files.iter_mut().find(|file| file.path == path).expect("the file");
    assert!(file.text.contains(from), "`{from}` stands in {path}");
    file.text = file.text.replacen(from, to, 1);
    files
}

//! A rule set as data, to plant defects in.

use std::path::Path;

use lammas_engine::read::{PackFile, read};
use serde_json::Value as Json;

/// A set: its rules, materials and jobs as data, all else as it is written.
#[derive(Clone)]
pub(crate) struct Garden {
    rest: Vec<PackFile>,
    pub(crate) rules: Vec<Json>,
    pub(crate) materials: Vec<Json>,
    pub(crate) jobs: Vec<Json>,
    pub(crate) plants: Vec<Json>,
    pub(crate) problems: Vec<Json>,
}

#[expect(clippy::disallowed_methods, reason = "a test may read the files that it tests")]
fn walk(root: &Path, folder: &Path, out: &mut Vec<PackFile>) {
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            walk(root, &path, out);
        } else if path.extension().is_some_and(|e| e == "yaml") {
            let name = path.strip_prefix(root).expect("inside").to_string_lossy().replace('\\', "/");
            out.push(PackFile { path: name, text: std::fs::read_to_string(&path).expect("a text") });
        }
    }
}

/// The files of a set beside the tests or in a folder.
pub(crate) fn files(folder: &Path) -> Vec<PackFile> {
    let mut files = Vec::new();
    walk(folder, folder, &mut files);
    files
}

fn data<T: serde::Serialize>(entries: &[lammas_engine::pack::Filed<T>]) -> Vec<Json> {
    entries.iter().map(|filed| serde_json::to_value(&filed.entry).expect("data")).collect()
}

impl Garden {
    /// Of the files of a healthy set. Its scenarios stay away: a defect may break them, and that is another finding.
    pub(crate) fn of(files: &[PackFile]) -> Self {
        let pack = read(files).expect("a healthy set");
        let as_data = ["rules/", "materials/", "plants/", "problems/", "scenarios/"];
        let rest = files
            .iter()
            .filter(|file| {
                !as_data.iter().any(|folder| file.path.starts_with(folder)) && file.path != "words/jobs.yaml"
            })
            .cloned()
            .collect();
        Self {
            rest,
            rules: data(&pack.rules),
            materials: data(&pack.materials),
            jobs: data(&pack.jobs),
            plants: data(&pack.plants),
            problems: data(&pack.problems),
        }
    }

    /// As files.
    pub(crate) fn files(&self) -> Vec<PackFile> {
        let file = |path: &str, entries: &[Json]| PackFile {
            path: path.to_owned(),
            text: entries.iter().map(|entry| format!("- {entry}\n")).collect(),
        };
        let mut files = self.rest.clone();
        // A file holds so many entries at most.
        let parts = self.rules.chunks(200).zip(0..);
        files.extend(parts.map(|(part, number)| file(&format!("rules/part-{number}.yaml"), part)));
        files.push(file("materials/all.yaml", &self.materials));
        files.push(file("plants/all.yaml", &self.plants));
        files.push(file("problems/all.yaml", &self.problems));
        files.push(file("words/jobs.yaml", &self.jobs));
        files
    }

    /// A job of the vocabulary; made if it is not there.
    pub(crate) fn with_job(&mut self, job: &str) {
        if !self.jobs.iter().any(|known| known["id"] == job) {
            self.jobs.push(serde_json::json!({"id": job, "name": {"en": job, "es": format!("{job} (es)")}}));
        }
    }
}

/// Linear congruential, the constants of Knuth's MMIX (The Art of Computer Programming, volume 2, 3.3.4; from memory).
pub(crate) struct Draws(pub(crate) u64);

impl Draws {
    /// Evenly in 0..below.
    pub(crate) fn below(&mut self, below: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (((self.0 >> 32) * below as u64) >> 32) as usize
    }

    /// One of these.
    pub(crate) fn one<'a, T>(&mut self, list: &'a [T]) -> Option<&'a T> {
        let at = if list.is_empty() { return None } else { self.below(list.len()) };
        list.get(at)
    }
}

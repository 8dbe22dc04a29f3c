//! Broken packs: what is wrong, where, and what helps, in full; and that nothing at all makes the checker fall over.

mod content;
mod expressions;
mod mutations;
mod names;
mod pages;
mod shape;
mod slips;
#[path = "../support/mod.rs"]
mod support;

use lammas_engine::check::{Checked, check};
use lammas_engine::read::PackFile;
use support::{Edit, edited};

/// A broken pack: what is done to the mini pack, what stands where the first fault points, what is said in full.
struct Broken {
    name: &'static str,
    edits: &'static [Edit<'static>],
    at: &'static str,
    says: &'static str,
}

fn checked(edits: &[Edit<'_>]) -> Checked {
    let files: Vec<PackFile> = edited(edits).into_iter().map(|(path, text)| PackFile { path, text }).collect();
    check(&files)
}

/// What stands in a file from a line and a column on, both from 1; the whole file when they are 0.
fn text_at(edits: &[Edit<'_>], place: &lammas_engine::fault::Place) -> String {
    let (_, text) = edited(edits).into_iter().find(|(path, _)| *path == place.file).unwrap_or_default();
    let rest: String = text.split_inclusive('\n').skip((place.line as usize).saturating_sub(1)).collect();
    rest.chars().skip((place.column as usize).saturating_sub(1)).collect()
}

fn walk(table: &[Broken]) {
    let mut wrong = String::new();
    for Broken { name, edits, at, says } in table {
        let checked = checked(edits);
        let said = checked.faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n");
        let there = checked.faults.first().map(|fault| text_at(edits, &fault.place)).unwrap_or_default();
        if said != *says || !there.starts_with(at) {
            wrong += &format!("{name}: at `{}`\n{said}\n", there.lines().next().unwrap_or_default());
        }
        assert!(checked.set.is_none(), "{name} is loaded");
    }
    assert!(wrong.is_empty(), "{wrong}");
}

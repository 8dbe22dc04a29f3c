//! `lammas impact`.
//!
//! - `shown` the changes for people
//! - `told` the same as JSON
//! - `requests` real requests, a line each

mod requests;
mod shown;
mod told;

use std::fs;
use std::io::Write;
use std::path::PathBuf;
use std::time::Instant;

use anyhow::Result;
use clap::Args;
use lammas_engine::compile::set::Set;
use lammas_engine::impact::grid::{self, Grid};
use lammas_engine::impact::report::{Group, Report};
use lammas_engine::typical::{cases, places, weeks};
use serde_json::Value;

use super::counted::{count, counted};
use super::exit::{BadInput, Exit};
use super::{packs, side_by_side};
use requests::Asked;

const EXAMPLES: &str = "Examples:
  lammas impact rules/packs/core my-draft     which answers the draft changes, how, for whom
  lammas impact core-now core-next --requests asked.ndjson
  lammas impact rules/packs/core my-draft --examples changed
  lammas advise changed/1.json --packs my-draft

Both sets answer the same questions: every plant, in the climates that stand beside the rules
(filled up with reference places to twelve), in each of 52 weeks, under conditions that are
typical: nothing told; each value of each trait; each sign that a rule or problem of the plant
speaks of; each condition of a scenario of the plant, with its dates moved to the week. An answer
changes when its decision does: outcome, band, order, amounts, window days, reasons, questions.
New words change nothing.

Ends with 1 when a line of the requests can't be asked of either set.";

/// Show what a change of the rules does to everybody's advice: which answers are others, how, for whom
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Impact {
    /// Folder of the rule set as it is
    #[arg(value_name = "A")]
    before: PathBuf,
    /// Folder of the rule set as it would be
    #[arg(value_name = "B")]
    after: PathBuf,
    /// Requests as POST /v1/advice takes them, a line each: a file, or the standard input as `-`
    #[arg(long, value_name = "FILE")]
    requests: Option<String>,
    /// Only this plant of the grid
    #[arg(long, value_name = "ID")]
    plant: Option<String>,
    /// All 57 reference places too
    #[arg(long)]
    all_places: bool,
    /// Keep a request for each kind of change in this folder, as 1.json, 2.json …
    #[arg(long, value_name = "DIR")]
    examples: Option<PathBuf>,
    /// Print JSON: every change, with its request
    #[arg(long)]
    json: bool,
}

/// Everything that was found.
struct Found<'a> {
    grid: &'a Grid<'a>,
    report: Report,
    requests: Option<Asked>,
}

impl Impact {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let (before, after) =
            (packs::draft(std::slice::from_ref(&self.before))?, packs::draft(std::slice::from_ref(&self.after))?);
        let known = grid::ids(&before, &after);
        self.plant.as_deref().map(|id| packs::plant(id, &known)).transpose()?;
        let grid = Grid::of(&before, &after, self.plant.as_deref(), self.all_places);
        let started = Instant::now();
        let report = over(&grid);
        let seconds = started.elapsed().as_secs_f64();
        let requests = self.requests.as_deref().map(|file| requests::ask(file, &before, &after)).transpose()?;
        let found = Found { grid: &grid, report, requests };
        if let Some(folder) = &self.examples {
            keep(&found, folder)?;
        }
        if self.json {
            writeln!(out, "{:#}", told::all(&found))?;
        } else {
            out.write_all(shown::all(&found).as_bytes())?;
        }
        out.flush()?;
        rate(&found.report, seconds);
        let lost = found.requests.is_some_and(|asked| !asked.bad.is_empty());
        Ok(if lost { Exit::Found } else { Exit::Well })
    }
}

/// How fast it went, beside the output: that is the same whenever it is asked for.
fn rate(report: &Report, seconds: f64) {
    let asked = report.answers - report.proven;
    let a_second = if seconds > 0.0 { asked as f64 / seconds } else { 0.0 };
    let mut words =
        format!("{} by both sets in {seconds:.1} s, {} a second", counted(asked, "answer"), count(a_second as u64));
    if report.proven > 0 {
        words += &format!("; {} more of plants of which both sets say the same", count(report.proven));
    }
    let _ = writeln!(std::io::stderr(), "{words}");
}

fn over(grid: &Grid<'_>) -> Report {
    let portions = grid.portions();
    let bar = side_by_side::bar(grid.size(), "answers");
    let parts = side_by_side::run(portions.len(), |at| {
        let portion = portions[at];
        let part = grid.run(portion);
        bar.inc(grid.size_of(portion));
        part
    });
    bar.finish_and_clear();
    Report::of(grid, &parts)
}

/// The request behind the example of a group.
fn request(grid: &Grid<'_>, group: &Group) -> Option<Value> {
    let example = &group.example;
    grid.request(example.portion, example.case, example.week).map(|said| cases::lean(&said))
}

/// A request a group, in a folder.
fn keep(found: &Found<'_>, folder: &PathBuf) -> Result<()> {
    let bad = |path: &PathBuf, error: &std::io::Error| BadInput(format!("cannot write `{}`: {error}", path.display()));
    fs::create_dir_all(folder).map_err(|error| bad(folder, &error))?;
    for (number, group) in (1..).zip(&found.report.groups) {
        let Some(request) = request(found.grid, group) else { continue };
        let path = folder.join(format!("{number}.json"));
        fs::write(&path, format!("{request:#}\n")).map_err(|error| bad(&path, &error))?;
    }
    Ok(())
}

/// A set by name, version and the beginning of its hash.
fn named(set: &Set) -> String {
    let header = &set.pack.header;
    format!("{} {} ({})", header.name.value, header.version.value, set.sha256.get(..12).unwrap_or_default())
}

/// The title of a rule, in the set in which it stands.
fn title(grid: &Grid<'_>, rule: &str) -> String {
    let of = |set: &Set| {
        let entry = &set.pack.rules.get(set.names.rules.wide(rule)? as usize)?.entry;
        Some(entry.title.get("en").to_owned())
    };
    of(grid.after).or_else(|| of(grid.before)).unwrap_or_default()
}

/// Climates that the sets know by another content.
fn climates(grid: &Grid<'_>) -> Vec<(String, &'static str)> {
    places::moved(grid.before, grid.after)
}

/// The day of an example.
fn date(group: &Group) -> String {
    weeks::day(group.example.week).date().to_string()
}

//! `lammas check`.

use std::io::Write;
use std::path::PathBuf;

use anyhow::Result;
use chrono::NaiveDate;
use clap::Args;
use lammas_engine::check;
use lammas_engine::fault::Weight;
use lammas_engine::pack::Pack;
use lammas_engine::sources;
use serde_json::json;

use super::exit::Exit;
use super::packs;
use crate::sets::{FaultySet, excerpt};
use crate::v1::question::today;

const EXAMPLES: &str = "Examples:
  lammas check rules/packs/core       every fault of a rule set, with its place and its cure
  lammas check                        the rule set inside the program
  lammas check my-rules --json        for an editor
  lammas check my-rules --sources     sources that are due to be looked at again, and what rests on each
  lammas check --sources --on 2027-01-01

Ends with 1 when the set has an error, or with --sources when one is due; warnings alone end with 0. `lammas fault CODE` explains a code.";

/// Check a rule set: everything that is wrong with it, where, and how to put it right
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Check {
    /// Folder of the rule set; without it, the one inside the program
    #[arg(value_name = "DIR")]
    folder: Option<PathBuf>,
    /// List the sources whose `review_by` is over, with the rules, materials and problems that rest on each
    #[arg(long)]
    sources: bool,
    /// The day for --sources; today in UTC when left out
    #[arg(long, value_name = "YYYY-MM-DD", requires = "sources", value_parser = day)]
    on: Option<NaiveDate>,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

fn day(text: &str) -> Result<NaiveDate, String> {
    text.parse().map_err(|_| format!("expected a day such as `2026-09-15`, found `{text}`"))
}

impl Check {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let (name, files) = packs::files(self.folder.as_ref())?;
        if self.sources {
            let pack = lammas_engine::read::read(&files).map_err(|faults| FaultySet::new(&name, &faults, &files))?;
            return aged(&pack, self.on.unwrap_or_else(|| today::now().date_naive()), self.json, out);
        }
        let checked = check::check(&files);
        let errors = checked.faults.iter().filter(|fault| fault.weight == Weight::Error).count();
        let warnings = checked.faults.len() - errors;
        if self.json {
            let set = checked.set.as_ref().map(|set| {
                let header = &set.pack.header;
                json!({"name": header.name.value, "version": header.version.value, "sha256": set.sha256, "rules": set.rules.len()})
            });
            writeln!(
                out,
                "{:#}",
                json!({"errors": errors, "warnings": warnings, "faults": checked.faults, "rule_set": set})
            )?;
        } else {
            for fault in &checked.faults {
                writeln!(out, "{}", excerpt::shown(fault, &files))?;
            }
            if let Some(set) = &checked.set {
                let header = &set.pack.header;
                writeln!(
                    out,
                    "{} {}: {} rules for {} plants in {} files",
                    header.name.value,
                    header.version.value,
                    set.rules.len(),
                    set.plants.len(),
                    files.len()
                )?;
            } else {
                writeln!(out, "{name}: can't be loaded")?;
            }
            writeln!(out, "{errors} errors, {warnings} warnings")?;
        }
        Ok(if errors == 0 { Exit::Well } else { Exit::Found })
    }
}

/// The sources that are due, for people or as JSON.
fn aged(pack: &Pack, on: NaiveDate, json: bool, out: &mut dyn Write) -> Result<Exit> {
    let due = sources::aged(pack, on);
    if json {
        writeln!(out, "{:#}", json!({"on": on, "due": due}))?;
    } else {
        for source in &due {
            writeln!(out, "{} ({}): to be looked at again by {}", source.id, source.title, source.review_by)?;
            let rows = [
                ("rules", &source.rules),
                ("materials", &source.materials),
                ("problems", &source.problems),
                ("by these", &source.by_these),
            ];
            for (what, names) in rows.into_iter().filter(|(_, names)| !names.is_empty()) {
                writeln!(out, "  {what}: {}", names.join(", "))?;
            }
        }
        let dated = pack.sources.iter().filter(|filed| filed.entry.review_by.is_some()).count();
        let all = pack.sources.len();
        writeln!(out, "{} of {all} sources are due on {on}; {} have no `review_by`", due.len(), all - dated)?;
    }
    Ok(if due.is_empty() { Exit::Well } else { Exit::Found })
}

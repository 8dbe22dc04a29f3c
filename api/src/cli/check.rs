//! `lammas check`.

use std::io::Write;
use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use lammas_engine::check;
use lammas_engine::fault::Weight;
use serde_json::json;

use super::exit::Exit;
use super::packs;
use crate::sets::excerpt;

const EXAMPLES: &str = "Examples:
  lammas check rules/packs/core       every fault of a rule set, with its place and its cure
  lammas check                        the rule set inside the program
  lammas check my-rules --json        for an editor

Ends with 1 when the set has an error; warnings alone end with 0. `lammas fault CODE` explains a code.";

/// Check a rule set: everything that is wrong with it, where, and how to put it right
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Check {
    /// Folder of the rule set; without it, the one inside the program
    #[arg(value_name = "DIR")]
    folder: Option<PathBuf>,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Check {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let (name, files) = packs::files(self.folder.as_ref())?;
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

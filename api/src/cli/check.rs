//! `lammas check`.

use std::io::Write;
use std::path::PathBuf;

use anyhow::Result;
use chrono::NaiveDate;
use clap::Args;
use lammas_engine::fault::{Fault, Weight};
use lammas_engine::layer::{check_layers_and_prove, read_layers};
use lammas_engine::pack::Pack;
use lammas_engine::pack::layer::Layer;
use lammas_engine::sources;
use serde_json::json;

use super::exit::{BadInput, Exit};
use super::packs::{self, Layers};
use crate::sets::{FaultySet, excerpt};
use crate::v1::question::today;

const EXAMPLES: &str = "Examples:
  lammas check rules/packs/core       every fault of a rule set, with its place and its cure
  lammas check                        the rule set inside the program
  lammas check rules/packs/core rules/packs/nursery   house rules over the core, as a whole
  lammas check my-rules --json        for an editor
  lammas check my-rules --sources     sources that are due to be looked at again, and what rests on each
  lammas check --sources --on 2027-01-01
  lammas check my-rules --witness | lammas advise --packs my-rules
                                      the question that shows a finding, and what is answered

Ends with 1 when the set has an error, or a finding that was proven: it says do and don't, or has a rule that never comes; with
--sources when one is due. Other warnings alone end with 0. `lammas fault CODE` explains a code.";

/// Check a rule set: everything that is wrong with it, where, and how to put it right
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Check {
    /// Folders of the rule sets, lowest first; without any, the one inside the program. A set that lies over that one is laid over
    /// it
    #[arg(value_name = "DIR")]
    folders: Vec<PathBuf>,
    /// List the sources whose `review_by` is over, with the rules, materials and problems that rest on each
    #[arg(long)]
    sources: bool,
    /// The day for --sources; today in UTC when left out
    #[arg(long, value_name = "YYYY-MM-DD", requires = "sources", value_parser = day)]
    on: Option<NaiveDate>,
    /// Print JSON
    #[arg(long)]
    json: bool,
    /// Print only the question that shows a finding, as POST /v1/advice takes it: the first, or the one of this number
    #[arg(long, value_name = "NUMBER", num_args = 0..=1, default_missing_value = "1", require_equals = true, conflicts_with = "json")]
    witness: Option<usize>,
}

fn day(text: &str) -> Result<NaiveDate, String> {
    text.parse().map_err(|_| format!("expected a day such as `2026-09-15`, found `{text}`"))
}

impl Check {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let Layers { name, each, files } = packs::layers(&self.folders)?;
        if self.sources {
            let (pack, _) = read_layers(&each).map_err(|faults| FaultySet::new(&name, &faults, &files))?;
            return aged(&pack, self.on.unwrap_or_else(|| today::now().date_naive()), self.json, out);
        }
        let (checked, proven) = check_layers_and_prove(&each);
        if let Some(number) = self.witness {
            return witness(&checked.faults, number, out);
        }
        let errors = checked.faults.iter().filter(|fault| fault.weight == Weight::Error).count();
        let proven_count =
            checked.faults.iter().filter(|fault| fault.is_proven() && fault.weight == Weight::Warning).count();
        let warnings = checked.faults.len() - errors - proven_count;
        if self.json {
            let set = checked.set.as_ref().map(|set| {
                let layer =
                    |layer: &Layer| json!({"name": layer.name, "version": layer.version, "sha256": layer.sha256});
                let header = &set.pack.header;
                json!({
                    "name": header.name.value,
                    "version": header.version.value,
                    "sha256": set.sha256,
                    "rules": set.rules.len(),
                    "layers": set.layers.iter().map(layer).collect::<Vec<_>>()
                })
            });
            writeln!(
                out,
                "{:#}",
                json!({"errors": errors, "findings": proven_count, "warnings": warnings, "faults": checked.faults, "proven": proven, "rule_set": set})
            )?;
        } else {
            let mut witnesses = 0;
            for fault in &checked.faults {
                writeln!(out, "{}", excerpt::shown(fault, &files).trim_end())?;
                if fault.witness.is_some() {
                    witnesses += 1;
                    writeln!(out, "  the question: lammas check{} --witness={witnesses}", folders(&self.folders))?;
                }
                writeln!(out)?;
            }
            if let Some(set) = &checked.set {
                let layers: Vec<String> =
                    set.layers.iter().map(|layer| format!("{} {}", layer.name, layer.version)).collect();
                writeln!(
                    out,
                    "{}: {} rules for {} plants in {} files",
                    layers.join(" + "),
                    set.rules.len(),
                    set.plants.len(),
                    files.len()
                )?;
            } else {
                writeln!(out, "{name}: can't be loaded")?;
            }
            if let Some(proven) = &proven {
                for open in &proven.undecided {
                    writeln!(out, "not decided: whether {} is a case of {}", open.rules.join(" with "), open.code)?;
                }
                if proven_count == 0 && proven.undecided.is_empty() {
                    writeln!(
                        out,
                        "proven in the reference climates: no contradiction, no rule that never comes or is hidden by another"
                    )?;
                }
            }
            writeln!(out, "{errors} errors, {proven_count} proven findings, {warnings} warnings")?;
        }
        Ok(if errors + proven_count == 0 { Exit::Well } else { Exit::Found })
    }
}

/// The folders as they were written, each behind a space.
fn folders(folders: &[PathBuf]) -> String {
    folders.iter().map(|folder| format!(" {}", folder.display())).collect()
}

/// Prints the question of one finding and nothing else, so that it can go on to `lammas advise`.
fn witness(faults: &[Fault], number: usize, out: &mut dyn Write) -> Result<Exit> {
    let witnesses: Vec<_> = faults.iter().filter_map(|fault| fault.witness.as_ref()).collect();
    let Some(witness) = number.checked_sub(1).and_then(|at| witnesses.get(at)) else {
        let words = match witnesses.len() {
            0 => "there is no question to show: nothing was found that a question shows".to_owned(),
            count => format!("`--witness={number}`: expected 1 to {count}"),
        };
        return Err(BadInput(words).into());
    };
    writeln!(out, "{}", witness.request)?;
    Ok(Exit::Found)
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

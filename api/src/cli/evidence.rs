//! `lammas evidence`.

use std::io::Write;
use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use lammas_engine::evidence::{self, Counted, Reading, Table};

use super::exit::Exit;
use super::packs;

const EXAMPLES: &str = "Examples:
  lammas evidence                       what the rules inside the program rest on
  lammas evidence rules/packs/core      the same of a folder
  lammas evidence my-rules --json       every number, for a report

A rule counts by the best reading among its sources. Rules that mean the same when the plant's name is left out count once
among those that differ.";

/// Count what a rule set rests on: evidence, how sources were read, who looked over it
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Evidence {
    /// Folder of the rule set; without it, the one inside the program
    #[arg(value_name = "DIR")]
    folder: Option<PathBuf>,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Evidence {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let set = packs::draft(self.folder.as_slice())?;
        let table = evidence::of(&set.pack);
        if self.json {
            writeln!(out, "{}", serde_json::to_string_pretty(&table)?)?;
        } else {
            out.write_all(shown(&table).as_bytes())?;
        }
        Ok(Exit::Well)
    }
}

fn shown(table: &Table) -> String {
    let mut lines = vec![
        format!("{} {}: {} rules", table.name, table.version, table.rules.all()),
        format!("{:<44}{:>7}{:>7}{:>7}{:>7}", "", "all", "tasks", "avoid", "notes"),
    ];
    let mut row = |name: &str, counted: &Counted| {
        let Counted { tasks, avoid, notes } = counted;
        lines.push(format!("{name:<44}{:>7}{tasks:>7}{avoid:>7}{notes:>7}", counted.all()));
    };
    row("rules", &table.rules);
    let none = Counted::default();
    for (id, name) in [
        ("consensus", "  the handbooks agree"),
        ("trial", "  a trial showed it"),
        ("common-practice", "  the trade does it"),
        ("doubtful", "  told, not shown"),
    ] {
        row(name, table.by_evidence.get(id).unwrap_or(&none));
    }
    for reading in Reading::ALL {
        row(read(reading), table.by_reading.get(&reading).unwrap_or(&none));
    }
    let mut row = |name: &str, count: usize| lines.push(format!("{name:<44}{count:>7}"));
    row("without a publication", table.without_publication);
    row("looked over by a horticulturist", table.reviewed);
    row("not yet reviewed by a horticulturist", table.not_reviewed);
    row("that differ when the plant's name is left out", table.distinct);
    row("emergencies", table.emergencies);
    for (name, count) in &table.entries {
        row(name, *count);
    }
    lines.push(String::new());
    lines.join("\n")
}

const fn read(reading: Reading) -> &'static str {
    match reading {
        Reading::Page => "  source: its page was read",
        Reading::Part => "  source: read as far as a search showed it",
        Reading::Excerpt => "  source: a quoted piece was read",
        Reading::Custom => "  source: the custom of the trade",
        Reading::Memory => "  source: recalled, to be checked",
    }
}

//! `lammas quantity`: list them, describe one, reckon one, check them against published values.

use std::io::Write;
use std::path::Path;

use anyhow::Result;
use clap::Args;
use lammas_agronomy::published;
use lammas_agronomy::quantity::{self, OutcomeValue, Quantity as Entry, QuantityError};
use serde_json::{Value, json};

use super::exit::{BadInput, Exit};
use super::{given, source};
use crate::v1::quantities::wire::QuantityEntry;

const EXAMPLES: &str = "Examples:
  lammas quantity                     every quantity
  lammas quantity et0_hs              what it takes, how it is reckoned
  lammas quantity et0_hs latitude=45.72 day_of_year=196 tmin=14.8 tmax='80 F'
  echo '{\"latitude\": 45.72, \"day_of_year\": 196, \"tmin\": 14.8, \"tmax\": 26.6}' | lammas quantity et0_hs --inputs - --json
  lammas quantity chill_portions_from_daily latitude=47.45 from=2013-11-01 to=2014-02-28 series=@tests/data/seattle_daily_2012_2015.csv
  lammas quantity --check tests/published/solar.json";

/// Reckon a physical quantity by name, with its method and source
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Quantity {
    /// The quantity's name; without it, all are listed
    name: Option<String>,
    /// Inputs: a number with or without its unit, a word, or `@` and a file that holds the value
    #[arg(value_name = "INPUT=VALUE")]
    given: Vec<String>,
    /// Read the inputs from a JSON object in a file, or from the standard input as `-`
    #[arg(long, value_name = "FILE", requires = "name", conflicts_with = "given")]
    inputs: Option<String>,
    /// Check the quantities against a file of published values, or against the standard input as `-`
    #[arg(long, value_name = "FILE", conflicts_with_all = ["name", "given"])]
    check: Option<String>,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Quantity {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        if let Some(file) = &self.check {
            return check(file, self.json, out);
        }
        let Some(name) = &self.name else {
            return list(self.json, out);
        };
        let entry = quantity::find(name).map_err(|error| bad(&error))?;
        let outcome = match &self.inputs {
            Some(file) => {
                let json: Value = serde_json::from_str(&source::text(file)?)
                    .map_err(|error| BadInput(format!("`{file}` is not JSON: {error}")))?;
                entry.reckon_json(&json)
            }
            None if self.given.is_empty() => return describe(entry, self.json, out),
            None => entry.reckon(&given::inputs(&self.given)?),
        };
        let outcome = outcome.map_err(|error| bad(&error))?;
        if self.json {
            print_json(out, &outcome.to_json())?;
        } else {
            // A word or a bare number has no unit to show.
            let unit = if outcome.unit == "-" { String::new() } else { format!(" {}", outcome.unit) };
            writeln!(out, "{} = {}{unit}", outcome.quantity, shown(&outcome.value))?;
            for note in &outcome.notes {
                writeln!(out, "  note    {note}")?;
            }
            writeln!(out, "  method  {}\n  source  {}", outcome.method, outcome.source)?;
        }
        Ok(Exit::Well)
    }
}

fn list(json: bool, out: &mut dyn Write) -> Result<Exit> {
    if json {
        let all: Vec<_> = quantity::all().map(QuantityEntry::from).collect();
        print_json(out, &json!(all))?;
        return Ok(Exit::Well);
    }
    let width = quantity::all().map(|entry| entry.name.len()).max().unwrap_or_default();
    for entry in quantity::all() {
        writeln!(out, "{:width$}  {} [{}]", entry.name, entry.title, entry.unit)?;
    }
    Ok(Exit::Well)
}

fn describe(entry: &'static Entry, json: bool, out: &mut dyn Write) -> Result<Exit> {
    if json {
        print_json(out, &json!(QuantityEntry::from(entry)))?;
        return Ok(Exit::Well);
    }
    writeln!(out, "{}: {} [{}]\n{}\n", entry.name, entry.title, entry.unit, entry.about)?;
    let width = entry.inputs.iter().map(|input| input.name.len()).max().unwrap_or_default();
    for input in entry.inputs {
        let need = if input.required { "" } else { " (may be left out)" };
        writeln!(out, "  {:width$}  {}, {}{need}", input.name, input.about, input.expected())?;
    }
    writeln!(out, "\n  method  {}\n  source  {}", entry.method, entry.source)?;
    Ok(Exit::Well)
}

fn check(file: &str, json: bool, out: &mut dyn Write) -> Result<Exit> {
    let report = published::check(&source::text(file)?, &|path| beside(file, path))
        .map_err(|error| BadInput(format!("`{file}`: {error}")))?;
    if json {
        let failed: Vec<_> = report
            .failed
            .iter()
            .map(|case| json!({"id": case.id, "quantity": case.quantity, "expected": case.expected, "got": case.got}))
            .collect();
        print_json(out, &json!({"passed": report.passed, "failed": failed}))?;
    } else {
        for failure in &report.failed {
            writeln!(out, "{failure}")?;
        }
        writeln!(out, "{} passed, {} failed", report.passed, report.failed.len())?;
    }
    Ok(if report.failed.is_empty() { Exit::Well } else { Exit::Found })
}

/// A record that a file of checks names: its path starts from here, or from a folder that the file stands in.
fn beside(file: &str, path: &str) -> Result<String, String> {
    let folders = Path::new(file).ancestors().skip(1).map(|folder| folder.join(path));
    match std::iter::once(Path::new(path).to_owned()).chain(folders).find(|place| place.is_file()) {
        Some(place) => source::text(&place.to_string_lossy()).map_err(|error| error.to_string()),
        None => Err(format!("no record `{path}`")),
    }
}

fn shown(value: &OutcomeValue) -> String {
    match value {
        OutcomeValue::Text(text) => text.clone(),
        other => other.to_json().to_string(),
    }
}

fn print_json(out: &mut dyn Write, value: &Value) -> Result<()> {
    Ok(writeln!(out, "{value:#}")?)
}

fn bad(error: &QuantityError) -> BadInput {
    BadInput(error.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_failed_check_is_printed_and_counted() {
        let folder = std::env::temp_dir().join(format!("lammas-check-{}", std::process::id()));
        std::fs::create_dir_all(&folder).expect("folder");
        let file = folder.join("two.json");
        // FAO-56, annex 2, table 2.3: 3.168 kPa at 25 C; the second value is wrong on purpose.
        let case = |id: &str, value: f64| {
            json!({"id": id, "quantity": "saturation_vapour_pressure", "inputs": {"temperature": {"value": 25, "unit": "C"}},
                "expected": {"value": value, "unit": "kPa"}, "tolerance": {"kind": "abs", "value": 0.001}})
        };
        std::fs::write(&file, json!({"cases": [case("right", 3.168), case("wrong", 4.0)]}).to_string()).expect("file");
        let mut out = Vec::new();
        let exit = check(&file.to_string_lossy(), false, &mut out).expect("runs");
        std::fs::remove_dir_all(&folder).expect("cleared away");
        let out = String::from_utf8(out).expect("text");
        assert_eq!(exit, Exit::Found);
        assert!(out.starts_with("wrong: saturation_vapour_pressure should be"), "{out}");
        assert_eq!(out.lines().last(), Some("1 passed, 1 failed"));
    }
}

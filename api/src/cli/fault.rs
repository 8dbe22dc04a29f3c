//! `lammas fault`.

use std::io::Write;

use anyhow::Result;
use clap::Args;
use lammas_engine::check::{CHECKS, Check};
use lammas_engine::fault::Weight;
use serde_json::{Value, json};

use super::exit::{BadInput, Exit};
use lammas_engine::nearest::nearest;

const EXAMPLES: &str = "Examples:
  lammas fault                        every code
  lammas fault window-never-opens     what it finds, why it matters, an example, how to put it right";

/// Explain a fault of a rule set by its code, or list the codes
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Fault {
    /// The code; without it, all are listed
    code: Option<String>,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Fault {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let Some(code) = &self.code else {
            return list(self.json, out);
        };
        let Some(check) = CHECKS.iter().find(|check| check.code == code) else {
            let words = match nearest(code, CHECKS.iter().map(|check| check.code)) {
                Some(meant) => format!("unknown code `{code}`, did you mean `{meant}`?"),
                None => format!("unknown code `{code}`, `lammas fault` lists them"),
            };
            return Err(BadInput(words).into());
        };
        if self.json {
            let mut entry = row(check);
            entry["page"] = json!(check.page);
            writeln!(out, "{entry:#}")?;
        } else {
            writeln!(out, "{}", check.page.trim_end())?;
        }
        Ok(Exit::Well)
    }
}

fn list(json: bool, out: &mut dyn Write) -> Result<Exit> {
    if json {
        writeln!(out, "{:#}", Value::Array(CHECKS.iter().map(row).collect()))?;
        return Ok(Exit::Well);
    }
    let width = CHECKS.iter().map(|check| check.code.len()).max().unwrap_or_default();
    for check in CHECKS {
        writeln!(out, "{:width$}  {:7}  {}", check.code, weight(check), check.name)?;
    }
    Ok(Exit::Well)
}

fn row(check: &Check) -> Value {
    json!({"code": check.code, "weight": weight(check), "name": check.name})
}

fn weight(check: &Check) -> &'static str {
    match check.weight {
        Weight::Error => "error",
        Weight::Warning => "warning",
    }
}

//! `lammas scenarios`.

use std::io::Write;
use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use lammas_engine::scenario::{Outcome, run_all};
use serde_json::json;

use super::exit::Exit;
use super::mutate;
use super::{packs, wrapped};

const EXAMPLES: &str = "Examples:
  lammas scenarios rules/packs/core   run the scenarios that stand beside a rule set
  lammas scenarios                    those of the rule set inside the program
  lammas scenarios rules/packs/nursery                those of house rules, laid over the set inside the program
  lammas scenarios my-rules --json
  lammas scenarios my-rules --mutate                  which changes of its rules would no scenario notice?
  lammas scenarios my-rules --mutate --hazardous      only of what can hurt
  lammas scenarios my-rules --mutate rose.aphid-oil   of one rule or material

Ends with 1 when an answer is not the expected one, or the set can't be loaded; with --mutate, when the scenarios notice
less than 80 % of the changes of a rule that spreads, or guards against, a material whose label says how much.";

/// Run the scenarios of a rule set: questions with their expected answers
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Scenarios {
    /// Folders of the rule sets, lowest first; without any, the one inside the program. Of several the uppermost one's scenarios run
    #[arg(value_name = "DIR")]
    folders: Vec<PathBuf>,
    /// Change each rule in every way that matters, one change at a time, and say which no scenario notices
    #[arg(long, value_name = "RULE", num_args = 0..=1, default_missing_value = "")]
    mutate: Option<String>,
    /// With --mutate: only what can hurt, and the guards against it
    #[arg(long, requires = "mutate")]
    hazardous: bool,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Scenarios {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        // Without the checks that look beyond the set: a scenario may be run while they still find something.
        let set = packs::draft(&self.folders)?;
        if let Some(id) = &self.mutate {
            return mutate::run(&set, Some(id.as_str()).filter(|id| !id.is_empty()), self.hazardous, self.json, out);
        }
        let outcomes = run_all(&set);
        let failed = outcomes.iter().filter(|outcome| !outcome.passed()).count();
        let passed = outcomes.len() - failed;
        if self.json {
            let each: Vec<_> = outcomes
                .iter()
                .map(|outcome| json!({"file": outcome.file, "name": outcome.name, "passed": outcome.passed(), "differs": outcome.differs}))
                .collect();
            writeln!(out, "{:#}", json!({"passed": passed, "failed": failed, "scenarios": each}))?;
        } else {
            for outcome in outcomes.iter().filter(|outcome| !outcome.passed()) {
                writeln!(out, "{}", differing(outcome))?;
            }
            for outcome in outcomes.iter().filter(|outcome| outcome.passed()) {
                writeln!(out, "as expected  {}", outcome.name)?;
            }
            writeln!(out, "{passed} passed, {failed} failed")?;
        }
        Ok(if failed == 0 { Exit::Well } else { Exit::Found })
    }
}

/// A scenario that differs, with what was expected and what came.
pub(super) fn differing(outcome: &Outcome) -> String {
    let mut shown = format!("DIFFERS      {}\n             {}\n", outcome.name, outcome.place);
    for difference in &outcome.differs {
        shown.push_str(&wrapped::lines("             - ", difference));
    }
    shown
}

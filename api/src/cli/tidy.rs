//! `lammas tidy`.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use clap::Args;
use lammas_engine::tidy::tidy;

use super::exit::{BadInput, Exit};

const EXAMPLES: &str = "Examples:
  lammas tidy my-rules                    every file of the folder, rewritten where it differs
  lammas tidy my-rules/rules/rose.yaml
  lammas tidy my-rules --check            changes nothing, ends with 1 when a file differs";

/// Put rule files into their usual form: spaces, quotes, the order of fields; every comment stays
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Tidy {
    /// A file, or a folder of a rule set
    #[arg(value_name = "FILE|DIR")]
    path: PathBuf,
    /// Only say which files differ
    #[arg(long)]
    check: bool,
}

impl Tidy {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let mut files = Vec::new();
        walk(&self.path, &mut files)?;
        if files.is_empty() {
            return Err(BadInput(format!("`{}` holds no `.yaml` file", self.path.display())).into());
        }
        files.sort();
        let (mut differ, mut faulty) = (0_usize, 0_usize);
        for file in &files {
            let shown = file.display();
            let text = fs::read_to_string(file).map_err(|e| BadInput(format!("cannot read `{shown}`: {e}")))?;
            match tidy(&text) {
                Ok(made) if made == text => {}
                Ok(made) => {
                    differ += 1;
                    if self.check {
                        writeln!(out, "{shown}: differs")?;
                    } else {
                        fs::write(file, made).with_context(|| format!("cannot write `{shown}`"))?;
                        writeln!(out, "{shown}: tidied")?;
                    }
                }
                Err(untidy) => {
                    faulty += 1;
                    writeln!(out, "{shown}:{}: {}", untidy.line, untidy.message)?;
                }
            }
        }
        let what = if self.check { "differ" } else { "tidied" };
        writeln!(out, "{} files, {differ} {what}, {faulty} left alone", files.len())?;
        Ok(if faulty > 0 || (self.check && differ > 0) { Exit::Found } else { Exit::Well })
    }
}

fn walk(path: &Path, out: &mut Vec<PathBuf>) -> Result<(), BadInput> {
    let unreadable = |e: std::io::Error| BadInput(format!("cannot read `{}`: {e}", path.display()));
    if fs::metadata(path).map_err(unreadable)?.is_file() {
        out.push(path.to_owned());
        return Ok(());
    }
    for entry in fs::read_dir(path).map_err(unreadable)? {
        let inner = entry.map_err(unreadable)?.path();
        if inner.is_dir() || inner.extension().is_some_and(|end| end == "yaml") {
            walk(&inner, out)?;
        }
    }
    Ok(())
}

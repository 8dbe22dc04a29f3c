//! Which rule set a command works on: the one inside the program, or a folder.

use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use lammas_engine::compile::set::{Set, compile};
use lammas_engine::fault::Weight;
use lammas_engine::nearest::nearest;
use lammas_engine::read::{PackFile, read};

use super::exit::BadInput;
use crate::sets::rules::Rules;
use crate::sets::{FaultySet, embedded, folder};
use crate::settings::rules::RuleSettings;

/// The rule set to answer from.
#[derive(Args, Clone, Debug, Default)]
pub(super) struct Packs {
    /// Folder of a rule set to use instead of the one inside the program
    #[arg(long, env = "LAMMAS_PACKS", value_name = "DIR")]
    packs: Option<PathBuf>,
}

impl Packs {
    /// The set, to be asked.
    pub(super) fn load(self) -> Result<Rules> {
        Rules::load(&RuleSettings { packs: self.packs, ..RuleSettings::default() })
    }
}

/// The files of a folder, or those of the core set.
pub(super) fn files(folder: Option<&PathBuf>) -> Result<(String, Vec<PackFile>), BadInput> {
    match folder {
        Some(path) => Ok((path.display().to_string(), folder::files(path)?)),
        None => Ok((embedded::NAME.to_owned(), embedded::files())),
    }
}

/// The set of a folder, or the core set, without the checks that look beyond what it needs to be asked: a draft may be tried
/// while they still find something.
pub(super) fn draft(folder: Option<&PathBuf>) -> Result<Set> {
    let (name, files) = files(folder)?;
    let (set, mut faults) = match read(&files) {
        Ok(pack) => compile(pack),
        Err(faults) => (None, faults),
    };
    faults.retain(|fault| fault.weight == Weight::Error);
    set.ok_or_else(|| FaultySet::new(&name, &faults, &files).into())
}

/// A plant by its id, as `--plant` names it.
pub(super) fn plant(id: &str, known: &[&str]) -> Result<(), BadInput> {
    if known.contains(&id) {
        return Ok(());
    }
    let cure = nearest(id, known.iter().copied()).map(|near| format!(", did you mean `{near}`?"));
    Err(BadInput(format!("`--plant`: unknown plant `{id}`{}", cure.unwrap_or_default())))
}

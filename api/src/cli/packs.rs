//! Which rule set a command works on: the one inside the program, or a folder.

use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use lammas_engine::read::PackFile;

use super::exit::BadInput;
use crate::sets::rules::Rules;
use crate::sets::{embedded, folder};
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

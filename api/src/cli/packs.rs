//! Which rule sets a command works on: the one inside the program, or folders, laid over each other.

use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use lammas_engine::compile::set::Set;
use lammas_engine::fault::Weight;
use lammas_engine::layer::{self, compile_layers};
use lammas_engine::nearest::nearest;
use lammas_engine::read::PackFile;

use super::exit::BadInput;
use crate::sets::rules::Rules;
use crate::sets::{FaultySet, folder};
use crate::settings::rules::RuleSettings;

/// The rule set to answer from.
#[derive(Args, Clone, Debug, Default)]
pub(super) struct Packs {
    /// Folders of the rule sets to use instead of the one inside the program, lowest first; give it once for each, or put commas
    /// between them. A set that lies over the one inside the program is laid over it
    #[arg(long, env = "LAMMAS_PACKS", value_name = "DIR", value_delimiter = ',')]
    packs: Vec<PathBuf>,
}

impl Packs {
    /// The set, to be asked.
    pub(super) fn load(self) -> Result<Rules> {
        Rules::load(&RuleSettings { packs: self.packs, ..RuleSettings::default() })
    }

    /// The set as a draft: see [`draft`].
    pub(super) fn draft(&self) -> Result<Set> {
        draft(&self.packs)
    }
}

/// The files of sets that are to be laid over each other, lowest first.
pub(super) struct Layers {
    /// What they are called where something is wrong with them.
    pub(super) name: String,
    /// The files of each.
    pub(super) each: Vec<Vec<PackFile>>,
    /// All files, by the paths that faults give.
    pub(super) files: Vec<PackFile>,
}

/// The files of these folders, lowest first, or those of the core set, which is also put below a set that lies over it.
pub(super) fn layers(folders: &[PathBuf]) -> Result<Layers, BadInput> {
    let layers = folder::layers(folders)?;
    let name = folder::names(&layers);
    let each: Vec<Vec<PackFile>> = layers.into_iter().map(|layer| layer.files).collect();
    let files = layer::files(&each);
    Ok(Layers { name, each, files })
}

/// The sets of these folders laid over each other, or the core set, without the checks that look beyond what it needs to be
/// asked: a draft may be tried while they still find something.
pub(super) fn draft(folders: &[PathBuf]) -> Result<Set> {
    let layers = layers(folders)?;
    let (set, mut faults) = compile_layers(&layers.each);
    faults.retain(|fault| fault.weight == Weight::Error);
    set.ok_or_else(|| FaultySet::new(&layers.name, &faults, &layers.files).into())
}

/// A plant by its id, as `--plant` names it.
pub(super) fn plant(id: &str, known: &[&str]) -> Result<(), BadInput> {
    if known.contains(&id) {
        return Ok(());
    }
    let cure = nearest(id, known.iter().copied()).map(|near| format!(", did you mean `{near}`?"));
    Err(BadInput(format!("`--plant`: unknown plant `{id}`{}", cure.unwrap_or_default())))
}

//! Rule sets in folders of files, one or several in layers.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use lammas_engine::compile::set::Set;
use lammas_engine::fault::Weight;
use lammas_engine::layer::{self, check_layers};
use lammas_engine::read::{MOST_BYTES, PackFile, read};

use super::{FaultySet, embedded};
use crate::cli::exit::BadInput;
use crate::library::Release;

/// No rule set has more files.
const MOST_FILES: usize = 20_000;

/// Every YAML file below a folder, in the order of their paths.
///
/// # Errors
/// The folder or a file can't be read, or there are too many.
pub fn files(folder: &Path) -> Result<Vec<PackFile>, BadInput> {
    let mut paths = Vec::new();
    collect(folder, &mut paths)?;
    paths.sort();
    paths.iter().map(|path| file(folder, path)).collect()
}

fn unreadable(path: &Path, reason: &dyn std::fmt::Display) -> BadInput {
    BadInput(format!("cannot read `{}`: {reason}", path.display()))
}

fn collect(folder: &Path, paths: &mut Vec<PathBuf>) -> Result<(), BadInput> {
    for entry in fs::read_dir(folder).map_err(|error| unreadable(folder, &error))? {
        let path = entry.map_err(|error| unreadable(folder, &error))?.path();
        if path.is_dir() {
            collect(&path, paths)?;
        } else if path.extension().is_some_and(|extension| extension == "yaml" || extension == "yml") {
            paths.push(path);
        }
        if paths.len() > MOST_FILES {
            return Err(unreadable(folder, &format_args!("expected at most {MOST_FILES} files")));
        }
    }
    Ok(())
}

fn file(folder: &Path, path: &Path) -> Result<PackFile, BadInput> {
    let inside = path.strip_prefix(folder).unwrap_or(path);
    let parts: Vec<_> = inside.iter().map(|part| part.to_string_lossy()).collect();
    let size = fs::metadata(path).map_err(|error| unreadable(path, &error))?.len();
    if size > 4 * MOST_BYTES as u64 {
        return Err(unreadable(path, &format_args!("it has {size} bytes, expected at most {MOST_BYTES}")));
    }
    let text = fs::read_to_string(path).map_err(|error| unreadable(path, &error))?;
    Ok(PackFile { path: parts.join("/"), text })
}

/// The files of one set of those that are to be laid over each other.
#[derive(Clone, Debug)]
pub struct LayerFiles {
    /// What it is called where something is wrong with it: the folder, or the name of the set inside the program.
    pub name: String,
    /// Its files.
    pub files: Vec<PackFile>,
}

impl LayerFiles {
    /// The set inside the program.
    #[must_use]
    pub fn core() -> Self {
        Self { name: embedded::NAME.to_owned(), files: embedded::files() }
    }

    /// The release that they make.
    ///
    /// # Errors
    /// When a file can't be read.
    pub fn release(self) -> Result<Release, FaultySet> {
        let Self { name, files } = self;
        match read(&files) {
            Ok(pack) => Ok(Release::of(&pack, files)),
            Err(faults) => Err(FaultySet::new(&name, &faults, &files)),
        }
    }

    /// The sets over which it says that it lies; none where it can't be read.
    fn over(&self) -> Vec<String> {
        let pack = read(&self.files).ok();
        pack.into_iter().flat_map(|pack| pack.header.over).map(|over| over.value).collect()
    }
}

/// The sets of these folders, lowest first; without any, the one inside the program. Where the lowest says that it lies over that
/// one, it is put below.
///
/// # Errors
/// When a file can't be read.
pub fn layers(folders: &[PathBuf]) -> Result<Vec<LayerFiles>, BadInput> {
    let read = |folder: &PathBuf| Ok(LayerFiles { name: folder.display().to_string(), files: files(folder)? });
    let mut layers = folders.iter().map(read).collect::<Result<Vec<_>, BadInput>>()?;
    let wants_core = layers.first().is_none_or(|lowest| lowest.over().iter().any(|over| over == embedded::NAME));
    if wants_core {
        layers.insert(0, LayerFiles::core());
    }
    Ok(layers)
}

/// Sets laid over each other and checked whole.
///
/// # Errors
/// [`FaultySet`] when they have faults.
pub fn set(layers: &[LayerFiles]) -> Result<Arc<Set>, FaultySet> {
    let texts: Vec<Vec<PackFile>> = layers.iter().map(|layer| layer.files.clone()).collect();
    let checked = check_layers(&texts);
    match checked.set.filter(|_| !checked.faults.iter().any(|fault| fault.weight == Weight::Error)) {
        Some(set) => Ok(Arc::new(set)),
        None => {
            let errors: Vec<_> = checked.faults.into_iter().filter(|fault| fault.weight == Weight::Error).collect();
            Err(FaultySet::new(&names(layers), &errors, &layer::files(&texts)))
        }
    }
}

/// What they are called together.
#[must_use]
pub fn names(layers: &[LayerFiles]) -> String {
    layers.iter().map(|layer| layer.name.as_str()).collect::<Vec<_>>().join(" + ")
}

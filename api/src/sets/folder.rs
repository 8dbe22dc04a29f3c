//! A rule set in a folder of files.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use lammas_engine::check::check;
use lammas_engine::compile::set::Set;
use lammas_engine::fault::Weight;
use lammas_engine::read::{MOST_BYTES, PackFile};

use super::FaultySet;
use crate::cli::exit::BadInput;

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

/// The set of a folder, checked whole.
///
/// # Errors
/// [`BadInput`] when a file can't be read, [`FaultySet`] when the set has faults.
pub fn set(folder: &Path) -> anyhow::Result<Arc<Set>> {
    let files = files(folder)?;
    let checked = check(&files);
    match checked.set {
        Some(set) => Ok(Arc::new(set)),
        None => {
            let errors: Vec<_> = checked.faults.into_iter().filter(|fault| fault.weight == Weight::Error).collect();
            Err(FaultySet::new(&folder.display().to_string(), &errors, &files).into())
        }
    }
}

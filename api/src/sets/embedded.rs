//! The core set, which stands inside the program.

use std::sync::{Arc, OnceLock};

use lammas_engine::compile::set::{Set, compile};
use lammas_engine::read::{PackFile, read};

use super::FaultySet;

/// Its name.
pub const NAME: &str = "core";

static FILES: &[(&str, &str)] = include!(concat!(env!("OUT_DIR"), "/core_files.rs"));

/// Its files.
#[must_use]
pub fn files() -> Vec<PackFile> {
    let owned = |(path, text): &(&str, &str)| PackFile { path: (*path).to_owned(), text: (*text).to_owned() };
    FILES.iter().map(owned).collect()
}

/// The set, read and compiled once in a process. The checker has judged it before the program was built.
///
/// # Errors
/// When it can't be loaded: the program was built from a faulty set.
pub fn set() -> Result<Arc<Set>, FaultySet> {
    static SET: OnceLock<Arc<Set>> = OnceLock::new();
    if let Some(set) = SET.get() {
        return Ok(Arc::clone(set));
    }
    let files = files();
    let (set, faults) = match read(&files) {
        Ok(pack) => compile(pack),
        Err(faults) => (None, faults),
    };
    match set {
        Some(set) => Ok(Arc::clone(SET.get_or_init(|| Arc::new(set)))),
        None => Err(FaultySet::new(NAME, &faults, &files)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_core_set_stands_inside_the_program_and_loads() {
        assert!(files().iter().any(|file| file.path == "pack.yaml"));
        let set = set().expect("it loads");
        assert_eq!(set.pack.header.name.value, NAME);
        assert!(set.rules.len() > 50);
    }
}

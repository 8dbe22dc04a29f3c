//! The rule sets that a process answers from.
//!
//! - [`embedded`] the core set, which stands inside the program
//! - [`folder`] a set in a folder of files
//! - [`excerpt`] a fault with the line that it points at
//! - [`rules`] what a running process answers from

pub mod embedded;
pub mod excerpt;
pub mod folder;
pub mod rules;

use lammas_engine::fault::Fault;
use lammas_engine::read::PackFile;

/// A set that can't be loaded, with everything that is wrong with it.
#[derive(Debug, thiserror::Error)]
#[error("{shown}")]
pub struct FaultySet {
    /// The faults, for people.
    pub shown: String,
}

impl FaultySet {
    /// The faults of these files.
    #[must_use]
    pub fn new(name: &str, faults: &[Fault], files: &[PackFile]) -> Self {
        let mut shown = format!("the rule set `{name}` can't be loaded\n\n");
        for fault in faults {
            shown.push_str(&excerpt::shown(fault, files));
            shown.push('\n');
        }
        Self { shown: shown.trim_end().to_owned() }
    }
}

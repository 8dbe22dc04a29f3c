//! The rule sets that a process answers from.
//!
//! - [`embedded`] the core set, which stands inside the program
//! - [`folder`] sets in folders of files
//! - [`excerpt`] a fault with the line that it points at
//! - [`rules`] what a running process answers from, [`stacks`] sets laid over each other on demand
//! - [`pick`] which releases a request asks for

pub mod embedded;
pub mod excerpt;
pub mod folder;
pub mod pick;
pub mod rules;
pub mod stacks;

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

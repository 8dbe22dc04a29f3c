//! What a set must pass before it is served: it is read and checked, nothing in it is proven wrong, its scenarios come out.

use std::sync::Arc;

use lammas_engine::check::{check, check_and_prove};
use lammas_engine::compile::set::{Set, compile};
use lammas_engine::fault::{Fault, Weight};
use lammas_engine::read::{PackFile, read};
use lammas_engine::scenario::run_all;

use super::NotDone;
use super::held::{self, Hold};
use crate::sets::FaultySet;

/// How closely a set is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Depth {
    /// Before it is published: also what is proven against it.
    Publish,
    /// Before a node serves it: everything but the proofs.
    Serve,
    /// The files were looked at before, only the holds on them are new.
    Holds,
}

/// A set that passed.
#[derive(Clone, Debug)]
pub struct Judged {
    /// The set as it is served.
    pub set: Arc<Set>,
    /// Its files, holds on top.
    pub files: Vec<PackFile>,
}

impl Judged {
    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.set.pack.header.name.value
    }

    /// Its version.
    #[must_use]
    pub fn version(&self) -> &str {
        &self.set.pack.header.version.value
    }
}

/// Judges files with holds on top of them.
///
/// # Errors
/// [`NotDone::Refused`] with everything that stands in the way.
pub fn judge(files: &[PackFile], holds: &[Hold], depth: Depth) -> Result<Judged, NotDone> {
    let mut set = match depth {
        Depth::Publish => {
            let (checked, _) = check_and_prove(files);
            let against = |fault: &Fault| fault.weight == Weight::Error || fault.is_proven();
            loaded(checked.set, checked.faults.into_iter().filter(against).collect(), files)?
        }
        Depth::Serve => {
            let checked = check(files);
            loaded(checked.set, errors(checked.faults), files)?
        }
        Depth::Holds => {
            let (set, faults) = match read(files) {
                Ok(pack) => compile(pack),
                Err(faults) => (None, faults),
            };
            loaded(set, errors(faults), files)?
        }
    };
    if depth != Depth::Holds {
        scenarios(&set)?;
    }
    let effective = held::apply(files, holds).map_err(NotDone::Refused)?;
    if !holds.is_empty() {
        let checked = check(&effective);
        set = loaded(checked.set, errors(checked.faults), &effective)?;
    }
    Ok(Judged { set: Arc::new(set), files: effective })
}

fn errors(faults: Vec<Fault>) -> Vec<Fault> {
    faults.into_iter().filter(|fault| fault.weight == Weight::Error).collect()
}

fn loaded(set: Option<Set>, against: Vec<Fault>, files: &[PackFile]) -> Result<Set, NotDone> {
    match set {
        Some(set) if against.is_empty() => Ok(set),
        _ => Err(NotDone::Refused(FaultySet::new("of this draft", &against, files).to_string())),
    }
}

fn scenarios(set: &Set) -> Result<(), NotDone> {
    let failed: Vec<_> = run_all(set).into_iter().filter(|outcome| !outcome.passed()).collect();
    if failed.is_empty() {
        return Ok(());
    }
    let each = failed.iter().map(|outcome| format!("  {}: {}", outcome.name, outcome.differs.join("; ")));
    let told = format!("{} scenarios come out otherwise\n{}", failed.len(), each.collect::<Vec<_>>().join("\n"));
    Err(NotDone::Refused(told))
}

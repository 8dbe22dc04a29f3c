//! What a set must pass before it is served: it is read and checked, nothing in it is proven wrong, its scenarios come out.

use std::sync::Arc;

use lammas_engine::compile::set::Set;
use lammas_engine::fault::{Fault, Weight};
use lammas_engine::layer::{self, check_layers, check_layers_and_prove, compile_layers};
use lammas_engine::read::PackFile;
use lammas_engine::scenario::run_all;

use super::NotDone;
use super::held::{self, Hold};
use crate::library::Release;
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
    /// The set as it is served, over those below it.
    pub set: Arc<Set>,
    /// Itself: its name, version and hash; its files with the holds on top.
    pub release: Release,
}

/// Judges the files of a set over the sets below it, with holds on top.
///
/// # Errors
/// [`NotDone::Refused`] with everything that stands in the way.
pub fn judge(below: &[Vec<PackFile>], files: &[PackFile], holds: &[Hold], depth: Depth) -> Result<Judged, NotDone> {
    let over = |files: &[PackFile]| below.iter().cloned().chain([files.to_vec()]).collect::<Vec<_>>();
    let layers = over(files);
    let mut set = match depth {
        Depth::Publish => {
            let (checked, _) = check_layers_and_prove(&layers);
            let against = |fault: &Fault| fault.weight == Weight::Error || fault.is_proven();
            loaded(checked.set, &checked.faults.into_iter().filter(against).collect::<Vec<_>>(), &layers)?
        }
        Depth::Serve => {
            let checked = check_layers(&layers);
            loaded(checked.set, &errors(checked.faults), &layers)?
        }
        Depth::Holds => {
            let (set, faults) = compile_layers(&layers);
            loaded(set, &errors(faults), &layers)?
        }
    };
    if depth != Depth::Holds {
        scenarios(&set)?;
    }
    let effective = held::apply(files, holds).map_err(NotDone::Refused)?;
    if !holds.is_empty() {
        let layers = over(&effective);
        let checked = check_layers(&layers);
        set = loaded(checked.set, &errors(checked.faults), &layers)?;
    }
    let release = Release::of_files(effective).map_err(|_| NotDone::Refused("its files can't be read".to_owned()))?;
    Ok(Judged { set: Arc::new(set), release })
}

fn errors(faults: Vec<Fault>) -> Vec<Fault> {
    faults.into_iter().filter(|fault| fault.weight == Weight::Error).collect()
}

fn loaded(set: Option<Set>, against: &[Fault], layers: &[Vec<PackFile>]) -> Result<Set, NotDone> {
    match set {
        Some(set) if against.is_empty() => Ok(set),
        _ => Err(NotDone::Refused(FaultySet::new("of this draft", against, &layer::files(layers)).to_string())),
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

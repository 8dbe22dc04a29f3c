//! Layers compiled and checked as a whole.

use super::sets::read_layers;
use crate::check::{Checked, check_pack};
use crate::compile::set::{Set, compile};
use crate::fault::{Fault, Place, Weight, in_order};
use crate::pack::Pack;
use crate::pack::layer::Touched;
use crate::prove::{self, Proven};
use crate::read::PackFile;

/// Reads sets, lowest first, lays them over each other and compiles what comes of it, without the checks that look beyond what a
/// set needs to be asked. One set by itself is compiled as it is.
#[must_use]
pub fn compile_layers(layers: &[Vec<PackFile>]) -> (Option<Set>, Vec<Fault>) {
    match read_layers(layers) {
        Err(faults) => (None, faults),
        Ok((pack, mut found)) => {
            let (set, faults) = compile(pack);
            found.extend(faults);
            (set, in_order(found))
        }
    }
}

/// Reads sets, lowest first, lays them over each other and checks what comes of it as a whole.
#[must_use]
pub fn check_layers(layers: &[Vec<PackFile>]) -> Checked {
    let (pack, found) = match read_layers(layers) {
        Ok(laid) => laid,
        Err(faults) => return Checked { set: None, faults },
    };
    let places = Places::of(&pack);
    let mut checked = check_pack(pack);
    if checked.faults.iter().any(|fault| places.touched(&fault.place).is_some()) {
        let (_, below) = layers.split_last().unzip();
        let before = below.filter(|below| !below.is_empty()).map_or_else(Vec::new, |below| check_layers(below).faults);
        let is_old = |fault: &Fault| before.iter().any(|old| old.code == fault.code && old.message == fault.message);
        for fault in checked.faults.iter_mut().filter(|fault| !is_old(fault)) {
            places.put(fault);
        }
    }
    checked.faults.extend(found);
    checked.faults = in_order(checked.faults);
    checked
}

/// Checks layers and, if nothing stands in the way, proves the set that comes of them.
#[must_use]
pub fn check_layers_and_prove(layers: &[Vec<PackFile>]) -> (Checked, Option<Proven>) {
    let mut checked = check_layers(layers);
    let is_sound = !checked.faults.iter().any(|fault| fault.weight == Weight::Error);
    let proven = checked.set.as_ref().filter(|_| is_sound).map(prove::prove);
    if let Some(proven) = &proven {
        checked.faults.extend(proven.faults.iter().cloned());
        checked.faults = in_order(checked.faults);
    }
    (checked, proven)
}

/// Where entries begin: a fault in one that a set above changed, and that was not there before, belongs to the words above.
struct Places {
    begins: Vec<Place>,
    touched: Vec<Touched>,
}

impl Places {
    fn of(pack: &Pack) -> Self {
        let mut begins = Vec::new();
        macro_rules! begins {
            ($($list:ident),*) => {
                $(begins.extend(pack.$list.iter().map(|filed| crate::pack::expression::place(&filed.file, &filed.entry.id)));)*
            };
        }
        begins!(jobs, classes, stages, outlooks, signs, cautions, sources, materials, problems, plants, rules);
        begins.sort();
        Self { begins, touched: pack.laid.touched.clone() }
    }

    /// What was said of the entry in which a place lies.
    fn touched(&self, place: &Place) -> Option<&Touched> {
        let at = self.begins.iter().rposition(|begin| begin.file == place.file && begin.line <= place.line)?;
        let begin = self.begins.get(at)?;
        self.touched.iter().rev().find(|touched| touched.entry == *begin)
    }

    fn put(&self, fault: &mut Fault) {
        if let Some(touched) = self.touched(&fault.place) {
            let there = std::mem::replace(&mut fault.place, touched.by.clone());
            fault.related.push((there, "of the entry that stands here".to_owned()));
        }
    }
}

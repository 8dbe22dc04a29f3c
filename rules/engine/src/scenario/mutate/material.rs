//! Every mutant of a material.

use super::Mutant;
use super::Operator::{self, *};
use super::literal::half;
use crate::fault::Place;
use crate::lang::ast::Literal;
use crate::lang::{parse, print};
use crate::pack::expression::place;
use crate::pack::material::Hazard;
use crate::pack::{Filed, MaterialEntry};

/// Every material that is this one with one change.
#[must_use]
pub fn mutants(filed: &Filed<MaterialEntry>) -> Vec<Mutant<MaterialEntry>> {
    let entry = &filed.entry;
    let mut out = Vec::new();
    let own = place(&filed.file, &entry.id);
    let mut push = |operator: Operator, place: Place, change: &dyn Fn(&mut MaterialEntry) -> Option<()>| {
        let mut entry = entry.clone();
        if change(&mut entry).is_some() {
            out.push(Mutant { operator, place, entry });
        }
    };
    for (at, most) in entry.maximum.iter().enumerate() {
        push(MaximumRaised, place(&filed.file, &most.value), &|entry| {
            entry.maximum.get_mut(at)?.value.value = doubled(&most.value.value)?;
            Some(())
        });
    }
    for (at, apart) in entry.keep_apart.iter().enumerate() {
        let id = [&apart.material, &apart.class, &apart.job].into_iter().flatten().next();
        let at_id = id.map_or_else(|| own.clone(), |id| place(&filed.file, id));
        push(SeparationShortened, at_id.clone(), &|entry| {
            entry.keep_apart.get_mut(at)?.days = half(apart.days);
            Some(())
        });
        push(SeparationDropped, at_id, &|entry| {
            entry.keep_apart.remove(at);
            Some(())
        });
    }
    for (at, id) in entry.cautions.iter().enumerate() {
        push(CautionDropped, place(&filed.file, id), &|entry| {
            entry.cautions.remove(at);
            Some(())
        });
    }
    for (at, id) in entry.classes.iter().enumerate() {
        push(ClassDropped, place(&filed.file, id), &|entry| {
            entry.classes.remove(at);
            Some(())
        });
    }
    if entry.hazard >= Hazard::Label {
        push(HazardLowered, own, &|entry| {
            entry.hazard = Hazard::Low;
            Some(())
        });
    }
    out
}

/// Twice a number with its unit; none where it can't be read.
fn doubled(written: &str) -> Option<String> {
    let after = parse::after(written).ok()?;
    Some(print::literal(&Literal { value: after.to * 2.0, unit: after.unit }))
}

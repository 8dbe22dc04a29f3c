//! What a replaced material may not take away: its maxima, cautions and separations bind through all sets, unless somebody says
//! that it may be, on what grounds, and a second person has looked.

use std::any::Any;
use std::collections::BTreeSet;

use super::tighten::is_at_most;
use crate::fault::{Fault, Place};
use crate::pack::MaterialEntry;
use crate::pack::layer::Change;
use crate::pack::rule::ApartEntry;

/// Says what the new entry takes away of the one below, where both are materials.
pub(super) fn loosened<T: 'static>(here: &Place, change: &Change, below: &T, new: &T, faults: &mut Vec<Fault>) {
    let [below, new] = [below, new].map(|entry| (entry as &dyn Any).downcast_ref::<MaterialEntry>());
    let (Some(below), Some(new)) = (below, new) else { return };
    let taken = taken(below, new);
    if taken.is_empty() {
        return;
    }
    let reviewers: BTreeSet<&str> =
        change.grounds.reviewed_by.iter().map(|name| name.trim()).filter(|name| !name.is_empty()).collect();
    let lacks: Vec<&str> = [
        (!change.grounds.loosen, "`loosen: true`"),
        (new.sources.is_empty(), "a source"),
        (reviewers.len() < 2, "a second reviewer (`reviewed_by: [one, another]`)"),
    ]
    .into_iter()
    .filter(|(lacks, _)| *lacks)
    .map(|(_, what)| what)
    .collect();
    if !lacks.is_empty() {
        let message = format!("the material `{}` loses {}", new.id.value, taken.join(", "));
        let help = format!("keep it, or let it go with {}", lacks.join(", "));
        faults.push(Fault::error("loosened", here.clone(), message).help(help));
    }
}

fn taken(below: &MaterialEntry, new: &MaterialEntry) -> Vec<String> {
    let mut out = Vec::new();
    if new.hazard < below.hazard {
        out.push("its grade of hazard".to_owned());
    }
    for most in &below.maximum {
        let kept = new.maximum.iter().find(|other| other.per == most.per);
        if kept.is_none_or(|kept| is_at_most(&kept.value.value, &most.value.value) != Some(true)) {
            out.push(format!("the maximum of {}", most.value.value));
        }
    }
    for caution in below.cautions.iter().filter(|c| !new.cautions.iter().any(|other| other.value == c.value)) {
        out.push(format!("the caution `{}`", caution.value));
    }
    let of = |apart: &ApartEntry| {
        [&apart.material, &apart.class, &apart.job].map(|id| id.as_ref().map(|id| id.value.clone()))
    };
    for apart in &below.keep_apart {
        if !new.keep_apart.iter().any(|other| of(other) == of(apart) && other.days >= apart.days) {
            let from = of(apart).into_iter().flatten().collect::<Vec<_>>().join(", ");
            out.push(format!("{} days apart from `{from}`", apart.days));
        }
    }
    out
}

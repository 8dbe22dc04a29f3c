//! A usual amount that is more than its material bears.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::rule::RuleEntry;
use crate::pack::{Filed, MaterialEntry, Pack};
use crate::unit::Unit;

/// Looks at `typical` against the maxima of the material of `max_of`; without one, of every material of the rule.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.rules {
        for amount in &entry.amount {
            let Some(typical) = &amount.typical else { continue };
            let Some(unit) = Unit::find(&typical.unit.value) else { continue };
            for material in materials(entry, amount.max_of.as_ref().map(|id| id.value.as_str()), pack) {
                let Some((most, written)) = maximum(material, unit) else { continue };
                if typical.max > most {
                    let mut fault = Fault::error(
                        "amount-above-maximum",
                        place(file, &typical.unit),
                        format!(
                            "up to {} {} is more than `{}` bears: {written}",
                            typical.max, unit.symbol, material.entry.id.value
                        ),
                    )
                    .help("lower the amount; a maximum is raised only with a source");
                    if let Some(first) = material.entry.maximum.first() {
                        fault.related.push((place(&material.file, &first.value), "its maximum stands here".to_owned()));
                    }
                    faults.push(fault);
                }
            }
        }
    }
}

fn materials<'p>(rule: &RuleEntry, max_of: Option<&str>, pack: &'p Pack) -> Vec<&'p Filed<MaterialEntry>> {
    let meant = |id: &str| max_of.map_or_else(|| rule.materials.iter().any(|m| m.value == id), |named| named == id);
    pack.materials.iter().filter(|material| meant(&material.entry.id.value)).collect()
}

/// The highest maximum of the unit's dimension, in that unit and as written. Of maxima on different things the highest
/// counts, since an amount does not say on what it is meant.
fn maximum<'p>(material: &'p Filed<MaterialEntry>, unit: &Unit) -> Option<(f64, &'p str)> {
    material
        .entry
        .maximum
        .iter()
        .filter_map(|maximum| {
            let read = crate::lang::parse::after(&maximum.value.value).ok()?;
            let own = Unit::find(&read.unit).filter(|own| own.dimension == unit.dimension)?;
            Some((own.convert(read.from, unit), maximum.value.value.as_str()))
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "amount-above-maximum",
    trips: &[("rules/rose.yaml", "typical: {min: 30, max: 60, unit: g}", "typical: {min: 30, max: 61, unit: g}")],
    also: &[],
    at: "g}\n",
    says: "rules/rose.yaml:43:41: error[amount-above-maximum]: up to 61 g is more than `granular-feed` bears: 60 g\n  help: lower the amount; a maximum is raised only with a source\n  materials/materials.yaml:6:33: its maximum stands here",
    just_not: &[("rules/rose.yaml", "typical: {min: 30, max: 60, unit: g}", "typical: {min: 1, max: 2.1, unit: oz}")],
};

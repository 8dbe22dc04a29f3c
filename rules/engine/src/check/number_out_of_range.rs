//! A number of an entry that lies outside what is possible. (Numbers in expressions are found while compiling, against the
//! range of their fact.)

use super::locate::Stretch;
use crate::fact::catalogue::Fact;
use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{At, Filed, Pack};

/// Looks at how plants drink, how bad problems are, what is usual.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    let mut see = |file: &str, id: &At<String>, keys: &[&str], value: f64, (low, high): (f64, f64)| {
        if (low..=high).contains(&value) {
            return;
        }
        let entry = Stretch::entry(pack, file, id);
        let here =
            keys.iter().try_fold(entry, |at, key| at.key(key, 0)).map_or_else(|| place(file, id), Stretch::place);
        let message = format!("`{}` of `{}` lies between {low} and {high}, found {value}", keys.join("."), id.value);
        faults.push(Fault::error("number-out-of-range", here, message));
    };
    let range = |fact: Fact| fact.entry().range.unwrap_or((f64::MIN, f64::MAX));
    for Filed { file, entry } in &pack.plants {
        see(file, &entry.id, &["water", "factor"], entry.water.factor, range(Fact::PlantWaterFactor));
        see(file, &entry.id, &["water", "depletion"], entry.water.depletion, range(Fact::PlantDepletion));
    }
    for Filed { file, entry } in &pack.problems {
        see(file, &entry.id, &["impact"], f64::from(entry.impact), (0.0, 3.0));
    }
    for Filed { file, entry } in &pack.rules {
        for typical in entry.amount.iter().filter_map(|amount| amount.typical.as_ref()) {
            see(file, &entry.id, &["amount", "typical", "min"], typical.min, (0.0, 1e9));
            see(file, &entry.id, &["amount", "typical", "max"], typical.max, (0.0, 1e9));
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "number-out-of-range",
    trips: &[("plants/rose.yaml", "depletion: 0.4", "depletion: 40")],
    also: &[],
    at: "depletion: 40",
    says: "plants/rose.yaml:18:43: error[number-out-of-range]: `water.depletion` of `rose` lies between 0 and 1, found 40",
    just_not: &[("plants/rose.yaml", "depletion: 0.4", "depletion: 1.0")],
};

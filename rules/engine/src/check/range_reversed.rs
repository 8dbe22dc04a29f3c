//! A usual amount that runs from the larger to the smaller. (Ranges in expressions are found when they are read.)

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{Filed, Pack};

/// Looks at `typical` of every amount.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.rules {
        for typical in entry.amount.iter().filter_map(|amount| amount.typical.as_ref()) {
            if typical.min > typical.max {
                faults.push(
                    Fault::error(
                        "range-reversed",
                        place(file, &typical.unit),
                        format!("from {} to {} runs backwards", typical.min, typical.max),
                    )
                    .help(format!("write `min: {}, max: {}`", typical.max, typical.min)),
                );
            }
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "range-reversed",
    trips: &[("rules/rose.yaml", "typical: {min: 30, max: 60, unit: g}", "typical: {min: 60, max: 30, unit: g}")],
    also: &[],
    at: "g}\n",
    says: "rules/rose.yaml:43:41: error[range-reversed]: from 60 to 30 runs backwards\n  help: write `min: 30, max: 60`",
    just_not: &[("rules/rose.yaml", "typical: {min: 30, max: 60, unit: g}", "typical: {min: 30, max: 30, unit: g}")],
};

//! A window that opens nowhere: the rule is never due.

use super::window_table::{WindowState, by_window, place_of, window_table};
use crate::compile::set::Set;
use crate::fault::Fault;
use crate::prove::{Certificate, SCOPE};

/// Looks at every window in every reference climate.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    for ((rule, window), rows) in by_window(&window_table(set)) {
        if rows.iter().any(|row| row.state != WindowState::Never) {
            continue;
        }
        if let Some((here, id)) = place_of(set, rule, window) {
            let mut climates: Vec<&str> = rows.iter().map(|row| row.climate).collect();
            climates.sort_unstable();
            climates.dedup();
            let mut fault =
                Fault::error("window-never-opens", here, format!("this window of `{id}` opens in none of {} reference climates", climates.len()))
                    .help("it may close before it opens, or hang on a marker that is nowhere: look at its sides, and at what stands behind `else`");
            fault.certificate = Some(Certificate {
                claim: format!("this window of `{id}` is never open"),
                climates: climates.len(),
                days: 365,
                cells: u64::try_from(rows.len() * 365).unwrap_or(u64::MAX),
                scope: SCOPE,
            });
            faults.push(fault);
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "window-never-opens",
    trips: &[(
        "rules/guards.yaml",
        "{opens: first_frost.median - 8 weeks, closes: coldest_week + 4 weeks}",
        "{opens: warmest_week, closes: warmest_week - 1 day}",
    )],
    also: &[],
    at: "warmest_week, closes",
    says: "rules/guards.yaml:15:19: error[window-never-opens]: this window of `guard.no-nitrogen-before-frost` opens in none of 57 reference climates\n  help: it may close before it opens, or hang on a marker that is nowhere: look at its sides, and at what stands behind `else`",
    just_not: &[(
        "rules/guards.yaml",
        "{opens: first_frost.median - 8 weeks, closes: coldest_week + 4 weeks}",
        "{opens: warmest_week, closes: warmest_week}",
    )],
};

//! A window that is open for most of the year: it says little, and its opening and closing days look like a mistake.

use super::window_table::{WindowState, by_window, place_of, window_table};
use crate::compile::set::Set;
use crate::fault::Fault;

/// Open for longer than this, in days, a window hardly is one.
const MOST: i32 = 300;

/// Looks at every window in every reference climate.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    for ((rule, window), rows) in by_window(&window_table(set)) {
        let long = rows.iter().filter_map(|row| match row.state {
            WindowState::Days(days) if days > MOST => Some((days, row.climate)),
            _ => None,
        });
        let mut long: Vec<(i32, &str)> = long.collect();
        long.sort_by_key(|(days, climate)| (-days, *climate));
        long.dedup();
        let (Some((days, climate)), Some((here, id))) = (long.first(), place_of(set, rule, window)) else { continue };
        let more = match long.len() - 1 {
            0 => String::new(),
            more => format!(", and over {MOST} in {more} more of the reference climates"),
        };
        faults.push(
            Fault::warning(
                "window-nearly-always-open",
                here,
                format!("this window of `{id}` is open for {days} days in {climate}{more}"),
            )
            .help("leave the window out if the work is for the whole year, or draw its sides together"),
        );
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "window-nearly-always-open",
    trips: &[(
        "rules/guards.yaml",
        "{opens: first_frost.median - 8 weeks, closes: coldest_week + 4 weeks}",
        "{opens: longest_day, closes: longest_day + 300 days}",
    )],
    also: &[],
    at: "longest_day, closes",
    says: "rules/guards.yaml:15:19: warning[window-nearly-always-open]: this window of `guard.no-nitrogen-before-frost` is open for 301 days in Ames IA, and over 300 in 52 more of the reference climates\n  help: leave the window out if the work is for the whole year, or draw its sides together",
    just_not: &[(
        "rules/guards.yaml",
        "{opens: first_frost.median - 8 weeks, closes: coldest_week + 4 weeks}",
        "{opens: longest_day, closes: longest_day + 299 days}",
    )],
};

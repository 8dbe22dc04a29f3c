//! A window whose sides lie so that, somewhere, a little more warmth would pair them with another year's.
//!
//! Two sides that do not follow each other by themselves are paired when the closing marker lies from 90 days before to
//! 275 days after the opening one. Within 30 days of either end the pairing is a matter of chance.

use std::collections::BTreeMap;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::marker::Turn;

use super::window_table::{each, place_of};
use crate::compile::set::Set;
use crate::compile::term::{MarkerAt, MarkerRef};
use crate::compile::window::Side;
use crate::decide::marker_dates::{self, Dates, YEARS};
use crate::decide::moment::Moment;
use crate::decide::window::{PAIR_AFTER, PAIR_BEFORE};
use crate::fault::Fault;

/// As near to the cut as this, in days, is close.
const CLOSE: i32 = 30;

/// Looks at every window with two sides in every reference climate.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    // For each window the climate in which the pairing is closest.
    let mut closest: BTreeMap<(u32, usize), (i32, &str, i32)> = BTreeMap::new();
    each(set, &mut |_, rule, moment, climate| {
        for (nth, window) in rule.windows.iter().enumerate() {
            let (Some(opens), Some(closes)) = (&window.opens, &window.closes) else { continue };
            if let Some((margin, gap)) = margin(opens, closes, moment)
                && margin < CLOSE
                && closest.get(&(rule.rule, nth)).is_none_or(|(least, ..)| margin < *least)
            {
                closest.insert((rule.rule, nth), (margin, climate, gap));
            }
        }
    });
    for ((rule, window), (margin, climate, gap)) in closest {
        let Some((here, id)) = place_of(set, rule, window) else { continue };
        let way = if gap < 0 { format!("{} days before", -gap) } else { format!("{gap} days after") };
        let cut = if gap < 0 { format!("{PAIR_BEFORE} days before") } else { format!("{PAIR_AFTER} days after") };
        faults.push(
            Fault::warning("window-pairing-is-close", here, format!("in {climate} this window of `{id}` closes by a marker {way} the one it opens by, {margin} days from the cut at {cut}"))
                .help("a slightly other climate would pair it with another year's: hang both sides on one marker, or on one that rises and one that falls"),
        );
    }
}

/// How far the pair of sides lies from being paired otherwise, and how far the closing marker lies behind the opening
/// one, both in days and before anything is added to them. None where they are paired in another way, or not at all.
fn margin(opens: &Side, closes: &Side, moment: &Moment<'_>) -> Option<(i32, i32)> {
    let (open, starts) = present(opens, moment)?;
    let (close, ends) = present(closes, moment)?;
    if open.marker == close.marker || follows(&open.marker, &close.marker) {
        return None;
    }
    // The year asked stands in the middle; every year is alike.
    let start = starts.get(YEARS / 2).copied().flatten()?;
    let end =
        ends.iter().flatten().copied().filter(|end| *end > start - PAIR_BEFORE && *end <= start + PAIR_AFTER).min()?;
    let gap = end - start;
    Some(((gap + PAIR_BEFORE).min(PAIR_AFTER - gap), gap))
}

/// The first marker of a side that is not absent, with its days.
fn present<'s>(side: &'s Side, moment: &Moment<'_>) -> Option<(&'s MarkerAt, [Option<Day>; YEARS])> {
    for at in side {
        match marker_dates::of(&at.marker, moment) {
            Dates::Days(days) => return Some((at, days)),
            Dates::Unknown => return None,
            Dates::Absent(_) => {}
        }
    }
    None
}

/// Whether the closing marker is simply the next one after the opening marker.
fn follows(opens: &MarkerRef, closes: &MarkerRef) -> bool {
    match (opens.turn(), closes.turn()) {
        (Turn::Rising, Turn::Falling) | (Turn::Falling, Turn::Rising) | (Turn::Plant, Turn::Plant) => true,
        (Turn::Wet, Turn::Wet) => match (opens, closes) {
            (MarkerRef::Season(a), MarkerRef::Season(b)) => a.season_partner() == Some(*b),
            _ => false,
        },
        _ => false,
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "window-pairing-is-close",
    trips: &[(
        "rules/guards.yaml",
        "{opens: first_frost.median - 8 weeks, closes: coldest_week + 4 weeks}",
        "{opens: autumn_equinox, closes: longest_day}",
    )],
    also: &[],
    at: "autumn_equinox, closes",
    says: "rules/guards.yaml:15:19: warning[window-pairing-is-close]: in Clanton AL this window of `guard.no-nitrogen-before-frost` closes by a marker 273 days after the one it opens by, 2 days from the cut at 275 days after\n  help: a slightly other climate would pair it with another year's: hang both sides on one marker, or on one that rises and one that falls",
    just_not: &[(
        "rules/guards.yaml",
        "{opens: first_frost.median - 8 weeks, closes: coldest_week + 4 weeks}",
        "{opens: longest_day, closes: autumn_equinox}",
    )],
};

//! Windows: occurrences around the day, and where the day stands.

use lammas_agronomy::calendar::Day;
use lammas_engine::lang::ast::Expr;
use lammas_engine::lang::{parse, print};
use lammas_engine::pack::rule::WindowEntry;

use super::markers::{Dates, Turn, ends, season_of, turn};
use super::tree::days;
use super::world::World;

/// 26 weeks.
const HALF: i32 = 182;

/// First, best and last day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Open {
    pub(crate) opens: Day,
    pub(crate) best: Day,
    pub(crate) closes: Day,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Found {
    AllYear,
    Some(Vec<Open>),
    Unknown,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum State {
    AllYear,
    Open(Open),
    Closed { before: Option<Day>, next: Option<Day> },
    Unknown,
}

/// One side after `else`.
enum Side {
    Missing,
    Unknown,
    Absent { marker: Box<Expr>, always: bool },
    On { marker: Box<Expr>, days: Vec<Day>, offset: i32 },
}

impl World<'_> {
    fn side(&self, text: Option<&str>) -> Side {
        let Some(text) = text else { return Side::Missing };
        let mut side = Side::Missing;
        for choice in parse::side(text).unwrap().choices {
            let offset = choice.offset.as_ref().map_or(0, |(literal, _)| days(literal));
            let marker = choice.marker;
            side = match self.dates(&marker).0 {
                Dates::Unknown => return Side::Unknown,
                Dates::On(days) => return Side::On { marker, days, offset },
                Dates::Absent { always } => Side::Absent { marker, always },
            };
        }
        side
    }

    /// The occurrences of one window.
    pub(crate) fn occurrences(&self, window: &WindowEntry) -> Found {
        let text = |at: &Option<lammas_engine::pack::At<String>>| at.as_ref().map(|at| at.value.clone());
        let (opens, best, closes) = (text(&window.opens), text(&window.best), text(&window.closes));
        let (opens, best, closes) =
            (self.side(opens.as_deref()), self.side(best.as_deref()), self.side(closes.as_deref()));
        if matches!(opens, Side::Unknown) || matches!(closes, Side::Unknown) {
            return Found::Unknown;
        }
        let is_absent = |side: &Side| matches!(side, Side::Absent { .. });
        if window.if_absent.is_some() && (is_absent(&opens) || is_absent(&closes)) {
            return Found::AllYear;
        }
        if let (Side::Absent { marker: start, always: true }, Side::Absent { marker: end, always: true }) =
            (&opens, &closes)
            && season_of(start).is_some()
            && season_of(start) == season_of(end)
            && !ends(start)
            && ends(end)
        {
            return Found::AllYear;
        }
        let year = self.day.year();
        // What happens once is looked at however long ago it was.
        let near = |day: &Day, days: &[Day]| days.len() == 1 || (year - 2..=year + 2).contains(&day.year());
        let mut found = Vec::new();
        match (&opens, &closes) {
            (Side::On { marker, days, offset }, closes) => {
                for opening in days.iter().filter(|day| near(day, days)) {
                    let first = *opening + *offset;
                    let next = days.iter().find(|day| *day > opening).map(|day| *day + *offset - 1);
                    let half = next.map_or(first + HALF, |next| next.min(first + HALF));
                    let last = match closes {
                        Side::Missing => Some(half),
                        Side::Absent { marker, always } => (ends(marker) || !always).then_some(half),
                        Side::On { marker: other, days, offset } => {
                            pair(marker, *opening, other, days).map(|day| day + *offset)
                        }
                        Side::Unknown => None,
                    };
                    let best = match &best {
                        Side::On { marker: other, days, offset } => {
                            pair(marker, *opening, other, days).map(|day| day + *offset)
                        }
                        _ => None,
                    };
                    found.extend(last.and_then(|last| occurrence(first, best, last)));
                }
            }
            (Side::Missing | Side::Absent { .. }, Side::On { marker, days, offset }) => {
                let no_lower_end = match &opens {
                    Side::Absent { marker, always } => *always && !ends(marker),
                    _ => true,
                };
                for closing in days.iter().filter(|day| near(day, days) && no_lower_end) {
                    let last = *closing + *offset;
                    let best = match &best {
                        Side::On { marker: other, days, offset } => {
                            pair_back(marker, *closing, other, days).map(|day| day + *offset)
                        }
                        _ => None,
                    };
                    found.extend(occurrence(last - HALF, best, last));
                }
            }
            _ => {}
        }
        Found::Some(found)
    }

    /// Where the day stands in a list of windows; no window at all is always open.
    pub(crate) fn window(&self, windows: &[WindowEntry]) -> State {
        if windows.is_empty() {
            return State::AllYear;
        }
        let found: Vec<Found> = windows.iter().map(|window| self.occurrences(window)).collect();
        // As long as the climate year of 365 days every year: open on all days, 29 February among them.
        let whole = |found: &Found| matches!(found, Found::Some(list) if list.len() > 1 && list.iter().all(|o| o.closes - o.opens >= 364));
        if found.contains(&Found::AllYear) || found.iter().any(whole) {
            return State::AllYear;
        }
        let all = found.iter().flat_map(|found| match found {
            Found::Some(list) => list.as_slice(),
            _ => &[],
        });
        let all = joined(all.copied().collect());
        if let Some(open) = all.iter().find(|open| open.opens <= self.day && self.day <= open.closes) {
            // Longer than two years: open on all days.
            return if open.closes - open.opens > 730 { State::AllYear } else { State::Open(*open) };
        }
        if found.contains(&Found::Unknown) {
            return State::Unknown;
        }
        State::Closed {
            before: all.iter().map(|open| open.closes).filter(|closes| *closes < self.day).max(),
            next: all.iter().map(|open| open.opens).filter(|opens| *opens > self.day).min(),
        }
    }
}

/// The occurrence of another marker that belongs to an opening, both before offsets.
fn pair(opens: &Expr, opening: Day, other: &Expr, days: &[Day]) -> Option<Day> {
    if print::expr(opens) == print::expr(other) {
        return Some(opening);
    }
    let found = if is_a_half(opens, other) {
        days.iter().find(|day| **day > opening)
    } else {
        // One day more for 29 February: no other occurrence lies within the 365 days then.
        days.iter().find(|day| **day > opening - 90 && **day <= opening + 276)
    };
    found.copied()
}

/// The occurrence of a best marker that belongs to a closing, where there is no opening.
fn pair_back(closes: &Expr, closing: Day, other: &Expr, days: &[Day]) -> Option<Day> {
    if print::expr(closes) == print::expr(other) {
        return Some(closing);
    }
    let found = if is_a_half(closes, other) {
        days.iter().rfind(|day| **day < closing)
    } else {
        days.iter().rfind(|day| **day >= closing - 276 && **day < closing + 90)
    };
    found.copied()
}

/// One rising and one falling marker, the start and the end of one wet season, or two markers of the plant.
fn is_a_half(a: &Expr, b: &Expr) -> bool {
    match (turn(a), turn(b)) {
        (Turn::Rising, Turn::Falling) | (Turn::Falling, Turn::Rising) | (Turn::Plant, Turn::Plant) => true,
        (Turn::Wet, Turn::Wet) => season_of(a) == season_of(b),
        _ => false,
    }
}

/// Empty if it would close before it opens; the best day is moved into it.
fn occurrence(opens: Day, best: Option<Day>, closes: Day) -> Option<Open> {
    (opens <= closes).then(|| Open { opens, best: best.unwrap_or(opens).clamp(opens, closes), closes })
}

/// Occurrences that touch or overlap become one: the first opening, the last closing, the first best day.
pub(crate) fn joined(mut all: Vec<Open>) -> Vec<Open> {
    all.sort();
    let mut out: Vec<Open> = Vec::new();
    for open in all {
        match out.last_mut() {
            Some(before) if open.opens <= before.closes + 1 => {
                before.closes = before.closes.max(open.closes);
                before.best = before.best.min(open.best);
            }
            _ => out.push(open),
        }
    }
    out
}

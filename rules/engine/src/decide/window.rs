//! Windows on the calendar: occurrences around the day asked, and whether the day lies in one.

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::marker::{Side as End, Turn};

use super::marker_dates::{self, Absence, Dates, YEARS};
use super::moment::Moment;
use crate::compile::moves::Moves;
use crate::compile::rule::PlantRule;
use crate::compile::term::{MarkerAt, MarkerRef};
use crate::compile::window::{Side, Window};

/// How long a window lasts when only one side is written or comes: 26 weeks.
const HALF_YEAR: i32 = 26 * 7;
/// A closes marker of another kind may lie this long before the opens marker.
pub const PAIR_BEFORE: i32 = 90;
/// And this long after it.
pub const PAIR_AFTER: i32 = 275;
/// An occurrence longer than this is open on all days: the years looked at are covered.
const ALL_YEAR_DAYS: i32 = 730;

/// So many days before a window closes the score or the band of its rule changes.
const BEFORE_CLOSING: [i32; 9] = [34, 28, 21, 14, 9, 7, 3, 2, -1];

/// One occurrence of a window; all three days belong to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Occurrence {
    /// First day.
    pub opens: Day,
    /// Best day.
    pub best: Day,
    /// Last day.
    pub closes: Day,
}

/// Where the day stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum State {
    /// There is no window, or it is open on all days.
    AllYear,
    /// In an occurrence.
    Open(Occurrence),
    /// Between two, or beside one: the last day before, the next opening, if there are any.
    Closed {
        /// The last day of the occurrence before.
        before: Option<Day>,
        /// The first day of the next.
        next: Option<Day>,
    },
    /// A marker that is used is unknown.
    Unknown,
}

/// What a side hangs on, after `else`.
#[derive(Clone, Debug)]
enum Resolved<'a> {
    Missing,
    Dated { days: [Option<Day>; YEARS], at: &'a MarkerAt },
    Absent { why: Absence, end: End, at: &'a MarkerAt },
    Unknown,
}

fn resolve<'a>(side: Option<&'a Side>, moment: &Moment<'_>) -> Resolved<'a> {
    let Some(side) = side else { return Resolved::Missing };
    let mut last = Resolved::Missing;
    for at in side {
        // The days of the marker itself: pairs are made before the offsets.
        last = match marker_dates::of(&at.marker, moment) {
            Dates::Unknown => return Resolved::Unknown,
            Dates::Days(days) => return Resolved::Dated { days, at },
            Dates::Absent(why) => Resolved::Absent { why, end: at.marker.side(), at },
        };
    }
    last
}

/// The windows of a rule on the calendar, the same for all days of a year.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Joined {
    /// Open on all days.
    AllYear,
    /// Open on these days, in their order; of the other days it may be that nobody knows.
    Some {
        /// The occurrences: none touches the next.
        list: Vec<Occurrence>,
        /// Whether a marker of one of the windows is unknown.
        unknown: bool,
    },
}

impl Joined {
    /// The occurrences, in their order.
    #[must_use]
    pub fn list(&self) -> &[Occurrence] {
        match self {
            Self::AllYear => &[],
            Self::Some { list, .. } => list,
        }
    }

    /// The days on which something turns: it opens, the best day comes, it nears its end, is closed, half of the way to the
    /// next opening lies behind.
    pub fn turns(&self, visit: &mut impl FnMut(Day)) {
        let mut before: Option<Day> = None;
        for occurrence in self.list() {
            visit(occurrence.opens);
            visit(occurrence.best);
            BEFORE_CLOSING.iter().for_each(|days| visit(occurrence.closes - *days));
            if let Some(closed) = before {
                visit(closed + (occurrence.opens - closed) / 2 + 1);
            }
            before = Some(occurrence.closes);
        }
    }

    /// Where a day stands.
    #[must_use]
    pub fn on(&self, day: Day) -> State {
        let Self::Some { list, unknown } = self else { return State::AllYear };
        let next = list.partition_point(|occurrence| occurrence.opens <= day);
        let last = next.checked_sub(1).and_then(|at| list.get(at));
        match last.filter(|open| day <= open.closes) {
            Some(open) if open.closes - open.opens > ALL_YEAR_DAYS => State::AllYear,
            Some(open) => State::Open(*open),
            None if *unknown => State::Unknown,
            None => State::Closed {
                before: last.map(|occurrence| occurrence.closes),
                next: list.get(next).map(|occurrence| occurrence.opens),
            },
        }
    }
}

/// Where the day stands in the windows of a rule of the plant, by its number: open if any of them is.
#[must_use]
pub fn of_rule(at: u32, moment: &Moment<'_>) -> State {
    let Some(rule) = moment.book.rules.get(at as usize) else { return State::AllYear };
    let moves = moment.book.moving.windows.get(at as usize).copied().unwrap_or(Moves::Never);
    match moment.follows(moves) {
        Moves::Climate | Moves::Stage => kept(at, rule, moment),
        Moves::Never | Moves::Caller => state(&rule.windows, moment),
    }
}

fn kept(at: u32, rule: &PlantRule, moment: &Moment<'_>) -> State {
    let almanac = moment.almanac();
    almanac.windows(at, || joined(&rule.windows, moment)).map_or(State::AllYear, |joined| joined.on(moment.day))
}

/// Where the day stands in some windows: open if any of them is.
#[must_use]
pub fn state(windows: &[Window], moment: &Moment<'_>) -> State {
    joined(windows, moment).on(moment.day)
}

/// Some windows on the calendar around the year of the day.
#[must_use]
pub fn joined(windows: &[Window], moment: &Moment<'_>) -> Joined {
    if windows.is_empty() {
        return Joined::AllYear;
    }
    let mut all = Vec::new();
    let mut unknown = false;
    for window in windows {
        match occurrences(window, moment) {
            Found::AllYear => return Joined::AllYear,
            Found::Unknown => unknown = true,
            Found::Some(found) if covers_the_year(&found) => return Joined::AllYear,
            Found::Some(found) => all.extend(found),
        }
    }
    Joined::Some { list: join(all), unknown }
}

/// Whether every year's occurrence is as long as the climate year, which has 365 days: that of a leap year it takes twice.
fn covers_the_year(found: &[Occurrence]) -> bool {
    found.len() > 1 && found.iter().all(|o| o.closes - o.opens >= 364)
}

/// The occurrences of one window.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Found {
    /// Open on all days.
    AllYear,
    /// These, not yet joined.
    Some(Vec<Occurrence>),
    /// A marker that is used is unknown.
    Unknown,
}

/// The occurrences of one window around the day asked.
#[must_use]
pub fn occurrences(window: &Window, moment: &Moment<'_>) -> Found {
    let opens = resolve(window.opens.as_ref(), moment);
    let closes = resolve(window.closes.as_ref(), moment);
    if window.all_year_if_absent
        && (matches!(opens, Resolved::Absent { .. }) || matches!(closes, Resolved::Absent { .. }))
    {
        return Found::AllYear;
    }
    let best = match resolve(window.best.as_ref(), moment) {
        Resolved::Dated { days, at } => Some((days, at)),
        _ => None,
    };
    match (opens, closes) {
        (Resolved::Unknown, _) | (_, Resolved::Unknown) => Found::Unknown,
        (
            Resolved::Absent { why: Absence::Always, end: End::Start, at: a },
            Resolved::Absent { why: Absence::Always, end: End::End, at: b },
        ) if is_one_season(&a.marker, &b.marker) => Found::AllYear,
        (Resolved::Dated { days, at }, Resolved::Dated { days: ends, at: closing }) => {
            Found::Some(pairs(&days, at, &ends, closing, best, moment))
        }
        (Resolved::Dated { days, at }, Resolved::Missing) => Found::Some(from_opening(&days, at, best, moment)),
        (Resolved::Dated { days, at }, Resolved::Absent { why, end, .. }) => {
            if why == Absence::Always && end == End::Start {
                Found::Some(Vec::new())
            } else {
                Found::Some(from_opening(&days, at, best, moment))
            }
        }
        (Resolved::Missing, Resolved::Dated { days, at }) => Found::Some(until_closing(&days, at, best, moment)),
        (Resolved::Absent { why: Absence::Always, end: End::Start, .. }, Resolved::Dated { days, at }) => {
            Found::Some(until_closing(&days, at, best, moment))
        }
        _ => Found::Some(Vec::new()),
    }
}

fn is_one_season(start: &MarkerRef, end: &MarkerRef) -> bool {
    match (start, end) {
        (MarkerRef::Season(a), MarkerRef::Season(b)) => a.season_partner() == Some(*b),
        _ => false,
    }
}

/// Whether the closes marker is simply the next one after the opens marker.
fn follows(opens: &MarkerRef, closes: &MarkerRef) -> bool {
    match (opens.turn(), closes.turn()) {
        (Turn::Rising, Turn::Falling) | (Turn::Falling, Turn::Rising) | (Turn::Plant, Turn::Plant) => true,
        (Turn::Wet, Turn::Wet) => is_one_season(opens, closes) || is_one_season(closes, opens),
        _ => false,
    }
}

/// The occurrence of another marker that belongs to this one of `own`, before offsets.
fn partner(own: (usize, Day), marker: &MarkerRef, others: &[Option<Day>; YEARS], other: &MarkerRef) -> Option<Day> {
    let (at, day) = own;
    if marker == other {
        return others.get(at).copied().flatten();
    }
    let candidates = others.iter().flatten().copied();
    if follows(marker, other) {
        candidates.filter(|d| *d > day).min()
    } else {
        // One day more: over a 29 February two years lie 366 days apart, and none of them may fall between.
        candidates.filter(|d| *d > day - PAIR_BEFORE && *d <= day + PAIR_AFTER + 1).min()
    }
}

/// The same where the anchor is the closing: what belongs to it lies before it.
fn partner_before(
    own: (usize, Day),
    marker: &MarkerRef,
    others: &[Option<Day>; YEARS],
    other: &MarkerRef,
) -> Option<Day> {
    let (at, day) = own;
    if marker == other {
        return others.get(at).copied().flatten();
    }
    let candidates = others.iter().flatten().copied();
    if follows(other, marker) {
        candidates.filter(|d| *d < day).max()
    } else {
        candidates.filter(|d| *d >= day - PAIR_AFTER - 1 && *d < day + PAIR_BEFORE).max()
    }
}

/// The anchors: the occurrences from two years before to two years after the year of the day asked. What happens once is one of
/// them however long ago it was.
fn anchors<'d>(days: &'d [Option<Day>; YEARS], moment: &Moment<'_>) -> impl Iterator<Item = (usize, Day)> + 'd {
    let years = moment.in_years(ClimateDay::around(0));
    let first_of = |at: usize| years.get(at).copied().flatten();
    let (from, until) = (first_of(1), first_of(YEARS - 1));
    let once = days.iter().flatten().count() == 1;
    let all = days.iter().enumerate().filter_map(|(at, day)| day.map(|d| (at, d)));
    all.filter(move |(_, day)| once || (Some(*day) >= from && Some(*day) < until))
}

fn best_day(
    own: (usize, Day),
    at: &MarkerAt,
    best: Option<([Option<Day>; YEARS], &MarkerAt)>,
    opens: Day,
    closes: Day,
) -> Day {
    best.and_then(|(days, marker)| partner(own, &at.marker, &days, &marker.marker).map(|day| day + marker.days))
        .map_or(opens, |day| day.clamp(opens, closes))
}

type Best<'a> = Option<([Option<Day>; YEARS], &'a MarkerAt)>;

fn pairs(
    days: &[Option<Day>; YEARS],
    at: &MarkerAt,
    ends: &[Option<Day>; YEARS],
    closing: &MarkerAt,
    best: Best<'_>,
    moment: &Moment<'_>,
) -> Vec<Occurrence> {
    anchors(days, moment)
        .filter_map(|own| {
            let end = partner(own, &at.marker, ends, &closing.marker)?;
            let (opens, closes) = (own.1 + at.days, end + closing.days);
            // A season that is too short for the work: never carried on to the following year.
            (opens <= closes).then(|| Occurrence { opens, best: best_day(own, at, best, opens, closes), closes })
        })
        .collect()
}

fn from_opening(days: &[Option<Day>; YEARS], at: &MarkerAt, best: Best<'_>, moment: &Moment<'_>) -> Vec<Occurrence> {
    anchors(days, moment)
        .map(|own| {
            let opens = own.1 + at.days;
            let next = days.iter().flatten().map(|d| *d + at.days).filter(|d| *d > opens).min();
            let closes = next.map_or(opens + HALF_YEAR, |next| (opens + HALF_YEAR).min(next - 1));
            Occurrence { opens, best: best_day(own, at, best, opens, closes), closes }
        })
        .collect()
}

fn until_closing(days: &[Option<Day>; YEARS], at: &MarkerAt, best: Best<'_>, moment: &Moment<'_>) -> Vec<Occurrence> {
    anchors(days, moment)
        .map(|own| {
            let closes = own.1 + at.days;
            let opens = closes - HALF_YEAR;
            let best = best
                .and_then(|(days, marker)| {
                    partner_before(own, &at.marker, &days, &marker.marker).map(|day| day + marker.days)
                })
                .map_or(opens, |day| day.clamp(opens, closes));
            Occurrence { opens, best, closes }
        })
        .collect()
}

/// Occurrences that touch or overlap are one: first opening, last closing, first best day.
fn join(mut all: Vec<Occurrence>) -> Vec<Occurrence> {
    all.sort_by_key(|o| (o.opens, o.closes));
    let mut out: Vec<Occurrence> = Vec::with_capacity(all.len());
    for next in all {
        match out.last_mut() {
            Some(last) if next.opens <= last.closes + 1 => {
                last.closes = last.closes.max(next.closes);
                last.best = last.best.min(next.best);
            }
            _ => out.push(next),
        }
    }
    out
}

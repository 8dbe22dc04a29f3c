//! The days of a marker around the day asked.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::marker::MarkerState;
use lammas_agronomy::origin::Origin;

use super::moment::Moment;
use crate::compile::term::{MarkerAt, MarkerRef};
use crate::compile::window::Side;

/// How many years around the year asked are looked at: three before and three after.
pub const YEARS: usize = 7;

/// Why a marker has no day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Absence {
    /// Its season does not come, or the year is even.
    Never,
    /// Its season does not end.
    Always,
}

/// The days of a marker.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dates {
    /// One a year, for the years around the year asked; a single event stands in one place only.
    Days([Option<Day>; YEARS]),
    /// Known not to exist.
    Absent(Absence),
    /// Nobody said.
    Unknown,
}

impl Dates {
    /// A single event.
    #[must_use]
    pub const fn once(day: Day) -> Self {
        Self::Days([None, None, None, Some(day), None, None, None])
    }

    /// The same days moved by so many.
    #[must_use]
    pub fn moved(self, by: i32) -> Self {
        match self {
            Self::Days(days) if by != 0 => Self::Days(days.map(|day| day.map(|d| d + by))),
            same => same,
        }
    }

    /// The occurrence nearest to a day; of two that are equally near the coming one.
    #[must_use]
    pub fn nearest(&self, to: Day) -> Option<Day> {
        let Self::Days(days) = self else { return None };
        days.iter().flatten().copied().min_by_key(|day| ((*day - to).abs(), *day < to))
    }

    /// The next occurrence on or after a day.
    #[must_use]
    pub fn next(&self, from: Day) -> Option<Day> {
        let Self::Days(days) = self else { return None };
        days.iter().flatten().copied().filter(|day| *day >= from).min()
    }

    /// The last occurrence on or before a day.
    #[must_use]
    pub fn last(&self, until: Day) -> Option<Day> {
        let Self::Days(days) = self else { return None };
        days.iter().flatten().copied().filter(|day| *day <= until).max()
    }
}

/// The days of a marker with its offset.
#[must_use]
pub fn at(at: &MarkerAt, moment: &Moment<'_>) -> Dates {
    of(&at.marker, moment).moved(at.days)
}

/// The days of the first marker of a side that is not absent.
#[must_use]
pub fn first_present(side: &Side, moment: &Moment<'_>) -> Dates {
    let mut last = Dates::Absent(Absence::Never);
    for choice in side {
        last = at(choice, moment);
        if !matches!(last, Dates::Absent(_)) {
            return last;
        }
    }
    last
}

/// Where the days of a marker come from: frost dates may be given, works and signs are the caller's own words.
#[must_use]
pub fn origin(marker: &MarkerRef, moment: &Moment<'_>) -> Origin {
    let season = &moment.question.climate.season;
    match marker {
        MarkerRef::Season(marker) => season.marker_origin(*marker),
        MarkerRef::HeatReached { from, .. } => origin(&from.marker, moment).weakest(season.curve_origin()),
        MarkerRef::Stage(stage) if super::stage::is_given(*stage, moment) => Origin::Given,
        MarkerRef::ChillReached(_) | MarkerRef::Stage(_) => season.curve_origin(),
        MarkerRef::Planted | MarkerRef::Since(_) | MarkerRef::Last(_) | MarkerRef::HarvestWait | MarkerRef::Today => {
            Origin::Given
        }
    }
}

/// The days of a marker.
#[must_use]
pub fn of(marker: &MarkerRef, moment: &Moment<'_>) -> Dates {
    let question = moment.question;
    match marker {
        MarkerRef::Season(marker) => match question.climate.marker(*marker) {
            MarkerState::Seasonal(day) => Dates::Days(moment.in_years(day)),
            MarkerState::Never | MarkerState::Even => Dates::Absent(Absence::Never),
            MarkerState::Always => Dates::Absent(Absence::Always),
            MarkerState::Unknown => Dates::Unknown,
        },
        MarkerRef::HeatReached { sum_cd, base_c, from } => match at(from, moment) {
            Dates::Days(days) => {
                let days = days.map(|day| day.and_then(|d| question.climate.heat_reached(*sum_cd, *base_c, d)));
                if days.iter().all(Option::is_none) { Dates::Absent(Absence::Never) } else { Dates::Days(days) }
            }
            other => other,
        },
        MarkerRef::ChillReached(hours) => {
            let middle = moment.day.year();
            let years = [-3, -2, -1, 0, 1, 2, 3].map(|away| middle + away);
            let season = &question.climate.season;
            if season.chill_start().is_none() {
                return Dates::Absent(Absence::Never);
            }
            let days = years.map(|year| season.chill_reached(f64::from(*hours), year));
            if days.iter().all(Option::is_none) { Dates::Absent(Absence::Never) } else { Dates::Days(days) }
        }
        MarkerRef::Stage(stage) => super::stage::begins(*stage, moment),
        MarkerRef::Planted => question.planted.map_or(Dates::Unknown, Dates::once),
        MarkerRef::Since(sign) => match question.signs.get(usize::from(*sign)).and_then(|s| s.since) {
            Some(day) => Dates::once(day),
            None => Dates::Unknown,
        },
        MarkerRef::Last(work) => match super::history::last(*work, moment) {
            None => Dates::Unknown,
            Some(None) => Dates::Absent(Absence::Never),
            Some(Some(day)) => Dates::once(day),
        },
        MarkerRef::HarvestWait => super::history::harvest_wait(moment),
        MarkerRef::Today => Dates::once(moment.day),
    }
}

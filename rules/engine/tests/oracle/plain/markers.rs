//! Markers: their days around the day asked, and how they belong together.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::curve::Series;
use lammas_agronomy::marker::{Marker, MarkerState, Threshold};
use lammas_agronomy::origin::Origin;
use lammas_engine::lang::ast::{Argument, Expr, ExprKind, MarkerExpr};

use super::facts::{Found, fact, id};
use super::season_facts::literal;
use super::tree::days;
use super::value::Value;
use super::world::World;

/// The days of a marker, in order, some years either way.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Dates {
    Unknown,
    /// Known not to exist; whether because its season does not end.
    Absent {
        always: bool,
    },
    On(Vec<Day>),
}

/// Years looked at either side of the year of the day.
const YEARS: i32 = 4;

fn name_and_arguments(expr: &Expr) -> (&str, &[Argument]) {
    match &expr.kind {
        ExprKind::Path(name) => (name, &[]),
        ExprKind::Call(name, arguments) => (name, arguments),
        other => panic!("{other:?} is no marker"),
    }
}

fn of_climate(name: &str, arguments: &[Argument]) -> Option<Marker> {
    let series = |argument: &Argument| Series::ALL.into_iter().find(|s| s.as_str() == id(argument)).unwrap();
    // A daylength is a duration, in days here and in hours there.
    let threshold = |of: &Argument, at: &Argument| {
        let hours = if series(of) == Series::Daylength { 24.0 } else { 1.0 };
        Threshold::new(literal(at) * hours).unwrap()
    };
    match (name, arguments) {
        ("rises", [of, at]) => Some(Marker::Rises(series(of), threshold(of, at))),
        ("falls", [of, at]) => Some(Marker::Falls(series(of), threshold(of, at))),
        (_, []) => Marker::named(name),
        _ => None,
    }
}

impl World<'_> {
    /// The days of a marker without offset, and its origin.
    pub(crate) fn dates(&self, marker: &Expr) -> (Dates, Origin) {
        let (name, arguments) = name_and_arguments(marker);
        self.named_dates(name, arguments).unwrap_or_else(|| panic!("`{name}` is no marker"))
    }

    /// The same, moved by the offset.
    pub(crate) fn dates_with_offset(&self, marker: &MarkerExpr) -> (Dates, Origin) {
        let (dates, origin) = self.dates(&marker.marker);
        let by = marker.offset.as_ref().map_or(0, |(literal, _)| days(literal));
        match dates {
            Dates::On(days) => (Dates::On(days.into_iter().map(|day| day + by).collect()), origin),
            same => (same, origin),
        }
    }

    fn named_dates(&self, name: &str, arguments: &[Argument]) -> Option<(Dates, Origin)> {
        let once = |day: Option<Day>| day.map_or(Dates::Unknown, |day| Dates::On(vec![day]));
        if let Some(marker) = of_climate(name, arguments) {
            let dates = match self.season.marker(marker) {
                MarkerState::Seasonal(day) => {
                    let year = self.day.year();
                    Dates::On((year - YEARS..=year + YEARS).map(|year| day.in_year(year)).collect())
                }
                MarkerState::Always => Dates::Absent { always: true },
                MarkerState::Never | MarkerState::Even => Dates::Absent { always: false },
                MarkerState::Unknown => Dates::Unknown,
            };
            return Some((dates, self.season.marker_origin(marker)));
        }
        Some(match (name, arguments) {
            ("today", []) => (once(Some(self.day)), Origin::Given),
            ("planted", []) => (once(self.said.plant.planted_on.map(Day::from_date)), Origin::Given),
            ("harvest_wait", []) => (self.harvest_wait(), Origin::Given),
            ("since", [sign]) => (once(self.since(id(sign))), Origin::Given),
            ("last", [what]) => {
                let dates = match self.last(id(what)) {
                    None => Dates::Unknown,
                    Some(None) => Dates::Absent { always: false },
                    Some(Some(day)) => Dates::On(vec![day]),
                };
                (dates, Origin::Given)
            }
            ("stage", [stage]) => self.stage_begins(id(stage)),
            ("heat_reached", [sum, base, Argument::From(from)]) => self.heat_reached(literal(sum), literal(base), from),
            ("chill_reached", [hours]) => {
                // literals stand in base units; a day is the base of durations
                let wanted = literal(hours) * 24.0;
                let year = self.day.year();
                let reached: Vec<Day> =
                    (year - YEARS..=year + YEARS).filter_map(|year| self.chilled(wanted, year)).collect();
                let dates = if reached.is_empty() { Dates::Absent { always: false } } else { Dates::On(reached) };
                (dates, self.season.curve_origin())
            }
            _ => return None,
        })
    }

    /// The first day on which the winter that starts in a year has brought so many hours, day by day.
    fn chilled(&self, hours: f64, year: i32) -> Option<Day> {
        let start = self.season.chill_start()?;
        let (from, end) = (start.in_year(year), start.in_year(year + 1));
        (1..end - from).map(|days| from + days).find(|day| self.season.chill(*day).unwrap().0.hours >= hours - 1e-6)
    }

    /// The first day of a heat sum after each occurrence of a marker.
    fn heat_reached(&self, sum_cd: f64, base_c: f64, from: &MarkerExpr) -> (Dates, Origin) {
        let (dates, origin) = self.dates_with_offset(from);
        let origin = origin.max(self.season.curve_origin());
        let Dates::On(days) = dates else {
            return (if dates == Dates::Unknown { Dates::Unknown } else { Dates::Absent { always: false } }, origin);
        };
        let reached: Vec<Day> =
            days.into_iter().filter_map(|day| self.season.heat_reached(sum_cd, base_c, day)).collect();
        (if reached.is_empty() { Dates::Absent { always: false } } else { Dates::On(reached) }, origin)
    }

    /// A marker in a condition: its occurrence nearest to the day, the coming one of two equally near.
    pub(crate) fn marker_fact(&self, name: &str, arguments: &[Argument]) -> Option<Found> {
        let (dates, origin) = self.named_dates(name, arguments)?;
        let value = match dates {
            Dates::Unknown => Value::Unknown,
            Dates::Absent { .. } => Value::Absent,
            Dates::On(days) => {
                let near = days.iter().min_by_key(|day| ((**day - self.day).abs(), **day < self.day));
                near.map_or(Value::Absent, |day| Value::On(*day))
            }
        };
        Some(fact(name, value, origin))
    }
}

/// The turn of the year that a marker lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Turn {
    Rising,
    Falling,
    Wet,
    Plant,
    Other,
}

pub(crate) fn turn(marker: &Expr) -> Turn {
    let (name, _) = name_and_arguments(marker);
    let family = name.trim_end_matches(".early").trim_end_matches(".median").trim_end_matches(".late");
    match family {
        "last_frost" | "last_killing_frost" | "growing.start" | "hot_season.start" | "coldest_week"
        | "shortest_day" | "spring_equinox" | "rises" => Turn::Rising,
        "first_frost"
        | "first_killing_frost"
        | "growing.end"
        | "hot_season.end"
        | "warmest_week"
        | "longest_day"
        | "autumn_equinox"
        | "falls" => Turn::Falling,
        "rains.start" | "rains.end" | "second_rains.start" | "second_rains.end" => Turn::Wet,
        "stage" | "planted" | "last" | "since" | "heat_reached" | "chill_reached" => Turn::Plant,
        _ => Turn::Other,
    }
}

/// Whether a marker ends a season; all others start one, or count as a start that never comes.
pub(crate) fn ends(marker: &Expr) -> bool {
    let (name, _) = name_and_arguments(marker);
    name.ends_with(".end")
        || name.starts_with("last_frost")
        || name.starts_with("last_killing_frost")
        || name == "falls"
}

/// The season that a marker starts or ends, by a name of its own; none if it does neither.
pub(crate) fn season_of(marker: &Expr) -> Option<String> {
    let (name, _) = name_and_arguments(marker);
    let family = name.trim_end_matches(".early").trim_end_matches(".median").trim_end_matches(".late");
    Some(match family {
        "last_frost" | "first_frost" => "frost".to_owned(),
        "last_killing_frost" | "first_killing_frost" => "killing-frost".to_owned(),
        "rises" | "falls" => lammas_engine::lang::print::expr(marker).split_once('(')?.1.to_owned(),
        _ => family.strip_suffix(".start").or_else(|| family.strip_suffix(".end"))?.to_owned(),
    })
}

//! Winter chill: how much cold has come since growth ended.

use std::sync::OnceLock;

use super::Season;
use crate::calendar::{ClimateDay, Day};
use crate::chill::dynamic::Dynamic;
use crate::chill::hourly::{Extremes, daylight, hours_of_day};
use crate::chill::hours;
use crate::marker::Marker;
use crate::origin::Origin;

/// Where growth has no end, chill is counted from so many days before the shortest day.
const BEFORE_SHORTEST_DAYS: i32 = 8 * 7;
/// Days of a winter at most: it ends where the next one starts.
const WINTER_DAYS: i32 = 366;
/// Temperatures that the models are meant for, °C.
const HELD_C: (f64, f64) = (-60.0, 60.0);
/// Share of days, in tenths, that must be recorded for a sum to count as measured.
const MEASURED_TENTHS: i64 = 8;

/// Chill by the two models that varieties are told by.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Chill {
    /// Hours from 0 to 7.2 °C (Weinberger 1950).
    pub hours: f64,
    /// Portions of the Dynamic model (Fishman, Erez and Couvillon 1987).
    pub portions: f64,
}

/// Chill at the end of each day of a winter.
type Winter = OnceLock<Box<[Chill]>>;

/// What is kept of it, each worked out when it is first asked for.
#[derive(Debug, Default)]
pub(super) struct ChillKept {
    /// A winter of the curve without 29 February, and one with it.
    curve: [Winter; 2],
    /// The winters that records lie in, by their first days.
    recorded: OnceLock<Vec<(Day, Winter)>>,
}

impl Season {
    /// The climate day from which a winter's chill is counted: `growing.end`, or eight weeks before the shortest
    /// day where growth has no end. None where the year has neither.
    #[must_use]
    pub fn chill_start(&self) -> Option<ClimateDay> {
        let growing_end = self.marker(Marker::GrowingEnd).day();
        growing_end.or_else(|| Some(self.marker(Marker::ShortestDay).day()?.plus(-BEFORE_SHORTEST_DAYS)))
    }

    /// Minimum and maximum of a day, °C: recorded where both are there, else the curve's.
    fn extremes(&self, day: Day) -> Extremes {
        let recorded = self.observations.on(day).and_then(|weather| weather.tmin_c.zip(weather.tmax_c));
        let (tmin_c, tmax_c) = recorded.unwrap_or_else(|| {
            let day = day.climate_day();
            (self.tmin_c.at(day), self.tmax_c.at(day))
        });
        let hold = |t_c: f64| t_c.clamp(HELD_C.0, HELD_C.1);
        Extremes { tmin_c: hold(tmin_c), tmax_c: hold(tmax_c).max(hold(tmin_c)) }
    }

    /// Chill from a day up to the day before another; nothing when `to` is not after `from`. Hours by a sine by day
    /// and a logarithmic decline by night (Linvill 1990) through the recorded extremes, else through the curve's.
    /// The forecast is not read.
    #[must_use]
    pub fn chill_between(&self, from: Day, to: Day) -> Chill {
        let days = usize::try_from((to - from).max(0)).unwrap_or(0);
        self.chill_from(from).take(days).last().unwrap_or_default()
    }

    /// Chill at the end of each day from this day on.
    fn chill_from(&self, from: Day) -> impl Iterator<Item = Chill> + '_ {
        let mut state = Dynamic::default();
        let mut cold_hours = 0.0;
        let (mut before, mut today) = (self.extremes(from - 1), self.extremes(from));
        (0..).map(move |ahead| {
            let day = from + ahead;
            let next = self.extremes(day + 1);
            let sun = daylight(self.latitude_deg, day.climate_day().day_of_year());
            let hourly_c = hours_of_day(before, today, next.tmin_c, sun);
            for temperature_c in hourly_c {
                state = state.after_hour(temperature_c);
            }
            cold_hours += hours::chill_hours(&hourly_c);
            (before, today) = (today, next);
            Chill { hours: cold_hours, portions: state.portions }
        })
    }

    /// Chill of the winter of a day, up to the day before it: from the last [`Self::chill_start`] on or before it.
    /// Measured when at least 80 % of these days were recorded. None where chill has no start.
    #[must_use]
    pub fn chill(&self, on: Day) -> Option<(Chill, Origin)> {
        let start = self.winter_of(on)?;
        let chill = self.winter(start, |ends| {
            let days = usize::try_from(on - start).unwrap_or(0);
            days.checked_sub(1).and_then(|last| ends.get(last).copied()).unwrap_or_default()
        });
        let days = i64::from(on - start);
        let recorded =
            self.observations.between(start, on).iter().filter(|weather| weather.tmean_c().is_some()).count();
        let recorded = i64::try_from(recorded).unwrap_or(i64::MAX / 10);
        let measured = days > 0 && recorded * 10 >= days * MEASURED_TENTHS;
        Some((chill, if measured { Origin::Measured } else { self.curve_origin }))
    }

    /// The first day on which [`Self::chill`] of the winter that starts in a year has come to so many hours: the day
    /// after the one that brought them. None when the next winter starts first, and where chill has no start.
    #[must_use]
    pub fn chill_reached(&self, chill_hours: f64, year: i32) -> Option<Day> {
        let start = self.chill_start()?.in_year(year);
        if chill_hours <= 0.0 {
            return Some(start);
        }
        let days = self.winter(start, |ends| ends.partition_point(|end| end.hours < chill_hours));
        let reached = start + i32::try_from(days).ok()? + 1;
        (reached < self.chill_start()?.in_year(year + 1)).then_some(reached)
    }

    fn winter_of(&self, on: Day) -> Option<Day> {
        let start = self.chill_start()?;
        let this_year = start.in_year(on.year());
        Some(if this_year <= on { this_year } else { start.in_year(on.year() - 1) })
    }

    /// Reads the chill at the end of each day of the winter that starts on a day.
    fn winter<T>(&self, start: Day, read: impl FnOnce(&[Chill]) -> T) -> T {
        let recorded = self.chill_kept.recorded.get_or_init(|| {
            let Some((first, last)) = self.observations.extent() else { return Vec::new() };
            // the days before and after a winter shape its first and last hours
            let reaches = |start: &Day| *start <= last + 1 && *start + WINTER_DAYS >= first;
            let years = first.year() - 1..=last.year() + 1;
            let starts = years.filter_map(|year| Some(self.chill_start()?.in_year(year)));
            starts.filter(reaches).map(|start| (start, Winter::new())).collect()
        });
        let work_out = || self.chill_from(start).take(WINTER_DAYS as usize).collect();
        let with_leap_day = start.climate_day().in_year(start.year() + 1) - start == WINTER_DAYS;
        let [plain, leap] = &self.chill_kept.curve;
        let of_curve = if with_leap_day { leap } else { plain };
        let kept = recorded.iter().find(|(from, _)| *from == start).map_or(of_curve, |(_, kept)| kept);
        read(kept.get_or_init(work_out))
    }
}

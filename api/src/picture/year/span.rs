//! The days that are drawn: a year, from its shortest day on.

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::marker::Marker;
use lammas_engine::explain::season::SeasonWhole;

/// Where the plot begins and ends, units.
pub const LEFT: f64 = 32.0;
/// Where it ends.
pub const RIGHT: f64 = 366.0;

/// A year of days.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    first: Day,
    next: Day,
}

impl Span {
    /// The year in which a day lies. It begins on the shortest day of the place, else in its coldest week, else on
    /// 1 January.
    #[must_use]
    pub fn of(season: &SeasonWhole, day: Day) -> Self {
        let known = |wanted: Marker| {
            let shown = season.brief.markers.iter().find(|marker| Some(marker.name.as_str()) == wanted.name());
            shown.and_then(|marker| marker.nearest).map(|date| Day::from_date(date).climate_day())
        };
        let begins = known(Marker::ShortestDay).or_else(|| known(Marker::ColdestWeek)).unwrap_or(ClimateDay::around(0));
        let this_year = begins.in_year(day.year());
        let year = if this_year <= day { day.year() } else { day.year() - 1 };
        Self { first: begins.in_year(year), next: begins.in_year(year + 1) }
    }

    /// Its first day.
    #[must_use]
    pub fn first(self) -> Day {
        self.first
    }

    /// Whether a day is drawn.
    #[must_use]
    pub fn has(self, day: Day) -> bool {
        self.first <= day && day < self.next
    }

    /// All its days, 365 or 366.
    pub fn days(self) -> impl Iterator<Item = Day> {
        (0..self.next - self.first).map(move |after| self.first + after)
    }

    /// Days on which a curve is looked up: every third, and the last.
    pub fn sampled(self) -> impl Iterator<Item = Day> {
        let last = self.next - 1;
        self.days().filter(move |day| (*day - self.first) % 3 == 0 || *day == last)
    }

    /// The day of this year that falls on a month and day.
    #[must_use]
    pub fn on(self, day: ClimateDay) -> Day {
        let found = day.in_year(self.first.year());
        if found < self.first { day.in_year(self.first.year() + 1) } else { found }
    }

    /// Where a day begins.
    #[must_use]
    pub fn x(self, day: Day) -> f64 {
        LEFT + f64::from(day - self.first) * self.day_width()
    }

    /// Where its middle is.
    #[must_use]
    pub fn middle(self, day: Day) -> f64 {
        self.x(day) + self.day_width() / 2.0
    }

    /// How wide a day is.
    #[must_use]
    pub fn day_width(self) -> f64 {
        (RIGHT - LEFT) / f64::from(self.next - self.first)
    }
}

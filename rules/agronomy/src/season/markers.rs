//! The markers of a season.

use super::Season;
use crate::calendar::ClimateDay;
use crate::curve::Series;
use crate::frost::{FrostKnowledge, likely_error_days};
use crate::marker::{Marker, MarkerState, Share, Span, SunTurns, rains, week_marker};
use crate::origin::Origin;
use crate::profile::FrostTriple;

/// Mean temperature above which things grow, °C.
const GROWING_C: f64 = 5.0;
/// Daily maximum above which the season is hot, °C.
const HOT_C: f64 = 32.0;
/// Length of the warmest and the coldest week, days.
const WEEK_DAYS: u16 = 7;
/// Share of years with frost from which on a missing frost date is worth a remark.
const SOME_YEARS: f64 = 0.1;

impl Season {
    /// What is known of a marker here.
    #[must_use]
    pub fn marker(&self, marker: Marker) -> MarkerState {
        match marker {
            Marker::Rises(series, threshold) => self.span(series, threshold.value()).start(),
            Marker::Falls(series, threshold) => self.span(series, threshold.value()).end(),
            named => named.index().and_then(|place| self.fixed.get(place).copied()).unwrap_or(MarkerState::Unknown),
        }
    }

    /// Where a marker comes from. Those of the sun are as good as given.
    #[must_use]
    pub fn marker_origin(&self, marker: Marker) -> Origin {
        let of = |origins: &[Origin; 3], share: Share| origins.get(share.index()).copied().unwrap_or(self.curve_origin);
        match marker {
            Marker::LastFrost(share) => of(&self.frost.last_origins, share),
            Marker::FirstFrost(share) => of(&self.frost.first_origins, share),
            Marker::LastKillingFrost | Marker::FirstKillingFrost => self.frost.killing_origin,
            Marker::LongestDay
            | Marker::ShortestDay
            | Marker::SpringEquinox
            | Marker::AutumnEquinox
            | Marker::Rises(Series::Daylength, _)
            | Marker::Falls(Series::Daylength, _) => Origin::Computed,
            _ => self.curve_origin,
        }
    }

    /// By how many days a marker is likely to be off: 0 for those of the sun and for frost dates that
    /// were given or counted, the mean error of the method for other frost dates. None where it was
    /// never measured, and for a marker that has no day.
    #[must_use]
    pub fn marker_error_days(&self, marker: Marker) -> Option<f64> {
        self.marker(marker).day()?;
        let (first, which) = match marker {
            Marker::LastFrost(share) => (false, share),
            Marker::FirstFrost(share) => (true, share),
            Marker::LastKillingFrost => (false, Share::Median),
            Marker::FirstKillingFrost => (true, Share::Median),
            Marker::LongestDay
            | Marker::ShortestDay
            | Marker::SpringEquinox
            | Marker::AutumnEquinox
            | Marker::Rises(Series::Daylength, _)
            | Marker::Falls(Series::Daylength, _) => return Some(0.0),
            _ => return None,
        };
        let knowledge = match self.marker_origin(marker) {
            Origin::Given | Origin::Measured => FrostKnowledge::Known,
            _ => self.frost_knowledge,
        };
        Some(likely_error_days(knowledge, first, which.index()))
    }

    /// A word on a marker that is absent though its season comes now and then: `frost in some years`.
    #[must_use]
    pub fn marker_remark(&self, marker: Marker) -> Option<&'static str> {
        let chance = match marker {
            Marker::LastFrost(_) | Marker::FirstFrost(_) => self.frost.dates.chance,
            Marker::LastKillingFrost | Marker::FirstKillingFrost => self.frost.dates.killing_chance,
            _ => return None,
        };
        let some_years = self.marker(marker) == MarkerState::Never && chance >= SOME_YEARS;
        some_years.then_some("frost in some years")
    }

    pub(super) fn fixed_markers(&self) -> [MarkerState; Marker::FIXED_COUNT] {
        let frost = &self.frost.dates;
        // Where not even the days thaw, frost has no dates but those that someone told.
        let never_thaws = self.tmax_c.extent().1 <= 0.0;
        let frost_day = |day: Option<ClimateDay>, origin: Origin| match day {
            Some(day) if origin == Origin::Given => MarkerState::Seasonal(day),
            _ if !self.cold_told => MarkerState::Unknown,
            Some(day) if !never_thaws => MarkerState::Seasonal(day),
            _ if never_thaws => MarkerState::Always,
            _ => MarkerState::Never,
        };
        let triple = |triple: FrostTriple, origins: [Origin; 3]| {
            let [early, median, late] = triple.days();
            let [early_origin, median_origin, late_origin] = origins;
            [frost_day(early, early_origin), frost_day(median, median_origin), frost_day(late, late_origin)]
        };
        let growing = self.span(Series::Tmean, GROWING_C);
        let hot = self.span(Series::Tmax, HOT_C);
        let (first_rains, second_rains) = self.rain_mm.as_ref().map_or((Span::Unknown, Span::Unknown), rains);
        let sun = SunTurns::at(self.latitude_deg);
        let (low_c, high_c) = self.tmean_c.extent();
        let range_k = high_c - low_c;
        let [last_early, last_median, last_late] = triple(frost.last, self.frost.last_origins);
        let [first_early, first_median, first_late] = triple(frost.first, self.frost.first_origins);
        let killing = self.frost.killing_origin;
        Marker::FIXED.map(|marker| match marker {
            Marker::LastFrost(Share::Early) => last_early,
            Marker::LastFrost(Share::Median) => last_median,
            Marker::LastFrost(Share::Late) => last_late,
            Marker::FirstFrost(Share::Early) => first_early,
            Marker::FirstFrost(Share::Median) => first_median,
            Marker::FirstFrost(Share::Late) => first_late,
            Marker::LastKillingFrost => frost_day(frost.last_killing, killing),
            Marker::FirstKillingFrost => frost_day(frost.first_killing, killing),
            Marker::GrowingStart => growing.start(),
            Marker::GrowingEnd => growing.end(),
            Marker::HotSeasonStart => hot.start(),
            Marker::HotSeasonEnd => hot.end(),
            Marker::WarmestWeek => week_marker(self.tmax_c.highest_run(WEEK_DAYS), range_k),
            Marker::ColdestWeek => week_marker(self.tmin_c.lowest_run(WEEK_DAYS), range_k),
            Marker::LongestDay => sun.longest_day,
            Marker::ShortestDay => sun.shortest_day,
            Marker::SpringEquinox => sun.spring_equinox,
            Marker::AutumnEquinox => sun.autumn_equinox,
            Marker::RainsStart => first_rains.start(),
            Marker::RainsEnd => first_rains.end(),
            Marker::SecondRainsStart => second_rains.start(),
            Marker::SecondRainsEnd => second_rains.end(),
            Marker::Rises(..) | Marker::Falls(..) => MarkerState::Unknown,
        })
    }
}

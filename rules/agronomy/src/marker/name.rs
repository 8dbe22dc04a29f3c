//! The markers and their names.

use std::fmt;

use crate::curve::Series;

/// The share of years that a frost date stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Share {
    /// 10 % of years.
    Early,
    /// 50 % of years.
    Median,
    /// 90 % of years.
    Late,
}

impl Share {
    /// All of them, early first.
    pub const ALL: [Self; 3] = [Self::Early, Self::Median, Self::Late];

    /// Place in a triple: 0, 1, 2.
    #[must_use]
    pub const fn index(self) -> usize {
        match self {
            Self::Early => 0,
            Self::Median => 1,
            Self::Late => 2,
        }
    }
}

/// A threshold in the unit of its series: a finite number, -0 taken as 0, so that equal thresholds are
/// equal bit for bit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Threshold(u64);

impl Threshold {
    /// The threshold of a finite number.
    #[must_use]
    pub fn new(value: f64) -> Option<Self> {
        value.is_finite().then(|| Self((value + 0.0).to_bits()))
    }

    /// The number.
    #[must_use]
    pub const fn value(self) -> f64 {
        f64::from_bits(self.0)
    }
}

impl Ord for Threshold {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.value().total_cmp(&other.value())
    }
}

impl PartialOrd for Threshold {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

/// A day of the year that follows from the climate alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Marker {
    /// Last minimum of 0 °C or less of the cold half.
    LastFrost(Share),
    /// First minimum of 0 °C or less.
    FirstFrost(Share),
    /// Median of the last minimum of -2.2 °C or less.
    LastKillingFrost,
    /// Median of the first minimum of -2.2 °C or less.
    FirstKillingFrost,
    /// Mean temperature rises to 5 °C.
    GrowingStart,
    /// Mean temperature falls below 5 °C.
    GrowingEnd,
    /// Daily maximum rises to 32 °C.
    HotSeasonStart,
    /// Daily maximum falls below 32 °C.
    HotSeasonEnd,
    /// Middle of the seven days of the highest daily maximum.
    WarmestWeek,
    /// Middle of the seven days of the lowest daily minimum.
    ColdestWeek,
    /// The longest day.
    LongestDay,
    /// The shortest day.
    ShortestDay,
    /// Daylength rises to 12 h.
    SpringEquinox,
    /// Daylength falls below 12 h.
    AutumnEquinox,
    /// First day of the rains.
    RainsStart,
    /// First day after the rains.
    RainsEnd,
    /// First day of the second rains.
    SecondRainsStart,
    /// First day after the second rains.
    SecondRainsEnd,
    /// First day of the season in which a curve is at or above a threshold.
    Rises(Series, Threshold),
    /// First day after that season.
    Falls(Series, Threshold),
}

impl Marker {
    /// How many markers have a name of their own.
    pub const FIXED_COUNT: usize = 22;

    /// Those with a name of their own, in the order of [`Self::index`].
    pub const FIXED: [Self; Self::FIXED_COUNT] = [
        Self::LastFrost(Share::Early),
        Self::LastFrost(Share::Median),
        Self::LastFrost(Share::Late),
        Self::FirstFrost(Share::Early),
        Self::FirstFrost(Share::Median),
        Self::FirstFrost(Share::Late),
        Self::LastKillingFrost,
        Self::FirstKillingFrost,
        Self::GrowingStart,
        Self::GrowingEnd,
        Self::HotSeasonStart,
        Self::HotSeasonEnd,
        Self::WarmestWeek,
        Self::ColdestWeek,
        Self::LongestDay,
        Self::ShortestDay,
        Self::SpringEquinox,
        Self::AutumnEquinox,
        Self::RainsStart,
        Self::RainsEnd,
        Self::SecondRainsStart,
        Self::SecondRainsEnd,
    ];

    /// Place in [`Self::FIXED`]; none for crossings.
    #[must_use]
    pub const fn index(self) -> Option<usize> {
        Some(match self {
            Self::LastFrost(share) => share.index(),
            Self::FirstFrost(share) => 3 + share.index(),
            Self::LastKillingFrost => 6,
            Self::FirstKillingFrost => 7,
            Self::GrowingStart => 8,
            Self::GrowingEnd => 9,
            Self::HotSeasonStart => 10,
            Self::HotSeasonEnd => 11,
            Self::WarmestWeek => 12,
            Self::ColdestWeek => 13,
            Self::LongestDay => 14,
            Self::ShortestDay => 15,
            Self::SpringEquinox => 16,
            Self::AutumnEquinox => 17,
            Self::RainsStart => 18,
            Self::RainsEnd => 19,
            Self::SecondRainsStart => 20,
            Self::SecondRainsEnd => 21,
            Self::Rises(..) | Self::Falls(..) => return None,
        })
    }

    /// The name in rules, such as `last_frost.median`; none for crossings.
    #[must_use]
    pub const fn name(self) -> Option<&'static str> {
        Some(match self {
            Self::LastFrost(Share::Early) => "last_frost.early",
            Self::LastFrost(Share::Median) => "last_frost.median",
            Self::LastFrost(Share::Late) => "last_frost.late",
            Self::FirstFrost(Share::Early) => "first_frost.early",
            Self::FirstFrost(Share::Median) => "first_frost.median",
            Self::FirstFrost(Share::Late) => "first_frost.late",
            Self::LastKillingFrost => "last_killing_frost.median",
            Self::FirstKillingFrost => "first_killing_frost.median",
            Self::GrowingStart => "growing.start",
            Self::GrowingEnd => "growing.end",
            Self::HotSeasonStart => "hot_season.start",
            Self::HotSeasonEnd => "hot_season.end",
            Self::WarmestWeek => "warmest_week",
            Self::ColdestWeek => "coldest_week",
            Self::LongestDay => "longest_day",
            Self::ShortestDay => "shortest_day",
            Self::SpringEquinox => "spring_equinox",
            Self::AutumnEquinox => "autumn_equinox",
            Self::RainsStart => "rains.start",
            Self::RainsEnd => "rains.end",
            Self::SecondRainsStart => "second_rains.start",
            Self::SecondRainsEnd => "second_rains.end",
            Self::Rises(..) | Self::Falls(..) => return None,
        })
    }

    /// The marker of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::FIXED.into_iter().find(|marker| marker.name() == Some(name))
    }
}

impl fmt::Display for Marker {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Rises(series, at) => write!(f, "rises({}, {})", series.as_str(), at.value()),
            Self::Falls(series, at) => write!(f, "falls({}, {})", series.as_str(), at.value()),
            named => f.write_str(named.name().unwrap_or_default()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fixed_marker_stands_at_its_place_and_under_its_name() {
        for (place, marker) in Marker::FIXED.into_iter().enumerate() {
            assert_eq!(marker.index(), Some(place));
            assert_eq!(Marker::named(marker.name().unwrap()), Some(marker));
        }
        assert_eq!(Marker::named("last_frost"), None);
    }

    #[test]
    fn equal_thresholds_are_the_same_marker() {
        let at = |value| Marker::Rises(Series::Tmax, Threshold::new(value).unwrap());
        assert_eq!(at(-0.0), at(0.0));
        assert!(at(-3.0) < at(2.0));
        assert_eq!(at(32.0).to_string(), "rises(tmax, 32)");
        assert_eq!(Threshold::new(f64::NAN), None);
    }
}

//! How markers belong together: which turn of the year they lie on, which side of a season they are.

use super::name::{Marker, Share};

/// The turn of the year that a marker lies on; it says how the sides of a window are paired.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Turn {
    /// On the way into the warm half.
    Rising,
    /// On the way into the cold half.
    Falling,
    /// Of the rains.
    Wet,
    /// Of a plant or of its history; no marker of the climate has it.
    Plant,
}

/// Whether a marker starts a season or ends one; it says what becomes of a window whose marker is
/// absent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// It starts a season; absent, it is a start that never comes.
    Start,
    /// It ends a season.
    End,
}

impl Marker {
    /// The turn of the year that it lies on.
    #[must_use]
    pub const fn turn(self) -> Turn {
        match self {
            Self::LastFrost(_)
            | Self::LastKillingFrost
            | Self::GrowingStart
            | Self::HotSeasonStart
            | Self::ColdestWeek
            | Self::ShortestDay
            | Self::SpringEquinox
            | Self::Rises(..) => Turn::Rising,
            Self::FirstFrost(_)
            | Self::FirstKillingFrost
            | Self::GrowingEnd
            | Self::HotSeasonEnd
            | Self::WarmestWeek
            | Self::LongestDay
            | Self::AutumnEquinox
            | Self::Falls(..) => Turn::Falling,
            Self::RainsStart | Self::RainsEnd | Self::SecondRainsStart | Self::SecondRainsEnd => Turn::Wet,
        }
    }

    /// Whether it starts a season or ends one. The first frost starts the frosts and the last one ends
    /// them; weeks, solstices and equinoxes count as starts.
    #[must_use]
    pub const fn side(self) -> Side {
        match self {
            Self::LastFrost(_)
            | Self::LastKillingFrost
            | Self::GrowingEnd
            | Self::HotSeasonEnd
            | Self::RainsEnd
            | Self::SecondRainsEnd
            | Self::Falls(..) => Side::End,
            Self::FirstFrost(_)
            | Self::FirstKillingFrost
            | Self::GrowingStart
            | Self::HotSeasonStart
            | Self::WarmestWeek
            | Self::ColdestWeek
            | Self::LongestDay
            | Self::ShortestDay
            | Self::SpringEquinox
            | Self::AutumnEquinox
            | Self::RainsStart
            | Self::SecondRainsStart
            | Self::Rises(..) => Side::Start,
        }
    }

    /// The other end of the same season, where the marker is an end of one. Frosts go together in the
    /// pairs in which they exist: the earliest first with the latest last.
    #[must_use]
    pub const fn season_partner(self) -> Option<Self> {
        Some(match self {
            Self::LastFrost(share) => Self::FirstFrost(across(share)),
            Self::FirstFrost(share) => Self::LastFrost(across(share)),
            Self::LastKillingFrost => Self::FirstKillingFrost,
            Self::FirstKillingFrost => Self::LastKillingFrost,
            Self::GrowingStart => Self::GrowingEnd,
            Self::GrowingEnd => Self::GrowingStart,
            Self::HotSeasonStart => Self::HotSeasonEnd,
            Self::HotSeasonEnd => Self::HotSeasonStart,
            Self::RainsStart => Self::RainsEnd,
            Self::RainsEnd => Self::RainsStart,
            Self::SecondRainsStart => Self::SecondRainsEnd,
            Self::SecondRainsEnd => Self::SecondRainsStart,
            Self::Rises(series, threshold) => Self::Falls(series, threshold),
            Self::Falls(series, threshold) => Self::Rises(series, threshold),
            Self::WarmestWeek
            | Self::ColdestWeek
            | Self::LongestDay
            | Self::ShortestDay
            | Self::SpringEquinox
            | Self::AutumnEquinox => return None,
        })
    }
}

const fn across(share: Share) -> Share {
    match share {
        Share::Early => Share::Late,
        Share::Median => Share::Median,
        Share::Late => Share::Early,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn partners_are_mutual_and_lie_on_opposite_sides() {
        for marker in Marker::FIXED {
            if let Some(partner) = marker.season_partner() {
                assert_eq!(partner.season_partner(), Some(marker));
                assert_ne!(partner.side(), marker.side());
            }
        }
    }
}

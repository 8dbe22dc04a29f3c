//! A season between two markers.

use super::state::MarkerState;
use crate::calendar::ClimateDay;

/// A season of the year, with its first day and the first day after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Span {
    /// It comes and goes.
    Seasonal {
        /// Its first day.
        start: ClimateDay,
        /// The first day after it.
        end: ClimateDay,
    },
    /// It does not come.
    Never,
    /// It does not end.
    Always,
    /// There are no seasons to speak of.
    Even,
    /// Nobody knows.
    Unknown,
}

impl Span {
    /// Its first day as a marker.
    #[must_use]
    pub fn start(self) -> MarkerState {
        self.marker(|start, _| start)
    }

    /// The first day after it as a marker.
    #[must_use]
    pub fn end(self) -> MarkerState {
        self.marker(|_, end| end)
    }

    fn marker(self, pick: fn(ClimateDay, ClimateDay) -> ClimateDay) -> MarkerState {
        match self {
            Self::Seasonal { start, end } => MarkerState::Seasonal(pick(start, end)),
            Self::Never => MarkerState::Never,
            Self::Always => MarkerState::Always,
            Self::Even => MarkerState::Even,
            Self::Unknown => MarkerState::Unknown,
        }
    }
}

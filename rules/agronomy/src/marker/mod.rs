//! Markers: the days of the year on which rules hang their windows.

mod crossing;
mod kin;
mod name;
mod rains;
mod runs;
mod span;
mod state;
mod sun_turns;
mod weeks;

pub(crate) use crossing::EVEN_BAND_K;
pub use crossing::crossing;
pub use kin::{Side, Turn};
pub use name::{Marker, Share, Threshold};
pub use rains::rains;
pub use span::Span;
pub use state::MarkerState;
pub use sun_turns::SunTurns;
pub use weeks::week_marker;

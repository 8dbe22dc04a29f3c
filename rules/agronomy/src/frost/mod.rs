//! Frost: when in the year it comes, in what share of years, and how cold the coldest night is.
//!
//! From normals it is reckoned with the chance of each night: cold nights come in spells, and a spell
//! counts once, so the sum of the nightly chances is taken times [`SPELL_FACTOR`].

mod cold_nights;
mod dates;
mod extreme;
mod known;
mod likely_error;
mod spread;

pub(crate) use cold_nights::night_chance;
pub use cold_nights::{ColdNights, SPELL_FACTOR, Turning};
pub use dates::{FrostDates, KILLING_C};
pub use extreme::extreme_min_c;
pub use known::{SiteFrost, site_frost};
pub use likely_error::{FrostKnowledge, likely_error_days};
pub use spread::{spread_from_gradient, spread_from_normals};

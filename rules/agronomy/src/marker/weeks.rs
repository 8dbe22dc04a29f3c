//! The warmest and the coldest week.

use super::state::MarkerState;
use crate::calendar::ClimateDay;

/// A year whose mean temperature moves less than this has no warmest or coldest week, K (own choice).
pub(crate) const EVEN_RANGE_K: f64 = 3.0;

/// The marker of a week: the middle of its seven days, `Even` when the mean temperature of the year
/// moves less than 3 K.
#[must_use]
pub fn week_marker(first_day: ClimateDay, yearly_range_k: f64) -> MarkerState {
    if yearly_range_k < EVEN_RANGE_K { MarkerState::Even } else { MarkerState::Seasonal(first_day.plus(3)) }
}

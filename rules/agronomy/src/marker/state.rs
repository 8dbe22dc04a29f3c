//! What is known of a marker in a climate.

use crate::calendar::ClimateDay;

/// What is known of a marker in a climate. Only `Seasonal` has a day; `Never`, `Always` and `Even` are
/// absent: known not to exist.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarkerState {
    /// It comes, on this day of every year.
    Seasonal(ClimateDay),
    /// Its season does not come.
    Never,
    /// Its season does not end.
    Always,
    /// There are no seasons to speak of.
    Even,
    /// Nobody knows: the profile lacks what it hangs on.
    Unknown,
}

impl MarkerState {
    /// The day, where it has one.
    #[must_use]
    pub fn day(self) -> Option<ClimateDay> {
        match self {
            Self::Seasonal(day) => Some(day),
            _ => None,
        }
    }

    /// Whether it is known not to exist.
    #[must_use]
    pub fn is_absent(self) -> bool {
        matches!(self, Self::Never | Self::Always | Self::Even)
    }

    /// The word for it: `seasonal`, `never`, `always`, `even`, `unknown`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Seasonal(_) => "seasonal",
            Self::Never => "never",
            Self::Always => "always",
            Self::Even => "even",
            Self::Unknown => "unknown",
        }
    }
}

//! Where a value comes from, best source first.

use serde::Serialize;

/// Where a value comes from. The order is from best to worst, so that the weakest of several is
/// their [`Ord::max`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Origin {
    /// Told by the caller.
    Given,
    /// Read from the daily records that came with the question.
    Measured,
    /// Read from the forecast that came with the question.
    Forecast,
    /// Worked out from the normals of a place.
    Computed,
    /// Worked out from normals that were themselves estimated from coordinates.
    Estimated,
    /// Nobody knows; a stated usual value stands in.
    Assumed,
}

impl Origin {
    /// All of them, best first.
    pub const ALL: [Self; 6] =
        [Self::Given, Self::Measured, Self::Forecast, Self::Computed, Self::Estimated, Self::Assumed];

    /// The word that stands for it in every answer: `given`, `measured`, `forecast`, `computed`,
    /// `estimated`, `assumed`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Given => "given",
            Self::Measured => "measured",
            Self::Forecast => "forecast",
            Self::Computed => "computed",
            Self::Estimated => "estimated",
            Self::Assumed => "assumed",
        }
    }

    /// The worse of the two: what a value that hangs on both may claim.
    #[must_use]
    pub fn weakest(self, other: Self) -> Self {
        self.max(other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn origins_are_ordered_from_best_to_worst() {
        assert!(Origin::ALL.is_sorted());
        assert_eq!(Origin::Given.weakest(Origin::Estimated), Origin::Estimated);
        assert_eq!(Origin::Forecast.weakest(Origin::Measured), Origin::Forecast);
    }

    #[test]
    fn the_word_in_answers_is_the_word_in_hashes() {
        for origin in Origin::ALL {
            assert_eq!(serde_json::to_string(&origin).unwrap(), format!("\"{}\"", origin.as_str()));
        }
    }
}

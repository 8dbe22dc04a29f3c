//! The temperatures between which development runs.

use crate::bounds::{Unusable, in_order, within};

/// How warmth above the upper threshold counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cutoff {
    /// Development goes on at the rate of the upper threshold.
    Horizontal,
    /// Development slows down by as much as the temperature goes above.
    Intermediate,
    /// Development stops while the temperature is above.
    Vertical,
}

impl Cutoff {
    /// The names by which the cut-offs are called, in the order of [`Self::from_name`].
    pub const NAMES: [&'static str; 3] = ["horizontal", "intermediate", "vertical"];

    /// The cut-off of a name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        match name {
            "horizontal" => Some(Self::Horizontal),
            "intermediate" => Some(Self::Intermediate),
            "vertical" => Some(Self::Vertical),
            _ => None,
        }
    }
}

/// Lower threshold and, where there is one, the upper with its cut-off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thresholds {
    /// C; below it nothing develops.
    pub lower_c: f64,
    /// C, above the lower, with what happens beyond it.
    pub upper_c: Option<(f64, Cutoff)>,
}

impl Thresholds {
    /// A lower threshold in C alone.
    #[must_use]
    pub fn above(lower_c: f64) -> Self {
        Self { lower_c, upper_c: None }
    }

    /// Both thresholds in C, each within -60..=60.
    ///
    /// # Errors
    /// [`Unusable`], for a threshold out of range or a lower one above the upper.
    pub fn new(lower_c: f64, upper_c: Option<(f64, Cutoff)>) -> Result<Self, Unusable> {
        within("lower", lower_c, "C", -60.0, 60.0)?;
        if let Some((upper, _)) = upper_c {
            within("upper", upper, "C", -60.0, 60.0)?;
            in_order("lower", lower_c, "upper", upper, "C")?;
        }
        Ok(Self { lower_c, upper_c })
    }
}

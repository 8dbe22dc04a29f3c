//! Bands of risk for people who work outdoors.
//!
//! US Occupational Safety and Health Administration, Using the heat index: a guide for employers: lower
//! below 91 F, moderate to 103 F, high to 115 F, very high to extreme above. Both 91 and 103 stand in
//! two bands there; here 91 begins the moderate and 103 the high one, and 115 is the last of the high.

/// How much full sun may add to the index, in F: up to 15, says the same guide.
pub const FULL_SUN_F: f64 = 15.0;

/// A band of risk.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Risk {
    /// Below 91 F.
    Lower,
    /// 91 to below 103 F.
    Moderate,
    /// 103 to 115 F.
    High,
    /// Above 115 F.
    VeryHigh,
}

impl Risk {
    /// The band of a heat index in F.
    #[must_use]
    pub fn of_index_f(heat_index_f: f64) -> Self {
        // A reading turned from C is a hair off; a band does not hang on that.
        let index_f = (heat_index_f * 1e6).round() / 1e6;
        match index_f {
            f if f < 91.0 => Self::Lower,
            f if f < 103.0 => Self::Moderate,
            f if f <= 115.0 => Self::High,
            _ => Self::VeryHigh,
        }
    }

    /// The next band up; the last stays.
    #[must_use]
    pub fn raised(self) -> Self {
        match self {
            Self::Lower => Self::Moderate,
            Self::Moderate => Self::High,
            Self::High | Self::VeryHigh => Self::VeryHigh,
        }
    }

    /// The guide's name of the band.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Lower => "lower (caution)",
            Self::Moderate => "moderate",
            Self::High => "high",
            Self::VeryHigh => "very high to extreme",
        }
    }

    /// What the one who works should do.
    #[must_use]
    pub fn measures(self) -> &'static str {
        match self {
            Self::Lower => "keep water at hand and drink; know the signs of heat illness",
            Self::Moderate => "drink every 15 to 20 minutes, rest in the shade, do not work alone",
            Self::High => {
                "move heavy work to the cool of the day, rest often in the shade, have someone look after you"
            }
            Self::VeryHigh => "leave the work for a cooler day; do only what cannot wait, in short turns",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn edges_fall_on_the_careful_side() {
        for (index_f, risk) in [
            (90.9, Risk::Lower),
            (91.0, Risk::Moderate),
            (90.999_999_999_9, Risk::Moderate),
            (102.9, Risk::Moderate),
            (103.0, Risk::High),
            (115.0, Risk::High),
            (115.1, Risk::VeryHigh),
        ] {
            assert_eq!(Risk::of_index_f(index_f), risk, "{index_f}");
        }
        assert_eq!(Risk::VeryHigh.raised(), Risk::VeryHigh);
    }
}

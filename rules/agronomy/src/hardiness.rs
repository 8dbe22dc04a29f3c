//! Hardiness zones: bands of the mean annual extreme minimum, 26 half zones of 5 °F from -60 °F on.
//!
//! The bands of the USDA plant hardiness zone map; its editions of 2012 and 2023 share them and differ in the
//! years that are averaged. Printed edges belong to two zones; here a lower edge starts the warmer one.

use std::fmt;

use serde::Serialize;

/// Lower edge of zone 1a, °F.
const LOWEST_F: f64 = -60.0;
/// Width of a half zone, °F.
const HALF_WIDTH_F: f64 = 5.0;
/// Half zones, 1a to 13b.
const HALF_ZONES: u8 = 26;

/// A half zone, `1a` to `13b`. Colder is smaller.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HardinessZone(u8);

impl HardinessZone {
    /// The half zone of a mean annual extreme minimum in °F. Beyond the ends the end zones hold.
    #[must_use]
    pub fn of_fahrenheit(extreme_f: f64) -> Self {
        // 50 °F turned to °C and back may fall a hair short of itself
        let bands = libm::floor((extreme_f - LOWEST_F) / HALF_WIDTH_F + 1e-9);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held within 0 to 25")]
        let band = bands.clamp(0.0, f64::from(HALF_ZONES - 1)) as u8;
        Self(band)
    }

    /// The half zone of a mean annual extreme minimum in °C, by the edges in Fahrenheit.
    #[must_use]
    pub fn of_celsius(extreme_c: f64) -> Self {
        Self::of_fahrenheit(extreme_c * 1.8 + 32.0)
    }

    /// The half zone by the Celsius edges as they are printed, to a tenth of a degree: -31.7 °C starts 4b
    /// there, though it is a little below -25 °F.
    #[must_use]
    pub fn by_printed_celsius(extreme_c: f64) -> Self {
        let edge_c = |zone: u8| {
            let edge_f = LOWEST_F + HALF_WIDTH_F * f64::from(zone);
            libm::round((edge_f - 32.0) / 1.8 * 10.0) / 10.0
        };
        Self((1..HALF_ZONES).rev().find(|zone| extreme_c >= edge_c(*zone)).unwrap_or(0))
    }

    /// The zone, 1 to 13.
    #[must_use]
    pub fn number(self) -> u8 {
        self.0 / 2 + 1
    }

    /// Its half: `a` the colder, `b` the warmer.
    #[must_use]
    pub fn half(self) -> char {
        if self.0.is_multiple_of(2) { 'a' } else { 'b' }
    }
}

impl fmt::Display for HardinessZone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", self.number(), self.half())
    }
}

impl Serialize for HardinessZone {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lower_edge_starts_the_warmer_half_zone() {
        // Bands as printed with the maps of 2012 and 2023: 7b is 5 to 10 °F, -15 to -12.2 °C.
        for (f, zone) in [(4.99, "7a"), (5.0, "7b"), (9.99, "7b"), (10.0, "8a"), (-60.0, "1a"), (65.0, "13b")] {
            assert_eq!(HardinessZone::of_fahrenheit(f).to_string(), zone, "{f}");
            assert_eq!(HardinessZone::of_celsius((f - 32.0) / 1.8).to_string(), zone, "{f}");
        }
        assert_eq!(HardinessZone::by_printed_celsius(-31.7).to_string(), "4b");
        assert_eq!(HardinessZone::of_celsius(-31.7).to_string(), "4a");
    }

    #[test]
    fn beyond_the_ends_the_end_zones_hold() {
        assert_eq!(HardinessZone::of_celsius(-80.0).to_string(), "1a");
        assert_eq!(HardinessZone::of_celsius(30.0).to_string(), "13b");
        assert_eq!(HardinessZone::by_printed_celsius(-80.0), HardinessZone::of_celsius(-80.0));
    }

    #[test]
    fn both_ways_of_reading_agree_away_from_the_edges() {
        for tenth in -600..250 {
            let c = f64::from(tenth) / 10.0 + 0.06;
            let f = c * 1.8 + 32.0;
            if (f / 5.0 - libm::round(f / 5.0)).abs() > 0.05 {
                assert_eq!(HardinessZone::of_celsius(c), HardinessZone::by_printed_celsius(c), "{c}");
            }
        }
    }
}

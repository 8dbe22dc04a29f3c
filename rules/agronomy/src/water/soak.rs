//! How much water a soak brings and how many days lie between two.
//!
//! A soak fills up what the plant has taken since the last one, never more than the water within easy
//! reach of its roots. It wets at least the circle under the canopy, where most of the fine roots are;
//! small plants count as 0.1 m2, which is what a can wets anyway (common practice).
//!
//! For scale: a rose 0.9 m across (factor 0.7, roots watered to 0.5 m, depletion 0.4) on clay loam at
//! 6 to 7 mm/d of reference evapotranspiration takes 4.2 to 4.9 mm a day; the soil holds some 31 to
//! 33 mm within easy reach, so a soak every 6 or 7 days, 25 L into a basin. Growers say 20 to 40 L for a
//! rose (common practice).

use super::need::canopy_area_m2;

/// Least days between two soaks.
pub const LEAST_DAYS: u8 = 1;
/// Most days between two soaks: longer counts as this.
pub const MOST_DAYS: u8 = 28;
/// The least area in m2 that one plant's soak wets.
pub const LEAST_WETTED_M2: f64 = 0.1;

/// How the water is brought.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WaterMethod {
    /// A can or a hose in the hand.
    Can,
    /// Drip lines.
    Drip,
    /// A basin around the plant.
    Basin,
    /// Sprinklers.
    Sprinkler,
}

impl WaterMethod {
    /// Share of the water that reaches the roots: drip 0.90, can 0.85, basin 0.75, sprinkler 0.70
    /// (common practice; textbook ranges of application efficiency are wider).
    #[must_use]
    pub fn efficiency(self) -> f64 {
        match self {
            Self::Can => 0.85,
            Self::Drip => 0.90,
            Self::Basin => 0.75,
            Self::Sprinkler => 0.70,
        }
    }
}

/// Whole days between soaks, 1..=28, from the readily available water in mm and the need less
/// effective rain in mm/d: rounded down, so that the store is never used beyond easy reach (FAO-56
/// chapter 8). A need that rain covers gives 28.
#[must_use]
pub fn interval_days(readily_available_mm: f64, need_mm_per_day: f64, rain_mm_per_day: f64) -> u8 {
    let net_mm_per_day = need_mm_per_day - rain_mm_per_day;
    // A quotient a hair under a whole number is that number: 64 / 3.2 is 20.
    let days = (readily_available_mm / net_mm_per_day + 1e-9).floor();
    if net_mm_per_day <= 0.0 || days >= f64::from(MOST_DAYS) {
        return MOST_DAYS;
    }
    (LEAST_DAYS..MOST_DAYS).rev().find(|&whole| f64::from(whole) <= days).unwrap_or(LEAST_DAYS)
}

/// Depth in mm that a soak must bring to the roots after some days: need less effective rain, at least
/// 0 and not above the readily available water, for more would run through.
#[must_use]
pub fn depth_mm(readily_available_mm: f64, need_mm_per_day: f64, rain_mm_per_day: f64, days: f64) -> f64 {
    ((need_mm_per_day - rain_mm_per_day) * days).clamp(0.0, readily_available_mm.max(0.0))
}

/// The area in m2 that a soak of one plant wets: the circle under a canopy of a diameter in m, at least
/// [`LEAST_WETTED_M2`].
#[must_use]
pub fn wetted_area_m2(canopy_diameter_m: f64) -> f64 {
    canopy_area_m2(canopy_diameter_m).max(LEAST_WETTED_M2)
}

/// Litres from the tap for a depth in mm on an area in m2, with the share (above 0, up to 1) that
/// reaches the roots.
#[must_use]
pub fn volume_l(depth_mm: f64, area_m2: f64, efficiency: f64) -> f64 {
    depth_mm * area_m2 / efficiency
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::water::root_zone::{p_adjusted, readily_available_mm};
    use crate::water::texture;

    fn soak(available: f64, root_m: f64, p: f64, need: f64, canopy_m: f64, how: WaterMethod) -> (u8, f64) {
        let raw_mm = readily_available_mm(available * root_m, p_adjusted(p, need));
        let days = interval_days(raw_mm, need, 0.0);
        let depth = depth_mm(raw_mm, need, 0.0, f64::from(days));
        (days, volume_l(depth, wetted_area_m2(canopy_m), how.efficiency()))
    }

    #[test]
    fn a_rose_on_clay_loam_in_high_summer_gets_what_growers_give() {
        // Common practice: 11 to 40 L (3 to 10 US gallons) every 3 to 7 days for a rose.
        let available = texture::find("clay loam").unwrap().available_middle_mm_per_m();
        for et0 in [6.0, 6.5, 7.0] {
            for how in [WaterMethod::Can, WaterMethod::Drip, WaterMethod::Basin, WaterMethod::Sprinkler] {
                let (days, litres) = soak(available, 0.5, 0.4, et0 * 0.7, 0.9, how);
                assert!((3..=7).contains(&days), "{et0} mm/d: {days} days");
                assert!((11.0..=40.0).contains(&litres), "{et0} mm/d: {litres} L");
            }
        }
    }

    #[test]
    fn a_mature_orange_on_loam_comes_to_the_trade_s_worked_example() {
        // Worked example of the trade notes: canopy 4 m, 160 mm/m, roots 1.2 m, p 0.5 unadjusted, need
        // 5.2 mm/d, drip: 96 mm, 18 days, about 1310 L (12.6 m2 x 93.6 mm / 0.90). Common practice.
        let raw_mm = readily_available_mm(160.0 * 1.2, 0.5);
        let days = interval_days(raw_mm, 5.2, 0.0);
        let litres = volume_l(depth_mm(raw_mm, 5.2, 0.0, 18.0), wetted_area_m2(4.0), 0.90);
        assert_eq!(days, 18);
        assert!((litres - 1310.0).abs() < 10.0, "{litres}");
    }

    #[test]
    fn the_interval_is_whole_and_within_bounds_for_every_need() {
        for raw in 0..=200 {
            for tenth in 0..=150 {
                let days = interval_days(f64::from(raw), f64::from(tenth) / 10.0, 1.0);
                assert!((LEAST_DAYS..=MOST_DAYS).contains(&days));
            }
        }
        assert_eq!(interval_days(64.0, 3.2, 0.0), 20);
        assert_eq!(interval_days(30.0, 2.0, 2.0), MOST_DAYS);
        assert_eq!(interval_days(3.0, 8.0, 0.0), LEAST_DAYS);
    }

    #[test]
    fn more_rain_never_means_more_water() {
        let mut before = f64::INFINITY;
        for tenth in 0..=80 {
            let litres = volume_l(depth_mm(30.0, 6.0, f64::from(tenth) / 10.0, 5.0), 1.0, 0.75);
            assert!(litres <= before && litres >= 0.0);
            before = litres;
        }
    }
}

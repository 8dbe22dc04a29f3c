//! Water in pots: a small store, emptied by a canopy that is often wider than the pot.
//!
//! Of a pot's volume 10 to 20 % is water that the plant can take before it wilts: a 10 L pot holds 1.5
//! to 2 L (common practice; de Boodt and Verdonck 1972 ask for 20 to 30 % easily available water of a
//! good mix, from memory). We reckon with 0.15 L per litre of mix.

use super::need::canopy_area_m2;
use super::soak::{LEAST_DAYS, MOST_DAYS, interval_days};

/// Litres of water within reach of the plant in a litre of potting mix (common practice, 0.10 to 0.20).
pub const AVAILABLE_L_PER_L: f64 = 0.15;

/// Litres a day that a plant takes out of its pot, from its need in mm/d, the canopy's diameter in m
/// and, if known, the pot's mouth in m: the wider of the two drinks.
#[must_use]
pub fn need_l_per_day(need_mm_per_day: f64, canopy_diameter_m: f64, mouth_diameter_m: f64) -> f64 {
    need_mm_per_day * canopy_area_m2(canopy_diameter_m.max(mouth_diameter_m))
}

/// Litres of water within reach in a pot of a volume in L.
#[must_use]
pub fn available_l(container_volume_l: f64) -> f64 {
    AVAILABLE_L_PER_L * container_volume_l
}

/// How often a pot wants water.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PotInterval {
    /// The store does not last a day: every day, and in the hottest hours twice.
    MoreThanOnceADay,
    /// Whole days, 1..=28.
    Days(u8),
}

impl PotInterval {
    /// Days between waterings, 1..=28; a store that does not last a day counts as 1.
    #[must_use]
    pub fn days(self) -> u8 {
        match self {
            Self::MoreThanOnceADay => LEAST_DAYS,
            Self::Days(days) => days,
        }
    }
}

/// How often a pot wants water, from what it holds within reach in L and what the plant takes in L/d.
#[must_use]
pub fn pot_interval(available_l: f64, need_l_per_day: f64) -> PotInterval {
    if available_l < need_l_per_day {
        PotInterval::MoreThanOnceADay
    } else {
        PotInterval::Days(interval_days(available_l, need_l_per_day, 0.0).min(MOST_DAYS))
    }
}

/// Litres to pour after some days: what the plant took, not above what the pot holds within reach,
/// divided by the share that stays. With a can 0.85 stays and 15 % drains, which also carries salts
/// out (common practice: let 10 to 20 % drain).
#[must_use]
pub fn volume_l(available_l: f64, need_l_per_day: f64, days: f64, efficiency: f64) -> f64 {
    (need_l_per_day * days).min(available_l) / efficiency
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pots_dry_out_as_fast_as_growers_say() {
        // Common practice at 30 C (some 6 mm/d of reference): small pots 1 to 2 days, 40 L 2 to 4 days.
        let small = pot_interval(available_l(10.0), need_l_per_day(6.0, 0.45, 0.25));
        assert!((1..=2).contains(&small.days()), "{small:?}");
        let big = pot_interval(available_l(40.0), need_l_per_day(6.0 * 0.7, 0.8, 0.4));
        assert!((2..=4).contains(&big.days()), "{big:?}");
    }

    #[test]
    fn a_tomato_in_a_bucket_drinks_more_than_once_on_a_hot_day() {
        // Common practice at 40 C (some 10 mm/d): once or twice a day.
        let bucket = pot_interval(available_l(10.0), need_l_per_day(10.0 * 1.15, 0.5, 0.25));
        assert_eq!(bucket, PotInterval::MoreThanOnceADay);
        assert_eq!(bucket.days(), 1);
    }

    #[test]
    fn a_pot_is_never_given_more_than_it_holds_and_drains() {
        let litres = volume_l(available_l(10.0), 3.0, 1.0, 0.85);
        assert!((litres - 1.5 / 0.85).abs() < 1e-12);
    }

    #[test]
    fn a_plant_that_takes_nothing_waits_four_weeks() {
        assert_eq!(pot_interval(1.5, 0.0), PotInterval::Days(28));
    }
}

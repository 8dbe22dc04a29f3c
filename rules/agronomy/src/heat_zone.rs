//! Heat days, and the heat zone that their yearly number makes.
//!
//! A heat day has a maximum above 30 °C (86 °F), as on the AHS plant heat-zone map. Counting 30 °C itself, as some
//! do, moves places on the edge into the next zone.

use crate::curve::Row;
use crate::frost::night_chance;

/// A day is a heat day above this maximum, °C.
pub const HEAT_DAY_C: f64 = 30.0;
/// By how much the daily maximum spreads wider than the daily minimum. Own choice: in the warm months of five
/// records of 4 to 12 years it was 1.1 to 2.4 times as wide, and 1.5 gave 4, 67, 100, 105 and 5 days a year
/// where 13, 69, 98, 100 and 5 were counted.
const WIDER: f64 = 1.5;
/// The most heat days of zones 1 to 11: under 1, to 7, 14, 30, 45, 60, 90, 120, 150, 180, 210; more is zone 12
/// (AHS plant heat-zone map).
const MOST_DAYS: [f64; 10] = [7.0, 14.0, 30.0, 45.0, 60.0, 90.0, 120.0, 150.0, 180.0, 210.0];

/// The heat zone, 1 to 12, of a mean number of heat days a year.
#[must_use]
pub fn heat_zone(days_a_year: f64) -> u8 {
    if days_a_year < 1.0 {
        return 1;
    }
    MOST_DAYS.iter().fold(2, |zone, most| if days_a_year > *most { zone + 1 } else { zone })
}

/// Mean number of days a year with a maximum above 30 °C, from the mean (°C) of the daily maximum and the spread
/// (K, above 0) of the daily *minimum*: that of the maximum is taken as half as wide again.
#[must_use]
pub fn heat_days_from_normals(tmax_c: &Row, tmin_spread_k: &Row) -> f64 {
    let mut days = 0.0;
    for (mean_c, spread_k) in tmax_c.values().zip(tmin_spread_k.values()) {
        // the chance of a mean below the threshold is that of a day above it
        days += night_chance(mean_c, HEAT_DAY_C, WIDER * spread_k);
    }
    days
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_are_those_of_the_map() {
        // AHS plant heat-zone map: <1, 1-7, >7-14, >14-30, >30-45, >45-60, >60-90, >90-120, >120-150,
        // >150-180, >180-210, >210.
        let last_of_each = [0.9, 7.0, 14.0, 30.0, 45.0, 60.0, 90.0, 120.0, 150.0, 180.0, 210.0, 366.0];
        for (zone, days) in (1..).zip(last_of_each) {
            assert_eq!(heat_zone(days), zone, "{days}");
        }
        assert_eq!(heat_zone(1.0), 2);
        assert_eq!(heat_zone(7.1), 3);
    }

    #[test]
    fn half_the_days_are_hot_where_the_mean_maximum_is_the_threshold() {
        let row = |value: f64| Row::from_fn(|_| value);
        assert!((heat_days_from_normals(&row(HEAT_DAY_C), &row(3.0)) - 182.5).abs() < 1e-9);
        assert!(heat_days_from_normals(&row(-5.0), &row(3.0)) < 1e-9);
        assert!(heat_days_from_normals(&row(45.0), &row(3.0)) > 364.0);
    }
}

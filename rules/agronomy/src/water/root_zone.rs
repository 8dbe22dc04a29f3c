//! The water store of the root zone, by FAO-56 chapters 7 and 8. Depths in mm.

/// Total available water in mm from field capacity and wilting point in m3/m3 and root depth in m.
/// FAO-56 equation 82.
#[must_use]
pub fn total_available_mm(field_capacity: f64, wilting_point: f64, root_depth_m: f64) -> f64 {
    1000.0 * (field_capacity - wilting_point) * root_depth_m
}

/// Readily available water in mm: the share `p` (0..=1) of the total. FAO-56 equation 83.
#[must_use]
pub fn readily_available_mm(total_available_mm: f64, p: f64) -> f64 {
    p * total_available_mm
}

/// The share of the store that a plant uses without stress, from its table value (at 5 mm/d) and the
/// day's need in mm/d: smaller on hot days, held at 0.1..=0.8. FAO-56 Table 22, footnote 2; limits in
/// chapter 8.
#[must_use]
pub fn p_adjusted(p_table: f64, etc_mm_per_day: f64) -> f64 {
    (p_table + 0.04 * (5.0 - etc_mm_per_day)).clamp(0.1, 0.8)
}

/// Stress coefficient 0..=1 from total and readily available water and the depletion of the root zone,
/// all in mm. FAO-56 equation 84. Where all water is readily available there is no stress until it is
/// gone.
#[must_use]
pub fn stress(total_available_mm: f64, readily_available_mm: f64, depletion_mm: f64) -> f64 {
    falling(total_available_mm, readily_available_mm, depletion_mm)
}

/// Evaporation reduction coefficient 0..=1 from total and readily evaporable water and the depletion of
/// the surface layer, all in mm. FAO-56 equation 74.
#[must_use]
pub fn evaporation_reduction(total_mm: f64, readily_mm: f64, depletion_mm: f64) -> f64 {
    falling(total_mm, readily_mm, depletion_mm)
}

/// 1 as far as `readily`, then a straight fall to 0 at `total`.
fn falling(total_mm: f64, readily_mm: f64, depletion_mm: f64) -> f64 {
    if depletion_mm <= readily_mm {
        1.0
    } else if depletion_mm >= total_mm {
        0.0
    } else {
        (total_mm - depletion_mm) / (total_mm - readily_mm)
    }
}

/// Depletion in mm at the end of a day: what was missing in the morning, less rain and watering, plus
/// what the plant took under the morning's stress; held between full and empty. FAO-56 equation 85.
#[must_use]
pub fn depletion_after_mm(
    total_available_mm: f64,
    readily_available_mm: f64,
    morning_mm: f64,
    etc_mm: f64,
    water_mm: f64,
) -> f64 {
    let taken_mm = stress(total_available_mm, readily_available_mm, morning_mm) * etc_mm;
    (morning_mm - water_mm + taken_mm).clamp(0.0, total_available_mm.max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hot_days_leave_less_of_the_store_within_reach() {
        // FAO-56 Table 22, footnote 2.
        assert!((p_adjusted(0.5, 5.0) - 0.5).abs() < 1e-12);
        assert!((p_adjusted(0.5, 8.0) - 0.38).abs() < 1e-12);
        assert!((p_adjusted(0.8, 1.0) - 0.8).abs() < 1e-12);
        assert!((p_adjusted(0.2, 9.0) - 0.1).abs() < 1e-12);
    }

    #[test]
    fn the_balance_closes_while_there_is_no_stress() {
        let after_mm = depletion_after_mm(160.0, 64.0, 20.0, 6.0, 4.0);
        assert!((after_mm - 22.0).abs() < 1e-12);
    }

    #[test]
    fn no_store_is_fuller_than_full_or_emptier_than_empty() {
        for morning in 0..=160 {
            for water in 0..=80 {
                let after_mm = depletion_after_mm(160.0, 64.0, f64::from(morning), 9.0, f64::from(water));
                assert!((0.0..=160.0).contains(&after_mm));
                let share = stress(160.0, 64.0, f64::from(morning));
                assert!((0.0..=1.0).contains(&share));
            }
        }
    }
}

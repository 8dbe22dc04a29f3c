//! The crop coefficient in a climate and on a day of the season.

/// Mid-season coefficient in a climate that is not subhumid and calm, from the table's value, wind at
/// 2 m in m/s, least relative humidity in percent and plant height in m. FAO-56 equation 62; wind counts
/// from 1 to 6 m/s, humidity from 20 to 80 %, height from 0.1 to 10 m, and beyond as the nearest of these.
#[must_use]
pub fn mid_in_climate(kc_mid_table: f64, u2_ms: f64, rh_min_pct: f64, height_m: f64) -> f64 {
    let wind = 0.04 * (u2_ms.clamp(1.0, 6.0) - 2.0);
    let humidity = 0.004 * (rh_min_pct.clamp(20.0, 80.0) - 45.0);
    kc_mid_table + (wind - humidity) * libm::pow(height_m.clamp(0.1, 10.0) / 3.0, 0.3)
}

/// Coefficient on a day counted from planting (0 on the first), from the lengths in days of the
/// initial, development, middle and late stages and the three coefficients. FAO-56 equation 66; after
/// the last stage the end value stays.
#[must_use]
pub fn on_day(stage_days: [f64; 4], k_ini: f64, k_mid: f64, k_end: f64, day: f64) -> f64 {
    let [initial, development, middle, late] = stage_days;
    let between =
        |from: f64, to: f64, start: f64, length: f64| from + (to - from) * ((day - start) / length).clamp(0.0, 1.0);
    let middle_start = initial + development;
    let late_start = middle_start + middle;
    if day <= initial {
        k_ini
    } else if day < middle_start {
        between(k_ini, k_mid, initial, development)
    } else if day <= late_start {
        k_mid
    } else if day < late_start + late {
        between(k_mid, k_end, late_start, late)
    } else {
        k_end
    }
}

/// Landscape coefficient from species, density and microclimate factors. Landscape coefficient method
/// (Costello, Matheny, Clark and Jones 2000).
#[must_use]
pub fn landscape(species: f64, density: f64, microclimate: f64) -> f64 {
    species * density * microclimate
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_season_has_no_jump() {
        let at = |day: f64| on_day([25.0, 25.0, 30.0, 20.0], 0.15, 1.14, 0.25, day);
        for tenth in 0..1200 {
            let day = f64::from(tenth) / 10.0;
            assert!((at(day + 0.1) - at(day)).abs() < 0.01, "{day}");
        }
    }

    #[test]
    fn a_stage_without_days_is_no_division_by_nought() {
        for day in 0..=20 {
            assert!(on_day([5.0, 0.0, 5.0, 0.0], 0.3, 1.1, 0.4, f64::from(day)).is_finite());
        }
    }

    #[test]
    fn a_subhumid_calm_climate_changes_nothing() {
        assert!((mid_in_climate(1.2, 2.0, 45.0, 2.0) - 1.2).abs() < 1e-12);
    }
}

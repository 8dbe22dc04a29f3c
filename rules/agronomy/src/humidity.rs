//! Vapour pressure: what the air can hold and what it holds, by FAO-56 chapter 3.
//!
//! Temperatures in C, vapour pressures in kPa, relative humidities in percent.

use libm::exp;

/// Saturation vapour pressure in kPa at an air temperature in C. FAO-56 equation 11.
#[must_use]
pub fn saturation_vapour_pressure_kpa(temperature_c: f64) -> f64 {
    0.6108 * exp(17.27 * temperature_c / (temperature_c + 237.3))
}

/// Mean saturation vapour pressure of a day in kPa: half the sum at the two extremes, not the value
/// at the mean. FAO-56 equation 12.
#[must_use]
pub fn mean_saturation_vapour_pressure_kpa(tmin_c: f64, tmax_c: f64) -> f64 {
    (saturation_vapour_pressure_kpa(tmax_c) + saturation_vapour_pressure_kpa(tmin_c)) / 2.0
}

/// Slope of the saturation curve in kPa per degree C. FAO-56 equation 13.
#[must_use]
pub fn slope_vapour_pressure(temperature_c: f64) -> f64 {
    let span = temperature_c + 237.3;
    4098.0 * saturation_vapour_pressure_kpa(temperature_c) / (span * span)
}

/// Actual vapour pressure in kPa from the dew point in C. FAO-56 equation 14.
#[must_use]
pub fn ea_from_dew_point_kpa(dew_point_c: f64) -> f64 {
    saturation_vapour_pressure_kpa(dew_point_c)
}

/// Actual vapour pressure in kPa from dry and wet bulb in C, the pressure in kPa and the
/// psychrometer's coefficient per degree C (0.000662 aspirated, 0.000800 naturally ventilated,
/// 0.001200 indoors). FAO-56 equations 15 and 16.
#[must_use]
pub fn ea_from_wet_bulb_kpa(dry_bulb_c: f64, wet_bulb_c: f64, pressure_kpa: f64, coefficient: f64) -> f64 {
    saturation_vapour_pressure_kpa(wet_bulb_c) - coefficient * pressure_kpa * (dry_bulb_c - wet_bulb_c)
}

/// Actual vapour pressure in kPa from the day's greatest and least relative humidity in percent.
/// FAO-56 equation 17.
#[must_use]
pub fn ea_from_rh_max_and_min_kpa(tmin_c: f64, tmax_c: f64, rh_max_pct: f64, rh_min_pct: f64) -> f64 {
    (saturation_vapour_pressure_kpa(tmin_c) * rh_max_pct / 100.0
        + saturation_vapour_pressure_kpa(tmax_c) * rh_min_pct / 100.0)
        / 2.0
}

/// Actual vapour pressure in kPa from the greatest relative humidity in percent alone; for places
/// where the least cannot be trusted. FAO-56 equation 18.
#[must_use]
pub fn ea_from_rh_max_kpa(tmin_c: f64, rh_max_pct: f64) -> f64 {
    saturation_vapour_pressure_kpa(tmin_c) * rh_max_pct / 100.0
}

/// Actual vapour pressure in kPa from the mean relative humidity in percent. FAO-56 equation 19.
#[must_use]
pub fn ea_from_rh_mean_kpa(tmin_c: f64, tmax_c: f64, rh_mean_pct: f64) -> f64 {
    rh_mean_pct / 100.0 * mean_saturation_vapour_pressure_kpa(tmin_c, tmax_c)
}

/// Actual vapour pressure in kPa when no humidity is known: the air at dawn is taken as saturated.
/// FAO-56 equation 48; in dry climates the dew point lies 2 to 3 degrees below the minimum.
#[must_use]
pub fn ea_from_tmin_kpa(tmin_c: f64) -> f64 {
    saturation_vapour_pressure_kpa(tmin_c)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn saturation_rises_with_every_tenth_of_a_degree() {
        let mut below = saturation_vapour_pressure_kpa(-90.0);
        for tenth in -899..=600 {
            let here = saturation_vapour_pressure_kpa(f64::from(tenth) / 10.0);
            assert!(here > below && here.is_finite(), "{tenth}");
            below = here;
        }
    }

    #[test]
    fn example_4_of_the_paper_is_met() {
        // FAO-56 Example 4: 19.5 C wet, 25.6 C dry, aspirated, 1200 m (87.9 kPa): 1.91 kPa.
        let ea = ea_from_wet_bulb_kpa(25.6, 19.5, 87.9, 0.000_662);
        assert!((ea - 1.91).abs() < 0.005, "{ea}");
    }

    #[test]
    fn slope_is_the_derivative_of_the_curve() {
        for degree in -40..=50 {
            let t = f64::from(degree);
            let step = 1e-4;
            let rise = saturation_vapour_pressure_kpa(t + step) - saturation_vapour_pressure_kpa(t - step);
            // Equation 13 rounds 17.27 * 237.3 = 4098.17 to 4098.
            assert!((slope_vapour_pressure(t) / (rise / (2.0 * step)) - 1.0).abs() < 1e-4, "{t}");
        }
    }
}

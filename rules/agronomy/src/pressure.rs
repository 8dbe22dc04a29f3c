//! Air pressure and the psychrometric constant from elevation.

use libm::pow;

/// Atmospheric pressure in kPa at an elevation in m (meant for -500..=9000 m). FAO-56 equation 7,
/// a simplified gas law for air of 20 C.
#[must_use]
pub fn atmospheric_pressure_kpa(elevation_m: f64) -> f64 {
    101.3 * pow((293.0 - 0.0065 * elevation_m) / 293.0, 5.26)
}

/// Psychrometric constant in kPa per degree C for a pressure in kPa. FAO-56 equation 8.
#[must_use]
pub fn psychrometric_constant(pressure_kpa: f64) -> f64 {
    0.665e-3 * pressure_kpa
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pressure_falls_with_every_metre() {
        let mut above = atmospheric_pressure_kpa(-500.0);
        for metre in -499..=9000 {
            let here = atmospheric_pressure_kpa(f64::from(metre));
            assert!(here < above, "{metre} m: {here} kPa");
            above = here;
        }
    }

    #[test]
    fn example_2_of_the_paper_is_met() {
        // FAO-56 Example 2: 1800 m gives 81.8 kPa and 0.054 kPa/C.
        let pressure_kpa = atmospheric_pressure_kpa(1800.0);
        assert!((pressure_kpa - 81.8).abs() < 0.05, "{pressure_kpa}");
        assert!((psychrometric_constant(pressure_kpa) - 0.054).abs() < 0.0005);
    }
}

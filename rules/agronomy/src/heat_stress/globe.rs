//! Wet-bulb globe temperature (WBGT).

use libm::exp;

/// WBGT in C in the sun, from natural wet bulb, black globe and dry bulb in C. ISO 7243.
#[must_use]
pub fn outdoor_c(natural_wet_bulb_c: f64, globe_c: f64, dry_bulb_c: f64) -> f64 {
    0.7 * natural_wet_bulb_c + 0.2 * globe_c + 0.1 * dry_bulb_c
}

/// WBGT in C guessed from temperature in C and relative humidity in percent alone.
///
/// The simplified form that the Australian Bureau of Meteorology uses, after the American College of
/// Sports Medicine 1984 (from memory): 0.567 T + 0.393 e + 3.94, e in hPa. It supposes moderate sun and
/// a light wind: too high at night and under cloud, too low in full sun and still air.
#[must_use]
pub fn simple_c(temperature_c: f64, rh_pct: f64) -> f64 {
    let vapour_hpa = rh_pct / 100.0 * 6.105 * exp(17.27 * temperature_c / (237.7 + temperature_c));
    0.567 * temperature_c + 0.393 * vapour_hpa + 3.94
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_bulbs_give_their_own_temperature() {
        assert!((outdoor_c(21.0, 21.0, 21.0) - 21.0).abs() < 1e-12);
    }

    #[test]
    fn the_guess_rises_with_humidity() {
        assert!(simple_c(32.0, 70.0) > simple_c(32.0, 40.0) + 4.0);
    }
}

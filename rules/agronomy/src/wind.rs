//! Wind speed brought to the height of the reference surface.

use libm::log;

/// Factor that turns a wind speed measured at a height in m (0.5..=200 m) over short grass into the
/// speed at 2 m. FAO-56 equation 47. The equation has no meaning below about 0.1 m.
#[must_use]
pub fn wind_to_2m_factor(height_m: f64) -> f64 {
    4.87 / log(67.8 * height_m - 5.42)
}

/// Wind speed at 2 m in m/s from a speed in m/s at a height in m. FAO-56 equation 47.
///
/// A speed measured at 2 m is given back as it is: there the printed constants make 1.0002.
#[must_use]
pub fn wind_at_2m_ms(wind_ms: f64, height_m: f64) -> f64 {
    if (height_m - 2.0).abs() < 1e-9 { wind_ms } else { wind_ms * wind_to_2m_factor(height_m) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_factor_falls_with_height_and_stays_a_number() {
        let mut below = wind_to_2m_factor(0.5);
        assert!(below.is_finite());
        for decimetre in 6..=2000 {
            let here = wind_to_2m_factor(f64::from(decimetre) / 10.0);
            assert!(here > 0.0 && here < below, "{decimetre}");
            below = here;
        }
    }
}

//! Reference evapotranspiration from temperature alone, by Hargreaves and Samani.

/// Reference evapotranspiration in mm/d from the day's extremes in C and extraterrestrial radiation
/// in MJ m-2 d-1. FAO-56 equation 52, with Ra turned into mm/d by 0.408 (latent heat 2.45 MJ/kg).
///
/// A minimum above the maximum counts as no range, and frost below -17.8 C as no evaporation: the
/// result is never negative.
#[must_use]
pub fn hargreaves_mm(tmin_c: f64, tmax_c: f64, ra_mj: f64) -> f64 {
    hargreaves_with_mean_mm((tmin_c + tmax_c) / 2.0, tmin_c, tmax_c, ra_mj)
}

/// The same with a mean temperature of its own, where one was measured and is not half the sum.
/// FAO-56 equation 52.
#[must_use]
pub fn hargreaves_with_mean_mm(tmean_c: f64, tmin_c: f64, tmax_c: f64, ra_mj: f64) -> f64 {
    let range_k = (tmax_c - tmin_c).max(0.0);
    (0.0023 * (tmean_c + 17.8) * range_k.sqrt() * 0.408 * ra_mj).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn deep_frost_evaporates_nothing() {
        assert_eq!(hargreaves_mm(-40.0, -20.0, 5.0).to_bits(), 0.0_f64.to_bits());
    }

    #[test]
    fn a_day_without_range_evaporates_nothing() {
        assert!(hargreaves_mm(20.0, 20.0, 30.0).abs() < 1e-12);
    }
}

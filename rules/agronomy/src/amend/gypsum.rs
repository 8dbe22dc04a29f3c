//! Gypsum for a soil that holds too much sodium.

/// Grams of gypsum per square metre that replace exchangeable sodium.
///
/// Oster, Shainberg and Abrol 1999: 8.6 F D rho CEC (ESPi - ESPf) / p in Mg/ha, with p in percent and
/// 1 Mg/ha = 100 g/m2. `cec_cmol_kg` is the exchange capacity in cmol/kg (the same number as meq per
/// 100 g), sodium in percent of it now and as wanted, `depth_m` of soil to mend, `bulk_density` in
/// Mg/m3, `purity_pct` of the gypsum, `factor` for what misses the clay. Nothing when the target is not
/// lower.
#[must_use]
pub fn g_per_m2(
    cec_cmol_kg: f64,
    sodium_pct: (f64, f64),
    depth_m: f64,
    bulk_density: f64,
    purity_pct: f64,
    factor: f64,
) -> f64 {
    let (now_pct, wanted_pct) = sodium_pct;
    let mg_per_ha = 8.6 * factor * depth_m * bulk_density * cec_cmol_kg * (now_pct - wanted_pct) / purity_pct;
    (100.0 * mg_per_ha).max(0.0)
}

/// The factor for what misses the clay, from the sodium wanted in percent: 1.3 at 5, 1.1 at 15, straight
/// between and held beyond. Oster and Frenkel 1980 (from memory).
#[must_use]
pub fn factor(wanted_pct: f64) -> f64 {
    (1.4 - 0.02 * wanted_pct).clamp(1.1, 1.3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_handbook_s_example_is_met() {
        // Practices of Irrigation and On-farm Water Management, example 8.7: exchange capacity 22, from
        // 35 to 15 % over 40 cm, pure gypsum, 3.85 t per ha, 30 cm and unit of sodium: 22.58 t/ha. Its 3.85
        // supposes a bulk density of 1.49.
        let g = g_per_m2(22.0, (35.0, 15.0), 0.40, 1.49, 100.0, 1.0);
        assert!((g - 2258.0).abs() < 15.0, "{g}");
    }

    #[test]
    fn the_factor_lies_between_its_two_ends() {
        for (wanted, expected) in [(0.0, 1.3), (5.0, 1.3), (10.0, 1.2), (15.0, 1.1), (30.0, 1.1)] {
            assert!((factor(wanted) - expected).abs() < 1e-12);
        }
    }
}

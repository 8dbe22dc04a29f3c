//! How much of a product for a rate, and how strong a feed in water is.

/// Grams of product that hold a mass of nutrient in g, with an analysis in percent (above 0).
#[must_use]
pub fn for_nutrient_g(nutrient_g: f64, analysis_pct: f64) -> f64 {
    nutrient_g / (analysis_pct / 100.0)
}

/// Grams of product per litre of water for a strength in ppm (mg of nutrient per litre) and an
/// analysis in percent (above 0).
#[must_use]
pub fn for_strength_g_per_l(target_ppm: f64, analysis_pct: f64) -> f64 {
    target_ppm / 1000.0 / (analysis_pct / 100.0)
}

/// Strength in ppm (mg of nutrient per litre) of some grams of product per litre with an analysis in
/// percent.
#[must_use]
pub fn strength_ppm(product_g_per_l: f64, analysis_pct: f64) -> f64 {
    product_g_per_l * 1000.0 * analysis_pct / 100.0
}

/// Grams of a material for an area in m2 at a rate in g/m2.
#[must_use]
pub fn for_area_g(rate_g_per_m2: f64, area_m2: f64) -> f64 {
    rate_g_per_m2 * area_m2
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strength_and_dose_undo_each_other() {
        for ppm in [25.0, 100.0, 250.0] {
            assert!((strength_ppm(for_strength_g_per_l(ppm, 15.0), 15.0) - ppm).abs() < 1e-9);
        }
    }
}

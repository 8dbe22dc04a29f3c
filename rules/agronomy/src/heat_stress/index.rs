//! The heat index: how hot humid air feels in the shade in a light wind.
//!
//! Rothfusz 1990 (National Weather Service technical attachment SR 90-23) with the adjustments of the
//! Weather Service's own page. Below an index of 80 F its simple formula stands, averaged with the
//! temperature; some libraries leave that average out. The regression is good to 1.3 F.

use libm::fabs;

/// Below this index in F the simple formula stands.
const SIMPLE_BELOW_F: f64 = 80.0;

/// Heat index in F from temperature in F and relative humidity in percent (0..=100).
///
/// Finite for every finite input; it means something between about 80 and 115 F.
#[must_use]
pub fn heat_index_f(temperature_f: f64, rh_pct: f64) -> f64 {
    let simple_f = 0.5 * (temperature_f + 61.0 + (temperature_f - 68.0) * 1.2 + rh_pct * 0.094);
    let averaged_f = (simple_f + temperature_f) / 2.0;
    if averaged_f < SIMPLE_BELOW_F {
        return averaged_f;
    }
    let (t, r) = (temperature_f, rh_pct);
    let regression_f = -42.379 + 2.049_015_23 * t + 10.143_331_27 * r
        - 0.224_755_41 * t * r
        - 0.006_837_83 * t * t
        - 0.054_817_17 * r * r
        + 0.001_228_74 * t * t * r
        + 0.000_852_82 * t * r * r
        - 0.000_001_99 * t * t * r * r;
    if r < 13.0 && (80.0..=112.0).contains(&t) {
        regression_f - (13.0 - r) / 4.0 * ((17.0 - fabs(t - 95.0)) / 17.0).sqrt()
    } else if r > 85.0 && (80.0..=87.0).contains(&t) {
        regression_f + (r - 85.0) / 10.0 * ((87.0 - t) / 5.0)
    } else {
        regression_f
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_chart_s_cells_are_met() {
        // National Weather Service heat index chart, whole F (from memory).
        for (t, r, cell) in [(90.0, 50.0, 95.0), (80.0, 40.0, 80.0), (94.0, 60.0, 110.0), (100.0, 40.0, 109.0)] {
            assert!((heat_index_f(t, r) - cell).abs() <= 1.3, "{t} {r} {}", heat_index_f(t, r));
        }
    }

    #[test]
    fn cool_air_feels_about_as_cool_as_it_is() {
        assert!((heat_index_f(70.0, 50.0) - 70.0).abs() < 1.5);
    }

    #[test]
    fn hotter_air_never_has_a_lower_index() {
        for rh in (20..=80).step_by(10) {
            let mut before = 0.0;
            for t in 60..=115 {
                let index = heat_index_f(f64::from(t), f64::from(rh));
                assert!(index >= before - 0.7, "{t} {rh} {before} {index}");
                before = index;
            }
        }
    }
}

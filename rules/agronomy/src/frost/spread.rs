//! How much single nights differ from the smooth year, when nobody has measured it.

use crate::profile::Monthly;

/// Bounds of the estimate, K.
const BOUNDS_K: (f64, f64) = (0.8, 8.0);

struct Year {
    mean_c: f64,
    /// Warmest minus coldest month, K.
    range_k: f64,
}

impl Year {
    fn of(tmean_c: &Monthly) -> Self {
        let mut sum = 0.0;
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for month_c in tmean_c {
            sum += month_c;
            low = low.min(*month_c);
            high = high.max(*month_c);
        }
        Self { mean_c: sum / 12.0, range_k: high - low }
    }
}

/// Standard deviation of the daily minimum about the smooth year, K, each month, 0.8 to 8, from the
/// monthly mean temperatures in °C alone.
///
/// `s = 2.69 - 0.057 T + 0.096 A - 0.084 (T - Tyear)`, A the warmest less the coldest month. Fitted to
/// the daily records of 57 places (provenance beside the test data `station_normals.csv`); leaving one
/// place out: mean error 0.66 K, root mean square 0.89 K.
#[must_use]
pub fn spread_from_normals(tmean_c: &Monthly) -> Monthly {
    let year = Year::of(tmean_c);
    tmean_c.map(|month_c| {
        let spread_k = 2.69 - 0.057 * month_c + 0.096 * year.range_k - 0.084 * (month_c - year.mean_c);
        spread_k.clamp(BOUNDS_K.0, BOUNDS_K.1)
    })
}

/// The same where the surroundings are known as well: with the fall of temperature towards the pole,
/// K per 100 km, each month, reduced to one height and not below 0. Storms carry the gradient past a
/// place.
///
/// `s = 2.187 + 1.268 G - 0.04159 T + 0.06573 A - 0.05537 (T - Tyear)`. Fitted to the same daily
/// records and more; leaving one climate out: mean error 0.70 K, root mean square 0.93 K.
#[must_use]
pub fn spread_from_gradient(tmean_c: &Monthly, poleward_gradient: &Monthly) -> Monthly {
    let year = Year::of(tmean_c);
    let mut spread_k = *tmean_c;
    for (spread, gradient) in spread_k.iter_mut().zip(poleward_gradient) {
        let month_c = *spread;
        *spread = (2.187 + 1.268 * gradient.max(0.0) - 0.04159 * month_c + 0.06573 * year.range_k
            - 0.05537 * (month_c - year.mean_c))
            .clamp(BOUNDS_K.0, BOUNDS_K.1);
    }
    spread_k
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spreads_stay_within_their_bounds() {
        for tmean_c in [[-60.0; 12], [45.0; 12], [20.0; 12]] {
            for spread in spread_from_normals(&tmean_c) {
                assert!((0.8..=8.0).contains(&spread));
            }
        }
    }

    #[test]
    fn winter_nights_differ_more_than_summer_nights() {
        let tmean_c = [0.0, 2.0, 6.0, 10.0, 15.0, 19.0, 22.0, 21.0, 16.0, 11.0, 5.0, 1.0];
        let spread = spread_from_normals(&tmean_c);
        assert!(spread[0] > spread[6]);
        let windy = spread_from_gradient(&tmean_c, &[0.9; 12]);
        let calm = spread_from_gradient(&tmean_c, &[0.0; 12]);
        assert!((windy[3] - calm[3] - 0.9 * 1.268).abs() < 1e-12);
    }
}

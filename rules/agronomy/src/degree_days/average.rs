//! Degree days from half the sum of the extremes, in the two ways that are in use.

use super::thresholds::{Cutoff, Thresholds};

/// Degree days of a day in C d: half the sum first, then the base. McMaster and Wilhelm 1997,
/// interpretation 1 of equation 1. On cold nights it gives less than method 2.
///
/// With an upper threshold the half sum is held at it (horizontal), mirrored at it (intermediate) or
/// gives nothing above it (vertical).
#[must_use]
pub fn average_method1(tmin_c: f64, tmax_c: f64, thresholds: Thresholds) -> f64 {
    let mean_c = (tmin_c + tmax_c) / 2.0;
    let counted_c = match thresholds.upper_c {
        Some((upper_c, cutoff)) if mean_c > upper_c => match cutoff {
            Cutoff::Horizontal => upper_c,
            Cutoff::Intermediate => 2.0 * upper_c - mean_c,
            Cutoff::Vertical => thresholds.lower_c,
        },
        _ => mean_c,
    };
    (counted_c - thresholds.lower_c).max(0.0)
}

/// Degree days of a day in C d: both extremes are lifted to the base first, and lowered to the upper
/// threshold where there is one. McMaster and Wilhelm 1997, interpretation 2 of equation 1.
///
/// Only the horizontal cut-off has a meaning here; the others are reckoned on the half sum as in
/// [`average_method1`], after the base has been applied.
#[must_use]
pub fn average_method2(tmin_c: f64, tmax_c: f64, thresholds: Thresholds) -> f64 {
    let lower_c = thresholds.lower_c;
    match thresholds.upper_c {
        Some((upper_c, Cutoff::Horizontal)) => {
            let held = |t: f64| t.max(lower_c).min(upper_c);
            (held(tmin_c) + held(tmax_c)) / 2.0 - lower_c
        }
        _ => average_method1(tmin_c.max(lower_c), tmax_c.max(lower_c), thresholds),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_two_methods_part_on_a_cold_night() {
        // McMaster and Wilhelm 1997, Table 1: 5 / -5 C, base 0 C.
        let base = Thresholds::above(0.0);
        assert!(average_method1(-5.0, 5.0, base).abs() < 1e-12);
        assert!((average_method2(-5.0, 5.0, base) - 2.5).abs() < 1e-12);
    }
}

//! Degree days under a temperature curve drawn through the day's extremes.

use core::f64::consts::{FRAC_PI_2, PI};
use libm::asin;

use super::thresholds::{Cutoff, Thresholds};

/// What one curve gives above one temperature: warmth in C d and the share of the day, 0..=1.
#[derive(Debug, Clone, Copy)]
struct Above {
    warmth_cd: f64,
    share: f64,
}

type Curve = fn(f64, f64, f64) -> Above;

// Zalom 1983: the area between a sine and a line; the day's mean when the line lies below the curve.
fn sine_above(tmin_c: f64, tmax_c: f64, threshold_c: f64) -> Above {
    let mean_c = (tmax_c + tmin_c) / 2.0;
    if threshold_c <= tmin_c {
        return Above { warmth_cd: mean_c - threshold_c, share: 1.0 };
    }
    if threshold_c >= tmax_c {
        return Above { warmth_cd: 0.0, share: 0.0 };
    }
    let amplitude_k = (tmax_c - tmin_c) / 2.0;
    let sine = ((threshold_c - mean_c) / amplitude_k).clamp(-1.0, 1.0);
    let rest_rad = FRAC_PI_2 - asin(sine);
    let cosine = (1.0 - sine * sine).sqrt();
    Above {
        // Never below nothing, which rounding could make of a threshold just under the maximum.
        warmth_cd: (((mean_c - threshold_c) * rest_rad + amplitude_k * cosine) / PI).max(0.0),
        share: rest_rad / PI,
    }
}

fn triangle_above(tmin_c: f64, tmax_c: f64, threshold_c: f64) -> Above {
    if threshold_c <= tmin_c {
        return Above { warmth_cd: (tmax_c + tmin_c) / 2.0 - threshold_c, share: 1.0 };
    }
    if threshold_c >= tmax_c {
        return Above { warmth_cd: 0.0, share: 0.0 };
    }
    let share = (tmax_c - threshold_c) / (tmax_c - tmin_c);
    Above { warmth_cd: (tmax_c - threshold_c) * share / 2.0, share }
}

fn day_under(curve: Curve, tmin_c: f64, tmax_c: f64, thresholds: Thresholds) -> f64 {
    let lower = curve(tmin_c, tmax_c, thresholds.lower_c);
    let Some((upper_c, cutoff)) = thresholds.upper_c else {
        return lower.warmth_cd;
    };
    let upper = curve(tmin_c, tmax_c, upper_c);
    let counted_cd = match cutoff {
        Cutoff::Horizontal => lower.warmth_cd - upper.warmth_cd,
        Cutoff::Intermediate => lower.warmth_cd - 2.0 * upper.warmth_cd,
        Cutoff::Vertical => lower.warmth_cd - upper.warmth_cd - (upper_c - thresholds.lower_c) * upper.share,
    };
    counted_cd.max(0.0)
}

/// Half a day up to the maximum, half a day down to the next day's minimum; a next minimum above this
/// day's maximum counts as that maximum.
fn halves_under(curve: Curve, tmin_c: f64, tmax_c: f64, next_tmin_c: f64, thresholds: Thresholds) -> f64 {
    (day_under(curve, tmin_c, tmax_c, thresholds) + day_under(curve, next_tmin_c.min(tmax_c), tmax_c, thresholds)) / 2.0
}

/// Degree days of a day in C d under one sine through its extremes in C. Zalom 1983, single sine.
///
/// Extremes in the wrong order have no curve: the minimum counts for both. Never negative; an
/// intermediate cut-off stops at nothing.
#[must_use]
pub fn single_sine(tmin_c: f64, tmax_c: f64, thresholds: Thresholds) -> f64 {
    day_under(sine_above, tmin_c, tmax_c.max(tmin_c), thresholds)
}

/// Degree days of a day in C d under one triangle through its extremes in C. Zalom 1983, single
/// triangle.
#[must_use]
pub fn single_triangle(tmin_c: f64, tmax_c: f64, thresholds: Thresholds) -> f64 {
    day_under(triangle_above, tmin_c, tmax_c.max(tmin_c), thresholds)
}

/// Degree days of a day in C d under two half sines, the second falling to the next day's minimum in
/// C. Zalom 1983, double sine.
#[must_use]
pub fn double_sine(tmin_c: f64, tmax_c: f64, next_tmin_c: f64, thresholds: Thresholds) -> f64 {
    halves_under(sine_above, tmin_c, tmax_c.max(tmin_c), next_tmin_c, thresholds)
}

/// Degree days of a day in C d under two triangles, the second falling to the next day's minimum in
/// C. Zalom 1983, double triangle.
///
/// The paper's Table 7 prints 24.88 F d in row 9 (60/100, next 75, thresholds 55/90 F); integration
/// and the paper's own formula give 27.13.
#[must_use]
pub fn double_triangle(tmin_c: f64, tmax_c: f64, next_tmin_c: f64, thresholds: Thresholds) -> f64 {
    halves_under(triangle_above, tmin_c, tmax_c.max(tmin_c), next_tmin_c, thresholds)
}

#[cfg(test)]
mod tests {
    use super::*;
    use libm::sin;

    fn counted(t: f64, lower: f64, upper: f64, cutoff: Cutoff) -> f64 {
        if t <= lower {
            0.0
        } else if t <= upper {
            t - lower
        } else {
            match cutoff {
                Cutoff::Horizontal => upper - lower,
                Cutoff::Intermediate => 2.0 * upper - t - lower,
                Cutoff::Vertical => 0.0,
            }
        }
    }

    // The plain slow way: the curve cut into 20000 pieces.
    fn by_pieces(at: impl Fn(f64) -> f64, lower: f64, upper: f64, cutoff: Cutoff) -> f64 {
        let pieces = 20_000;
        let sum: f64 =
            (0..pieces).map(|i| counted(at((f64::from(i) + 0.5) / f64::from(pieces)), lower, upper, cutoff)).sum();
        (sum / f64::from(pieces)).max(0.0)
    }

    #[test]
    fn closed_forms_agree_with_the_curve_cut_into_pieces() {
        let days = [(-4.0, 8.0), (5.0, 15.0), (8.0, 28.0), (12.0, 36.0), (31.0, 40.0), (15.0, 15.0), (2.0, 44.0)];
        for (tmin, tmax) in days {
            for cutoff in [Cutoff::Horizontal, Cutoff::Intermediate, Cutoff::Vertical] {
                let thresholds = Thresholds { lower_c: 10.0, upper_c: Some((30.0, cutoff)) };
                let (mean, half) = ((tmin + tmax) / 2.0, (tmax - tmin) / 2.0);
                let sine = by_pieces(|x| mean + half * sin(2.0 * PI * x), 10.0, 30.0, cutoff);
                assert!((single_sine(tmin, tmax, thresholds) - sine).abs() < 5e-3, "{tmin} {tmax} {cutoff:?} {sine}");
                let triangle = by_pieces(|x| tmin + (tmax - tmin) * x, 10.0, 30.0, cutoff);
                assert!(
                    (single_triangle(tmin, tmax, thresholds) - triangle).abs() < 5e-3,
                    "{tmin} {tmax} {cutoff:?} {triangle}"
                );
            }
        }
    }

    #[test]
    fn no_day_gives_less_than_nothing_or_more_than_the_band() {
        for tmin in -40..=45 {
            for range in 0..=30 {
                let (low, high) = (f64::from(tmin), f64::from(tmin + range));
                for cutoff in [Cutoff::Horizontal, Cutoff::Intermediate, Cutoff::Vertical] {
                    let thresholds = Thresholds { lower_c: 10.0, upper_c: Some((30.0, cutoff)) };
                    for warmth in [single_sine(low, high, thresholds), single_triangle(low, high, thresholds)] {
                        assert!((0.0..=20.0 + 1e-9).contains(&warmth), "{low} {high} {cutoff:?} {warmth}");
                    }
                }
            }
        }
    }

    #[test]
    fn a_next_night_as_cold_as_this_one_makes_both_sines_alike() {
        let thresholds = Thresholds { lower_c: 10.0, upper_c: Some((30.0, Cutoff::Horizontal)) };
        let single = single_sine(4.0, 33.0, thresholds);
        assert!((double_sine(4.0, 33.0, 4.0, thresholds) - single).abs() < 1e-12);
        assert!(double_sine(4.0, 33.0, 12.0, thresholds) > single);
    }
}

//! Numbers that are the same everywhere: ten thousand results against one hash.
//!
//! The hash was made on x86-64 Linux. On another target the same one must come out: elementary functions come from one
//! library in pure Rust, sums run in index order, and nothing is fused.

use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::marker::Marker;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::{Season, Series, SiteShift};
use lammas_engine::version::hash;

const EXPECTED: &str = "4cc3ee7213c7c17e37d70b425002154a352c27ceb1cce80ac519451918cdb053";

#[test]
fn ten_thousand_results_are_the_same_on_every_machine() {
    let mut text = String::new();
    let mut results = 0;
    let mut state = 1_u64;
    let mut next = |low: f64, high: f64| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * f64::from(u32::try_from(state >> 40).unwrap()) / f64::from(1_u32 << 24)
    };
    for _ in 0..40 {
        let latitude = next(-66.0, 66.0);
        let (mean, swing, range) = (next(-5.0, 28.0), next(0.0, 18.0), next(4.0, 18.0));
        let north = if latitude >= 0.0 { 0.0 } else { 6.0 };
        let month = |at: usize| mean - swing * wave_of_the_year((f64::from(u8::try_from(at).unwrap()) + north) / 12.0);
        let tmin: [f64; 12] = std::array::from_fn(|at| month(at) - range / 2.0);
        let tmax: [f64; 12] = std::array::from_fn(|at| month(at) + range / 2.0);
        let profile = Profile::of_temperatures(latitude, tmin, tmax);
        let season = Season::new(&profile, SiteShift::default());
        for marker in Marker::FIXED {
            text.push_str(&format!("{:?};", season.marker(marker)));
            results += 1;
        }
        for day in ClimateDay::all().step_by(7) {
            for series in [Series::Tmin, Series::Tmax, Series::Et0, Series::Daylength] {
                text.push_str(&format!("{:016x};", season.curve(series, day).unwrap().to_bits()));
                results += 1;
            }
            let heat = season.heat_left_cd(day.in_year(2026));
            text.push_str(&format!("{:016x};", heat.to_bits()));
            results += 1;
        }
    }
    assert!(results >= 10_000, "{results}");
    assert_eq!(hash::of_text(&text), EXPECTED);
}

/// A cosine of turns by its series, so that the inputs too are the same everywhere.
fn wave_of_the_year(turns: f64) -> f64 {
    let mut x = turns - turns.floor();
    if x > 0.5 {
        x = 1.0 - x;
    }
    // Bhaskara's rational form; any smooth wave does.
    let degrees = x * 360.0;
    let half = 180.0 - degrees;
    let wave = |d: f64| (32_400.0 - 4.0 * d * d) / (32_400.0 + d * d);
    if degrees <= 90.0 { wave(degrees) } else { -wave(half) }
}

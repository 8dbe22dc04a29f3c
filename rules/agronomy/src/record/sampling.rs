//! How sure frost dates are that were counted in a few seasons.

use serde::Serialize;

use super::frost_seasons::FrostSeason;
use crate::calendar::Day;
use crate::frost::Turning;

/// `sqrt(p (1 - p)) / f(z_p)` of the normal distribution at p = 0.5, and at 0.1 and 0.9.
const AT_MEDIAN: f64 = 1.2533;
const AT_TENTH: f64 = 1.7094;
/// Seasons with frost of which a spread is taken.
const LEAST_SEASONS: usize = 8;

/// Standard errors of counted frost dates, days, by chance alone: another run of as many seasons would give dates so
/// far off.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct FrostSampling {
    /// Of the last frost by which 10, 50 and 90 % of years have had it.
    pub last_days: [f64; 3],
    /// Of the first.
    pub first_days: [f64; 3],
}

/// The standard errors of frost dates counted in these seasons: the large-sample error of a quantile,
/// `s / sqrt(n) sqrt(p (1 - p)) / f(z_p)`, with the dates taken as normal (Kendall and Stuart, *The Advanced Theory of
/// Statistics*, volume 1, from memory). None of fewer than 8 seasons with frost.
#[must_use]
pub fn frost_sampling(seasons: &[FrostSeason], turning: Turning) -> Option<FrostSampling> {
    let errors = |pick: fn(&FrostSeason) -> Option<Day>| {
        let offsets: Vec<f64> = seasons
            .iter()
            .filter_map(pick)
            .map(|day| f64::from(day.climate_day().days_after(turning.warmest)))
            .collect();
        if offsets.len() < LEAST_SEASONS {
            return None;
        }
        let count = offsets.len() as f64;
        let mut sum = 0.0;
        for offset in &offsets {
            sum += offset;
        }
        let mean = sum / count;
        let mut squares = 0.0;
        for offset in &offsets {
            squares += (offset - mean) * (offset - mean);
        }
        let of_mean = (squares / (count - 1.0)).sqrt() / count.sqrt();
        Some([AT_TENTH, AT_MEDIAN, AT_TENTH].map(|factor| factor * of_mean))
    };
    Some(FrostSampling { last_days: errors(|season| season.last)?, first_days: errors(|season| season.first)? })
}

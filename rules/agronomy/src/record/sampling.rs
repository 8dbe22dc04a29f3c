//! How sure frost dates are that were counted in a few seasons.

use serde::Serialize;

use super::frost_seasons::FrostSeason;
use crate::calendar::Day;
use crate::frost::Turning;

/// `sqrt(p (1 - p)) / f(z_p)` of the normal distribution at p = 0.5, and at 0.1 and 0.9.
const AT_MEDIAN: f64 = 1.2533;
const AT_TENTH: f64 = 1.7094;
/// 95 % point of the normal distribution: 90 % lie within as many standard errors.
const NINETY: f64 = 1.6449;
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

impl FrostSampling {
    /// The half width within which nine of ten such runs of seasons would lie, days: 1.6449 standard errors (the 95 %
    /// point of the normal distribution, from memory of any table of it).
    #[must_use]
    pub fn within_90(&self) -> Self {
        let wide = |errors: [f64; 3]| errors.map(|error| NINETY * error);
        Self { last_days: wide(self.last_days), first_days: wide(self.first_days) }
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calendar::ClimateDay;

    /// Density of the normal distribution at its 50 and 10 % points: 0.39894 and 0.17550 (tables of the normal
    /// distribution). So the error of a median is sqrt(0.25) / 0.39894 = 1.2533 of that of a mean, that of a tenth
    /// sqrt(0.09) / 0.17550 = 1.7094.
    #[test]
    fn sixteen_seasons_that_spread_by_eight_days_tell_a_median_to_four_days() {
        let turning = Turning {
            coldest: ClimateDay::from_month_day(1, 15).unwrap(),
            warmest: ClimateDay::from_month_day(7, 16).unwrap(),
        };
        // eight days either side of a mean: a standard deviation of 8 sqrt(16/15)
        let season = |at: i32| {
            let day =
                |month_day: &str, off: i32| Some(Day::from_date(format!("2001-{month_day}").parse().unwrap()) + off);
            let off = if at % 2 == 0 { 8 } else { -8 };
            let (last, first) = (day("04-20", off), day("10-10", off));
            let start = Day::from_date("2000-07-16".parse().unwrap());
            FrostSeason { start, first, last, first_killing: None, last_killing: None, extreme_min_c: -9.0 }
        };
        let seasons: Vec<FrostSeason> = (0..16).map(season).collect();
        let errors = frost_sampling(&seasons, turning).unwrap();
        let of_mean = 8.0 * (16.0_f64 / 15.0).sqrt() / 4.0;
        for side in [errors.last_days, errors.first_days] {
            assert!((side[1] - 0.5 / 0.398_94 * of_mean).abs() < 1e-3, "{side:?}");
            assert!((side[0] - 0.3 / 0.175_50 * of_mean).abs() < 1e-3, "{side:?}");
        }
        assert!((errors.within_90().last_days[1] - 4.26).abs() < 0.01);
        assert_eq!(frost_sampling(&seasons[..7], turning), None);
    }
}

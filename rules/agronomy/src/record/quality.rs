//! How complete a record is.

use serde::Serialize;

use super::calendar_years::calendar_years;
use super::sampling::FrostSampling;
use super::suspicions::{Suspicions, suspicions};
use crate::calendar::Day;
use crate::profile::DailyWeather;

/// Days without both temperatures, in a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Gap {
    /// The first of them.
    pub first: Day,
    /// The last of them.
    pub last: Day,
    /// How many.
    pub days: u32,
}

/// How complete a record is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Quality {
    /// First day.
    pub first: Day,
    /// Last day.
    pub last: Day,
    /// Years from the first to the last day, to 365.25 days each.
    pub years: f64,
    /// Days from the first to the last.
    pub days: u32,
    /// Days with both temperatures.
    pub recorded_days: u32,
    /// Days with rain read (0 included).
    pub rain_days: u32,
    /// Gaps in the temperatures, longest first, at most [`Quality::MOST_GAPS`].
    pub gaps: Vec<Gap>,
    /// Gaps in all.
    pub gap_count: u32,
    /// Seasons whose cold half is recorded on 90 % of its days: those that frost can be counted in.
    pub frost_seasons: u16,
    /// Standard errors of the frost dates that were counted in them; none where none could be counted.
    pub frost_sampling: Option<FrostSampling>,
    /// Calendar years with nine tenths of both extremes: those that count for yearly figures.
    pub years_used: Vec<i32>,
    /// What looks wrong.
    pub suspicions: Suspicions,
}

impl Quality {
    /// Most gaps that are listed.
    pub const MOST_GAPS: usize = 50;

    /// Of days in order, at least one; `frost_seasons` is left at 0.
    pub(super) fn of(days: &[DailyWeather]) -> Option<Self> {
        let (first, last) = (days.first()?.day, days.last()?.day);
        let mut gaps: Vec<Gap> = Vec::new();
        let mut recorded_days = 0;
        let mut expected = first;
        let mut note = |from: Day, to: Day| {
            if from <= to {
                gaps.push(Gap { first: from, last: to, days: (to - from + 1).unsigned_abs() });
            }
        };
        for weather in days {
            if weather.tmean_c().is_some() {
                recorded_days += 1;
                note(expected, weather.day - 1);
                expected = weather.day + 1;
            }
        }
        note(expected, last);
        let gap_count = u32::try_from(gaps.len()).unwrap_or(u32::MAX);
        gaps.sort_by_key(|gap| (std::cmp::Reverse(gap.days), gap.first));
        gaps.truncate(Self::MOST_GAPS);
        let span = (last - first + 1).unsigned_abs();
        let rain_days = days.iter().filter(|weather| weather.rain_mm.is_some()).count();
        Some(Self {
            first,
            last,
            years: f64::from(span) / 365.25,
            days: span,
            recorded_days,
            rain_days: u32::try_from(rain_days).unwrap_or(u32::MAX),
            gaps,
            gap_count,
            frost_seasons: 0,
            frost_sampling: None,
            years_used: calendar_years(days)
                .iter()
                .filter(|year| year.has_minima() && year.has_maxima())
                .map(|year| year.year)
                .collect(),
            suspicions: suspicions(days),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_are_days_without_both_temperatures() {
        let day = |number: i32, tmin_c: Option<f64>| DailyWeather {
            tmin_c,
            tmax_c: Some(9.0),
            ..DailyWeather::unknown(Day::from_ce(700_000 + number))
        };
        let days = [day(0, Some(1.0)), day(1, None), day(2, Some(1.0)), day(7, Some(1.0)), day(8, None)];
        let quality = Quality::of(&days).unwrap();
        assert_eq!((quality.days, quality.recorded_days, quality.gap_count), (9, 3, 3));
        let lengths: Vec<u32> = quality.gaps.iter().map(|gap| gap.days).collect();
        assert_eq!(lengths, [4, 1, 1]);
        assert_eq!(quality.gaps[0].first, Day::from_ce(700_003));
    }
}

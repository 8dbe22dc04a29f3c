//! Monthly normals and the spread of the daily minimum from a record.

use super::fault::RecordFault;
use crate::calendar::{ClimateDay, DAYS_IN_MONTH};
use crate::curve::Harmonics;
use crate::profile::{DailyWeather, Monthly};

/// Days, over all years, that a month needs before it has a mean (own choice: half a month).
const LEAST_DAYS: u32 = 15;

/// The mean of a value in each month, over all years, with the days it was read on.
struct MonthlyMean {
    mean: Monthly,
    days: [u32; 12],
}

fn monthly_mean(days: &[DailyWeather], value: impl Fn(&DailyWeather, ClimateDay) -> Option<f64>) -> MonthlyMean {
    let mut sums = [(0.0_f64, 0_u32); 12];
    for weather in days {
        let day = weather.day.climate_day();
        if let (Some(value), Some(slot)) = (value(weather, day), sums.get_mut(day.month_index())) {
            slot.0 += value;
            slot.1 += 1;
        }
    }
    MonthlyMean {
        mean: sums.map(|(sum, days)| if days == 0 { 0.0 } else { sum / f64::from(days) }),
        days: sums.map(|(_, days)| days),
    }
}

/// Mean daily minimum and maximum of each month, °C, over the days with both.
pub(super) fn temperatures(days: &[DailyWeather]) -> Result<(Monthly, Monthly), Vec<RecordFault>> {
    let tmin = monthly_mean(days, |weather, _| weather.tmean_c().and(weather.tmin_c));
    let tmax = monthly_mean(days, |weather, _| weather.tmean_c().and(weather.tmax_c));
    let mut faults = Vec::new();
    for (month, days) in (1..).zip(tmin.days) {
        if days < LEAST_DAYS {
            faults.push(RecordFault::ThinMonth { month, days, least: LEAST_DAYS });
        }
    }
    if faults.is_empty() { Ok((tmin.mean, tmax.mean)) } else { Err(faults) }
}

/// Rain of each month, mm: its mean day times its days. None when a month was read on fewer than 15
/// days in all.
pub(super) fn rain_mm(days: &[DailyWeather]) -> Option<Monthly> {
    let rain = monthly_mean(days, |weather, _| weather.rain_mm);
    if rain.days.iter().any(|days| *days < LEAST_DAYS) {
        return None;
    }
    let mut monthly_mm = rain.mean;
    for (mm, days) in monthly_mm.iter_mut().zip(DAYS_IN_MONTH) {
        *mm *= f64::from(days);
    }
    Some(monthly_mm)
}

/// Standard deviation of the daily minimum about the smooth year in each month, K, differences from
/// year to year included; not below 0.1.
pub(super) fn spread_k(days: &[DailyWeather], tmin: &Harmonics) -> Monthly {
    let squares = monthly_mean(days, |weather, day| {
        let off_k = weather.tmean_c().and(weather.tmin_c)? - tmin.at(day);
        Some(off_k * off_k)
    });
    squares.mean.map(|square| square.sqrt().max(0.1))
}

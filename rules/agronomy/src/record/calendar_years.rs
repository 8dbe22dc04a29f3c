//! Extremes, heat days and months of the calendar years of a record.

use crate::calendar::Day;
use crate::heat_zone::HEAT_DAY_C;
use crate::profile::{DailyWeather, Monthly};

/// Share of the days of a year, in tenths, that must be recorded for the year to count.
const ENOUGH_TENTHS: i32 = 9;

/// One calendar year of a record.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CalendarYear {
    /// The year.
    pub year: i32,
    /// Days with a minimum.
    pub tmin_days: u16,
    /// Days with a maximum.
    pub tmax_days: u16,
    /// Its lowest minimum, °C.
    pub lowest_c: Option<f64>,
    /// Days of the year.
    days: u16,
    /// Days of it that the record has.
    rows: u16,
}

impl CalendarYear {
    /// Whether nine tenths of its days have a minimum.
    #[must_use]
    pub fn has_minima(&self) -> bool {
        self.enough(self.tmin_days)
    }

    /// Whether nine tenths of its days have a maximum.
    #[must_use]
    pub fn has_maxima(&self) -> bool {
        self.enough(self.tmax_days)
    }

    fn enough(&self, days: u16) -> bool {
        i32::from(days) * 10 >= i32::from(self.days) * ENOUGH_TENTHS
    }
}

/// The calendar years of a record (days in order) from its first day to its last.
#[must_use]
pub fn calendar_years(days: &[DailyWeather]) -> Vec<CalendarYear> {
    let mut years: Vec<CalendarYear> = Vec::new();
    for weather in days {
        let year = weather.day.year();
        if years.last().is_none_or(|last| last.year != year) {
            let length = if is_leap(year) { 366 } else { 365 };
            years.push(CalendarYear { year, tmin_days: 0, tmax_days: 0, lowest_c: None, days: length, rows: 0 });
        }
        let Some(current) = years.last_mut() else { continue };
        current.rows += 1;
        if let Some(tmin_c) = weather.tmin_c {
            current.tmin_days += 1;
            current.lowest_c = Some(current.lowest_c.map_or(tmin_c, |lowest_c| lowest_c.min(tmin_c)));
        }
        current.tmax_days += u16::from(weather.tmax_c.is_some());
    }
    years
}

/// Days with a maximum above a threshold (°C) in each calendar year that has nine tenths of its maxima.
#[must_use]
pub fn days_above(days: &[DailyWeather], threshold_c: f64) -> Vec<(i32, u16)> {
    let mut rest = days;
    let mut counted = Vec::new();
    for year in calendar_years(days) {
        let (own, later) = rest.split_at(usize::from(year.rows));
        rest = later;
        if year.has_maxima() {
            let above = own.iter().filter(|weather| weather.tmax_c.is_some_and(|tmax_c| tmax_c > threshold_c)).count();
            counted.push((year.year, u16::try_from(above).unwrap_or(u16::MAX)));
        }
    }
    counted
}

/// Mean number of days a year with a maximum above 30 °C, over `least` years or more.
pub(super) fn mean_heat_days(days: &[DailyWeather], least: usize) -> Option<f64> {
    let years = days_above(days, HEAT_DAY_C);
    if years.is_empty() || years.len() < least {
        return None;
    }
    let sum: u32 = years.iter().map(|(_, days)| u32::from(*days)).sum();
    Some(f64::from(sum) / years.len() as f64)
}

/// Mean of half the sum of the extremes in each month, °C, and mean rain of each month, mm: means of days over all
/// years, rain times the days of the month. None where a month has no such day.
#[must_use]
pub fn monthly_climate(days: &[DailyWeather]) -> Option<(Monthly, Monthly)> {
    let mut warmth = [(0.0_f64, 0_u32); 12];
    let mut rain = [(0.0_f64, 0_u32); 12];
    // the days of this month over all years, in a leap year 29 in February
    let mut lengths = [(0_u32, 0_u32); 12];
    let mut month_before = None;
    for weather in days {
        let month = weather.day.climate_day().month_index();
        if let (Some(mean_c), Some(slot)) = (weather.tmean_c(), warmth.get_mut(month)) {
            slot.0 += mean_c;
            slot.1 += 1;
        }
        if let (Some(mm), Some(slot)) = (weather.rain_mm, rain.get_mut(month)) {
            slot.0 += mm;
            slot.1 += 1;
        }
        let this_month = (weather.day.year(), month);
        if let Some(length) = lengths.get_mut(month).filter(|_| month_before != Some(this_month)) {
            length.0 += month_days(weather.day);
            length.1 += 1;
        }
        month_before = Some(this_month);
    }
    let mut means = ([0.0; 12], [0.0; 12]);
    let months = warmth.iter().zip(&rain).zip(&lengths);
    for ((mean_c, mm), (((c_sum, c_days), (mm_sum, mm_days)), (length, count))) in
        means.0.iter_mut().zip(means.1.iter_mut()).zip(months)
    {
        if *c_days == 0 || *mm_days == 0 || *count == 0 {
            return None;
        }
        *mean_c = c_sum / f64::from(*c_days);
        *mm = mm_sum / f64::from(*mm_days) * f64::from(*length) / f64::from(*count);
    }
    Some(means)
}

fn month_days(day: Day) -> u32 {
    let month = day.climate_day().month_index();
    let plain = crate::calendar::DAYS_IN_MONTH.get(month).copied().unwrap_or_default();
    u32::from(plain) + u32::from(month == 1 && is_leap(day.year()))
}

fn is_leap(year: i32) -> bool {
    chrono::NaiveDate::from_ymd_opt(year, 2, 29).is_some()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn year(from: &str, days: i32, tmax_c: f64) -> Vec<DailyWeather> {
        let first = Day::from_date(from.parse().unwrap());
        (0..days)
            .map(|ahead| DailyWeather {
                tmin_c: Some(-f64::from(ahead % 10)),
                tmax_c: Some(tmax_c),
                rain_mm: Some(2.0),
                ..DailyWeather::unknown(first + ahead)
            })
            .collect()
    }

    #[test]
    fn a_year_with_too_few_days_is_not_counted() {
        let mut days = year("2024-01-01", 366, 31.0);
        days.extend(year("2025-01-01", 100, 31.0));
        assert_eq!(days_above(&days, 30.0), [(2024, 366)]);
        assert_eq!(days_above(&days, 31.0), [(2024, 0)]);
        assert_eq!(mean_heat_days(&days, 1), Some(366.0));
        assert_eq!(mean_heat_days(&days, 2), None);
        let years = calendar_years(&days);
        assert_eq!((years.len(), years[1].lowest_c, years[1].has_minima()), (2, Some(-9.0), false));
    }

    #[test]
    fn rain_of_a_month_counts_all_its_days() {
        let (_, rain_mm) = monthly_climate(&year("2023-01-01", 365 + 366, 10.0)).unwrap();
        assert!((rain_mm[0] - 62.0).abs() < 1e-9);
        assert!((rain_mm[1] - 57.0).abs() < 1e-9);
        assert_eq!(monthly_climate(&year("2023-01-01", 200, 10.0)), None);
    }
}

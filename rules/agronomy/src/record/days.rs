//! A daily record and the profile that is made of it.

use super::calendar_years::mean_heat_days;
use super::fault::RecordFault;
use super::frost_seasons::{count_frost, frost_seasons, mean_extreme_min_c};
use super::monthly::{rain_mm, spread_k, temperatures};
use super::quality::Quality;
use super::sampling::frost_sampling;
use crate::calendar::Day;
use crate::curve::Harmonics;
use crate::frost::Turning;
use crate::origin::Origin;
use crate::profile::{DailyWeather, Limits, Profile};

/// Where a record was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Latitude, degrees, south negative.
    pub latitude_deg: f64,
    /// Longitude, degrees, east positive.
    pub longitude_deg: Option<f64>,
    /// Height above the sea, m.
    pub elevation_m: Option<f64>,
}

/// A daily record: days in order, each once, values in their ranges.
#[derive(Clone, Debug, PartialEq)]
pub struct Record(Vec<DailyWeather>);

/// A profile made of a record.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordProfile {
    /// The profile. Its recent observations are the last 400 days of the record at most.
    pub profile: Profile,
    /// How complete the record is.
    pub quality: Quality,
}

impl Record {
    /// Most days of a record: 200 years.
    pub const MOST_DAYS: usize = 73_050;
    /// Most faults that are named at once.
    pub const MOST_FAULTS: usize = 20;
    /// Years that heat days must have been counted in, as many as seasons for frost.
    pub const LEAST_YEARS: usize = 8;
    /// Days that a record must span.
    pub const LEAST_DAYS: i32 = 365;

    /// A record of days in any order.
    ///
    /// # Errors
    /// Too many days, a day that comes twice or lies outside 1900 to 2200, a value that is not finite
    /// or out of its range ([`Limits`]), a maximum below its minimum: the first 20 faults.
    pub fn new(mut days: Vec<DailyWeather>) -> Result<Self, Vec<RecordFault>> {
        if days.len() > Self::MOST_DAYS {
            return Err(vec![RecordFault::TooLong { days: days.len(), most: Self::MOST_DAYS }]);
        }
        days.sort_by_key(|weather| weather.day);
        let mut faults = Vec::new();
        let mut before: Option<Day> = None;
        for weather in &days {
            if faults.len() >= Self::MOST_FAULTS {
                break;
            }
            let date = weather.day.date();
            if !weather.day.is_supported() {
                faults.push(RecordFault::Outside { date });
            } else if before == Some(weather.day) {
                faults.push(RecordFault::Doubled { date });
            }
            before = Some(weather.day);
            value_faults(weather, &mut faults);
        }
        faults.truncate(Self::MOST_FAULTS);
        if faults.is_empty() { Ok(Self(days)) } else { Err(faults) }
    }

    /// The days, in order.
    #[must_use]
    pub fn days(&self) -> &[DailyWeather] {
        &self.0
    }

    /// The profile of the place: normals, spread of the minimum, frost dates and extreme minimum as
    /// the record has them, and its last 400 days as recent weather.
    ///
    /// Frost dates and the extreme minimum are counted when at least 8 seasons have 90 % of the days of
    /// their cold half; of fewer they follow from the record's own normals and spread.
    ///
    /// # Errors
    /// The record spans less than a year, or a month has fewer than 15 days with both temperatures over
    /// all years. (What is wrong with the place itself, [`Profile::check`] says.)
    pub fn profile(&self, place: &Place) -> Result<RecordProfile, Vec<RecordFault>> {
        let Some(mut quality) = Quality::of(&self.0) else {
            return Err(vec![RecordFault::TooShort { days: 0 }]);
        };
        let span = quality.last - quality.first + 1;
        if span < Self::LEAST_DAYS {
            return Err(vec![RecordFault::TooShort { days: span }]);
        }
        let (tmin_c, tmax_c) = temperatures(&self.0)?;
        let tmin = Harmonics::of_months(&tmin_c);
        let turning = Turning::of(&tmin);
        let seasons = frost_seasons(&self.0, turning);
        quality.frost_sampling = frost_sampling(&seasons, turning);
        quality.frost_seasons = u16::try_from(seasons.len()).unwrap_or(u16::MAX);

        let mut profile = Profile::of_temperatures(place.latitude_deg, tmin_c, tmax_c);
        profile.longitude_deg = place.longitude_deg;
        profile.elevation_m = place.elevation_m;
        profile.normals.rain_mm = rain_mm(&self.0);
        profile.tmin_sd_k = Some(spread_k(&self.0, &tmin));
        profile.counted_frost = count_frost(&seasons, turning);
        profile.extreme_min_c = mean_extreme_min_c(&seasons);
        profile.heat_days_a_year = mean_heat_days(&self.0, Self::LEAST_YEARS);
        let recent = self.0.len().saturating_sub(Profile::MOST_OBSERVATIONS);
        profile.observations = self.0.get(recent..).unwrap_or_default().to_vec();
        profile.origin = Origin::Measured;
        Ok(RecordProfile { profile, quality })
    }
}

fn value_faults(weather: &DailyWeather, faults: &mut Vec<RecordFault>) {
    let date = weather.day.date();
    let fields = [
        (Limits::TMIN, weather.tmin_c),
        (Limits::TMAX, weather.tmax_c),
        (Limits::RAIN_OF_DAY, weather.rain_mm),
        (Limits::RH, weather.rh_pct),
        (Limits::WIND, weather.wind_ms),
    ];
    for (limits, value) in fields {
        if let Some(words) = value.and_then(|value| limits.fault(limits.name, value)) {
            faults.push(RecordFault::Value { date, words });
        }
    }
    if let (Some(tmin_c), Some(tmax_c)) = (weather.tmin_c, weather.tmax_c)
        && tmax_c < tmin_c
    {
        faults.push(RecordFault::Crossed { date, tmin_c, tmax_c });
    }
}

//! A climate that the engine made, as a request could hold it.

use lammas_engine::question::said::{
    ClimateSaid, CountedFrostSaid, DaySaid, ForecastSaid, FrostDatesSaid, FrostSaid, NormalsSaid,
};

use super::climate::{
    ClimateCountedFrost, ClimateDay, ClimateForecast, ClimateFrost, ClimateFrostDays, ClimateGiven, ClimateNormals,
    ClimateOrigin,
};
use super::date::{Date, DayOfYear};
use super::said::each;

fn year(months: Vec<f64>) -> Option<[f64; 12]> {
    months.try_into().ok()
}

fn day_of_year(text: Option<String>) -> Option<DayOfYear> {
    text.and_then(|text| DayOfYear::of(&text))
}

impl From<ClimateSaid> for ClimateGiven {
    fn from(said: ClimateSaid) -> Self {
        let ClimateSaid {
            id,
            area,
            latitude,
            longitude,
            elevation_m,
            origin,
            normals,
            frost,
            counted_frost,
            extreme_min_c,
            heat_days_a_year,
            tmin_sd_k,
            observations,
            forecast,
            differences,
        } = said;
        Self {
            id,
            area,
            latitude,
            longitude,
            elevation_m,
            origin: origin.and_then(|word| ClimateOrigin::ALL.iter().copied().find(|origin| origin.word() == word)),
            normals: normals.and_then(self::normals),
            frost: frost.map(Into::into),
            counted_frost: counted_frost.map(Into::into),
            extreme_min_c,
            heat_days_a_year,
            tmin_sd_k: tmin_sd_k.and_then(year),
            observations: observations.map(each),
            forecast: forecast.map(Into::into),
            differences: differences.map(Into::into),
        }
    }
}

/// The normals, when each of them has its twelve months.
fn normals(said: NormalsSaid) -> Option<ClimateNormals> {
    let NormalsSaid { tmin_c, tmax_c, rain_mm, rh_pct, dew_point_c, wind_ms, sunshine_h, solar_mj } = said;
    Some(ClimateNormals {
        tmin_c: year(tmin_c)?,
        tmax_c: year(tmax_c)?,
        rain_mm: rain_mm.and_then(year),
        rh_pct: rh_pct.and_then(year),
        dew_point_c: dew_point_c.and_then(year),
        wind_ms: wind_ms.and_then(year),
        sunshine_h: sunshine_h.and_then(year),
        solar_mj: solar_mj.and_then(year),
    })
}

impl From<FrostSaid> for ClimateFrost {
    fn from(FrostSaid { last, first }: FrostSaid) -> Self {
        Self { last: frost_days(last), first: frost_days(first) }
    }
}

/// The days, if there is any.
fn frost_days(FrostDatesSaid { early, median, late }: FrostDatesSaid) -> Option<ClimateFrostDays> {
    let days = ClimateFrostDays { early: day_of_year(early), median: day_of_year(median), late: day_of_year(late) };
    (days != ClimateFrostDays::default()).then_some(days)
}

impl From<CountedFrostSaid> for ClimateCountedFrost {
    fn from(said: CountedFrostSaid) -> Self {
        let CountedFrostSaid { seasons, share_pct, killing_share_pct, last, first, last_killing, first_killing } = said;
        Self {
            seasons,
            share_pct,
            killing_share_pct,
            last: frost_days(last),
            first: frost_days(first),
            last_killing: day_of_year(last_killing),
            first_killing: day_of_year(first_killing),
        }
    }
}

impl From<DaySaid> for ClimateDay {
    fn from(DaySaid { date, tmin_c, tmax_c, rain_mm, wind_kmh }: DaySaid) -> Self {
        Self { date: Date(date), tmin_c, tmax_c, rain_mm, wind_kmh }
    }
}

impl From<ForecastSaid> for ClimateForecast {
    fn from(ForecastSaid { issued, days }: ForecastSaid) -> Self {
        Self { issued: Date(issued), days: each(days) }
    }
}

//! What a climate is like, in the words that rules use.

use crate::calendar::ClimateDay;
use crate::curve::{Row, Series};
use crate::marker::{Marker, MarkerState, Share};
use crate::season::Season;

/// Share of years with frost, percent, below which a climate counts as free of it.
const FROST_FREE_PCT: f64 = 10.0;
/// Minimum of the coldest week above which a winter is mild, °C.
const MILD_C: f64 = 0.0;
/// Minimum of the coldest week below which a winter is cold, °C.
const COLD_C: f64 = -7.0;
/// Maximum of the warmest week at and above which a summer is hot, °C.
const HOT_C: f64 = 35.0;
/// Rain of the 13 coldest weeks above which a winter is wet, mm.
const WET_WINTER_MM: f64 = 150.0;
/// Rain of the 13 coldest weeks below which a winter is dry, mm.
const DRY_WINTER_MM: f64 = 75.0;
/// Rain of the 13 coldest weeks below which the coldest part is dry, mm: 40 mm a month.
const DRY_COLDEST_MM: f64 = 120.0;
/// Rain of the first six weeks of growth below which a spring is dry, mm.
const DRY_SPRING_MM: f64 = 40.0;
/// Days between the frosts below which a season is short.
const SHORT_SEASON_DAYS: u16 = 130;
const WEEK_DAYS: u16 = 7;
const WINTER_DAYS: u16 = 13 * 7;
const SPRING_DAYS: u16 = 6 * 7;

/// What a climate is like (limits: own choice). `None` is unknown: the profile has no rain, or is an estimate that can't
/// tell of frost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClimateFlags {
    /// Fewer than 10 % of years have frost.
    pub frost_free: Option<bool>,
    /// The daily minimum of the coldest week is above 0 °C.
    pub mild_winter: Option<bool>,
    /// The daily minimum of the coldest week is below -7 °C.
    pub cold_winter: Option<bool>,
    /// The daily maximum of the warmest week is 35 °C or more.
    pub hot_summer: Option<bool>,
    /// The 13 coldest weeks bring more than 150 mm of rain.
    pub wet_winter: Option<bool>,
    /// The 13 coldest weeks bring less than 75 mm.
    pub dry_winter: Option<bool>,
    /// The 13 coldest weeks bring less than 120 mm.
    pub dry_coldest: Option<bool>,
    /// The six weeks from `growing.start` bring less than 40 mm; false where growth has no start.
    pub dry_spring: Option<bool>,
    /// `last_frost.median` to `first_frost.median` is under 130 days. Without frost it is not short,
    /// with frost all year it is.
    pub short_season: Option<bool>,
}

impl ClimateFlags {
    pub(crate) fn of(season: &Season) -> Self {
        let row = |series: Series| Row::from_fn(|day| season.curve(series, day).unwrap_or_default());
        let tmin_c = row(Series::Tmin);
        let tmax_c = row(Series::Tmax);
        let week_mean = |row: &Row, first: ClimateDay| row.sum_from(first, WEEK_DAYS) / f64::from(WEEK_DAYS);
        let coldest_c = week_mean(&tmin_c, tmin_c.lowest_run(WEEK_DAYS));
        let warmest_c = week_mean(&tmax_c, tmax_c.highest_run(WEEK_DAYS));

        // the 13 weeks in a row with the lowest mean temperature
        let winter = row(Series::Tmean).lowest_run(WINTER_DAYS);
        let known_rain = season.curve(Series::Rain, winter).is_some();
        let rain_mm = known_rain.then(|| row(Series::Rain));
        let winter_mm = rain_mm.as_ref().map(|rain_mm| rain_mm.sum_from(winter, WINTER_DAYS));
        let growing_start = season.marker(Marker::GrowingStart).day();
        let dry_spring = rain_mm
            .map(|rain_mm| growing_start.is_some_and(|start| rain_mm.sum_from(start, SPRING_DAYS) < DRY_SPRING_MM));

        Self {
            frost_free: season.frost_chance_pct().map(|pct| pct < FROST_FREE_PCT),
            mild_winter: Some(coldest_c > MILD_C),
            cold_winter: Some(coldest_c < COLD_C),
            hot_summer: Some(warmest_c >= HOT_C),
            wet_winter: winter_mm.map(|mm| mm > WET_WINTER_MM),
            dry_winter: winter_mm.map(|mm| mm < DRY_WINTER_MM),
            dry_coldest: winter_mm.map(|mm| mm < DRY_COLDEST_MM),
            dry_spring,
            short_season: short_season(season),
        }
    }
}

fn short_season(season: &Season) -> Option<bool> {
    let last = season.marker(Marker::LastFrost(Share::Median));
    let first = season.marker(Marker::FirstFrost(Share::Median));
    match (last, first) {
        (MarkerState::Seasonal(last), MarkerState::Seasonal(first)) => Some(first.days_after(last) < SHORT_SEASON_DAYS),
        (MarkerState::Unknown, _) | (_, MarkerState::Unknown) => None,
        (MarkerState::Always, _) | (_, MarkerState::Always) => Some(true),
        _ => Some(false),
    }
}

//! The season in numbers: short for an answer, whole for the season call.

use chrono::NaiveDate;
use lammas_agronomy::calendar::Day;
use lammas_agronomy::et0::Et0Method;
use lammas_agronomy::marker::{Marker, MarkerState};
use lammas_agronomy::season::{Chill, Half, Series};
use serde::Serialize;

use super::number::shown;
use super::weather::{self, DaysShown, WeatherShown};
use crate::question::Climate;

/// The season on a day, in short.
#[derive(Clone, Debug, Serialize)]
pub struct SeasonBrief {
    /// warming, cooling, even.
    pub half: &'static str,
    /// Normal minimum, °C.
    pub tmin_c: f64,
    /// Normal maximum, °C.
    pub tmax_c: f64,
    /// Reference evapotranspiration, mm/day.
    pub et0_mm_day: f64,
    /// How that was reckoned.
    pub et0_method: EtShown,
    /// Daylength, h.
    pub daylength_h: f64,
    /// Warmth over 5 °C still to come before frost or before growth stops, °Cd.
    pub heat_left_cd: f64,
    /// Share of years with frost, %; left out where an estimate can't tell.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost_chance_pct: Option<f64>,
    /// The markers nearest to the day.
    pub markers: Vec<MarkerShown>,
}

/// A marker.
#[derive(Clone, Debug, Serialize)]
pub struct MarkerShown {
    /// As rules write it.
    pub name: String,
    /// In words.
    pub words: String,
    /// seasonal, never, always, even, unknown.
    pub state: &'static str,
    /// Its occurrence nearest to the day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nearest: Option<NaiveDate>,
    /// Days from the day to it; negative when it is past.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days: Option<i32>,
    /// Where it comes from.
    pub origin: &'static str,
    /// Its likely error, days.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub likely_error_days: Option<f64>,
    /// A remark, such as `frost in some years`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub remark: Option<&'static str>,
    /// How it is computed, in a full answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub formula: Option<&'static str>,
}

/// How the reference evapotranspiration was reckoned.
#[derive(Clone, Debug, Serialize)]
pub struct EtShown {
    /// penman-monteith, hargreaves-samani.
    pub method: &'static str,
    /// Inputs that were not given and were taken by FAO-56's rules.
    pub assumed: Vec<&'static str>,
}

fn et_shown(climate: &Climate) -> EtShown {
    let basis = climate.season.et0_method();
    EtShown {
        method: match basis.method {
            Et0Method::PenmanMonteith => "penman-monteith",
            Et0Method::HargreavesSamani => "hargreaves-samani",
        },
        assumed: [
            (basis.elevation_assumed, "elevation"),
            (basis.humidity_assumed, "humidity"),
            (basis.wind_assumed, "wind"),
            (basis.radiation_assumed, "radiation"),
        ]
        .into_iter()
        .filter_map(|(assumed, name)| assumed.then_some(name))
        .collect(),
    }
}

/// Markers that are shown in short.
pub const BRIEF: [Marker; 6] = [
    Marker::LastFrost(lammas_agronomy::marker::Share::Median),
    Marker::FirstFrost(lammas_agronomy::marker::Share::Median),
    Marker::GrowingStart,
    Marker::GrowingEnd,
    Marker::HotSeasonStart,
    Marker::HotSeasonEnd,
];

/// The season in short.
#[must_use]
pub fn brief(climate: &Climate, day: Day, full: bool, language: &str) -> SeasonBrief {
    let season = &climate.season;
    let on = day.climate_day();
    let curve = |series: Series| round_tenth(season.curve(series, on).unwrap_or(0.0));
    SeasonBrief {
        half: match season.half(on) {
            Half::Warming => "warming",
            Half::Cooling => "cooling",
            Half::Even => "even",
        },
        tmin_c: curve(Series::Tmin),
        tmax_c: curve(Series::Tmax),
        et0_mm_day: curve(Series::Et0),
        et0_method: et_shown(climate),
        daylength_h: round_tenth(season.daylength_h(on)),
        heat_left_cd: crate::fact::catalogue::Fact::HeatLeft.entry().step.round(season.heat_left_cd(day)),
        frost_chance_pct: season.frost_chance_pct().map(libm::round),
        markers: BRIEF
            .iter()
            .map(|marker| {
                let shown = shown_marker(*marker, climate, day, language);
                MarkerShown { formula: shown.formula.filter(|_| full), ..shown }
            })
            .collect(),
    }
}

fn round_tenth(value: f64) -> f64 {
    crate::fact::step::Step::new(1, 10).round(value)
}

/// One marker.
#[must_use]
pub fn shown_marker(marker: Marker, climate: &Climate, day: Day, language: &str) -> MarkerShown {
    let season = &climate.season;
    let state = season.marker(marker);
    let nearest = match state {
        MarkerState::Seasonal(on) => [-1, 0, 1]
            .into_iter()
            .map(|years| on.in_year(day.year() + years))
            .min_by_key(|found| ((*found - day).abs(), *found < day)),
        _ => None,
    };
    let name = marker.name().unwrap_or_default();
    MarkerShown {
        name: name.to_owned(),
        words: super::words::marker(name, language),
        state: state.as_str(),
        nearest: nearest.map(Day::date),
        days: nearest.map(|found| found - day),
        origin: season.marker_origin(marker).as_str(),
        likely_error_days: nearest.and_then(|_| season.marker_error_days(marker)).filter(|days| *days > 0.0).map(shown),
        remark: season.marker_remark(marker),
        formula: Some(formula(marker)),
    }
}

/// The formula of a marker.
#[must_use]
pub const fn formula(marker: Marker) -> &'static str {
    match marker {
        Marker::LastFrost(_) => "day by which 10, 50, 90 % of years have had their last minimum at or below 0 °C",
        Marker::FirstFrost(_) => "day by which 10, 50, 90 % of years have had their first minimum at or below 0 °C",
        Marker::LastKillingFrost => "day by which half of the years have had their last minimum at or below -2.2 °C",
        Marker::FirstKillingFrost => "day by which half of the years have had their first minimum at or below -2.2 °C",
        Marker::GrowingStart => "first day of the longest run with a mean temperature of 5 °C or more",
        Marker::GrowingEnd => "day after the longest run with a mean temperature of 5 °C or more",
        Marker::HotSeasonStart => "first day of the longest run with a maximum of 32 °C or more",
        Marker::HotSeasonEnd => "day after the longest run with a maximum of 32 °C or more",
        Marker::WarmestWeek => "middle day of the seven days in a row with the highest maximum",
        Marker::ColdestWeek => "middle day of the seven days in a row with the lowest minimum",
        Marker::LongestDay => "day of the longest daylength",
        Marker::ShortestDay => "day of the shortest daylength",
        Marker::SpringEquinox => "day on which the growing daylength passes 12 hours",
        Marker::AutumnEquinox => "day on which the shrinking daylength passes 12 hours",
        Marker::RainsStart => "first day of the longest run with 60 mm of rain or more in the 31 days around",
        Marker::RainsEnd => "day after the longest run with 60 mm of rain or more in the 31 days around",
        Marker::SecondRainsStart => "first day of the next longest run of the rains",
        Marker::SecondRainsEnd => "day after the next longest run of the rains",
        Marker::Rises(..) => "first day of the longest run at or above the threshold",
        Marker::Falls(..) => "day after the longest run at or above the threshold",
    }
}

/// The whole season on a day.
#[derive(Clone, Debug, Serialize)]
pub struct SeasonWhole<'a> {
    /// The day.
    pub date: NaiveDate,
    /// In short.
    #[serde(flatten)]
    pub brief: SeasonBrief,
    /// Every fact of the season, as rules read it.
    pub facts: Vec<SeasonFact>,
    /// Hardiness half zone, `1a` to `13b`; none where frost can't be told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardiness_zone: Option<String>,
    /// Heat zone, 1 to 12.
    pub heat_zone: u8,
    /// Largest difference between the daily curve and a monthly mean, K.
    pub curve_error_k: f64,
    /// The climate's hash.
    pub climate_sha256: String,
    /// given, measured, estimated.
    pub climate_origin: &'static str,
    /// How the climate differs from another, if it was said so, with every marker that moved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub climate_differences: Option<super::differing::DifferingShown>,
    /// How good the climate is, if it was estimated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub climate_error: Option<super::estimate::EstimateShown>,
    /// Where the climate comes from, if it was estimated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub climate_sources: Option<&'static super::rendered::Rendered<Vec<super::answer::SourceShown>>>,
    /// What became of the forecast, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub forecast: Option<&'static str>,
    /// The weather behind it, if there is any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weather: Option<WeatherShown<'a>>,
    /// Where that weather does not count: why, and what is taken in its place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weather_note: Option<String>,
    /// What tells the days around this one.
    pub days: Vec<DaysShown>,
}

/// A fact of the season.
#[derive(Clone, Debug, Serialize)]
pub struct SeasonFact {
    /// As rules write it.
    pub name: &'static str,
    /// What it is called.
    pub words: &'static str,
    /// Its value; none when it is unknown.
    pub value: serde_json::Value,
    /// Its unit.
    pub unit: &'static str,
    /// Where it comes from.
    pub origin: &'static str,
}

/// The whole season: every marker, every fact that hangs on the climate alone.
#[must_use]
pub fn whole<'a>(climate: &'a Climate, day: Day, language: &str) -> SeasonWhole<'a> {
    use crate::fact::catalogue::Fact;
    use serde_json::json;
    let season = &climate.season;
    let on = day.climate_day();
    let origin = season.curve_origin().as_str();
    let mut facts = Vec::new();
    let mut push = |fact: Fact, value: serde_json::Value, origin: &'static str| {
        let entry = fact.entry();
        facts.push(SeasonFact {
            name: entry.name,
            words: crate::fact::wording::words(fact).name.get(language),
            value,
            unit: entry.unit,
            origin,
        });
    };
    for (_, series, fact) in &crate::compile::path::SERIES {
        let scale = if *series == Series::Wind { 3.6 } else { 1.0 };
        let value = season.curve(*series, on).map(|value| fact.entry().step.round(value * scale));
        push(*fact, json!(value), origin);
    }
    let (soil, soil_origin) = season.soil_10cm_c(day);
    push(Fact::Soil10cm, json!(Fact::Soil10cm.entry().step.round(soil)), soil_origin.as_str());
    let flags = season.climate();
    for (fact, flag) in [
        (Fact::FrostFree, flags.frost_free),
        (Fact::MildWinter, flags.mild_winter),
        (Fact::ColdWinter, flags.cold_winter),
        (Fact::HotSummer, flags.hot_summer),
        (Fact::WetWinter, flags.wet_winter),
        (Fact::DryWinter, flags.dry_winter),
        (Fact::DryColdest, flags.dry_coldest),
        (Fact::DrySpring, flags.dry_spring),
        (Fact::ShortSeason, flags.short_season),
    ] {
        push(fact, json!(flag), origin);
    }
    let chill = season.chill(day);
    let shown_chill = |fact: Fact, pick: fn(&Chill) -> f64| match &chill {
        Some((chill, origin)) => (json!(fact.entry().step.round(pick(chill))), origin.as_str()),
        None => (serde_json::Value::Null, origin),
    };
    for (fact, pick) in
        [(Fact::ChillHours, (|chill| chill.hours) as fn(&Chill) -> f64), (Fact::ChillPortions, |chill| chill.portions)]
    {
        let (value, origin) = shown_chill(fact, pick);
        push(fact, value, origin);
    }
    let zone = season.hardiness_zone();
    let zone_origin = zone.map_or(origin, |(_, origin)| origin.as_str());
    push(Fact::ClimateZone, json!(zone.map(|(zone, _)| zone.number())), zone_origin);
    let extreme = season.extreme_min_c();
    let extreme_c = extreme.map(|(extreme_c, _)| Fact::ExtremeMin.entry().step.round(extreme_c));
    push(Fact::ExtremeMin, json!(extreme_c), extreme.map_or(origin, |(_, origin)| origin.as_str()));
    let (heat_days, heat_origin) = season.heat_days();
    push(Fact::HeatDays, json!(Fact::HeatDays.entry().step.round(heat_days)), heat_origin.as_str());
    push(Fact::Koppen, json!(season.koppen()), origin);
    let mut brief = brief(climate, day, true, language);
    brief.markers = Marker::FIXED.iter().map(|marker| shown_marker(*marker, climate, day, language)).collect();
    let near_a_marker = brief.markers.iter().any(|marker| {
        marker.likely_error_days.zip(marker.days).is_some_and(|(error, days)| f64::from(days.abs()) < error)
    });
    SeasonWhole {
        date: day.date(),
        brief,
        facts,
        hardiness_zone: zone.map(|(zone, _)| zone.to_string()),
        heat_zone: season.heat_zone(),
        curve_error_k: shown(season.largest_residual_k()),
        climate_sha256: climate.sha256.clone(),
        climate_origin: climate.origin.as_str(),
        climate_differences: super::differing::shown(climate, &Marker::FIXED, language),
        climate_error: super::estimate::error(climate, near_a_marker, language),
        climate_sources: super::estimate::sources(climate),
        forecast: weather::forecast(climate, day, language),
        weather: weather::shown(climate, day, language),
        weather_note: weather::not_used(climate, day, language),
        days: weather::days(climate, day),
    }
}

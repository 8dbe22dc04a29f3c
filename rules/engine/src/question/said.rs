//! A question in the caller's words, before any of them is looked up.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

/// A whole question.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Said {
    /// Where.
    pub climate: ClimateSaid,
    /// When; today at the place when it is left out.
    pub date: Option<NaiveDate>,
    /// What.
    pub plant: PlantSaid,
    /// On what ground.
    pub site: SiteSaid,
    /// With what water.
    pub water: WaterSaid,
    /// Weather that only the caller can tell.
    pub weather: WeatherSaid,
    /// Works of choice.
    pub wishes: Vec<String>,
    /// What is seen.
    pub condition: Option<ConditionSaid>,
    /// What was done; an empty list is "nothing", no list is "not said".
    pub history: Option<Vec<WorkSaid>>,
    /// The layers, lowest first.
    pub rule_sets: Vec<String>,
    /// A date or an instant: the sets as they were then.
    pub as_of: Option<String>,
    /// en, es.
    pub language: Option<String>,
    /// si, us, both.
    pub units: Option<String>,
    /// brief, standard, full.
    pub detail: Option<String>,
    /// At most so many tasks.
    pub limit: Option<u16>,
    /// Whether the answer carries its recall string.
    pub recall: bool,
}

/// The climate in one of its shapes.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct ClimateSaid {
    /// A registered climate.
    pub id: Option<String>,
    /// A place of the operator's area map.
    pub area: Option<String>,
    /// Degrees, south negative.
    pub latitude: Option<f64>,
    /// Degrees, east positive.
    pub longitude: Option<f64>,
    /// Metres.
    pub elevation_m: Option<f64>,
    /// Where the normals come from: `given` or `measured`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub origin: Option<String>,
    /// Monthly normals.
    pub normals: Option<NormalsSaid>,
    /// Frost dates.
    pub frost: Option<FrostSaid>,
    /// Frost counted in a daily record.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counted_frost: Option<CountedFrostSaid>,
    /// Mean of the lowest temperature of each year, °C.
    pub extreme_min_c: Option<f64>,
    /// Mean number of days a year with a maximum above 30 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_days_a_year: Option<f64>,
    /// Day-to-day deviation of the minimum, K, by month.
    pub tmin_sd_k: Option<Vec<f64>>,
    /// Recent days, oldest first.
    pub observations: Option<Vec<DaySaid>>,
    /// Days to come.
    pub forecast: Option<ForecastSaid>,
    /// In what the place differs from all that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub differences: Option<DifferencesSaid>,
}

/// In what a climate differs from another; what is left out is as there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DifferencesSaid {
    /// Nights all year, K: -2 is two degrees colder.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nights_k: Option<f64>,
    /// Afternoons all year, K.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub afternoons_k: Option<f64>,
    /// Afternoons of summer, K.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub summer_afternoons_k: Option<f64>,
    /// The last frosts, days: -7 is a week earlier.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_frost_days: Option<i16>,
    /// The first frosts, days: -21 is three weeks earlier.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_frost_days: Option<i16>,
    /// Whether cold air gathers.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost_pocket: Option<bool>,
    /// Whether it is before a wall in the sun.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub warm_wall: Option<bool>,
    /// Whether it is on a roof.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub roof: Option<bool>,
}

/// A profile by itself: a registered climate.
pub type ProfileSaid = ClimateSaid;

/// Twelve numbers each, January to December.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct NormalsSaid {
    /// Mean daily minimum, °C.
    pub tmin_c: Vec<f64>,
    /// Mean daily maximum, °C.
    pub tmax_c: Vec<f64>,
    /// Rain of the month, mm.
    pub rain_mm: Option<Vec<f64>>,
    /// Mean relative humidity, %.
    pub rh_pct: Option<Vec<f64>>,
    /// Mean dew point, °C.
    pub dew_point_c: Option<Vec<f64>>,
    /// Mean wind at 2 m, m/s.
    pub wind_ms: Option<Vec<f64>>,
    /// Sunshine, hours a day.
    pub sunshine_h: Option<Vec<f64>>,
    /// Solar radiation, MJ/m² a day.
    pub solar_mj: Option<Vec<f64>>,
}

/// Frost dates as MM-DD.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct FrostSaid {
    /// Last frost of the cold half.
    pub last: FrostDatesSaid,
    /// First frost.
    pub first: FrostDatesSaid,
}

/// The day by which 10, 50, 90 % of years have had it, as MM-DD.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct FrostDatesSaid {
    /// 10 %.
    pub early: Option<String>,
    /// 50 %.
    pub median: Option<String>,
    /// 90 %.
    pub late: Option<String>,
}

/// Frost counted in the seasons of a daily record. A date that is left out is known not to come.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CountedFrostSaid {
    /// Seasons that were counted.
    pub seasons: u16,
    /// Share of them with a day at or below 0 °C, %.
    pub share_pct: f64,
    /// Share of them with a day at or below -2.2 °C, %.
    pub killing_share_pct: f64,
    /// The last frost of the season.
    #[serde(default)]
    pub last: FrostDatesSaid,
    /// The first frost.
    #[serde(default)]
    pub first: FrostDatesSaid,
    /// Median of the last day at or below -2.2 °C, as MM-DD.
    #[serde(default)]
    pub last_killing: Option<String>,
    /// Median of the first day at or below -2.2 °C, as MM-DD.
    #[serde(default)]
    pub first_killing: Option<String>,
}

/// One day's weather.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DaySaid {
    /// The day.
    pub date: NaiveDate,
    /// °C.
    pub tmin_c: f64,
    /// °C.
    pub tmax_c: f64,
    /// mm.
    #[serde(default)]
    pub rain_mm: Option<f64>,
    /// km/h.
    #[serde(default)]
    pub wind_kmh: Option<f64>,
}

/// A forecast.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ForecastSaid {
    /// The day on which it was made.
    pub issued: NaiveDate,
    /// Its days, in order.
    pub days: Vec<DaySaid>,
}

/// The plant.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct PlantSaid {
    /// Its id.
    #[serde(rename = "type")]
    pub kind: String,
    /// Its traits by their short names.
    pub traits: BTreeMap<String, String>,
    /// Years.
    pub age_years: Option<f64>,
    /// When it was planted.
    pub planted_on: Option<NaiveDate>,
    /// m.
    pub height_m: Option<f64>,
    /// m.
    pub canopy_diameter_m: Option<f64>,
    /// cm.
    pub trunk_diameter_cm: Option<f64>,
    /// What it is doing.
    pub stage: Option<String>,
    /// Since when.
    pub stage_since: Option<NaiveDate>,
    /// Whether it bears.
    pub bearing: Option<bool>,
    /// Whether its hips are wanted.
    pub hips_wanted: Option<bool>,
    /// Whether it was bought in the last weeks and still stands in its pot.
    pub just_bought: Option<bool>,
    /// Whether it is in leaf.
    pub in_leaf: Option<bool>,
}

/// The soil.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct SoilSaid {
    /// One of the twelve classes.
    pub texture: Option<String>,
    /// pH.
    pub ph: Option<f64>,
    /// dS/m.
    pub ec_ds_m: Option<f64>,
    /// fast, good, poor.
    pub drainage: Option<String>,
    /// dry, moist, wet at 5 cm depth, as felt today.
    pub moisture: Option<String>,
}

/// The site.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct SiteSaid {
    /// ground, container, raised-bed, indoor.
    pub planting: Option<String>,
    /// L.
    pub container_volume_l: Option<f64>,
    /// clay, plastic, wood, fabric.
    pub container_material: Option<String>,
    /// full-sun, half-sun, shade, afternoon-sun.
    pub exposure: Option<String>,
    /// sheltered, open, windy.
    pub wind: Option<String>,
    /// Wall, paving, roof.
    pub reflected_heat: Option<bool>,
    /// Whether mulch lies.
    pub mulched: Option<bool>,
    /// Whether cold air gathers.
    pub frost_hollow: Option<bool>,
    /// The soil.
    pub soil: SoilSaid,
    /// Pets about.
    pub pets: Option<bool>,
    /// Children about.
    pub children: Option<bool>,
    /// Pond, stream, drain.
    pub near_water: Option<bool>,
    /// Bees on open flowers here today.
    pub bees_working: Option<bool>,
    /// Whether it is eaten.
    pub food_use: Option<bool>,
    /// ISO 3166 code.
    pub region: Option<String>,
    /// Set by the operator.
    pub region_flags: Vec<String>,
}

/// The water.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct WaterSaid {
    /// can, drip, basin, sprinkler.
    pub method: Option<String>,
    /// Whether it is alkaline.
    pub source_alkaline: Option<bool>,
    /// dS/m.
    pub ec_ds_m: Option<f64>,
    /// Weekdays on which watering is not allowed.
    pub restricted_days: Vec<String>,
}

/// Weather that only the caller can tell.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct WeatherSaid {
    /// Longest wet run of the leaves in the last day, h.
    pub leaf_wet_h: Option<f64>,
}

/// One sign seen.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct SignSaid {
    /// Its id.
    pub sign: String,
    /// slight, moderate, severe.
    pub severity: Option<String>,
    /// Share of shoots, leaves or fruit, %.
    pub share_pct: Option<f64>,
    /// First seen.
    pub since: Option<NaiveDate>,
}

/// What is seen.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct ConditionSaid {
    /// Signs seen.
    pub signs: Option<Vec<SignSaid>>,
    /// Signs looked for and not seen.
    pub not_seen: Vec<String>,
    /// Whether undersides, roots and buds were looked at.
    pub looked_closely: bool,
    /// In the caller's own words.
    pub words: Option<String>,
    /// weak, normal, strong.
    pub vigour: Option<String>,
    /// Problems that the caller names.
    pub problems: Vec<String>,
}

/// One work done.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct WorkSaid {
    /// The job.
    pub job: Option<String>,
    /// The rule that asked for it.
    pub rule: Option<String>,
    /// The material.
    pub material: Option<String>,
    /// The day.
    pub date: Option<NaiveDate>,
    /// From the label.
    pub label_days_to_harvest: Option<u16>,
}

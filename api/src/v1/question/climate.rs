//! Where: a registered climate, an area, a point, or a climate written out.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::choices::choices;
use super::date::{Date, DayOfYear};
use super::differences::ClimateDifferences;
use crate::problem::faults::Faults;
use crate::problem::pointer::{below, entry};

/// Most days of observations, and of a forecast.
pub(crate) const MOST_OBSERVED: usize = 400;
pub(crate) const MOST_FORECAST: usize = 16;

choices! {
    /// Where the normals of a climate come from.
    ClimateOrigin {
        Given "given" "From tables or almanacs.",
        Measured "measured" "From a daily record of the place.",
    }
}

/// Where: **one** of `id`, `area`, or `latitude`. With a latitude, `normals` give the climate; without them it is
/// estimated from latitude and longitude.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateGiven {
    /// A registered climate.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(max_length = 100, example = "demo-dry-valley")]
    pub id: Option<String>,
    /// A place of the operator's area map.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(max_length = 100)]
    pub area: Option<String>,
    /// Degrees, south negative.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -90, maximum = 90)]
    pub latitude: Option<f64>,
    /// Degrees, west negative.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -180, maximum = 180)]
    pub longitude: Option<f64>,
    /// Metres above the sea.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -500, maximum = 9000)]
    pub elevation_m: Option<f64>,
    /// Where the normals come from; given when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub origin: Option<ClimateOrigin>,
    /// Monthly normals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub normals: Option<ClimateNormals>,
    /// Frost dates, where they are known better than normals tell.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost: Option<ClimateFrost>,
    /// Frost counted in a daily record, as `POST /v1/climate-profiles` gives it. `frost` wins over it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counted_frost: Option<ClimateCountedFrost>,
    /// Mean of each year's lowest temperature, °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub extreme_min_c: Option<f64>,
    /// Mean number of days a year with a maximum above 30 °C, counted; reckoned from the normals when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 366)]
    pub heat_days_a_year: Option<f64>,
    /// Standard deviation of the daily minimum within each month, K, January to December.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_items = 12, max_items = 12)]
    pub tmin_sd_k: Option<[f64; 12]>,
    /// Days that were measured, oldest first, at most 400.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(max_items = 400)]
    pub observations: Option<Vec<ClimateDay>>,
    /// Days to come.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub forecast: Option<ClimateForecast>,
    /// In what the place differs from all that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub differences: Option<ClimateDifferences>,
}

/// Twelve numbers each, January to December. Humidity as `rh_pct` or `dew_point_c`, radiation as `sunshine_h` or
/// `solar_mj`.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateNormals {
    /// Mean daily minimum, °C.
    #[schema(min_items = 12, max_items = 12)]
    pub tmin_c: [f64; 12],
    /// Mean daily maximum, °C.
    #[schema(min_items = 12, max_items = 12)]
    pub tmax_c: [f64; 12],
    /// Rain of the month, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_items = 12, max_items = 12)]
    pub rain_mm: Option<[f64; 12]>,
    /// Mean relative humidity, %.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_items = 12, max_items = 12)]
    pub rh_pct: Option<[f64; 12]>,
    /// Mean dew point, °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_items = 12, max_items = 12)]
    pub dew_point_c: Option<[f64; 12]>,
    /// Mean wind 2 m above the ground, m/s.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_items = 12, max_items = 12)]
    pub wind_ms: Option<[f64; 12]>,
    /// Sunshine, hours a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_items = 12, max_items = 12)]
    pub sunshine_h: Option<[f64; 12]>,
    /// Solar radiation, MJ/m² a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_items = 12, max_items = 12)]
    pub solar_mj: Option<[f64; 12]>,
}

/// Frost dates.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateFrost {
    /// The last frost of the cold half of the year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last: Option<ClimateFrostDays>,
    /// The first frost.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first: Option<ClimateFrostDays>,
}

/// Frost counted in the seasons of a daily record. A date that is left out is known not to come.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateCountedFrost {
    /// Seasons that were counted.
    #[schema(minimum = 1, maximum = 200)]
    pub seasons: u16,
    /// Share of them with a day at or below 0 °C, %.
    #[schema(minimum = 0, maximum = 100)]
    pub share_pct: f64,
    /// Share of them with a day at or below -2.2 °C, %.
    #[schema(minimum = 0, maximum = 100)]
    pub killing_share_pct: f64,
    /// The last frost of the cold half of the year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last: Option<ClimateFrostDays>,
    /// The first frost.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first: Option<ClimateFrostDays>,
    /// The day by which half of the seasons have had their last day at or below -2.2 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_killing: Option<DayOfYear>,
    /// The day by which half of the seasons have had their first day at or below -2.2 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_killing: Option<DayOfYear>,
}

/// The days by which 10, 50 and 90 % of years have had that frost.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateFrostDays {
    /// 10 %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub early: Option<DayOfYear>,
    /// 50 %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub median: Option<DayOfYear>,
    /// 90 %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub late: Option<DayOfYear>,
}

/// The weather of one day.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateDay {
    /// The day.
    pub date: Date,
    /// Lowest temperature, °C.
    pub tmin_c: f64,
    /// Highest temperature, °C.
    pub tmax_c: f64,
    /// Rain, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rain_mm: Option<f64>,
    /// Mean wind, km/h.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 144)]
    pub wind_kmh: Option<f64>,
}

/// A forecast.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateForecast {
    /// The day on which it was made.
    pub issued: Date,
    /// Its days, in order, at most 16.
    #[schema(max_items = 16)]
    pub days: Vec<ClimateDay>,
}

impl ClimateGiven {
    /// A climate that is registered already takes the weather of the day and what differs, and nothing else.
    fn check_named(&self, form: &str, at: &str, faults: &mut Faults) {
        for (name, said) in [
            ("longitude", self.longitude.is_some()),
            ("elevation_m", self.elevation_m.is_some()),
            ("origin", self.origin.is_some()),
            ("normals", self.normals.is_some()),
            ("frost", self.frost.is_some()),
            ("counted_frost", self.counted_frost.is_some()),
            ("extreme_min_c", self.extreme_min_c.is_some()),
            ("heat_days_a_year", self.heat_days_a_year.is_some()),
            ("tmin_sd_k", self.tmin_sd_k.is_some()),
        ] {
            if said {
                faults.add(
                    below(at, name),
                    format!("expected only `differences`, `observations` and `forecast` beside `{form}`"),
                );
            }
        }
    }

    /// What is wrong with its form, and with the numbers that every form has. The numbers of a climate written out
    /// are judged where the season is reckoned from them.
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        let forms = [("id", self.id.is_some()), ("area", self.area.is_some()), ("latitude", self.latitude.is_some())];
        let said: Vec<&str> = forms.iter().filter(|(_, said)| *said).map(|(name, _)| *name).collect();
        match said.as_slice() {
            [] => faults.add(at, "expected one of `id`, `area`, or `latitude` with `normals` or `longitude`"),
            ["latitude"] if self.normals.is_none() && self.longitude.is_none() => {
                faults.add(below(at, "longitude"), "expected a longitude, since no normals are given");
            }
            [form @ ("id" | "area")] => self.check_named(form, at, faults),
            [_] => {}
            [_, second, ..] => {
                let named = said.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ");
                faults.add(below(at, second), format!("expected one of `id`, `area` and `latitude`, found {named}"));
            }
        }
        for (name, text) in [("id", &self.id), ("area", &self.area)] {
            faults.text_at_most(at, name, text.as_deref().unwrap_or_default(), 100);
        }
        faults.in_range(at, "latitude", self.latitude, (-90.0, 90.0), "°");
        faults.in_range(at, "longitude", self.longitude, (-180.0, 180.0), "°");
        faults.in_range(at, "elevation_m", self.elevation_m, (-500.0, 9000.0), "m");
        faults.in_range(at, "heat_days_a_year", self.heat_days_a_year, (0.0, 366.0), "days");
        if let Some(frost) = &self.counted_frost {
            let at = below(at, "counted_frost");
            faults.in_range(&at, "seasons", Some(f64::from(frost.seasons)), (1.0, 200.0), "");
            faults.in_range(&at, "share_pct", Some(frost.share_pct), (0.0, 100.0), "%");
            faults.in_range(&at, "killing_share_pct", Some(frost.killing_share_pct), (0.0, 100.0), "%");
        }
        if let Some(normals) = &self.normals {
            let at = below(at, "normals");
            if normals.rh_pct.is_some() && normals.dew_point_c.is_some() {
                faults.add(below(&at, "dew_point_c"), "expected `rh_pct` or `dew_point_c`, found both");
            }
            if normals.sunshine_h.is_some() && normals.solar_mj.is_some() {
                faults.add(below(&at, "solar_mj"), "expected `sunshine_h` or `solar_mj`, found both");
            }
        }
        if let Some(differences) = &self.differences {
            differences.check(&below(at, "differences"), faults);
        }
        faults.at_most(at, "observations", self.observations.as_ref().map_or(0, Vec::len), MOST_OBSERVED);
        let observed = self.observations.as_deref().unwrap_or_default();
        check_wind(observed, &below(at, "observations"), faults);
        if let Some(forecast) = &self.forecast {
            let at = below(at, "forecast");
            faults.at_most(&at, "days", forecast.days.len(), MOST_FORECAST);
            check_wind(&forecast.days, &below(&at, "days"), faults);
        }
    }
}

/// The wind of each day, in the unit in which it is given: the profile knows it in m/s.
pub(crate) fn check_wind(days: &[ClimateDay], at: &str, faults: &mut Faults) {
    for (place, day) in days.iter().enumerate() {
        faults.in_range(&entry(at, place), "wind_kmh", day.wind_kmh, (0.0, 144.0), "km/h");
    }
}

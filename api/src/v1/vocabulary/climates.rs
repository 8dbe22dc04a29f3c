//! `GET /v1/climates` and `GET /v1/climates/{id}`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::pack::{ClimateEntry, Filed};
use lammas_engine::question::said::NormalsSaid;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::list::{self, EntryQuery, ListQuery, pages};
use crate::problem::extractors::{PathParts, Query};
use crate::problem::kinds::CLIMATE_NOT_FOUND;
use crate::problem::{Problem, clipped};
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::question::place;
use lammas_engine::nearest::nearest;

/// A registered climate.
#[derive(Debug, Serialize, ToSchema)]
pub struct ClimateItem {
    /// Its id, as a request names it.
    id: String,
    /// Its name.
    name: String,
    /// How to tell that it is yours.
    tell: String,
    /// Its time zone, by its name in the IANA database.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    zone: Option<String>,
    /// Degrees, south negative.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    latitude: Option<f64>,
    /// Degrees, west negative.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    longitude: Option<f64>,
    /// Metres above the sea.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    elevation_m: Option<f64>,
}

/// A registered climate with its normals.
#[derive(Debug, Serialize, ToSchema)]
pub struct ClimateWhole {
    /// Its id, as a request names it.
    id: String,
    /// Its name.
    name: String,
    /// How to tell that it is yours.
    tell: String,
    /// Its time zone, by its name in the IANA database.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    zone: Option<String>,
    /// The climate itself, as it could stand in a request.
    climate: ClimateProfile,
}

/// A climate written out.
#[derive(Debug, Serialize, ToSchema)]
pub struct ClimateProfile {
    /// Degrees, south negative.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    latitude: Option<f64>,
    /// Degrees, west negative.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    longitude: Option<f64>,
    /// Metres above the sea.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    elevation_m: Option<f64>,
    /// Monthly normals.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    normals: Option<ClimateProfileNormals>,
}

/// Twelve numbers each, January to December.
#[derive(Debug, Serialize, ToSchema)]
pub struct ClimateProfileNormals {
    /// Mean daily minimum, °C.
    tmin_c: Vec<f64>,
    /// Mean daily maximum, °C.
    tmax_c: Vec<f64>,
    /// Rain of the month, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    rain_mm: Option<Vec<f64>>,
    /// Mean relative humidity, %.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    rh_pct: Option<Vec<f64>>,
    /// Mean dew point, °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    dew_point_c: Option<Vec<f64>>,
    /// Mean wind 2 m above the ground, m/s.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    wind_ms: Option<Vec<f64>>,
    /// Sunshine, hours a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    sunshine_h: Option<Vec<f64>>,
    /// Solar radiation, MJ/m² a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    solar_mj: Option<Vec<f64>>,
}

/// Which climate.
#[derive(Debug, Deserialize, utoipa::IntoParams)]
#[into_params(parameter_in = Path)]
pub struct ClimateId {
    /// The climate's id.
    #[param(example = "hot-dry-valley", max_length = 100)]
    id: String,
}

pages! {
    ClimatePage of ClimateItem by id, "One page of the registered climates.";
}

fn normals(said: &NormalsSaid) -> ClimateProfileNormals {
    let NormalsSaid { tmin_c, tmax_c, rain_mm, rh_pct, dew_point_c, wind_ms, sunshine_h, solar_mj } = said.clone();
    ClimateProfileNormals { tmin_c, tmax_c, rain_mm, rh_pct, dew_point_c, wind_ms, sunshine_h, solar_mj }
}

/// Which climates are registered?
///
/// Every climate that a request may name by its id, by id, page by page. Those that ship with the core rules are invented places, one for each kind of garden year.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/climates", operation_id = "list_climates", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = ClimatePage, example = json!({"items": [{"id": "hot-dry-valley",
        "name": "Hot dry valley", "tell": "How to tell that it is yours: over 35 °C (95 °F) for weeks in summer.",
        "zone": "America/Los_Angeles", "latitude": 34.2, "elevation_m": 230.0}]})))
)]
pub async fn list_climates(
    request: HttpRequest,
    Query(query): Query<ListQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    list::answer::<_, ClimatePage>(&request, query, |language| {
        let climate = |filed: &Filed<ClimateEntry>| ClimateItem {
            id: filed.entry.id.value.clone(),
            name: filed.entry.name.get(language).to_owned(),
            tell: filed.entry.tell.get(language).to_owned(),
            zone: filed.entry.zone.clone(),
            latitude: filed.entry.profile.latitude,
            longitude: filed.entry.profile.longitude,
            elevation_m: filed.entry.profile.elevation_m,
        };
        set.pack.climates.iter().map(climate).collect()
    })
}

/// What is a registered climate like?
///
/// One registered climate with its monthly normals, as they could stand in a request.
///
/// # Errors
/// The problems `bad-query`, `bad-path` and `climate-not-found`.
#[utoipa::path(
    get, path = "/v1/climates/{id}", operation_id = "get_climate", tag = "vocabulary", params(ClimateId, EntryQuery),
    responses((status = 200, description = "The climate.", body = ClimateWhole, example = json!({
        "id": "hot-dry-valley", "name": "Hot dry valley", "tell": "How to tell that it is yours: over 35 °C (95 °F) for weeks in summer.",
        "zone": "America/Los_Angeles", "climate": {"latitude": 34.2, "elevation_m": 230.0, "normals": {
            "tmin_c": [5.0, 5.8, 7.2, 9.0, 12.0, 15.0, 18.0, 18.2, 16.0, 12.2, 8.0, 5.2],
            "tmax_c": [19.5, 20.5, 22.5, 25.5, 28.5, 33.0, 36.8, 37.0, 33.4, 28.0, 22.8, 19.0],
            "rain_mm": [85.0, 95.0, 65.0, 25.0, 6.0, 1.0, 0.0, 1.0, 4.0, 15.0, 30.0, 65.0]}}
    })))
)]
pub async fn get_climate(
    request: HttpRequest,
    PathParts(asked): PathParts<ClimateId>,
    Query(query): Query<EntryQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let (set, language) = (rules.set(), language::of(query.language, &request));
    let Some(entry) = place::entry(&asked.id, &set) else {
        let known = set.pack.climates.iter().map(|filed| filed.entry.id.value.as_str());
        let detail = match nearest(&asked.id, known) {
            Some(meant) => format!("unknown climate `{}`, did you mean `{meant}`?", clipped(&asked.id)),
            None => format!("unknown climate `{}`", clipped(&asked.id)),
        };
        return Err(Problem::new(CLIMATE_NOT_FOUND, detail));
    };
    let whole = ClimateWhole {
        id: entry.id.value.clone(),
        name: entry.name.get(language.word()).to_owned(),
        tell: entry.tell.get(language.word()).to_owned(),
        zone: entry.zone.clone(),
        climate: ClimateProfile {
            latitude: entry.profile.latitude,
            longitude: entry.profile.longitude,
            elevation_m: entry.profile.elevation_m,
            normals: entry.profile.normals.as_ref().map(normals),
        },
    };
    list::sent_json(&request, &whole, language)
}

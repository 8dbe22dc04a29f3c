//! `GET /v1/season`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use serde::Deserialize;

use super::answer::SeasonAnswer;
use super::compute;
use super::request::SeasonRequest;
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::question::choices::Language;
use crate::v1::question::date::Date;
use crate::v1::question::query::{self, in_query};
use crate::v1::question::today;
use crate::v1::sent::Keep;

/// A registered climate and a date.
#[derive(Clone, Debug, Deserialize, utoipa::IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct SeasonQuery {
    /// A registered climate, by its id.
    #[param(max_length = 100, example = "cold-inland")]
    climate: String,
    /// In what the place differs from that climate, with commas between: `nights:-2` (degrees), `afternoons`,
    /// `summer-afternoons`, `first-frost:-21` (days), `last-frost`, `frost-pocket`, `warm-wall`, `roof`.
    #[param(required = false, nullable = false, max_length = 500, example = "nights:-2,frost-pocket")]
    differ: Option<String>,
    /// When; today at the place when left out.
    #[param(required = false, nullable = false, example = "2026-09-15")]
    date: Option<Date>,
    /// The language of the answer; else the header `accept-language` decides.
    #[param(required = false, nullable = false, example = "en")]
    language: Option<Language>,
}

/// What season is it in a registered climate?
///
/// The same answer as `POST /v1/season`. It may be kept for an hour, and without a `date` not past midnight at the place.
/// As the source of an `<img>` it is the picture of the year: an `accept` that prefers images gets `image/svg+xml`.
///
/// # Errors
/// The problems `bad-query` and `unknown-climate`.
#[utoipa::path(
    get, path = "/v1/season", operation_id = "get_season", tag = "season", params(SeasonQuery),
    responses(
        (status = 200, description = "The season.", content(
            (SeasonAnswer = "application/json", example = json!(compute::example())),
            (String = "image/svg+xml", example = json!(compute::PICTURE_EXAMPLE))
        )),
        (status = 304, description = "What the reader has is still right.")
    )
)]
pub async fn get_season(
    request: HttpRequest,
    Query(asked): Query<SeasonQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let SeasonQuery { climate, differ, date, language } = asked;
    let climate = query::climate(climate, differ.as_deref())?;
    let asked = SeasonRequest { climate, date, site: None, language };
    let found = compute::find(asked, language::accepted(&request), &rules, today::now()).map_err(in_query)?;
    found.sent(&request, Keep::For(found.keep_s))
}

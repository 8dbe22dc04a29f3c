//! `GET /v1/sources`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::pack::{Filed, SourceEntry};
use serde::Serialize;
use utoipa::ToSchema;

use super::list::{self, ListQuery, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::sets::rules::Rules;
use crate::v1::question::date::Date;

/// Where a piece of knowledge comes from.
#[derive(Debug, Serialize, ToSchema)]
pub struct SourceItem {
    /// Its id.
    id: String,
    /// Its title.
    title: String,
    /// Its publisher.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    publisher: Option<String>,
    /// Its year.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    #[schema(minimum = 0)]
    year: Option<u16>,
    /// How it was read.
    how_read: String,
    /// When somebody should look at it again.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    review_by: Option<Date>,
}

pages! {
    SourcePage of SourceItem by id, "One page of the sources.";
}

/// Where does the advice come from?
///
/// Every source that rules name, and how it was read, by id, page by page.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/sources", operation_id = "list_sources", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = SourcePage, example = json!({"items": [{"id": "common-practice", "title": "Common practice of the trade", "how_read": "common practice"}]})))
)]
pub async fn list_sources(
    request: HttpRequest,
    Query(query): Query<ListQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    list::answer::<_, SourcePage>(&request, query, |language| {
        // Titles stand in the language of the source.
        let _ = language;
        let source = |filed: &Filed<SourceEntry>| SourceItem {
            id: filed.entry.id.value.clone(),
            title: filed.entry.title.clone(),
            publisher: filed.entry.publisher.clone(),
            year: filed.entry.year,
            how_read: filed.entry.how_read.clone(),
            review_by: filed.entry.review_by.map(Date),
        };
        set.pack.sources.iter().map(source).collect()
    })
}

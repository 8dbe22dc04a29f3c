//! `GET /v1/jobs`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::pack::{Filed, WordEntry};
use serde::Serialize;
use utoipa::ToSchema;

use super::list::{self, ListQuery, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::sets::rules::Rules;

/// A kind of work.
#[derive(Debug, Serialize, ToSchema)]
pub struct JobItem {
    /// Its id.
    id: String,
    /// Its name.
    name: String,
    /// What is meant by it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    about: Option<String>,
}

pages! {
    JobPage of JobItem by id, "One page of the kinds of work.";
}

/// Which kinds of work are there?
///
/// Every kind of work that a history or a wish may name, by id, page by page.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/jobs", operation_id = "list_jobs", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = JobPage, example = json!({"items": [{"id": "prune", "name": "Prune"}]})))
)]
pub async fn list_jobs(
    request: HttpRequest,
    Query(query): Query<ListQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    list::answer::<_, JobPage>(&request, query, |language| {
        let job = |filed: &Filed<WordEntry>| JobItem {
            id: filed.entry.id.value.clone(),
            name: filed.entry.name.get(language).to_owned(),
            about: list::some(filed.entry.about.get(language)),
        };
        set.pack.jobs.iter().map(job).collect()
    })
}

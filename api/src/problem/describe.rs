//! `GET /problems/{slug}`: what a kind of problem means. A problem's `type` leads here.

use actix_web::HttpResponse;
use actix_web::http::header::CACHE_CONTROL;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::Problem;
use super::extractors::PathParts;
use super::kinds::{self, KINDS, UNKNOWN_PROBLEM};
use lammas_engine::nearest::nearest;

/// Which kind of problem.
#[derive(Debug, Deserialize, utoipa::IntoParams)]
#[into_params(parameter_in = Path)]
pub struct ProblemSlug {
    /// The last part of a problem's `type`.
    #[param(example = "invalid-request", pattern = "^[a-z-]+$", max_length = 100)]
    slug: String,
}

/// A kind of problem.
#[derive(Debug, Serialize, ToSchema)]
pub struct ProblemKind {
    /// The `type` of its problems.
    #[serde(rename = "type")]
    #[schema(format = "uri-reference")]
    kind: String,
    /// The HTTP status.
    #[schema(minimum = 400, maximum = 599)]
    status: u16,
    /// The summary.
    title: &'static str,
    /// What it means and what to do about it.
    about: &'static str,
}

/// What does a kind of problem mean?
///
/// The `type` of every problem leads here. A kind keeps its name and its meaning for ever; its words may improve.
///
/// # Errors
/// The problem `unknown-problem`.
#[utoipa::path(
    get, path = "/problems/{slug}", operation_id = "describe_problem", tag = "operation", params(ProblemSlug),
    responses((status = 200, description = "The kind of problem.", body = ProblemKind, example = json!({
        "type": "/problems/invalid-request", "status": 422, "title": "the request has wrong or missing values",
        "about": "The body is JSON, but some of it cannot be used. Each entry of `errors` points at one place (RFC 6901) and says what is wrong there."
    })))
)]
pub async fn describe_problem(PathParts(asked): PathParts<ProblemSlug>) -> Result<HttpResponse, Problem> {
    let Some(kind) = kinds::find(&asked.slug) else {
        let detail = match nearest(&asked.slug, KINDS.iter().map(|kind| kind.slug)) {
            Some(meant) => format!("unknown kind `{}`, did you mean `{meant}`?", asked.slug),
            None => format!("unknown kind `{}`", asked.slug),
        };
        return Err(Problem::new(UNKNOWN_PROBLEM, detail));
    };
    Ok(HttpResponse::Ok().insert_header((CACHE_CONTROL, "public, max-age=3600")).json(ProblemKind {
        kind: kind.type_uri(),
        status: kind.status,
        title: kind.title,
        about: kind.about,
    }))
}

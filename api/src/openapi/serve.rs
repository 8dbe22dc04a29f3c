//! `GET /openapi.json`.

use std::sync::LazyLock;

use actix_web::HttpResponse;
use actix_web::http::header::CACHE_CONTROL;

use super::document;

static TEXT: LazyLock<String> = LazyLock::new(document::text);

/// This document
///
/// The OpenAPI 3.1 document of every call, made from the code of this very program.
#[utoipa::path(
    get, path = "/openapi.json", operation_id = "get_document", tag = "operation",
    responses((status = 200, description = "The document.", body = serde_json::Value,
        example = json!({"openapi": "3.1.0", "info": {"title": "Lammas", "version": "0.1.0"}, "paths": {}})))
)]
pub async fn get_document() -> HttpResponse {
    HttpResponse::Ok()
        .content_type("application/json")
        .insert_header((CACHE_CONTROL, "public, max-age=3600"))
        .body(TEXT.as_str())
}

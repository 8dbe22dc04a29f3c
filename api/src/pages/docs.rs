//! `/docs/`: the API's document, to read and to try. Everything it loads comes from this program.

use std::sync::{Arc, LazyLock};

use actix_web::HttpResponse;
use actix_web::http::header::{CACHE_CONTROL, CONTENT_SECURITY_POLICY, LOCATION};
use serde::Deserialize;
use utoipa_swagger_ui::Config;

use crate::problem::Problem;
use crate::problem::extractors::PathParts;
use crate::problem::kinds::UNKNOWN_PATH;

const PAGE: &str = include_str!("docs.html");
const START: &str = include_str!("docs.js");

/// The page styles itself with `style` attributes and draws its icons from `data:`.
const PAGE_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; \
    connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

static FILES: LazyLock<Arc<Config<'static>>> = LazyLock::new(|| Arc::new(Config::new(["/openapi.json"])));

/// A file that the page loads.
#[derive(Debug, Deserialize)]
pub struct DocsFile {
    file: String,
}

/// The page lives at the address with the slash, since it names its files beside itself.
pub async fn show_docs_at_slash() -> HttpResponse {
    HttpResponse::PermanentRedirect().insert_header((LOCATION, "/docs/")).finish()
}

/// The page.
pub async fn show_docs() -> HttpResponse {
    HttpResponse::Ok()
        .content_type("text/html; charset=utf-8")
        .insert_header((CONTENT_SECURITY_POLICY, PAGE_POLICY))
        .insert_header((CACHE_CONTROL, "public, max-age=3600"))
        .body(PAGE)
}

/// A file of the page.
///
/// # Errors
/// The problem `unknown-path`.
pub async fn show_docs_file(PathParts(asked): PathParts<DocsFile>) -> Result<HttpResponse, Problem> {
    let (media, bytes) = match asked.file.as_str() {
        "start.js" => ("text/javascript; charset=utf-8".to_owned(), START.as_bytes().to_vec()),
        name @ ("swagger-ui.css" | "swagger-ui-bundle.js") => {
            match utoipa_swagger_ui::serve(name, FILES.clone()).map_err(Problem::broken)? {
                Some(file) => (file.content_type, file.bytes.into_owned()),
                None => return Err(Problem::broken(format!("`{name}` is not in this program"))),
            }
        }
        _ => return Err(Problem::new(UNKNOWN_PATH, "the page has no such file")),
    };
    Ok(HttpResponse::Ok().content_type(media).insert_header((CACHE_CONTROL, "public, max-age=86400")).body(bytes))
}

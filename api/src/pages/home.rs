//! `/`: ask for a plant and see what it needs now. The page asks this service's own calls and nobody else's, and what
//! is asked stands in the part of the address that a browser sends to nobody.

use actix_web::http::header::{CACHE_CONTROL, CONTENT_SECURITY_POLICY, ETAG, IF_NONE_MATCH};
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::version::hash;
use serde::Deserialize;

use crate::problem::Problem;
use crate::problem::extractors::PathParts;
use crate::problem::kinds::UNKNOWN_PATH;

const PAGE: &str = include_str!("home/home.html");

/// Only what this service sends, no style or script in the page itself, and no text ever read as markup.
const PAGE_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
    base-uri 'none'; form-action 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; trusted-types 'none'";

const SCRIPT: &str = "text/javascript; charset=utf-8";
const STYLE: &str = "text/css; charset=utf-8";
const PICTURE: &str = "image/svg+xml";

macro_rules! files {
    ($($name:literal $media:ident,)*) => {
        /// Every file of the page: its name, its media type, its text.
        const FILES: &[(&str, &str, &str)] = &[$(($name, $media, include_str!(concat!("home/", $name)))),*];
    };
}

files! {
    "answer.css" STYLE,
    "answer.js" SCRIPT,
    "element.js" SCRIPT,
    "form.css" STYLE,
    "form.js" SCRIPT,
    "leaf.svg" PICTURE,
    "link.js" SCRIPT,
    "named.js" SCRIPT,
    "normals.js" SCRIPT,
    "paper.css" STYLE,
    "print.css" STYLE,
    "question.js" SCRIPT,
    "request.js" SCRIPT,
    "service.js" SCRIPT,
    "signs.js" SCRIPT,
    "start.js" SCRIPT,
    "task.js" SCRIPT,
    "words.js" SCRIPT,
    "wrong.js" SCRIPT,
}

/// A file that the page loads.
#[derive(Debug, Deserialize)]
pub struct HomeFile {
    file: String,
}

/// The page.
pub async fn show_home(request: HttpRequest) -> HttpResponse {
    let mut page = sent(&request, "text/html; charset=utf-8", PAGE);
    let policy = actix_web::http::header::HeaderValue::from_static(PAGE_POLICY);
    page.headers_mut().insert(CONTENT_SECURITY_POLICY, policy);
    page
}

/// A file of the page.
///
/// # Errors
/// The problem `unknown-path`.
pub async fn show_home_file(
    request: HttpRequest,
    PathParts(asked): PathParts<HomeFile>,
) -> Result<HttpResponse, Problem> {
    let found = FILES.iter().find(|(name, ..)| *name == asked.file);
    let (_, media, text) = found.ok_or_else(|| Problem::new(UNKNOWN_PATH, "the page has no such file"))?;
    Ok(sent(&request, media, text))
}

/// Asked for anew each time, and sent again only when it has changed: the files of one page must be of one version.
fn sent(request: &HttpRequest, media: &str, text: &'static str) -> HttpResponse {
    let tag = format!("W/\"{}\"", hash::of_text(text).get(..32).unwrap_or_default());
    let has = request.headers().get(IF_NONE_MATCH).is_some_and(|given| given.as_bytes() == tag.as_bytes());
    let mut answer = if has { HttpResponse::NotModified() } else { HttpResponse::Ok() };
    answer.insert_header((CACHE_CONTROL, "no-cache")).insert_header((ETAG, tag));
    if has { answer.finish() } else { answer.content_type(media).body(text) }
}

//! An answer on its way out: its bytes, their tag, its language.

use actix_web::HttpResponse;
use actix_web::http::header::{CACHE_CONTROL, CONTENT_LANGUAGE, ETAG, VARY};
use lammas_engine::version::hash;

use super::question::choices::Language;

/// Hexadecimal digits of the tag: 128 bits.
const TAG_DIGITS: usize = 32;

/// How long an answer may be kept by those that it passes.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Keep {
    /// Not at all: it answers one caller's question.
    No,
    /// One hour: a withdrawn rule must reach readers.
    Hour,
}

/// JSON in a language, with a weak tag of its bytes.
pub(crate) fn json(text: String, language: Language, keep: Keep) -> HttpResponse {
    let digest = hash::of_text(&text);
    let tag = format!("W/\"{}\"", digest.get(..TAG_DIGITS).unwrap_or_default());
    let keep = match keep {
        Keep::No => "no-store",
        Keep::Hour => "public, max-age=3600",
    };
    HttpResponse::Ok()
        .content_type("application/json")
        .insert_header((CONTENT_LANGUAGE, language.word()))
        .insert_header((VARY, "accept-language"))
        .insert_header((ETAG, tag))
        .insert_header((CACHE_CONTROL, keep))
        .body(text)
}

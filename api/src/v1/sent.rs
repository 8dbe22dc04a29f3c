//! An answer on its way out: its bytes, their tag, its language. A reader who has these bytes already gets none.

use actix_web::http::Method;
use actix_web::http::header::{
    CACHE_CONTROL, CONTENT_LANGUAGE, CONTENT_SECURITY_POLICY, ETAG, EntityTag, Header as _, HeaderValue, IfNoneMatch,
    VARY,
};
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::version::hash;

use super::face::Face;
use super::question::choices::Language;

/// Hexadecimal digits of the tag: 128 bits.
const TAG_DIGITS: usize = 32;

/// The longest that an answer may be kept, in seconds: a withdrawn rule must reach readers within the hour.
pub(crate) const LONGEST_S: u64 = 3600;

/// How long an answer may be kept by those that it passes.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Keep {
    /// Not at all: it answers one caller's question.
    No,
    /// As long as any: an hour.
    Hour,
    /// So many seconds.
    For(u64),
}

/// A picture opened by itself may use the style that stands in it, and nothing else.
const PICTURE_POLICY: HeaderValue =
    HeaderValue::from_static("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'");

/// An answer that has several faces, as one of them.
pub(crate) fn faced(request: &HttpRequest, face: Face, text: String, language: Language, keep: Keep) -> HttpResponse {
    let sha256 = hash::of_text(&text);
    let mut answer = whole(request, face, text, &sha256, language, keep);
    answer.headers_mut().insert(VARY, HeaderValue::from_static("accept, accept-language"));
    if face == Face::Picture {
        answer.headers_mut().insert(CONTENT_SECURITY_POLICY, PICTURE_POLICY);
    }
    answer
}

/// JSON in a language, with a weak tag of its bytes; to a reader who has them, that they are still right.
pub(crate) fn json(request: &HttpRequest, text: String, language: Language, keep: Keep) -> HttpResponse {
    let sha256 = hash::of_text(&text);
    hashed(request, text, &sha256, language, keep)
}

/// The same where the hash of the text is known.
pub(crate) fn hashed(
    request: &HttpRequest,
    text: String,
    sha256: &str,
    language: Language,
    keep: Keep,
) -> HttpResponse {
    whole(request, Face::Json, text, sha256, language, keep)
}

fn whole(
    request: &HttpRequest,
    face: Face,
    text: String,
    sha256: &str,
    language: Language,
    keep: Keep,
) -> HttpResponse {
    let tag = EntityTag::new_weak(sha256.get(..TAG_DIGITS).unwrap_or_default().to_owned());
    let keep = match keep {
        Keep::No => "no-store".to_owned(),
        Keep::Hour => format!("public, max-age={LONGEST_S}"),
        Keep::For(seconds) => format!("public, max-age={}", seconds.min(LONGEST_S)),
    };
    let is_known = request.method() == Method::GET && has(request, &tag);
    let mut answer = if is_known { HttpResponse::NotModified() } else { HttpResponse::Ok() };
    answer
        .insert_header((CONTENT_LANGUAGE, language.word()))
        .insert_header((VARY, "accept-language"))
        .insert_header((ETAG, tag))
        .insert_header((CACHE_CONTROL, keep));
    if is_known { answer.finish() } else { answer.content_type(face.media()).body(text) }
}

/// Whether the reader says that it has these bytes (RFC 9110, section 13.1.2: compared weakly).
fn has(request: &HttpRequest, tag: &EntityTag) -> bool {
    match IfNoneMatch::parse(request) {
        Ok(IfNoneMatch::Any) => true,
        Ok(IfNoneMatch::Items(known)) => known.iter().any(|known| known.weak_eq(tag)),
        Err(_) => false,
    }
}

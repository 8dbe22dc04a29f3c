//! A JSON body, bounded before it is read.

use std::future::Future;
use std::pin::Pin;
use std::time::Duration;

use actix_web::dev::Payload;
use actix_web::http::header::{ACCEPT_ENCODING, CONTENT_ENCODING, CONTENT_LENGTH, CONTENT_TYPE, HeaderValue};
use actix_web::web::{Bytes, BytesMut};
use actix_web::{FromRequest, HttpRequest};
use futures_util::StreamExt;
use serde::de::DeserializeOwned;
use serde_json::error::Category;

use super::collect::{self, Leaves};
use super::{nesting, strict, tree};
use crate::problem::faults::Faults;
use crate::problem::kinds::{
    BAD_JSON, BODY_TOO_LARGE, BODY_TOO_SLOW, INVALID_REQUEST, NESTED_TOO_DEEP, UNSUPPORTED_MEDIA_TYPE,
};
use crate::problem::wording::clipped;
use crate::problem::{Problem, wire::FieldError};
use crate::settings::Settings;

/// The body of a request, read as a `T`.
///
/// Refuses another media type than JSON, a compressed body, one over the settings' size, nesting or time, text that
/// is not JSON, and values that do not fit, all of these named at once.
#[derive(Debug)]
pub struct Body<T>(pub T);

impl<T: DeserializeOwned + 'static> FromRequest for Body<T> {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let most = Settings::of(request).limits.body_bytes;
        let reading = read(request, payload, most);
        Box::pin(async move { reading.await.map(Self) })
    }
}

/// The same with the bound of long records: all files of a rule set.
#[derive(Debug)]
pub struct LargeBody<T>(pub T);

impl<T: DeserializeOwned + 'static> FromRequest for LargeBody<T> {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let most = Settings::of(request).limits.record_bytes;
        let reading = read(request, payload, most);
        Box::pin(async move { reading.await.map(Self) })
    }
}

fn read<T: DeserializeOwned + 'static>(
    request: &HttpRequest,
    payload: &mut Payload,
    most: usize,
) -> impl Future<Output = Result<T, Problem>> + use<T> {
    let settings = Settings::of(request);
    let announced = match media(request) {
        Ok(Media::Json) => fits(request, most),
        Ok(other) => Err(unsupported("`application/json`", other.name())),
        Err(problem) => Err(problem),
    };
    let payload = payload.take();
    async move {
        announced?;
        let text = collected(payload, most, settings.deadlines.body()).await?;
        parsed(&text, settings.limits.nesting)
    }
}

/// What a body says it is.
pub(super) enum Media {
    /// `application/json` and its kin.
    Json,
    /// `text/csv`.
    Csv,
    /// Anything else, as it is called.
    Other(String),
}

impl Media {
    fn name(&self) -> &str {
        match self {
            Self::Json => "application/json",
            Self::Csv => "text/csv",
            Self::Other(name) => name,
        }
    }
}

/// What a body says it is.
///
/// # Errors
/// It is compressed, or says nothing.
pub(super) fn media(request: &HttpRequest) -> Result<Media, Problem> {
    let header = |name| request.headers().get(name).and_then(|value: &HeaderValue| value.to_str().ok());
    if let Some(coding) = header(CONTENT_ENCODING).filter(|coding| !coding.eq_ignore_ascii_case("identity")) {
        let detail = format!("expected a body that is not compressed, found `content-encoding: {}`", clipped(coding));
        return Err(Problem::new(UNSUPPORTED_MEDIA_TYPE, detail)
            .with_header(ACCEPT_ENCODING, HeaderValue::from_static("identity")));
    }
    let Some(media) = header(CONTENT_TYPE) else {
        let detail = "expected the header `content-type: application/json`, found none";
        return Err(Problem::new(UNSUPPORTED_MEDIA_TYPE, detail));
    };
    let mut parts = media.split(';').map(|part| part.trim().to_ascii_lowercase());
    let name = parts.next().unwrap_or_default();
    let structured = name.strip_prefix("application/").is_some_and(|sub| sub == "json" || sub.ends_with("+json"));
    let charset = parts.find_map(|part| part.strip_prefix("charset=").map(|set| set.trim_matches('"').to_owned()));
    Ok(match charset {
        Some(set) if set != "utf-8" => Media::Other(media.to_owned()),
        _ if structured => Media::Json,
        _ if name == "text/csv" => Media::Csv,
        _ => Media::Other(media.to_owned()),
    })
}

/// A body of another kind than the call reads; `expected` in backticks.
pub(super) fn unsupported(expected: &str, found: &str) -> Problem {
    Problem::new(UNSUPPORTED_MEDIA_TYPE, format!("expected {expected} in UTF-8, found `{}`", clipped(found)))
}

pub(super) fn fits(request: &HttpRequest, most: usize) -> Result<(), Problem> {
    let announced = request.headers().get(CONTENT_LENGTH).and_then(|length| length.to_str().ok()?.parse::<u64>().ok());
    match announced {
        Some(length) if length > most as u64 => Err(too_large(most)),
        _ => Ok(()),
    }
}

fn too_large(most: usize) -> Problem {
    Problem::new(BODY_TOO_LARGE, format!("expected at most {most} bytes"))
}

pub(super) async fn collected(mut payload: Payload, most: usize, within: Duration) -> Result<Bytes, Problem> {
    let reading = async {
        let mut body = BytesMut::new();
        while let Some(part) = payload.next().await {
            let part = part.map_err(|_| Problem::new(BAD_JSON, "the body ended before its announced length"))?;
            if body.len() + part.len() > most {
                return Err(too_large(most));
            }
            body.extend_from_slice(&part);
        }
        Ok(body.freeze())
    };
    match tokio::time::timeout(within, reading).await {
        Ok(body) => body,
        Err(_) => {
            let detail = format!("expected the whole body within {} s", within.as_secs_f64());
            Err(Problem::new(BODY_TOO_SLOW, detail))
        }
    }
}

/// A text read as a `T`, with every place named that does not fit.
pub(crate) fn parsed<T: DeserializeOwned>(text: &[u8], deepest: usize) -> Result<T, Problem> {
    if nesting::is_deeper(text, deepest) {
        return Err(Problem::new(NESTED_TOO_DEEP, format!("expected at most {deepest} levels")));
    }
    let first = match strict::from_json(text) {
        Ok(read) => return Ok(read),
        Err(error) => error,
    };
    let tree::Tree(value) = serde_json::from_slice(text).map_err(|error| unreadable(text, &error))?;
    match collect::read(value, Leaves::Json) {
        Err(faults) => Err(Problem::invalid(INVALID_REQUEST, faults.into_errors())),
        // The two readings differ: the fault is still the request's, and the first one said what it is.
        Ok::<T, Faults>(_) => Err(unreadable(text, &first)),
    }
}

fn unreadable(text: &[u8], error: &serde_json::Error) -> Problem {
    if text.iter().all(u8::is_ascii_whitespace) {
        return Problem::new(BAD_JSON, "expected a JSON body, found none");
    }
    let words = error.to_string();
    match error.classify() {
        Category::Data => {
            let detail = words;
            Problem::invalid(INVALID_REQUEST, vec![FieldError { pointer: String::new(), detail }])
        }
        _ => Problem::new(BAD_JSON, words),
    }
}

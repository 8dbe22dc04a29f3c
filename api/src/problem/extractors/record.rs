//! A daily record as a body: JSON or CSV, with a bound of its own, since years of days are long.

use std::future::Future;
use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::{FromRequest, HttpRequest};
use serde::de::DeserializeOwned;

use super::body::{Media, collected, fits, media, parsed, unsupported};
use crate::problem::Problem;
use crate::problem::kinds::INVALID_REQUEST;
use crate::problem::wire::FieldError;
use crate::settings::Settings;

/// A daily record, read as JSON of the form `T` or left as the text of a CSV file.
#[derive(Debug)]
pub enum RecordBody<T> {
    /// `application/json`.
    Json(T),
    /// `text/csv`.
    Csv(String),
}

impl<T: DeserializeOwned + 'static> FromRequest for RecordBody<T> {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let settings = Settings::of(request);
        let most = settings.limits.record_bytes;
        let announced = media(request).and_then(|media| match media {
            Media::Json => fits(request, most).map(|()| true),
            Media::Csv => fits(request, most).map(|()| false),
            Media::Other(found) => Err(unsupported("`application/json` or `text/csv`", &found)),
        });
        let payload = payload.take();
        Box::pin(async move {
            let is_json = announced?;
            let text = collected(payload, most, settings.deadlines.body()).await?;
            if is_json {
                return parsed(&text, settings.limits.nesting).map(Self::Json);
            }
            String::from_utf8(text.to_vec()).map(Self::Csv).map_err(|error| {
                let detail = not_utf8(error.as_bytes(), error.utf8_error().valid_up_to());
                Problem::invalid(INVALID_REQUEST, vec![FieldError { pointer: String::new(), detail }])
            })
        })
    }
}

/// What is said of text that is not UTF-8.
pub(crate) fn not_utf8(bytes: &[u8], valid_up_to: usize) -> String {
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        "expected text in UTF-8, found UTF-16: save it as CSV in UTF-8".to_owned()
    } else {
        format!("expected text in UTF-8, found other bytes after byte {valid_up_to}")
    }
}

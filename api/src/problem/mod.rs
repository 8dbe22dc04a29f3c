//! The answer to a bad request: RFC 9457 problem details.
//!
//! - [`describe`] the page behind a `type`
//! - [`kinds`] the table of every kind of problem
//! - [`wire`] the body as it is sent
//! - [`faults`] the collection of everything that is wrong with a request
//! - [`mod@pointer`] RFC 6901 pointers at the place
//! - `wording` what is wrong, in the words of someone who fills in a form
//! - [`extractors`] the readers of body, query and path, which replace the framework's own

pub mod describe;
pub mod extractors;
pub mod faults;
pub mod kinds;
pub mod pointer;
pub mod wire;
mod wording;

use std::fmt;

use actix_web::http::StatusCode;
use actix_web::http::header::{ALLOW, CACHE_CONTROL, HeaderName, HeaderValue};
use actix_web::{HttpResponse, HttpResponseBuilder, ResponseError};

use crate::answer::{request_id, security};
use kinds::Kind;
use wire::{FieldError, ProblemBody};
pub(crate) use wording::clipped;

/// One problem on its way to the caller. Handlers return it as their error; it is written out, with the request's
/// id, in one place: [`crate::answer`].
#[derive(Clone, Debug)]
pub struct Problem(Box<Parts>);

/// Boxed, so that a result which may be a problem stays small.
#[derive(Clone, Debug)]
struct Parts {
    kind: Kind,
    detail: String,
    errors: Vec<FieldError>,
    headers: Vec<(HeaderName, HeaderValue)>,
    cause: Option<String>,
    request_id: Option<String>,
}

impl Problem {
    /// A problem of this kind. `detail` helps the caller: what was expected, what was found.
    pub fn new(kind: Kind, detail: impl Into<String>) -> Self {
        let detail = detail.into();
        Self(Box::new(Parts { kind, detail, errors: vec![], headers: vec![], cause: None, request_id: None }))
    }

    /// Something broke in the service. The cause goes to the log, not to the caller.
    pub fn broken(cause: impl fmt::Display) -> Self {
        let mut problem = Self::new(kinds::BROKEN, "this is not the request's fault");
        problem.0.cause = Some(cause.to_string());
        problem
    }

    /// The request has wrong values at these places.
    #[must_use]
    pub fn invalid(kind: Kind, errors: Vec<FieldError>) -> Self {
        let detail = match errors.as_slice() {
            [] => String::new(),
            [only] => only.detail.clone(),
            more => format!("{} places need another look", more.len()),
        };
        let mut problem = Self::new(kind, detail);
        problem.0.errors = errors;
        problem
    }

    /// The path is served, but not with this method.
    #[must_use]
    pub fn method_not_allowed(method: &str, allow: &str) -> Self {
        let problem = Self::new(kinds::METHOD_NOT_ALLOWED, format!("expected one of {allow}, found `{method}`"));
        match HeaderValue::from_str(allow) {
            Ok(allow) => problem.with_header(ALLOW, allow),
            Err(_) => problem,
        }
    }

    /// The same problem with one more header on its answer.
    #[must_use]
    pub fn with_header(mut self, name: HeaderName, value: HeaderValue) -> Self {
        self.0.headers.push((name, value));
        self
    }

    /// The kind.
    #[must_use]
    pub fn kind(&self) -> Kind {
        self.0.kind
    }

    /// The wrong places, if places are what is wrong.
    #[must_use]
    pub fn errors(&self) -> &[FieldError] {
        &self.0.errors
    }

    /// What broke inside, for the log.
    pub(crate) fn cause(&self) -> Option<&str> {
        self.0.cause.as_deref()
    }

    pub(crate) fn with_request_id(mut self, id: &str) -> Self {
        self.0.request_id = Some(id.to_owned());
        self
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0.kind)?;
        if self.0.detail.is_empty() { Ok(()) } else { write!(f, ": {}", self.0.detail) }
    }
}

impl ResponseError for Problem {
    fn status_code(&self) -> StatusCode {
        StatusCode::from_u16(self.0.kind.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR)
    }

    fn error_response(&self) -> HttpResponse {
        let mut answer = HttpResponseBuilder::new(self.status_code());
        for (name, value) in &self.0.headers {
            answer.insert_header((name.clone(), value.clone()));
        }
        // What was wrong with one request says nothing about the next one.
        answer.insert_header((CACHE_CONTROL, "no-store"));
        if let Some(id) = &self.0.request_id {
            answer.insert_header((request_id::HEADER, id.as_str()));
        }
        let body = ProblemBody {
            kind: self.0.kind.type_uri(),
            title: self.0.kind.title.to_owned(),
            status: self.0.kind.status,
            detail: self.0.detail.clone(),
            request_id: self.0.request_id.clone(),
            errors: self.0.errors.clone(),
        };
        let text = serde_json::to_string(&body).unwrap_or_default();
        let mut answer = answer.content_type(wire::MEDIA_TYPE).body(text);
        security::add(answer.headers_mut());
        answer
    }
}

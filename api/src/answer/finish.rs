//! The middleware around everything else.

use std::panic::AssertUnwindSafe;
use std::time::Instant;

use actix_web::Error;
use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::header::{ACCESS_CONTROL_ALLOW_ORIGIN, HeaderName, HeaderValue};
use actix_web::http::{Method, StatusCode};
use actix_web::middleware::Next;
use futures_util::FutureExt;

use super::{request_id, security};
use crate::problem::Problem;
use crate::problem::kinds::{DEADLINE_PASSED, Kind, NOT_ACCEPTABLE};
use crate::settings::Settings;

const ANYONE: HeaderValue = HeaderValue::from_static("*");

/// Answers a request in time and in form: HEAD is routed as GET (the protocol drops the body); a failure, also a
/// panic or one of the framework's own, becomes a problem; every answer carries its id and the security headers.
pub(crate) async fn finish<B: MessageBody + 'static>(
    mut request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let started = Instant::now();
    let id = request_id::of(&request);
    let method = request.method().clone();
    if method == Method::HEAD {
        request.head_mut().method = Method::GET;
    }
    // Public reads may be made from any web site's pages: they hold nothing of whoever asks, and take no credentials.
    let is_public = matches!(method, Method::GET | Method::HEAD) && request.path().starts_with("/v1/");
    let deadline = Settings::before_routing(&request).deadlines.answer();
    let answer = AssertUnwindSafe(tokio::time::timeout(deadline, next.call(request))).catch_unwind().await;

    let failed = match answer {
        Ok(Ok(Ok(mut answer))) => match failure(&answer) {
            None => {
                let headers = answer.headers_mut();
                security::add(headers);
                if is_public {
                    headers.insert(ACCESS_CONTROL_ALLOW_ORIGIN, ANYONE);
                }
                if let Ok(id) = HeaderValue::from_str(&id) {
                    headers.insert(HeaderName::from_static(request_id::HEADER), id);
                }
                log(&id, &method, &pattern(&answer), answer.status(), started, None);
                return Ok(answer.map_into_boxed_body());
            }
            Some(problem) => (problem, pattern(&answer)),
        },
        Ok(Ok(Err(error))) => (problem_of(&error), String::new()),
        Ok(Err(_)) => {
            let detail = format!("expected an answer within {} s", deadline.as_secs_f64());
            (Problem::new(DEADLINE_PASSED, detail), String::new())
        }
        Err(_) => (Problem::broken("panic, see the line before"), String::new()),
    };
    let (mut problem, pattern) = failed;
    if is_public {
        problem = problem.with_header(ACCESS_CONTROL_ALLOW_ORIGIN, ANYONE);
    }
    let status = actix_web::ResponseError::status_code(&problem);
    log(&id, &method, &pattern, status, started, problem.cause());
    Err(problem.with_request_id(&id).into())
}

/// The problem that an answer is, if it is one.
fn failure<B>(answer: &ServiceResponse<B>) -> Option<Problem> {
    if let Some(error) = answer.response().error() {
        return Some(problem_of(error));
    }
    let status = answer.status();
    let is_failure = status.is_client_error() || status.is_server_error();
    is_failure.then(|| from_status(status))
}

fn problem_of(error: &Error) -> Problem {
    match error.as_error::<Problem>() {
        Some(problem) => problem.clone(),
        None => match error.as_response_error().status_code() {
            status if status.is_server_error() => Problem::broken(error),
            status => from_status(status),
        },
    }
}

/// A failure that a part of the framework has answered, by its status alone: its text is not for our callers.
fn from_status(status: StatusCode) -> Problem {
    match status {
        StatusCode::NOT_ACCEPTABLE => {
            Problem::new(NOT_ACCEPTABLE, "expected `accept-encoding` to allow `gzip` or `identity`")
        }
        StatusCode::INTERNAL_SERVER_ERROR => Problem::broken("an answer without a cause"),
        status => {
            let title = status.canonical_reason().unwrap_or("failed");
            Problem::new(Kind::about_blank(status.as_u16(), title), "")
        }
    }
}

/// The route, not the path: a path may hold what its caller typed.
fn pattern<B>(answer: &ServiceResponse<B>) -> String {
    answer.request().match_pattern().unwrap_or_default()
}

fn log(id: &str, method: &Method, route: &str, status: StatusCode, started: Instant, cause: Option<&str>) {
    let status = status.as_u16();
    let took_us = u64::try_from(started.elapsed().as_micros()).unwrap_or(u64::MAX);
    match cause {
        Some(cause) => {
            tracing::error!(request_id = id, %method, route, status, took_us, cause, "answered");
        }
        None => tracing::info!(request_id = id, %method, route, status, took_us, "answered"),
    }
}

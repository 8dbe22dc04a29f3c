//! Why something is not done, as a problem.

use actix_web::http::header::{ETAG, HeaderValue, RETRY_AFTER};

use crate::problem::Problem;
use crate::problem::kinds::{CHANGED_MEANWHILE, INVALID_REQUEST, NOT_IN_STORE, NOT_PUBLISHABLE, STORE_AWAY};
use crate::problem::wire::FieldError;
use crate::publishing::NotDone;

pub(super) fn told(error: NotDone) -> Problem {
    match error {
        NotDone::Wrong(told) => {
            Problem::invalid(INVALID_REQUEST, vec![FieldError { pointer: String::new(), detail: told }])
        }
        NotDone::Missing(told) => Problem::new(NOT_IN_STORE, told),
        NotDone::Changed { revision, told } => with_tag(Problem::new(CHANGED_MEANWHILE, told), revision),
        NotDone::Refused(told) => Problem::new(NOT_PUBLISHABLE, told),
        NotDone::Unsigned(told) => Problem::broken(told),
        NotDone::Store(error) if error.passes() => away(&error.to_string()),
        NotDone::Store(error) => Problem::broken(error),
    }
}

/// The store can't be reached now. Why is the operator's to know.
pub(super) fn away(cause: &str) -> Problem {
    tracing::warn!(cause, "an editor's call found the store away");
    let detail = "advice goes on; nothing was changed, or an answer with the same `Idempotency-Key` tells what was";
    Problem::new(STORE_AWAY, detail).with_header(RETRY_AFTER, HeaderValue::from_static("5"))
}

fn with_tag(problem: Problem, revision: i64) -> Problem {
    match HeaderValue::from_str(&super::matching::tag(revision)) {
        Ok(tag) => problem.with_header(ETAG, tag),
        Err(_) => problem,
    }
}

//! Writes that name what they change: `If-Match` with the tag of the revision that was read (RFC 9110, section 13.1.1).

use actix_web::HttpRequest;
use actix_web::http::header::IF_MATCH;

use crate::problem::Problem;
use crate::problem::kinds::{CHANGED_MEANWHILE, MATCH_NEEDED};

/// The strong tag of a revision.
pub(super) fn tag(revision: i64) -> String {
    format!("\"{revision}\"")
}

/// The revision that the caller read; nothing when any will do (`*`).
pub(super) fn revision(request: &HttpRequest) -> Result<Option<i64>, Problem> {
    let header = request.headers().get(IF_MATCH).and_then(|value| value.to_str().ok()).map(str::trim);
    let Some(header) = header else {
        let detail = "expected the header `if-match` with the `etag` of what was read";
        return Err(Problem::new(MATCH_NEEDED, detail));
    };
    if header == "*" {
        return Ok(None);
    }
    let number =
        header.strip_prefix('"').and_then(|rest| rest.strip_suffix('"')).and_then(|digits| digits.parse().ok());
    let unknown = || Problem::new(CHANGED_MEANWHILE, "the header `if-match` names no revision of this");
    number.map(Some).ok_or_else(unknown)
}

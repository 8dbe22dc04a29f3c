//! The headers that keep browsers careful.

use actix_web::http::header::{
    CONTENT_SECURITY_POLICY, HeaderMap, HeaderName, HeaderValue, REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS,
};

/// Data is not a page: nothing may be loaded by it, and nobody may frame it.
const DATA: &str = "default-src 'none'; frame-ancestors 'none'";

/// Adds what the answer does not have yet. A page sets a content security policy of its own.
pub(crate) fn add(headers: &mut HeaderMap) {
    let careful: [(HeaderName, &str); 3] =
        [(X_CONTENT_TYPE_OPTIONS, "nosniff"), (REFERRER_POLICY, "no-referrer"), (CONTENT_SECURITY_POLICY, DATA)];
    for (name, value) in careful {
        if !headers.contains_key(&name) {
            headers.insert(name, HeaderValue::from_static(value));
        }
    }
}

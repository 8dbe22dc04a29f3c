//! Every kind of problem the service answers with.
//!
//! **To add one**: write its row below; return it with [`Problem::new`](super::Problem::new); name it in the rows of
//! `routes.rs` whose calls can give it; add the request that provokes it to `tests/http/problems.rs` (a test walks
//! this table and fails until you do); bless the OpenAPI document. A slug is never changed and never used again for
//! something else, also after the kind is gone: clients branch on it. Titles and texts may improve.

use std::fmt;

/// One kind of problem: what clients branch on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Kind {
    /// Kebab-case name, the last part of the problem's `type`; empty for `about:blank`.
    pub slug: &'static str,
    /// HTTP status, 400 to 599.
    pub status: u16,
    /// The short summary, the same for every occurrence.
    pub title: &'static str,
    /// What it means and what the caller can do about it.
    pub about: &'static str,
}

/// Where the description of a kind is served; the slug follows.
pub const TYPE_BASE: &str = "/problems/";

impl Kind {
    /// The RFC 9457 `type`: a path on this service that describes the kind, or `about:blank`.
    #[must_use]
    pub fn type_uri(&self) -> String {
        if self.slug.is_empty() { "about:blank".to_owned() } else { format!("{TYPE_BASE}{}", self.slug) }
    }

    /// A failure that has no kind of its own: the status says all there is to say (RFC 9457, section 4.2.1).
    #[must_use]
    pub const fn about_blank(status: u16, title: &'static str) -> Self {
        Self { slug: "", status, title, about: "" }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.title)
    }
}

macro_rules! kinds {
    ($($name:ident: $slug:literal, $status:literal, $title:literal, $about:literal;)*) => {
        $(
            #[doc = $title]
            pub const $name: Kind = Kind { slug: $slug, status: $status, title: $title, about: $about };
        )*
        /// Every kind, in the order of the table.
        pub const KINDS: &[Kind] = &[$($name),*];
    };
}

kinds! {
    BAD_JSON: "bad-json", 400, "the body is not JSON",
        "The body could not be read as JSON. The detail says at which line and column reading stopped.";
    NESTED_TOO_DEEP: "nested-too-deep", 400, "the body is nested too deep",
        "Lists and objects stand inside each other deeper than any request needs.";
    BAD_QUERY: "bad-query", 400, "a parameter of the query is wrong",
        "Each entry of `errors` points at one parameter of the query: `/limit` is `?limit=`.";
    BAD_PATH: "bad-path", 400, "a part of the path is wrong",
        "Each entry of `errors` points at one part of the path: `/name` is `{name}`.";
    KEY_IN_ADDRESS: "key-in-address", 400, "a key stands in the address",
        "Addresses end up in logs. Revoke this key, and send the new one in the header `authorization`.";
    IDEMPOTENCY_KEY_NEEDED: "idempotency-key-needed", 400, "the header `idempotency-key` is needed",
        "This write is done once for each key. Choose any text, and send the same one when you repeat the request.";
    NO_KEY: "no-key", 401, "a key is needed",
        "Send `authorization: Bearer` with a key that is in force. An operator makes one with `lammas key new`.";
    KEY_LACKS_SCOPE: "key-lacks-scope", 403, "the key is not made for this",
        "The detail names what the key would have to be made for.";
    NO_STORE: "no-store", 404, "this service has no store",
        "It serves the rule set inside the program. Rule sets are edited where the service was started with a store.";
    NOT_IN_STORE: "not-in-store", 404, "the store has nothing of this name",
        "The detail says what was looked for, and the nearest name where there is one.";
    STILL_RUNNING: "still-running", 409, "the same request is still being worked on",
        "Ask again in a moment with the same `idempotency-key`.";
    CHANGED_MEANWHILE: "changed-meanwhile", 412, "somebody changed it meanwhile",
        "The header `etag` names the revision that is there now. Read it, and decide anew.";
    IDEMPOTENCY_KEY_OF_ANOTHER: "idempotency-key-of-another", 422, "this `idempotency-key` belongs to another request",
        "A key stands for one request, body and all. Choose a new one.";
    NOT_PUBLISHABLE: "not-publishable", 422, "the rule set does not pass",
        "The detail says everything that stands in the way, each with its place.";
    MATCH_NEEDED: "match-needed", 428, "the header `if-match` is needed",
        "Read what you want to change first, and send its `etag` back in `if-match`: so nobody's change is lost.";
    STORE_AWAY: "store-away", 503, "the store can't be reached now",
        "Advice goes on from memory. Repeat the write with the same `idempotency-key`.";
    UNKNOWN_PATH: "unknown-path", 404, "nothing is served at this path",
        "The path is not one of this service's. `/openapi.json` lists those that are.";
    UNKNOWN_QUANTITY: "unknown-quantity", 404, "no quantity has this name",
        "The detail gives the nearest name there is. `GET /v1/quantities` lists them all.";
    CLIMATE_NOT_FOUND: "climate-not-found", 404, "no climate is registered under this id",
        "The detail gives the nearest id there is. `GET /v1/climates` lists them all.";
    RULE_NOT_FOUND: "rule-not-found", 404, "no rule has this id",
        "The detail gives the nearest ids there are. Every task, held work and note of an answer names its rule.";
    UNKNOWN_PROBLEM: "unknown-problem", 404, "no kind of problem has this name",
        "The name is not the last part of a `type` this service gives.";
    METHOD_NOT_ALLOWED: "method-not-allowed", 405, "this path does not take this method",
        "The header `Allow` lists the methods that the path takes.";
    NOT_ACCEPTABLE: "not-acceptable", 406, "the answer cannot be given in a form you accept",
        "The `Accept` headers of the request leave no form in which the service can answer.";
    BODY_TOO_SLOW: "body-too-slow", 408, "the body took too long to arrive",
        "The service stopped waiting for the rest of the body. Send the request again.";
    BODY_TOO_LARGE: "body-too-large", 413, "the body is too large",
        "The detail gives the largest body that is read, in bytes.";
    UNSUPPORTED_MEDIA_TYPE: "unsupported-media-type", 415, "the body has a type that is not read here",
        "Send JSON, in UTF-8, not compressed, with `content-type: application/json`. A daily record may also be sent as `text/csv`.";
    INVALID_REQUEST: "invalid-request", 422, "the request has wrong or missing values",
        "The body is JSON, but some of it cannot be used. Each entry of `errors` points at one place (RFC 6901) and says what is wrong there.";
    UNKNOWN_PLANT: "unknown-plant", 422, "no rule set knows this plant",
        "The entry of `errors` at the plant gives the nearest names there are. `GET /v1/plants` lists them all. Nothing is advised for a plant that no rule set knows.";
    UNKNOWN_CLIMATE: "unknown-climate", 422, "no climate is registered under this id",
        "The entry of `errors` at the climate gives the nearest id there is. `GET /v1/climates` lists them all; a climate may also be written out as monthly normals.";
    NOT_ON_LAND: "not-on-land", 422, "no climate can be estimated at these coordinates",
        "The coordinates lie in the sea, or so far south that nothing is known of the land. Check their signs: south and west are negative. A climate written out as monthly normals works anywhere.";
    UNKNOWN_RULE_SET: "unknown-rule-set", 422, "no such rule set is published here",
        "The entry of `errors` at the rule set names those that are published.";
    NOT_AVAILABLE_YET: "not-available-yet", 422, "the request asks for something that is not available yet",
        "The request is sound, but this version of the service cannot do what the named places ask for. Leave them out, or give what the detail says instead.";
    BROKEN: "broken", 500, "something broke in the service",
        "The fault is the service's. Give its operator the `request_id`.";
    NOT_READY: "not-ready", 503, "the service is not ready",
        "The service is starting or stopping. Try again in a few seconds.";
    DEADLINE_PASSED: "deadline-passed", 504, "the answer took too long",
        "The service gave up working on the answer. Ask for less at once, or try again.";
}

/// The kinds that any call can give.
pub const ANY_CALL: &[Kind] = &[NOT_ACCEPTABLE, BROKEN, DEADLINE_PASSED];

/// The kinds that a call which reads a JSON body can give.
pub const JSON_BODY: &[Kind] =
    &[BAD_JSON, NESTED_TOO_DEEP, BODY_TOO_SLOW, BODY_TOO_LARGE, UNSUPPORTED_MEDIA_TYPE, INVALID_REQUEST];

/// The kinds that a call which asks about a climate can give.
pub const QUESTION: &[Kind] = &[UNKNOWN_CLIMATE, NOT_ON_LAND, NOT_AVAILABLE_YET];

/// The kinds that any call of the editors can give.
pub const EDITOR: &[Kind] = &[KEY_IN_ADDRESS, NO_KEY, KEY_LACKS_SCOPE, NO_STORE, STORE_AWAY];

/// The kinds that a write which is done once can give.
pub const ONCE: &[Kind] = &[IDEMPOTENCY_KEY_NEEDED, STILL_RUNNING, IDEMPOTENCY_KEY_OF_ANOTHER];

/// The kind with this slug.
#[must_use]
pub fn find(slug: &str) -> Option<&'static Kind> {
    KINDS.iter().find(|kind| kind.slug == slug)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slugs_are_kebab_case_and_used_once() {
        for (place, kind) in KINDS.iter().enumerate() {
            assert!(kind.slug.bytes().all(|b| b.is_ascii_lowercase() || b == b'-'), "{}", kind.slug);
            assert_eq!(KINDS.iter().position(|k| k.slug == kind.slug), Some(place), "{} stands twice", kind.slug);
            assert!((400..600).contains(&kind.status), "{}", kind.slug);
        }
    }

    #[test]
    fn titles_start_lower_case_and_texts_are_sentences() {
        for kind in KINDS {
            assert!(kind.title.starts_with(|c: char| c.is_lowercase()) && !kind.title.ends_with('.'), "{}", kind.title);
            assert!(kind.about.ends_with('.'), "{}", kind.about);
        }
    }
}

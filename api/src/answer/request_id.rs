//! The id of a request: in the answer's header, in a problem's body and in the log.

use std::hash::{BuildHasher, Hasher, RandomState};
use std::sync::LazyLock;
use std::sync::atomic::{AtomicU64, Ordering};

use actix_web::dev::ServiceRequest;

/// The header, in the request (a caller may bring its own id) and in the answer.
pub const HEADER: &str = "x-request-id";

const LONGEST: usize = 64;

/// The caller's id when it has the form of one (letters, digits, `-`, `_`, `.`, at most 64), else a new one.
pub(crate) fn of(request: &ServiceRequest) -> String {
    let brought = request.headers().get(HEADER).and_then(|id| id.to_str().ok());
    brought.filter(|id| is_sound(id)).map_or_else(new, str::to_owned)
}

/// Anything else could forge a line of the log.
fn is_sound(id: &str) -> bool {
    (1..=LONGEST).contains(&id.len())
        && id.bytes().all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_' | b'.'))
}

/// A number of this process and a count: unique enough to find a line by, and cheap.
fn new() -> String {
    static PROCESS: LazyLock<u32> = LazyLock::new(|| (RandomState::new().build_hasher().finish() >> 32) as u32);
    static COUNT: AtomicU64 = AtomicU64::new(1);
    format!("{:08x}-{:06}", *PROCESS, COUNT.fetch_add(1, Ordering::Relaxed))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_requests_have_two_ids_and_both_are_sound() {
        let (one, other) = (new(), new());
        assert_ne!(one, other);
        assert!(is_sound(&one) && is_sound(&other));
    }

    #[test]
    fn an_id_that_could_forge_a_log_line_is_not_taken() {
        assert!(is_sound("till-7.2026_09"));
        for id in ["", "a b", "a\nb", "ä", &"x".repeat(65)] {
            assert!(!is_sound(id), "{id:?}");
        }
    }
}

//! What came back.

use lammas::problem::kinds::Kind;
use lammas::problem::wire::{MEDIA_TYPE, ProblemBody};
use serde_json::Value;
use ureq::Body;
use ureq::http::{HeaderMap, Response};

/// An answer, read whole.
#[derive(Debug)]
pub struct Answer {
    /// The status.
    pub status: u16,
    /// The headers.
    pub headers: HeaderMap,
    /// The body, as text.
    pub body: String,
}

impl Answer {
    /// Reads an answer to its end, and checks what every answer must have.
    ///
    /// # Panics
    /// When it breaks off, or lacks what every answer must have.
    #[must_use]
    pub fn read(mut answer: Response<Body>) -> Self {
        let body = answer.body_mut().with_config().limit(64 * 1024 * 1024).read_to_string().expect("a whole body");
        let answer = Self { status: answer.status().as_u16(), headers: answer.headers().clone(), body };
        assert!(!answer.header("x-request-id").is_empty(), "no request id: {answer:?}");
        assert_eq!(answer.header("x-content-type-options"), "nosniff", "{answer:?}");
        assert_eq!(answer.header("referrer-policy"), "no-referrer", "{answer:?}");
        assert!(answer.header("content-security-policy").contains("default-src 'none'"), "{answer:?}");
        answer
    }

    /// A header, empty when it is not there.
    #[must_use]
    pub fn header(&self, name: &str) -> &str {
        self.headers.get(name).and_then(|value| value.to_str().ok()).unwrap_or_default()
    }

    /// The body as JSON.
    ///
    /// # Panics
    /// When it is not.
    #[must_use]
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.body).unwrap_or_else(|error| panic!("not JSON: {error}: {self:?}"))
    }

    /// The body of a good answer.
    ///
    /// # Panics
    /// When the status is not 200.
    #[must_use]
    pub fn ok(&self) -> Value {
        assert_eq!(self.status, 200, "{self:?}");
        self.json()
    }

    /// The body as a problem of this kind, whole in every respect.
    ///
    /// # Panics
    /// When it is not.
    #[must_use]
    pub fn problem(&self, kind: Kind) -> ProblemBody {
        let problem = self.any_problem();
        assert_eq!(problem.kind, kind.type_uri(), "{self:?}");
        assert_eq!((self.status, problem.title.as_str()), (kind.status, kind.title), "{self:?}");
        problem
    }

    /// The body as a problem of whatever kind.
    ///
    /// # Panics
    /// When it is not one, or its body and its head differ.
    #[must_use]
    pub fn any_problem(&self) -> ProblemBody {
        assert_eq!(self.header("content-type"), MEDIA_TYPE, "{self:?}");
        assert_eq!(self.header("cache-control"), "no-store", "{self:?}");
        let problem: ProblemBody = serde_json::from_str(&self.body).expect("a problem");
        assert_eq!(problem.status, self.status, "{self:?}");
        assert_eq!(problem.request_id.as_deref(), Some(self.header("x-request-id")), "{self:?}");
        for trace in ["panicked", "src/", ".rs", "::"] {
            assert!(!self.body.contains(trace), "the inside shows: {self:?}");
        }
        problem
    }

    /// The pointers of a problem's errors with their details.
    ///
    /// # Panics
    /// When it is not a problem.
    #[must_use]
    pub fn errors(&self) -> Vec<(String, String)> {
        self.any_problem().errors.into_iter().map(|error| (error.pointer, error.detail)).collect()
    }
}

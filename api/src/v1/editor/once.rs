//! Writes that are done once: the same `Idempotency-Key` with the same request gets the same answer, for a day.

use actix_web::HttpRequest;
use actix_web::http::header::HeaderName;
use lammas_engine::version::hash;
use serde::Serialize;

use super::caller::AtDesk;
use crate::problem::Problem;
use crate::problem::kinds::{IDEMPOTENCY_KEY_NEEDED, IDEMPOTENCY_KEY_OF_ANOTHER, STILL_RUNNING};
use crate::publishing::NotDone;
use crate::publishing::desk::now_ms;
use crate::store::tables::answered::{self, Known};

/// The longest key, in characters.
const LONGEST: usize = 255;
const HEADER: HeaderName = HeaderName::from_static("idempotency-key");

/// A write that has its key.
#[derive(Clone, Debug)]
pub(super) struct Once {
    pub(super) key: String,
}

/// What is to be done.
pub(super) enum Begun {
    /// The work.
    New(Once),
    /// Nothing: this was the answer.
    Done(u16, String),
}

/// Takes the key of a request.
pub(super) async fn begin<T: Serialize>(at: &AtDesk, request: &HttpRequest, body: &T) -> Result<Begun, Problem> {
    let key = request.headers().get(HEADER).and_then(|value| value.to_str().ok()).map(str::trim).unwrap_or_default();
    let key = key.trim_matches('"').to_owned();
    if key.is_empty() || key.len() > LONGEST {
        let detail = format!("expected the header `idempotency-key` with 1 to {LONGEST} characters of your choice");
        return Err(Problem::new(IDEMPOTENCY_KEY_NEEDED, detail));
    }
    let text = serde_json::to_string(body).map_err(Problem::broken)?;
    let matching = request.headers().get("if-match").and_then(|value| value.to_str().ok()).unwrap_or_default();
    let sha256 = hash::of_text(&format!("{} {}\n{matching}\n{text}", request.method(), request.path()));
    let taking = key.clone();
    let known = at
        .work(|desk, caller| async move {
            let mut work = desk.store.begin().await?;
            let known = answered::take(&mut *work, &caller.id, &taking, &sha256, now_ms()).await?;
            work.commit().await?;
            Ok::<_, NotDone>(known)
        })
        .await?;
    match known {
        Known::New => Ok(Begun::New(Once { key })),
        Known::Done(status, _, body) => Ok(Begun::Done(status, body)),
        Known::Running => {
            Err(Problem::new(STILL_RUNNING, "the same request is being worked on: ask again in a moment"))
        }
        Known::Other => {
            let detail = "another request was sent with this key: take a new key for a new request";
            Err(Problem::new(IDEMPOTENCY_KEY_OF_ANOTHER, detail))
        }
    }
}

/// Gives the key back when the work was not done.
pub(super) async fn or_give_back<T>(at: &AtDesk, once: &Once, done: Result<T, Problem>) -> Result<T, Problem> {
    if done.is_err() {
        let key = once.key.clone();
        let given = at
            .work(|desk, caller| async move {
                let mut work = desk.store.begin().await?;
                answered::give_back(&mut *work, &caller.id, &key).await?;
                work.commit().await.map_err(NotDone::from)
            })
            .await;
        drop(given); // it lapses after a minute by itself
    }
    done
}

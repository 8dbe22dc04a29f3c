//! Drafts are published; releases are undone and listed.

use actix_web::http::StatusCode;
use actix_web::http::header::CONTENT_TYPE;
use actix_web::web::Payload;
use actix_web::{FromRequest, HttpRequest, HttpResponse};

use super::caller::AtDesk;
use super::matching::revision;
use super::once::{self, Begun};
use super::wire::{DraftName, NothingMore, PublishWhen, ReleaseList, ReleaseState, SetName};
use crate::keys::Scope;
use crate::problem::Problem;
use crate::problem::extractors::{Body, PathParts};
use crate::problem::kinds::INVALID_REQUEST;
use crate::problem::wire::FieldError;
use crate::publishing::NotDone;
use crate::publishing::publish::Promise;
use crate::store::StoreError;
use crate::store::tables::answered;
use crate::store::tables::releases::{self, Release};

/// An answer that was kept as text.
pub(super) fn again(status: u16, body: String) -> HttpResponse {
    let status = StatusCode::from_u16(status).unwrap_or(StatusCode::OK);
    HttpResponse::build(status).insert_header((CONTENT_TYPE, "application/json")).body(body)
}

/// The answer of a release.
pub(super) fn created(release: &Release) -> (u16, String) {
    (201, serde_json::to_string(&ReleaseState::from(release)).unwrap_or_default())
}

/// Publish a draft
///
/// Now, or at a wall time in a named zone. It is checked and its scenarios are run; what is held back stays so. Every node serves
/// it within a second. Needs a key for `publish`, `If-Match` and an `Idempotency-Key`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    post, path = "/v1/editor/drafts/{id}/publish", operation_id = "publish_draft", tag = "editor", params(DraftName,
        ("If-Match" = String, Header, description = "The `etag` of the draft as it was approved."),
        ("Idempotency-Key" = String, Header, description = "Any text; the same one again gets the same answer.")),
    request_body(content = PublishWhen, description = "When.", example = json!({})),
    responses((status = 201, description = "The release, or what waits for its time.", body = ReleaseState, example = json!({"release": 12,
        "rule_set": "core", "version": "2026.11.1", "sha256": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        "how": "publish", "by": "key 0123456789ab (editor)", "at_ms": 1_795_000_000_000_i64})))
)]
pub async fn publish_draft(
    request: HttpRequest,
    PathParts(named): PathParts<DraftName>,
    payload: Payload,
) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Publish).await?;
    let wanted = revision(&request)?;
    let Body(when) = Body::<PublishWhen>::from_request(&request, &mut payload.into_inner()).await?;
    if when.at.is_some() != when.zone.is_some() {
        let (given, missing) = if when.at.is_some() { ("at", "zone") } else { ("zone", "at") };
        let detail = format!("`{given}` is given without `{missing}`: a wall time needs both");
        return Err(Problem::invalid(INVALID_REQUEST, vec![FieldError { pointer: format!("/{missing}"), detail }]));
    }
    let once = match once::begin(&at, &request, &when).await? {
        Begun::Done(status, body) => return Ok(again(status, body)),
        Begun::New(once) => once,
    };
    let key = once.key.clone();
    let done = at
        .work(|desk, caller| async move {
            if let (Some(wall), Some(zone)) = (&when.at, &when.zone) {
                let planned = desk.schedule(&named.id, wanted, (wall, zone), &caller.who).await?;
                let state = ReleaseState {
                    release: None,
                    rule_set: planned.rule_set,
                    version: None,
                    sha256: None,
                    how: "schedule".to_owned(),
                    by: planned.made_by,
                    at_ms: planned.at_ms,
                    remark: Some(planned.told).filter(|told| !told.is_empty()),
                };
                let body = serde_json::to_string(&state).map_err(|error| StoreError::Broken(error.to_string()))?;
                let mut work = desk.store.begin().await?;
                answered::done(&mut *work, &caller.id, &key, 201, "", &body).await?;
                work.commit().await?;
                return Ok(body);
            }
            let promise = Promise { caller: &caller.id, key: &key, answer: &created };
            let release = desk.publish(&named.id, wanted, &caller.who, Some(&promise)).await?;
            Ok::<_, NotDone>(created(&release).1)
        })
        .await;
    Ok(again(201, once::or_give_back(&at, &once, done).await?))
}

/// Undo the last release of a set
///
/// What stood before it is published again, in one step; once more undoes the undoing. Needs a key for `publish` and an
/// `Idempotency-Key`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    post, path = "/v1/editor/rule-sets/{name}/undo", operation_id = "undo_release", tag = "editor", params(SetName,
        ("Idempotency-Key" = String, Header, description = "Any text; the same one again gets the same answer.")),
    request_body(content = NothingMore, description = "Nothing more is to be said.", example = json!({})),
    responses((status = 201, description = "The release.", body = ReleaseState, example = json!({"release": 13,
        "rule_set": "core", "version": "2026.11.1", "sha256": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        "how": "undo", "by": "key 0123456789ab (editor)", "at_ms": 1_795_000_000_000_i64})))
)]
pub async fn undo_release(
    request: HttpRequest,
    PathParts(named): PathParts<SetName>,
    payload: Payload,
) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Publish).await?;
    let Body(nothing) = Body::<NothingMore>::from_request(&request, &mut payload.into_inner()).await?;
    let once = match once::begin(&at, &request, &nothing).await? {
        Begun::Done(status, body) => return Ok(again(status, body)),
        Begun::New(once) => once,
    };
    let key = once.key.clone();
    let done = at
        .work(|desk, caller| async move {
            let promise = Promise { caller: &caller.id, key: &key, answer: &created };
            let release = desk.undo(&named.name, None, &caller.who, Some(&promise)).await?;
            Ok::<_, NotDone>(created(&release).1)
        })
        .await;
    Ok(again(201, once::or_give_back(&at, &once, done).await?))
}

/// List the releases of the store
///
/// The newest first. Needs a key for `edit`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    get, path = "/v1/editor/releases", operation_id = "list_releases", tag = "editor",
    responses((status = 200, description = "The last of them.", body = ReleaseList, example = json!({"items": [{"release": 1,
        "rule_set": "core", "version": "2026.11.1", "sha256": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        "how": "publish", "by": "the program", "at_ms": 1_795_000_000_000_i64}]})))
)]
pub async fn list_releases(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Edit).await?;
    let all = at
        .work(|desk, _| async move {
            let mut work = desk.store.read().await?;
            let newest = releases::newest_number(&mut *work).await?;
            releases::after(&mut *work, newest - 100).await.map_err(NotDone::from)
        })
        .await?;
    Ok(HttpResponse::Ok().json(ReleaseList { items: all.iter().rev().map(ReleaseState::from).collect() }))
}

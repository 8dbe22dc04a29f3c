//! Drafts come in, are read, changed and checked.

use actix_web::http::header::ETAG;
use actix_web::web::Payload;
use actix_web::{FromRequest, HttpRequest, HttpResponse};

use super::caller::AtDesk;
use super::matching::{revision, tag};
use super::once::{self, Begun};
use super::told::told;
use super::wire::{DraftChecked, DraftFile, DraftFiles, DraftName, DraftState};
use crate::keys::Scope;
use crate::problem::Problem;
use crate::problem::extractors::{LargeBody, PathParts};
use crate::publishing::gate::{Depth, judge};
use crate::publishing::publish::below;
use crate::publishing::{NotDone, held};
use crate::store::StoreError;
use crate::store::tables::answered;
use crate::store::tables::releases;

/// Bring a rule set in as a draft
///
/// All its files at once; `pack.yaml` names the set. The draft may still be faulty. Needs a key for `edit` and an `Idempotency-Key`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    post, path = "/v1/editor/drafts", operation_id = "import_draft", tag = "editor",
    params(("Idempotency-Key" = String, Header, description = "Any text; the same one again gets the same answer.")),
    request_body(content = DraftFiles, description = "The files.", example = json!({"note": "a first try", "files": [{"path": "pack.yaml",
        "text": "name: house\nversion: \"2026.11.1\"\nlanguages: [en]\ntitle: {en: \"House rules\"}\n"}]})),
    responses((status = 201, description = "The draft.", body = DraftState, example = json!({"id": "draft-0123456789abcdef0123",
        "rule_set": "house", "revision": 1, "state": "open", "note": "a first try", "document": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        "changed_by": "key 0123456789ab (editor)"})))
)]
pub async fn import_draft(request: HttpRequest, payload: Payload) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Edit).await?;
    let LargeBody(sent) = LargeBody::<DraftFiles>::from_request(&request, &mut payload.into_inner()).await?;
    let once = match once::begin(&at, &request, &sent).await? {
        Begun::Done(status, body) => return Ok(super::release::again(status, body)),
        Begun::New(once) => once,
    };
    let (note, key) = (sent.note.clone().unwrap_or_default(), once.key.clone());
    let files = sent.pack_files();
    let done = at
        .work(|desk, caller| async move {
            let mut work = desk.store.begin().await?;
            let draft = desk.import_in(&mut *work, &files, &note, &caller.who).await?;
            let body =
                serde_json::to_string(&DraftState::from(draft)).map_err(|e| StoreError::Broken(e.to_string()))?;
            answered::done(&mut *work, &caller.id, &key, 201, "", &body).await?;
            work.commit().await?;
            Ok::<_, NotDone>(body)
        })
        .await;
    let body = once::or_give_back(&at, &once, done).await?;
    Ok(super::release::again(201, body))
}

/// Read a draft
///
/// With all its files. The `etag` is for `If-Match`. Needs a key for `edit`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    get, path = "/v1/editor/drafts/{id}", operation_id = "get_draft", tag = "editor", params(DraftName),
    responses((status = 200, description = "The draft.", body = DraftState, example = json!({"id": "draft-0123456789abcdef0123",
        "rule_set": "house", "revision": 1, "state": "open", "note": "", "document": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        "changed_by": "key 0123456789ab (editor)", "files": []})))
)]
pub async fn get_draft(request: HttpRequest, PathParts(named): PathParts<DraftName>) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Edit).await?;
    let (draft, files) = at.work(|desk, _| async move { desk.draft_files(&named.id).await }).await?;
    let files = files.into_iter().map(|file| DraftFile { path: file.path, text: file.text }).collect();
    let mut state = DraftState::from(draft);
    state.files = Some(files);
    Ok(HttpResponse::Ok().insert_header((ETAG, tag(state.revision))).json(state))
}

/// Change a draft
///
/// Other files take the place of all its files, if it is still at the revision that `If-Match` names. Needs a key for `edit`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    put, path = "/v1/editor/drafts/{id}", operation_id = "change_draft", tag = "editor", params(DraftName,
        ("If-Match" = String, Header, description = "The `etag` of the draft as it was read.")),
    request_body(content = DraftFiles, description = "All files.", example = json!({"files": [{"path": "pack.yaml",
        "text": "name: house\nversion: \"2026.11.2\"\nlanguages: [en]\ntitle: {en: \"House rules\"}\n"}]})),
    responses((status = 200, description = "The draft.", body = DraftState, example = json!({"id": "draft-0123456789abcdef0123",
        "rule_set": "house", "revision": 2, "state": "open", "note": "", "document": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        "changed_by": "key 0123456789ab (editor)"})))
)]
pub async fn change_draft(
    request: HttpRequest,
    PathParts(named): PathParts<DraftName>,
    payload: Payload,
) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Edit).await?;
    let wanted = revision(&request)?;
    let LargeBody(sent) = LargeBody::<DraftFiles>::from_request(&request, &mut payload.into_inner()).await?;
    let (note, files) = (sent.note.clone(), sent.pack_files());
    let draft = at
        .work(|desk, caller| async move {
            let at = match wanted {
                Some(revision) => revision,
                None => desk.draft(&named.id).await?.revision,
            };
            desk.change(&named.id, at, &files, note.as_deref(), &caller.who).await
        })
        .await?;
    Ok(HttpResponse::Ok().insert_header((ETAG, tag(draft.revision))).json(DraftState::from(draft)))
}

/// Check a draft
///
/// Everything that publishing looks at: faults, what is proven against it, its scenarios. Needs a key for `edit`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    post, path = "/v1/editor/drafts/{id}/check", operation_id = "check_draft", tag = "editor", params(DraftName),
    responses((status = 200, description = "What was found.", body = DraftChecked, example = json!({"publishable": true, "against": []})))
)]
pub async fn check_draft(
    request: HttpRequest,
    PathParts(named): PathParts<DraftName>,
) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Edit).await?;
    let (below, files, holds) = at
        .work(|desk, _| async move {
            let (draft, files) = desk.draft_files(&named.id).await?;
            let mut work = desk.store.read().await?;
            let last = releases::last_two(&mut *work, &draft.rule_set).await?.into_iter().next();
            let holds = last.map_or(Ok(Vec::new()), |last| held::parse(&last.held)).map_err(StoreError::Damaged)?;
            let below = below(&mut *work, &files).await?;
            Ok((below, files, holds))
        })
        .await?;
    let judging = actix_web::web::block(move || judge(&below, &files, &holds, Depth::Publish).map(|_| ()));
    match judging.await.map_err(Problem::broken)? {
        Ok(()) => Ok(HttpResponse::Ok().json(DraftChecked { publishable: true, against: Vec::new() })),
        Err(NotDone::Refused(why)) => {
            let against = why.split("\n\n").map(|part| part.trim().to_owned()).filter(|part| !part.is_empty());
            Ok(HttpResponse::Ok().json(DraftChecked { publishable: false, against: against.collect() }))
        }
        Err(other) => Err(told(other)),
    }
}

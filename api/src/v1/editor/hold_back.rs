//! Something is held back at once.

use actix_web::web::Payload;
use actix_web::{FromRequest, HttpRequest, HttpResponse};

use super::caller::AtDesk;
use super::once::{self, Begun};
use super::release::{again, created};
use super::wire::{HoldBackRequest, ReleaseState, SetName};
use crate::keys::Scope;
use crate::problem::Problem;
use crate::problem::extractors::{Body, PathParts};
use crate::publishing::NotDone;
use crate::publishing::hold_back::Asked;
use crate::publishing::publish::Promise;

/// Hold back a rule, a material or a source, or add a caution
///
/// One publisher alone may do it: it only makes the advice safer. Readers see the reason; another one reviews it. Needs a key for
/// `publish` and an `Idempotency-Key`.
///
/// # Errors
/// Those of the table.
#[utoipa::path(
    post, path = "/v1/editor/rule-sets/{name}/hold-back", operation_id = "hold_back", tag = "editor", params(SetName,
        ("Idempotency-Key" = String, Header, description = "Any text; the same one again gets the same answer.")),
    request_body(content = HoldBackRequest, description = "What, and why.", example = json!({"kind": "material", "id": "horticultural-oil",
        "because": {"en": "Burnt buds were seen.", "es": "Se vieron yemas quemadas."}})),
    responses((status = 201, description = "The release.", body = ReleaseState, example = json!({"release": 14,
        "rule_set": "core", "version": "2026.11.1+held.1", "sha256": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
        "how": "hold-back", "by": "key 0123456789ab (editor)", "at_ms": 1_795_000_000_000_i64})))
)]
pub async fn hold_back(
    request: HttpRequest,
    PathParts(named): PathParts<SetName>,
    payload: Payload,
) -> Result<HttpResponse, Problem> {
    let at = AtDesk::come(&request, Scope::Publish).await?;
    let Body(sent) = Body::<HoldBackRequest>::from_request(&request, &mut payload.into_inner()).await?;
    let once = match once::begin(&at, &request, &sent).await? {
        Begun::Done(status, body) => return Ok(again(status, body)),
        Begun::New(once) => once,
    };
    let key = once.key.clone();
    let asked = Asked { kind: sent.kind, entry: sent.id, because: sent.because, caution: sent.caution };
    let done = at
        .work(|desk, caller| async move {
            let promise = Promise { caller: &caller.id, key: &key, answer: &created };
            let (release, _) = desk.hold_back(&named.name, &asked, &caller.who, Some(&promise)).await?;
            Ok::<_, NotDone>(created(&release).1)
        })
        .await;
    Ok(again(201, once::or_give_back(&at, &once, done).await?))
}

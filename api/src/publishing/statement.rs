//! What is signed of a release: everything that is kept of it, as one canonical text.

use lammas_engine::version::canonical;
use serde_json::json;

use super::signing::Keyring;
use crate::store::tables::releases::Release;

/// The text that is signed.
#[must_use]
pub fn text(release: &Release) -> String {
    canonical::text(&json!({
        "what": "lammas release 1",
        "number": release.number,
        "rule_set": release.rule_set,
        "place": release.place,
        "version": release.version,
        "set_sha256": release.set_sha256,
        "document": release.document,
        "held": release.held,
        "how": release.how,
        "draft": release.draft,
        "published_by": release.published_by,
        "published_ms": release.published_ms,
        "audit_sequence": release.audit_sequence,
        "audit_hash": release.audit_hash,
        "key_id": release.key_id,
    }))
}

/// Whether a release is as it was signed.
///
/// # Errors
/// Why not, in words.
pub fn verify(release: &Release, keyring: &Keyring) -> Result<(), String> {
    keyring.verify(&release.key_id, &text(release), &release.signature)
}

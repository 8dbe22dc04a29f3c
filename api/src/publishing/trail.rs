//! The audit trail is written: in the same transaction as what it tells of, and its end is signed.

use serde_json::Value as Json;

use super::NotDone;
use super::signing::Keyring;
use crate::store::tables::audit::{self, AuditRow, BEFORE_THE_FIRST, Head};
use crate::store::{StoreError, Transaction};

/// The text that is signed of the end.
#[must_use]
pub fn head_text(sequence: i64, hash: &str) -> String {
    format!("lammas audit head 1\n{sequence}\n{hash}")
}

/// Writes a row behind the last one.
///
/// # Errors
/// The trail does not end as it was signed: nothing is written over somebody's traces. Or as any statement.
pub async fn append(
    work: &mut dyn Transaction,
    keyring: &Keyring,
    (who, act, what): (&str, &str, &str),
    detail: &Json,
    now_ms: i64,
) -> Result<AuditRow, NotDone> {
    let (last, head) = (audit::last(work).await?, audit::head(work).await?);
    let ends = last.as_ref().map(|row| (row.sequence, row.hash.as_str()));
    if ends != head.as_ref().map(|head| (head.sequence, head.hash.as_str())) {
        let told = "the audit trail does not end where it was signed, see `lammas audit verify`";
        return Err(StoreError::Damaged(told.to_owned()).into());
    }
    let (sequence, previous, at_ms) = match last {
        // A clock that was set back must not look like a row that was dated back.
        Some(last) => (last.sequence + 1, last.hash, now_ms.max(last.at_ms)),
        None => (1, BEFORE_THE_FIRST.to_owned(), now_ms),
    };
    let mut row = AuditRow {
        sequence,
        at_ms,
        who: who.to_owned(),
        act: act.to_owned(),
        what: what.to_owned(),
        detail: detail.to_string(),
        previous,
        hash: String::new(),
    };
    row.hash = row.own_hash();
    audit::insert(work, &row).await?;
    let head = Head {
        sequence,
        hash: row.hash.clone(),
        key_id: keyring.own_id()?,
        signature: keyring.sign(&head_text(sequence, &row.hash))?,
    };
    audit::set_head(work, &head).await?;
    Ok(row)
}

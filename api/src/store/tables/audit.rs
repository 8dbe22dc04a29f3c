//! The audit trail: each row carries the hash of the one before, and the signed head tells how many there must be.

use super::sha256_of_parts;
use crate::store::{Row, StoreError, Transaction, Value};

/// The hash before the first row.
pub const BEFORE_THE_FIRST: &str = "0000000000000000000000000000000000000000000000000000000000000000";

/// A row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AuditRow {
    /// 1, then one more with each row.
    pub sequence: i64,
    /// When, not before the row before.
    pub at_ms: i64,
    /// Who.
    pub who: String,
    /// What was done.
    pub act: String,
    /// To what.
    pub what: String,
    /// More of it, as JSON.
    pub detail: String,
    /// The hash of the row before.
    pub previous: String,
    /// The hash of this row.
    pub hash: String,
}

impl AuditRow {
    /// The hash that a row with these values has.
    #[must_use]
    pub fn own_hash(&self) -> String {
        let (sequence, at) = (self.sequence.to_string(), self.at_ms.to_string());
        sha256_of_parts(&[&self.previous, &sequence, &at, &self.who, &self.act, &self.what, &self.detail])
    }
}

/// The signed end of the trail.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// The last row.
    pub sequence: i64,
    /// Its hash.
    pub hash: String,
    /// The key that signed.
    pub key_id: String,
    /// The signature.
    pub signature: String,
}

fn audit_row(row: &Row) -> Result<AuditRow, StoreError> {
    Ok(AuditRow {
        sequence: row.whole(0)?,
        at_ms: row.whole(1)?,
        who: row.text(2)?,
        act: row.text(3)?,
        what: row.text(4)?,
        detail: row.text(5)?,
        previous: row.text(6)?,
        hash: row.text(7)?,
    })
}

/// The last row.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn last(work: &mut dyn Transaction) -> Result<Option<AuditRow>, StoreError> {
    let statement =
        "select sequence, at_ms, who, act, what, detail, previous, hash from audit order by sequence desc limit 1";
    work.query(statement, &[]).await?.first().map(audit_row).transpose()
}

/// Rows after this one, at most so many, in their order.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn after(work: &mut dyn Transaction, sequence: i64, most: i64) -> Result<Vec<AuditRow>, StoreError> {
    let statement = "select sequence, at_ms, who, act, what, detail, previous, hash from audit where sequence > $1 \
                     order by sequence limit $2";
    work.query(statement, &[sequence.into(), most.into()]).await?.iter().map(audit_row).collect()
}

/// Writes a row as it is.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn insert(work: &mut dyn Transaction, row: &AuditRow) -> Result<(), StoreError> {
    let statement = "insert into audit (sequence, at_ms, who, act, what, detail, previous, hash) \
                     values ($1, $2, $3, $4, $5, $6, $7, $8)";
    let values: [Value; 8] = [
        row.sequence.into(),
        row.at_ms.into(),
        (&row.who).into(),
        (&row.act).into(),
        (&row.what).into(),
        (&row.detail).into(),
        (&row.previous).into(),
        (&row.hash).into(),
    ];
    work.execute(statement, &values).await.map(|_| ())
}

/// The signed end.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn head(work: &mut dyn Transaction) -> Result<Option<Head>, StoreError> {
    let rows = work.query("select sequence, hash, key_id, signature from audit_head", &[]).await?;
    rows.first()
        .map(|row| {
            Ok(Head { sequence: row.whole(0)?, hash: row.text(1)?, key_id: row.text(2)?, signature: row.text(3)? })
        })
        .transpose()
}

/// Writes the signed end.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn set_head(work: &mut dyn Transaction, head: &Head) -> Result<(), StoreError> {
    let statement = "insert into audit_head (one, sequence, hash, key_id, signature) values (1, $1, $2, $3, $4) \
                     on conflict (one) do update set sequence = $1, hash = $2, key_id = $3, signature = $4";
    let values = [head.sequence.into(), (&head.hash).into(), (&head.key_id).into(), (&head.signature).into()];
    work.execute(statement, &values).await.map(|_| ())
}

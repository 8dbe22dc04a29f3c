//! Keys of programs. Only a hash of the secret is kept.

use crate::store::{Row, StoreError, Transaction, Value};

/// A key as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptKey {
    /// Its public part.
    pub id: String,
    /// Whose it is.
    pub organisation: String,
    /// What it is for.
    pub name: String,
    /// SHA-256 of the secret.
    pub hash: String,
    /// What it may do, with spaces between.
    pub scopes: String,
    /// Who made it.
    pub made_by: String,
    /// When.
    pub made_ms: i64,
    /// When it ends, if ever.
    pub expires_ms: Option<i64>,
    /// When it was revoked.
    pub revoked_ms: Option<i64>,
    /// When it was used last, to the minute.
    pub last_used_ms: Option<i64>,
}

fn key(row: &Row) -> Result<KeptKey, StoreError> {
    Ok(KeptKey {
        id: row.text(0)?,
        organisation: row.text(1)?,
        name: row.text(2)?,
        hash: row.text(3)?,
        scopes: row.text(4)?,
        made_by: row.text(5)?,
        made_ms: row.whole(6)?,
        expires_ms: row.maybe_whole(7),
        revoked_ms: row.maybe_whole(8),
        last_used_ms: row.maybe_whole(9),
    })
}

/// Keeps a key.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn insert(work: &mut dyn Transaction, key: &KeptKey) -> Result<(), StoreError> {
    let statement = "insert into api_key (id, organisation, name, hash, scopes, made_by, made_ms, expires_ms) \
                     values ($1, $2, $3, $4, $5, $6, $7, $8)";
    let values: [Value; 8] = [
        (&key.id).into(),
        (&key.organisation).into(),
        (&key.name).into(),
        (&key.hash).into(),
        (&key.scopes).into(),
        (&key.made_by).into(),
        key.made_ms.into(),
        key.expires_ms.into(),
    ];
    work.execute(statement, &values).await.map(|_| ())
}

/// The key with this public part.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn find(work: &mut dyn Transaction, id: &str) -> Result<Option<KeptKey>, StoreError> {
    let statement = "select id, organisation, name, hash, scopes, made_by, made_ms, expires_ms, revoked_ms, last_used_ms \
                     from api_key where id = $1";
    work.query(statement, &[id.into()]).await?.first().map(key).transpose()
}

/// Every key, the oldest first.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn list(work: &mut dyn Transaction) -> Result<Vec<KeptKey>, StoreError> {
    let statement = "select id, organisation, name, hash, scopes, made_by, made_ms, expires_ms, revoked_ms, last_used_ms \
                     from api_key order by made_ms";
    work.query(statement, &[]).await?.iter().map(key).collect()
}

/// Revokes a key; `false` when there is none, or it was revoked before.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn revoke(work: &mut dyn Transaction, id: &str, now_ms: i64) -> Result<bool, StoreError> {
    let statement = "update api_key set revoked_ms = $1 where id = $2 and revoked_ms is null";
    Ok(work.execute(statement, &[now_ms.into(), id.into()]).await? == 1)
}

/// Notes that a key was used.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn used(work: &mut dyn Transaction, id: &str, now_ms: i64) -> Result<(), StoreError> {
    let statement = "update api_key set last_used_ms = $1 where id = $2";
    work.execute(statement, &[now_ms.into(), id.into()]).await.map(|_| ())
}

//! Registered climates: immutable by content, the id points to the newest.

use crate::store::{Row, StoreError, Transaction};

/// A climate as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptClimate {
    /// Its id.
    pub id: String,
    /// The hash of its content.
    pub sha256: String,
    /// Its content.
    pub body: String,
    /// When it was registered.
    pub made_ms: i64,
}

/// Registers a climate; the same content again changes nothing.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn put(work: &mut dyn Transaction, id: &str, body: &str, by: &str, now_ms: i64) -> Result<(), StoreError> {
    let hash = super::sha256(body.as_bytes());
    if newest(work, id).await?.is_some_and(|kept| kept.sha256 == hash) {
        return Ok(());
    }
    let rows = work.query("select max(number) from climate", &[]).await?;
    let number = rows.first().and_then(|row| row.maybe_whole(0)).unwrap_or(0) + 1;
    let statement = "insert into climate (number, id, sha256, body, made_by, made_ms) values ($1, $2, $3, $4, $5, $6)";
    let values = [number.into(), id.into(), (&hash).into(), body.into(), by.into(), now_ms.into()];
    work.execute(statement, &values).await.map(|_| ())
}

fn climate(row: &Row) -> Result<KeptClimate, StoreError> {
    Ok(KeptClimate { id: row.text(0)?, sha256: row.text(1)?, body: row.text(2)?, made_ms: row.whole(3)? })
}

/// What an id points to.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn newest(work: &mut dyn Transaction, id: &str) -> Result<Option<KeptClimate>, StoreError> {
    let statement = "select id, sha256, body, made_ms from climate where id = $1 order by number desc limit 1";
    work.query(statement, &[id.into()]).await?.first().map(climate).transpose()
}

/// A climate by its content, also one that its id no longer points to.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn by_content(work: &mut dyn Transaction, sha256: &str) -> Result<Option<KeptClimate>, StoreError> {
    let statement = "select id, sha256, body, made_ms from climate where sha256 = $1 order by number desc limit 1";
    work.query(statement, &[sha256.into()]).await?.first().map(climate).transpose()
}

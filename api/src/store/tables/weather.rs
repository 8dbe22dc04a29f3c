//! Weather of registered climates, by the moment of its issue.

use crate::store::{StoreError, Transaction};

/// Keeps an issue; the same issue again takes its place.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn put(
    work: &mut dyn Transaction,
    climate: &str,
    issued_ms: i64,
    body: &str,
    now_ms: i64,
) -> Result<(), StoreError> {
    let hash = super::sha256(body.as_bytes());
    let statement = "insert into weather (climate, issued_ms, sha256, body, made_ms) values ($1, $2, $3, $4, $5) \
                     on conflict (climate, issued_ms) do update set sha256 = $3, body = $4, made_ms = $5";
    work.execute(statement, &[climate.into(), issued_ms.into(), (&hash).into(), body.into(), now_ms.into()])
        .await
        .map(|_| ())
}

/// The newest issue not after a moment: when it was issued, and its text.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn newest(
    work: &mut dyn Transaction,
    climate: &str,
    not_after_ms: i64,
) -> Result<Option<(i64, String)>, StoreError> {
    let statement =
        "select issued_ms, body from weather where climate = $1 and issued_ms <= $2 order by issued_ms desc limit 1";
    let rows = work.query(statement, &[climate.into(), not_after_ms.into()]).await?;
    rows.first().map(|row| Ok((row.whole(0)?, row.text(1)?))).transpose()
}

/// Drops what was issued before a moment; how many.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn drop_before(work: &mut dyn Transaction, moment_ms: i64) -> Result<u64, StoreError> {
    work.execute("delete from weather where issued_ms < $1", &[moment_ms.into()]).await
}

//! Answers that were given to writes with an Idempotency-Key, so that the same write gets the same answer.

use crate::store::{StoreError, Transaction};

/// How long an answer is kept, in milliseconds: a day.
pub const KEPT_MS: i64 = 24 * 3600 * 1000;
/// After this long a write that has not ended is taken for dead, in milliseconds: a minute.
pub const RUNNING_MS: i64 = 60 * 1000;

/// What is known of a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Known {
    /// Nothing: the caller now has it.
    New,
    /// The same request is being answered.
    Running,
    /// Another request had this key.
    Other,
    /// The same request was answered: status, headers as JSON, body.
    Done(u16, String, String),
}

/// Takes a key for a request, or says what became of it before.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn take(
    work: &mut dyn Transaction,
    caller: &str,
    key: &str,
    request_sha256: &str,
    now_ms: i64,
) -> Result<Known, StoreError> {
    let old = "delete from answered where made_ms < $1 or (state = 'running' and made_ms < $2)";
    work.execute(old, &[(now_ms - KEPT_MS).into(), (now_ms - RUNNING_MS).into()]).await?;
    let find = "select request_sha256, state, status, headers, body from answered where caller = $1 and key = $2";
    let rows = work.query(find, &[caller.into(), key.into()]).await?;
    if let Some(row) = rows.first() {
        if row.text(0)? != request_sha256 {
            return Ok(Known::Other);
        }
        if row.text(1)? == "running" {
            return Ok(Known::Running);
        }
        let status = u16::try_from(row.whole(2)?).map_err(|_| StoreError::Damaged("a status".to_owned()))?;
        return Ok(Known::Done(status, row.text(3)?, row.text(4)?));
    }
    let insert = "insert into answered (caller, key, request_sha256, state, status, headers, body, made_ms) \
                  values ($1, $2, $3, 'running', 0, '', '', $4)";
    work.execute(insert, &[caller.into(), key.into(), request_sha256.into(), now_ms.into()]).await?;
    Ok(Known::New)
}

/// Writes the answer.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn done(
    work: &mut dyn Transaction,
    caller: &str,
    key: &str,
    status: u16,
    headers: &str,
    body: &str,
) -> Result<(), StoreError> {
    let statement =
        "update answered set state = 'done', status = $1, headers = $2, body = $3 where caller = $4 and key = $5";
    let values = [i64::from(status).into(), headers.into(), body.into(), caller.into(), key.into()];
    work.execute(statement, &values).await.map(|_| ())
}

/// Gives a key back: nothing was written.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn give_back(work: &mut dyn Transaction, caller: &str, key: &str) -> Result<(), StoreError> {
    let statement = "delete from answered where caller = $1 and key = $2 and state = 'running'";
    work.execute(statement, &[caller.into(), key.into()]).await.map(|_| ())
}

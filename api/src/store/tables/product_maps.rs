//! Product maps of tills: which plant or material a product code means, for one organisation.

use crate::store::{StoreError, Transaction};

/// A map as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptMap {
    /// 1, then one more with each change.
    pub revision: i64,
    /// Its content.
    pub body: String,
}

/// The map of this name.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn find(work: &mut dyn Transaction, organisation: &str, name: &str) -> Result<Option<KeptMap>, StoreError> {
    let statement = "select revision, body from product_map where organisation = $1 and name = $2";
    let rows = work.query(statement, &[organisation.into(), name.into()]).await?;
    rows.first().map(|row| Ok(KeptMap { revision: row.whole(0)?, body: row.text(1)? })).transpose()
}

/// Writes the next revision of a map, the first when `from` is 0; `false` when it is not at that revision.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn put(
    work: &mut dyn Transaction,
    (organisation, name): (&str, &str),
    from: i64,
    body: &str,
    by: &str,
    now_ms: i64,
) -> Result<bool, StoreError> {
    let next = from + 1;
    let statement = if from == 0 {
        "insert into product_map (organisation, name, revision, body, changed_by, changed_ms) \
         values ($1, $2, $3, $4, $5, $6) on conflict do nothing"
    } else {
        "update product_map set revision = $3, body = $4, changed_by = $5, changed_ms = $6 \
         where organisation = $1 and name = $2 and revision = $3 - 1"
    };
    let values = [organisation.into(), name.into(), next.into(), body.into(), by.into(), now_ms.into()];
    Ok(work.execute(statement, &values).await? == 1)
}

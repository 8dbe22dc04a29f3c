//! What was held back at once, why, by whom, and what the review said. Which are in force stands in the releases.

use crate::store::{Row, StoreError, Transaction, Value};

/// Something held back, or a caution added.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HeldBack {
    /// Its number.
    pub id: i64,
    /// The set.
    pub rule_set: String,
    /// `rule`, `material`, `source`.
    pub kind: String,
    /// The id of the entry.
    pub entry: String,
    /// The caution to add, as JSON texts; empty where the entry is held back.
    pub caution: String,
    /// Why, as JSON texts.
    pub because: String,
    /// Who did it.
    pub made_by: String,
    /// When.
    pub made_ms: i64,
    /// What the review said: `keep` or `lift`.
    pub verdict: Option<String>,
    /// Who reviewed.
    pub reviewed_by: Option<String>,
    /// When.
    pub reviewed_ms: Option<i64>,
    /// Why the review says so.
    pub review_because: Option<String>,
}

/// Keeps one; its number.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn insert(work: &mut dyn Transaction, held: &HeldBack) -> Result<i64, StoreError> {
    let rows = work.query("select max(id) from held_back", &[]).await?;
    let id = rows.first().and_then(|row| row.maybe_whole(0)).unwrap_or(0) + 1;
    let statement = "insert into held_back (id, rule_set, kind, entry, caution, because, made_by, made_ms) \
                     values ($1, $2, $3, $4, $5, $6, $7, $8)";
    let values: [Value; 8] = [
        id.into(),
        (&held.rule_set).into(),
        (&held.kind).into(),
        (&held.entry).into(),
        (&held.caution).into(),
        (&held.because).into(),
        (&held.made_by).into(),
        held.made_ms.into(),
    ];
    work.execute(statement, &values).await?;
    Ok(id)
}

fn held_back(row: &Row) -> Result<HeldBack, StoreError> {
    Ok(HeldBack {
        id: row.whole(0)?,
        rule_set: row.text(1)?,
        kind: row.text(2)?,
        entry: row.text(3)?,
        caution: row.text(4)?,
        because: row.text(5)?,
        made_by: row.text(6)?,
        made_ms: row.whole(7)?,
        verdict: row.maybe_text(8),
        reviewed_by: row.maybe_text(9),
        reviewed_ms: row.maybe_whole(10),
        review_because: row.maybe_text(11),
    })
}

/// Every one, the newest first.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn list(work: &mut dyn Transaction) -> Result<Vec<HeldBack>, StoreError> {
    let statement = "select id, rule_set, kind, entry, caution, because, made_by, made_ms, verdict, reviewed_by, reviewed_ms, \
                     review_because from held_back order by id desc";
    work.query(statement, &[]).await?.iter().map(held_back).collect()
}

/// The one of this number.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn find(work: &mut dyn Transaction, id: i64) -> Result<Option<HeldBack>, StoreError> {
    let statement = "select id, rule_set, kind, entry, caution, because, made_by, made_ms, verdict, reviewed_by, reviewed_ms, \
                     review_because from held_back where id = $1";
    work.query(statement, &[id.into()]).await?.first().map(held_back).transpose()
}

/// Writes what the review said; `false` when it was reviewed before.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn review(
    work: &mut dyn Transaction,
    id: i64,
    verdict: &str,
    because: &str,
    by: &str,
    now_ms: i64,
) -> Result<bool, StoreError> {
    let statement = "update held_back set verdict = $1, review_because = $2, reviewed_by = $3, reviewed_ms = $4 \
                     where id = $5 and verdict is null";
    let values = [verdict.into(), because.into(), by.into(), now_ms.into(), id.into()];
    Ok(work.execute(statement, &values).await? == 1)
}

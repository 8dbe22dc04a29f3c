//! Publishing at a wall time that is to come. What is published is what was approved: the document is named by its hash.

use crate::store::{Row, StoreError, Transaction, Value};

/// A publishing that waits, or waited.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Schedule {
    /// Its name.
    pub id: String,
    /// The draft.
    pub draft: String,
    /// The set.
    pub rule_set: String,
    /// The hash of the files.
    pub document: String,
    /// The instant at which it is due.
    pub at_ms: i64,
    /// The wall time as it was said.
    pub wall: String,
    /// The zone of that wall.
    pub zone: String,
    /// `waiting`, `fired`, `cancelled`, `refused`.
    pub state: String,
    /// Who asked for it.
    pub made_by: String,
    /// When.
    pub made_ms: i64,
    /// When it fired, was cancelled or refused.
    pub ended_ms: Option<i64>,
    /// The release it became.
    pub release: Option<i64>,
    /// What there is to say: how late it was, why it was refused.
    pub told: String,
}

fn schedule(row: &Row) -> Result<Schedule, StoreError> {
    Ok(Schedule {
        id: row.text(0)?,
        draft: row.text(1)?,
        rule_set: row.text(2)?,
        document: row.text(3)?,
        at_ms: row.whole(4)?,
        wall: row.text(5)?,
        zone: row.text(6)?,
        state: row.text(7)?,
        made_by: row.text(8)?,
        made_ms: row.whole(9)?,
        ended_ms: row.maybe_whole(10),
        release: row.maybe_whole(11),
        told: row.text(12)?,
    })
}

/// Keeps one.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn insert(work: &mut dyn Transaction, schedule: &Schedule) -> Result<(), StoreError> {
    let statement = "insert into schedule (id, draft, rule_set, document, at_ms, wall, zone, state, made_by, made_ms, told) \
                     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)";
    let values: [Value; 11] = [
        (&schedule.id).into(),
        (&schedule.draft).into(),
        (&schedule.rule_set).into(),
        (&schedule.document).into(),
        schedule.at_ms.into(),
        (&schedule.wall).into(),
        (&schedule.zone).into(),
        (&schedule.state).into(),
        (&schedule.made_by).into(),
        schedule.made_ms.into(),
        (&schedule.told).into(),
    ];
    work.execute(statement, &values).await.map(|_| ())
}

/// Those that wait, the next due first.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn waiting(work: &mut dyn Transaction) -> Result<Vec<Schedule>, StoreError> {
    let statement = "select id, draft, rule_set, document, at_ms, wall, zone, state, made_by, made_ms, ended_ms, release, told \
                     from schedule where state = 'waiting' order by at_ms, made_ms";
    work.query(statement, &[]).await?.iter().map(schedule).collect()
}

/// Every one, the newest first.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn list(work: &mut dyn Transaction) -> Result<Vec<Schedule>, StoreError> {
    let statement = "select id, draft, rule_set, document, at_ms, wall, zone, state, made_by, made_ms, ended_ms, release, told \
                     from schedule order by made_ms desc";
    work.query(statement, &[]).await?.iter().map(schedule).collect()
}

/// Ends one that waits; `false` when it doesn't wait any more: another node was faster.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn end(
    work: &mut dyn Transaction,
    id: &str,
    state: &str,
    ended_ms: i64,
    release: Option<i64>,
    told: &str,
) -> Result<bool, StoreError> {
    let statement =
        "update schedule set state = $1, ended_ms = $2, release = $3, told = $4 where id = $5 and state = 'waiting'";
    let values = [state.into(), ended_ms.into(), release.into(), told.into(), id.into()];
    Ok(work.execute(statement, &values).await? == 1)
}

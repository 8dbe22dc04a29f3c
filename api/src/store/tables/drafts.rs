//! Drafts: what may become a release. Each change is the next revision and names the one it changes.

use crate::store::{Row, StoreError, Transaction, Value};

/// A draft.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Draft {
    /// Its name, unique in the store.
    pub id: String,
    /// The set it is of.
    pub rule_set: String,
    /// The hash of its files.
    pub document: String,
    /// 1, then one more with each change.
    pub revision: i64,
    /// What it is for, in the editor's words.
    pub note: String,
    /// Who began it.
    pub made_by: String,
    /// When.
    pub made_ms: i64,
    /// Who changed it last.
    pub changed_by: String,
    /// When.
    pub changed_ms: i64,
    /// `open`, `published`, `discarded`.
    pub state: String,
}

fn draft(row: &Row) -> Result<Draft, StoreError> {
    Ok(Draft {
        id: row.text(0)?,
        rule_set: row.text(1)?,
        document: row.text(2)?,
        revision: row.whole(3)?,
        note: row.text(4)?,
        made_by: row.text(5)?,
        made_ms: row.whole(6)?,
        changed_by: row.text(7)?,
        changed_ms: row.whole(8)?,
        state: row.text(9)?,
    })
}

/// Keeps a new draft.
///
/// # Errors
/// [`StoreError::Refused`] when the id is taken.
pub async fn insert(work: &mut dyn Transaction, draft: &Draft) -> Result<(), StoreError> {
    let statement = "insert into draft (id, rule_set, document, revision, note, made_by, made_ms, changed_by, changed_ms, state) \
                     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)";
    let values: [Value; 10] = [
        (&draft.id).into(),
        (&draft.rule_set).into(),
        (&draft.document).into(),
        draft.revision.into(),
        (&draft.note).into(),
        (&draft.made_by).into(),
        draft.made_ms.into(),
        (&draft.changed_by).into(),
        draft.changed_ms.into(),
        (&draft.state).into(),
    ];
    work.execute(statement, &values).await.map(|_| ())
}

/// The draft of this id.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn find(work: &mut dyn Transaction, id: &str) -> Result<Option<Draft>, StoreError> {
    let statement = "select id, rule_set, document, revision, note, made_by, made_ms, changed_by, changed_ms, state \
                     from draft where id = $1";
    work.query(statement, &[id.into()]).await?.first().map(draft).transpose()
}

/// All drafts, the last changed first.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn list(work: &mut dyn Transaction) -> Result<Vec<Draft>, StoreError> {
    let statement = "select id, rule_set, document, revision, note, made_by, made_ms, changed_by, changed_ms, state \
                     from draft order by changed_ms desc, made_ms desc";
    work.query(statement, &[]).await?.iter().map(draft).collect()
}

/// Writes the next revision, if the draft is still at the one before it.
///
/// # Errors
/// Any of [`StoreError`]; `false` when somebody else was faster.
pub async fn change(work: &mut dyn Transaction, next: &Draft) -> Result<bool, StoreError> {
    let statement = "update draft set document = $1, revision = $2, note = $3, changed_by = $4, changed_ms = $5, state = $6 \
                     where id = $7 and revision = $8";
    let values: [Value; 8] = [
        (&next.document).into(),
        next.revision.into(),
        (&next.note).into(),
        (&next.changed_by).into(),
        next.changed_ms.into(),
        (&next.state).into(),
        (&next.id).into(),
        (next.revision - 1).into(),
    ];
    Ok(work.execute(statement, &values).await? == 1)
}

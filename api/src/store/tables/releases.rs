//! Releases: what was published, when, by whom, signed. They are never changed; undoing is another release.

use crate::store::{Row, StoreError, Transaction, Value};

/// A release as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Release {
    /// Its place among all releases of the store, from 1.
    pub number: i64,
    /// The set.
    pub rule_set: String,
    /// Its place among the releases of the set, from 1.
    pub place: i64,
    /// The version as answers name it.
    pub version: String,
    /// The hash of the set as it is served.
    pub set_sha256: String,
    /// The hash of the files as they were written.
    pub document: String,
    /// What is held back on top of them: a list, as JSON.
    pub held: String,
    /// `publish`, `schedule`, `undo`, `hold-back`, `lift`.
    pub how: String,
    /// The draft it came from.
    pub draft: Option<String>,
    /// Who published it.
    pub published_by: String,
    /// The recorded moment of publishing.
    pub published_ms: i64,
    /// The audit row that tells of it.
    pub audit_sequence: i64,
    /// Its hash.
    pub audit_hash: String,
    /// The key that signed.
    pub key_id: String,
    /// The signature over everything above.
    pub signature: String,
}

fn release(row: &Row) -> Result<Release, StoreError> {
    Ok(Release {
        number: row.whole(0)?,
        rule_set: row.text(1)?,
        place: row.whole(2)?,
        version: row.text(3)?,
        set_sha256: row.text(4)?,
        document: row.text(5)?,
        held: row.text(6)?,
        how: row.text(7)?,
        draft: row.maybe_text(8),
        published_by: row.text(9)?,
        published_ms: row.whole(10)?,
        audit_sequence: row.whole(11)?,
        audit_hash: row.text(12)?,
        key_id: row.text(13)?,
        signature: row.text(14)?,
    })
}

/// Keeps a release.
///
/// # Errors
/// [`StoreError::Refused`] when its number or place is taken.
pub async fn insert(work: &mut dyn Transaction, release: &Release) -> Result<(), StoreError> {
    let statement = "insert into release (number, rule_set, place, version, set_sha256, document, held, how, draft, published_by, \
                     published_ms, audit_sequence, audit_hash, key_id, signature) \
                     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15)";
    let values: [Value; 15] = [
        release.number.into(),
        (&release.rule_set).into(),
        release.place.into(),
        (&release.version).into(),
        (&release.set_sha256).into(),
        (&release.document).into(),
        (&release.held).into(),
        (&release.how).into(),
        release.draft.as_deref().into(),
        (&release.published_by).into(),
        release.published_ms.into(),
        release.audit_sequence.into(),
        (&release.audit_hash).into(),
        (&release.key_id).into(),
        (&release.signature).into(),
    ];
    work.execute(statement, &values).await.map(|_| ())
}

/// The number of the newest release of the store, 0 where there is none. Nodes look at it twice a second.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn newest_number(work: &mut dyn Transaction) -> Result<i64, StoreError> {
    let rows = work.query("select max(number) from release", &[]).await?;
    Ok(rows.first().and_then(|row| row.maybe_whole(0)).unwrap_or(0))
}

/// The releases of all sets after this number, in their order.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn after(work: &mut dyn Transaction, number: i64) -> Result<Vec<Release>, StoreError> {
    let statement = "select number, rule_set, place, version, set_sha256, document, held, how, draft, published_by, published_ms, \
                     audit_sequence, audit_hash, key_id, signature from release where number > $1 order by number";
    work.query(statement, &[number.into()]).await?.iter().map(release).collect()
}

/// The last two releases of a set, the newest first.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn last_two(work: &mut dyn Transaction, rule_set: &str) -> Result<Vec<Release>, StoreError> {
    let statement = "select number, rule_set, place, version, set_sha256, document, held, how, draft, published_by, published_ms, \
                     audit_sequence, audit_hash, key_id, signature from release where rule_set = $1 order by place desc limit 2";
    work.query(statement, &[rule_set.into()]).await?.iter().map(release).collect()
}

/// The content hash that a version of a set was published with, if it was.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn hash_of_version(
    work: &mut dyn Transaction,
    rule_set: &str,
    version: &str,
) -> Result<Option<String>, StoreError> {
    let statement = "select set_sha256 from release where rule_set = $1 and version = $2 order by place limit 1";
    let rows = work.query(statement, &[rule_set.into(), version.into()]).await?;
    rows.first().map(|row| row.text(0)).transpose()
}

//! Organisations and the rule sets that are theirs.

use crate::store::{Row, StoreError, Transaction};

/// The organisation of a store that was told of none.
pub const OWN: &str = "own";

/// Makes an organisation; one that is there stays.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn put_organisation(
    work: &mut dyn Transaction,
    name: &str,
    title: &str,
    now_ms: i64,
) -> Result<(), StoreError> {
    let statement = "insert into organisation (name, title, made_ms) values ($1, $2, $3) on conflict do nothing";
    work.execute(statement, &[name.into(), title.into(), now_ms.into()]).await.map(|_| ())
}

/// Makes a rule set of an organisation; one that is there stays with whose it is.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn put(work: &mut dyn Transaction, name: &str, organisation: &str, now_ms: i64) -> Result<(), StoreError> {
    let statement = "insert into rule_set (name, organisation, made_ms) values ($1, $2, $3) on conflict do nothing";
    work.execute(statement, &[name.into(), organisation.into(), now_ms.into()]).await.map(|_| ())
}

/// Whose a set is, if it is there.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn organisation(work: &mut dyn Transaction, name: &str) -> Result<Option<String>, StoreError> {
    let rows = work.query("select organisation from rule_set where name = $1", &[name.into()]).await?;
    rows.first().map(|row| row.text(0)).transpose()
}

/// The names of all sets, sorted by their bytes.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn names(work: &mut dyn Transaction) -> Result<Vec<String>, StoreError> {
    let rows = work.query("select name from rule_set", &[]).await?;
    let mut names = rows.iter().map(|row: &Row| row.text(0)).collect::<Result<Vec<_>, _>>()?;
    names.sort();
    Ok(names)
}

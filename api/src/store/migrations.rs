//! How the tables come to be: files of equal names for both back ends, run in their order, each once and whole.
//!
//! **To add one**: a file in `migrations/sqlite` and one of the same name in `migrations/postgres`, a line below; one change
//! each, first what is added, then what is moved, last what is dropped. Once shipped not a byte of it changes: the
//! test of the store holds the hashes.

use std::borrow::Cow;

use sqlx::SqlSafeStr as _;
use sqlx::migrate::{Migrate, MigrateError, Migration, MigrationType, Migrator};
use sqlx::{Acquire, Pool};

use super::StoreError;

/// A migration: its moment, its name, its statements.
pub type File = (i64, &'static str, &'static str);

macro_rules! files {
    ($folder:literal: $($moment:literal $name:literal),* $(,)?) => {
        &[$(($moment, $name, include_str!(concat!("../../../migrations/", $folder, "/", $moment, "_", $name, ".sql")))),*]
    };
}

/// Those of SQLite.
pub const SQLITE: &[File] = files!("sqlite":
    20261125120000 "documents",
    20261125120100 "releases",
    20261125120200 "audit",
    20261125120300 "keys",
    20261125120400 "climates",
);

/// Those of PostgreSQL.
pub const POSTGRES: &[File] = files!("postgres":
    20261125120000 "documents",
    20261125120100 "releases",
    20261125120200 "audit",
    20261125120300 "keys",
    20261125120400 "climates",
);

/// Runs those that have not run yet. A store that a newer program made is left as it is.
pub(super) async fn bring_up_to_date<D: sqlx::Database>(
    pool: &Pool<D>,
    files: &'static [File],
) -> Result<(), StoreError>
where
    D::Connection: Migrate,
    for<'a> &'a Pool<D>: Acquire<'a, Database = D>,
{
    let each = files.iter().map(|(moment, name, text)| {
        Migration::new(*moment, Cow::Borrowed(*name), MigrationType::Simple, (*text).into_sql_str(), false)
    });
    let mut migrator = Migrator::with_migrations(each.collect());
    migrator.set_ignore_missing(true);
    migrator.run(pool).await.map_err(|error| match error {
        MigrateError::Execute(error) => StoreError::from(error),
        MigrateError::VersionMismatch(moment) => {
            StoreError::Damaged(format!("migration {moment} is not the one that this store was made with"))
        }
        other => StoreError::Broken(other.to_string()),
    })
}

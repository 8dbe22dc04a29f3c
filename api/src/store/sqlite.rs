//! The store in a file, by SQLite: write-ahead log, every commit on the disk before it is told.

use std::path::{Path, PathBuf};
use std::str::FromStr;

use async_trait::async_trait;
use sqlx::sqlite::{
    SqliteArguments, SqliteConnectOptions, SqliteJournalMode, SqlitePool, SqlitePoolOptions, SqliteRow,
    SqliteSynchronous,
};
use sqlx::{Arguments as _, Column as _, Row as _, Sqlite, TypeInfo as _, ValueRef as _};

use super::transaction::{LONGEST_WAIT, Steps, within};
use super::{Row, Store, StoreError, Transaction, Value, migrations};

/// A store in a file.
#[derive(Clone)]
pub struct SqliteStore {
    pool: SqlitePool,
    file: PathBuf,
    steps: Option<Steps>,
}

impl std::fmt::Debug for SqliteStore {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "SqliteStore({})", self.file.display())
    }
}

impl SqliteStore {
    /// Opens the file, makes it when it is not there, and brings its tables up to date.
    ///
    /// # Errors
    /// Any of [`StoreError`].
    pub async fn open(file: &Path) -> Result<Self, StoreError> {
        let options = SqliteConnectOptions::from_str("sqlite::memory:")
            .map_err(StoreError::from)?
            .filename(file)
            .in_memory(false)
            .shared_cache(false)
            .create_if_missing(true)
            .journal_mode(SqliteJournalMode::Wal)
            .synchronous(SqliteSynchronous::Full)
            .foreign_keys(true)
            .busy_timeout(LONGEST_WAIT)
            .pragma("trusted_schema", "OFF")
            .pragma("journal_size_limit", "16777216");
        let pool = SqlitePoolOptions::new()
            .max_connections(4)
            .acquire_timeout(LONGEST_WAIT)
            .connect_with(options)
            .await
            .map_err(StoreError::from)?;
        migrations::bring_up_to_date(&pool, migrations::SQLITE).await?;
        Ok(Self { pool, file: file.to_owned(), steps: None })
    }

    /// The same store, whose writing transactions call this before each step.
    #[must_use]
    pub fn with_steps(mut self, steps: Steps) -> Self {
        self.steps = Some(steps);
        self
    }

    /// Its connections.
    #[must_use]
    pub fn pool(&self) -> &SqlitePool {
        &self.pool
    }
}

struct Work {
    inner: sqlx::Transaction<'static, Sqlite>,
    steps: Option<Steps>,
    step: u32,
}

impl Work {
    fn step(&mut self) {
        self.step += 1;
        if let Some(steps) = &self.steps {
            steps(self.step);
        }
    }
}

fn arguments(values: &[Value]) -> Result<SqliteArguments, StoreError> {
    let mut out = SqliteArguments::default();
    for value in values {
        match value {
            Value::Text(text) => out.add(text.clone()),
            Value::Whole(number) => out.add(*number),
            Value::Bytes(bytes) => out.add(bytes.clone()),
        }
        .map_err(|error| StoreError::Broken(error.to_string()))?;
    }
    Ok(out)
}

fn row(from: &SqliteRow) -> Result<Row, sqlx::Error> {
    let mut out = Vec::with_capacity(from.columns().len());
    for column in from.columns() {
        let at = column.ordinal();
        let raw = from.try_get_raw(at)?;
        if raw.is_null() {
            out.push(None);
            continue;
        }
        let kind = raw.type_info().name().to_owned();
        out.push(Some(match kind.as_str() {
            "TEXT" => Value::Text(Some(from.try_get(at)?)),
            "BLOB" => Value::Bytes(Some(from.try_get(at)?)),
            _ => Value::Whole(Some(from.try_get(at)?)),
        }));
    }
    Ok(Row(out))
}

#[async_trait]
impl Transaction for Work {
    async fn execute(&mut self, statement: &'static str, values: &[Value]) -> Result<u64, StoreError> {
        self.step();
        let values = arguments(values)?;
        let done = within("a statement", sqlx::query_with(statement, values).execute(&mut *self.inner)).await?;
        Ok(done.rows_affected())
    }

    async fn query(&mut self, statement: &'static str, values: &[Value]) -> Result<Vec<Row>, StoreError> {
        self.step();
        let values = arguments(values)?;
        let rows = within("a statement", sqlx::query_with(statement, values).fetch_all(&mut *self.inner)).await?;
        rows.iter().map(|from| row(from).map_err(StoreError::from)).collect()
    }

    async fn tell_nodes(&mut self) -> Result<(), StoreError> {
        Ok(())
    }

    async fn commit(mut self: Box<Self>) -> Result<(), StoreError> {
        self.step();
        let steps = self.steps.clone();
        let last = self.step + 1;
        // A commit in a file of this machine is done or not when it returns: nothing is unsure.
        within("the commit", self.inner.commit()).await?;
        if let Some(steps) = steps {
            steps(last);
        }
        Ok(())
    }
}

#[async_trait]
impl Store for SqliteStore {
    async fn begin(&self) -> Result<Box<dyn Transaction>, StoreError> {
        let inner = within("the turn to write", self.pool.begin_with("begin immediate")).await?;
        Ok(Box::new(Work { inner, steps: self.steps.clone(), step: 0 }))
    }

    async fn read(&self) -> Result<Box<dyn Transaction>, StoreError> {
        let inner = within("a connection", self.pool.begin()).await?;
        Ok(Box::new(Work { inner, steps: None, step: 0 }))
    }

    async fn told(&self) {
        std::future::pending::<()>().await;
    }

    fn back_end(&self) -> &'static str {
        "sqlite"
    }

    async fn close(&self) {
        self.pool.close().await;
    }
}

//! The store of many nodes, by PostgreSQL.

use std::str::FromStr;
use std::time::Duration;

use async_trait::async_trait;
use sqlx::postgres::{PgArguments, PgConnectOptions, PgListener, PgPool, PgPoolOptions, PgRow};
use sqlx::{Arguments as _, Column as _, Postgres, Row as _, TypeInfo as _, ValueRef as _};

use super::transaction::{LONGEST_WAIT, Steps, kept, within};
use super::{Row, Store, StoreError, Transaction, Value, migrations};

/// The channel on which nodes tell each other of releases.
const CHANNEL: &str = "lammas_release";
/// How often a node that lost its channel tries to get it back.
const AGAIN: Duration = Duration::from_secs(5);

/// A store on a server.
#[derive(Clone)]
pub struct PostgresStore {
    pool: PgPool,
    steps: Option<Steps>,
}

impl std::fmt::Debug for PostgresStore {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // The address may hold a password.
        f.write_str("PostgresStore")
    }
}

impl PostgresStore {
    /// Connects, and brings the tables up to date.
    ///
    /// # Errors
    /// Any of [`StoreError`].
    pub async fn open(address: &str) -> Result<Self, StoreError> {
        let longest = LONGEST_WAIT.as_millis().to_string();
        // Who waits for a lock is told so, not that a statement was slow.
        let statement = (LONGEST_WAIT + Duration::from_millis(250)).as_millis().to_string();
        // Longer than a wait for the turn: who waits is told so, before who dawdles is thrown out.
        let idle = (2 * LONGEST_WAIT).as_millis().to_string();
        let options = PgConnectOptions::from_str(address)
            .map_err(|_| StoreError::Broken("the address of the PostgreSQL server can't be read".to_owned()))?
            .application_name("lammas")
            .options([
                ("statement_timeout", statement.as_str()),
                ("lock_timeout", longest.as_str()),
                ("idle_in_transaction_session_timeout", idle.as_str()),
            ]);
        let pool = PgPoolOptions::new()
            .max_connections(4)
            .acquire_timeout(LONGEST_WAIT)
            .idle_timeout(Duration::from_secs(60))
            .max_lifetime(Duration::from_secs(600))
            .connect_with(options)
            .await
            .map_err(StoreError::from)?;
        migrations::bring_up_to_date(&pool, migrations::POSTGRES).await?;
        Ok(Self { pool, steps: None })
    }

    /// The same store, whose writing transactions call this before each step.
    #[must_use]
    pub fn with_steps(mut self, steps: Steps) -> Self {
        self.steps = Some(steps);
        self
    }

    /// Its connections.
    #[must_use]
    pub fn pool(&self) -> &PgPool {
        &self.pool
    }
}

struct Work {
    inner: sqlx::Transaction<'static, Postgres>,
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

fn arguments(values: &[Value]) -> Result<PgArguments, StoreError> {
    let mut out = PgArguments::default();
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

fn row(from: &PgRow) -> Result<Row, sqlx::Error> {
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
            "TEXT" | "VARCHAR" => Value::Text(Some(from.try_get(at)?)),
            "BYTEA" => Value::Bytes(Some(from.try_get(at)?)),
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
        self.execute("select pg_notify($1, '')", &[CHANNEL.into()]).await.map(|_| ())
    }

    async fn commit(mut self: Box<Self>) -> Result<(), StoreError> {
        self.step();
        let steps = self.steps.clone();
        let last = self.step + 1;
        kept(self.inner.commit()).await?;
        if let Some(steps) = steps {
            steps(last);
        }
        Ok(())
    }
}

#[async_trait]
impl Store for PostgresStore {
    async fn begin(&self) -> Result<Box<dyn Transaction>, StoreError> {
        let mut inner = within("a connection", self.pool.begin()).await?;
        // One writer at a time, as in a file; the lock goes with the transaction.
        let line = sqlx::query("select pg_advisory_xact_lock(7236001)");
        within("the turn to write", line.execute(&mut *inner)).await?;
        Ok(Box::new(Work { inner, steps: self.steps.clone(), step: 0 }))
    }

    async fn read(&self) -> Result<Box<dyn Transaction>, StoreError> {
        let begin = "begin isolation level repeatable read read only";
        let inner = within("a connection", self.pool.begin_with(begin)).await?;
        Ok(Box::new(Work { inner, steps: None, step: 0 }))
    }

    async fn told(&self) {
        let Ok(Ok(mut listener)) = tokio::time::timeout(LONGEST_WAIT, PgListener::connect_with(&self.pool)).await
        else {
            tokio::time::sleep(AGAIN).await;
            return;
        };
        if listener.listen(CHANNEL).await.is_err() || listener.recv().await.is_err() {
            tokio::time::sleep(AGAIN).await;
        }
    }

    fn back_end(&self) -> &'static str {
        "postgres"
    }

    async fn close(&self) {
        self.pool.close().await;
    }
}

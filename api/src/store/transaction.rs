//! The trait of a store, and the values that go in and come out.

use std::fmt::Debug;
use std::sync::Arc;
use std::time::Duration;

use async_trait::async_trait;

use super::StoreError;

/// The longest wait for any one thing: a connection, a statement, a lock, a commit.
pub const LONGEST_WAIT: Duration = Duration::from_secs(5);

/// A value beside a statement, or of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// Text, or nothing.
    Text(Option<String>),
    /// A whole number, or nothing.
    Whole(Option<i64>),
    /// Bytes, or nothing.
    Bytes(Option<Vec<u8>>),
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(Some(text.to_owned()))
    }
}

impl From<&String> for Value {
    fn from(text: &String) -> Self {
        Self::Text(Some(text.clone()))
    }
}

impl From<Option<&str>> for Value {
    fn from(text: Option<&str>) -> Self {
        Self::Text(text.map(str::to_owned))
    }
}

impl From<i64> for Value {
    fn from(number: i64) -> Self {
        Self::Whole(Some(number))
    }
}

impl From<Option<i64>> for Value {
    fn from(number: Option<i64>) -> Self {
        Self::Whole(number)
    }
}

impl From<&[u8]> for Value {
    fn from(bytes: &[u8]) -> Self {
        Self::Bytes(Some(bytes.to_vec()))
    }
}

/// A row that was read, by the places of its columns. What is nothing has no type: it reads as `None` of any.
#[derive(Clone, Debug)]
pub struct Row(pub Vec<Option<Value>>);

impl Row {
    fn at(&self, column: usize) -> Option<&Value> {
        self.0.get(column).and_then(Option::as_ref)
    }

    /// A text.
    ///
    /// # Errors
    /// There is none.
    pub fn text(&self, column: usize) -> Result<String, StoreError> {
        self.maybe_text(column).ok_or_else(|| StoreError::Damaged(format!("column {column} has no text")))
    }

    /// A text, or nothing.
    #[must_use]
    pub fn maybe_text(&self, column: usize) -> Option<String> {
        match self.at(column) {
            Some(Value::Text(text)) => text.clone(),
            _ => None,
        }
    }

    /// A whole number.
    ///
    /// # Errors
    /// There is none.
    pub fn whole(&self, column: usize) -> Result<i64, StoreError> {
        self.maybe_whole(column).ok_or_else(|| StoreError::Damaged(format!("column {column} has no number")))
    }

    /// A whole number, or nothing.
    #[must_use]
    pub fn maybe_whole(&self, column: usize) -> Option<i64> {
        match self.at(column) {
            Some(Value::Whole(number)) => *number,
            _ => None,
        }
    }

    /// Bytes.
    ///
    /// # Errors
    /// There are none.
    pub fn bytes(&self, column: usize) -> Result<Vec<u8>, StoreError> {
        match self.at(column) {
            Some(Value::Bytes(Some(bytes))) => Ok(bytes.clone()),
            _ => Err(StoreError::Damaged(format!("column {column} has no bytes"))),
        }
    }
}

/// Work in a store that is kept wholly or not at all. One that is dropped is not kept.
#[async_trait]
pub trait Transaction: Send {
    /// Runs a statement; how many rows it touched.
    ///
    /// # Errors
    /// Any of [`StoreError`].
    async fn execute(&mut self, statement: &'static str, values: &[Value]) -> Result<u64, StoreError>;

    /// Runs a statement and reads its rows.
    ///
    /// # Errors
    /// Any of [`StoreError`].
    async fn query(&mut self, statement: &'static str, values: &[Value]) -> Result<Vec<Row>, StoreError>;

    /// Other nodes are told of a release when this is kept. They also look by themselves.
    ///
    /// # Errors
    /// Any of [`StoreError`].
    async fn tell_nodes(&mut self) -> Result<(), StoreError>;

    /// Keeps the work.
    ///
    /// # Errors
    /// [`StoreError::Unsure`] when the connection went away meanwhile, else as any statement.
    async fn commit(self: Box<Self>) -> Result<(), StoreError>;
}

/// Called before each step of a transaction that writes, with its number from 1: a test stops the process there.
pub type Steps = Arc<dyn Fn(u32) + Send + Sync>;

/// A store.
#[async_trait]
pub trait Store: Send + Sync + Debug {
    /// Begins work that writes. Writers stand in line.
    ///
    /// # Errors
    /// Any of [`StoreError`].
    async fn begin(&self) -> Result<Box<dyn Transaction>, StoreError>;

    /// Begins work that only reads, all of it from one moment.
    ///
    /// # Errors
    /// Any of [`StoreError`].
    async fn read(&self) -> Result<Box<dyn Transaction>, StoreError>;

    /// Waits until another node tells of a release, where the back end can tell; else for ever.
    async fn told(&self);

    /// `sqlite` or `postgres`.
    fn back_end(&self) -> &'static str;

    /// Closes every connection.
    async fn close(&self);
}

/// Ends a wait that lasts too long.
pub(super) async fn within<T>(
    what: &str,
    work: impl Future<Output = Result<T, sqlx::Error>> + Send,
) -> Result<T, StoreError> {
    match tokio::time::timeout(LONGEST_WAIT + Duration::from_millis(500), work).await {
        Ok(done) => done.map_err(StoreError::from),
        Err(_) => Err(StoreError::Away(format!("{what} took longer than {} s", LONGEST_WAIT.as_secs()))),
    }
}

/// The same for a commit: one that breaks off leaves unsure what happened.
pub(super) async fn kept(work: impl Future<Output = Result<(), sqlx::Error>> + Send) -> Result<(), StoreError> {
    match within("the commit", work).await {
        Err(StoreError::Away(reason)) => Err(StoreError::Unsure(reason)),
        other => other,
    }
}

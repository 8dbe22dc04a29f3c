//! How a store can fail, in kinds that callers tell apart.

/// What went wrong. The text is for the operator's log; none of it holds a value that was stored.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// It can't be reached, or took too long. The write did not happen.
    #[error("the store can't be reached: {0}")]
    Away(String),
    /// Others write and did not finish in time. The write did not happen.
    #[error("the store is busy: {0}")]
    Busy(String),
    /// The disk is full, read-only or failing. The write did not happen.
    #[error("the store can't write: {0}")]
    Full(String),
    /// The row exists already, or another row needs it.
    #[error("the store refuses the row: {0}")]
    Refused(String),
    /// The connection went away during the commit: whether the write happened is known only by looking again.
    #[error("whether the write was kept is not known: {0}")]
    Unsure(String),
    /// Something in it is not as this program wrote it.
    #[error("the store holds something unexpected: {0}")]
    Damaged(String),
    /// Anything else.
    #[error("the store failed: {0}")]
    Broken(String),
}

impl StoreError {
    /// Whether the same call may do better in a moment.
    #[must_use]
    pub fn passes(&self) -> bool {
        matches!(self, Self::Away(_) | Self::Busy(_) | Self::Full(_) | Self::Unsure(_))
    }
}

/// The kind of a driver's error.
impl From<sqlx::Error> for StoreError {
    fn from(error: sqlx::Error) -> Self {
        let text = error.to_string();
        match &error {
            sqlx::Error::Io(_) | sqlx::Error::PoolTimedOut | sqlx::Error::PoolClosed | sqlx::Error::Tls(_) => {
                Self::Away(text)
            }
            sqlx::Error::Database(told) => {
                let code = told.code().unwrap_or_default().into_owned();
                match (told.kind(), code.as_str()) {
                    (
                        sqlx::error::ErrorKind::UniqueViolation
                        | sqlx::error::ErrorKind::ForeignKeyViolation
                        | sqlx::error::ErrorKind::NotNullViolation
                        | sqlx::error::ErrorKind::CheckViolation,
                        _,
                    )
                    // SQLite: a trigger's `abort`; PostgreSQL: `raise exception`.
                    | (_, "1811" | "P0001") => Self::Refused(text),
                    // SQLite: busy and locked, each also extended. PostgreSQL: lock not available, deadlock, serialization.
                    (_, "5" | "6" | "261" | "262" | "517" | "55P03" | "40P01" | "40001") => Self::Busy(text),
                    // Statement cancelled by its deadline; idle in transaction; shutting down, starting up.
                    (_, "57014" | "25P03" | "57P01" | "57P02" | "57P03" | "53300" | "14") => Self::Away(text),
                    // Disk full, read only, input/output error (SQLite's extended ones end in 10 modulo 256).
                    (_, "13" | "8" | "10" | "53100" | "25006" | "58030") => Self::Full(text),
                    (_, extended) if extended.parse::<u32>().is_ok_and(|n| matches!(n % 256, 8 | 10 | 13)) => {
                        Self::Full(text)
                    }
                    (_, connection) if connection.starts_with("08") => Self::Away(text),
                    _ => Self::Broken(text),
                }
            }
            _ => Self::Broken(text),
        }
    }
}

//! From a place to a store.

use std::path::Path;
use std::sync::Arc;
use std::{fs, io};

use super::place::StorePlace;
use super::postgres::PostgresStore;
use super::sqlite::SqliteStore;
use super::{Store, StoreError};

/// Opens a store; the folder and the file of SQLite are made at the first start.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn open(place: &StorePlace) -> Result<Arc<dyn Store>, StoreError> {
    folder(place.folder())
        .map_err(|error| StoreError::Full(format!("the folder `{}`: {error}", place.folder().display())))?;
    Ok(match place.server() {
        Some(address) => Arc::new(PostgresStore::open(address).await?),
        None => Arc::new(SqliteStore::open(&place.database()).await?),
    })
}

/// Makes the folder if it is not there; nobody else may look into it.
fn folder(path: &Path) -> io::Result<()> {
    if path.is_dir() {
        return Ok(());
    }
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(path)
}

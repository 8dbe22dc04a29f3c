//! The store that a command works in, and who works there.

use std::path::PathBuf;

use anyhow::Result;
use clap::Args;

use super::exit::{BadInput, Found};
use crate::publishing::{Desk, NotDone};
use crate::store::StoreError;
use crate::store::place::StorePlace;

/// The store to work in.
#[derive(Args, Clone, Debug)]
pub(super) struct StoreArgs {
    /// Where the store is: a folder, or `postgres://USER@HOST/NAME`
    #[arg(long, env = "LAMMAS_STORE", value_name = "PLACE", hide_env_values = true)]
    store: String,
    /// With a PostgreSQL server: folder of the signing key and the last signed copy on this machine
    #[arg(long, env = "LAMMAS_STORE_FILES", value_name = "DIR")]
    store_files: Option<PathBuf>,
    /// Your name, as the audit trail shows it
    #[arg(long = "as", env = "LAMMAS_AS", value_name = "NAME", default_value = "command line")]
    who: String,
}

impl StoreArgs {
    /// Who works.
    pub(super) fn who(&self) -> &str {
        &self.who
    }

    /// Where.
    pub(super) fn place(&self) -> Result<StorePlace, BadInput> {
        StorePlace::parse(&self.store, self.store_files.as_deref())
    }

    /// Works at the desk of the store; what it refuses or can't find has its exit code.
    pub(super) fn work<T, W: Future<Output = Result<T, NotDone>>>(&self, work: impl FnOnce(Desk) -> W) -> Result<T> {
        let place = self.place()?;
        waiting(async move {
            let desk = Desk::open(&place).await?;
            let store = desk.store.clone();
            let done = work(desk).await;
            store.close().await;
            done
        })
    }
}

/// Waits for work with a store.
pub(super) fn waiting<T>(work: impl Future<Output = Result<T, NotDone>>) -> Result<T> {
    actix_web::rt::System::new().block_on(work).map_err(|error| match error {
        NotDone::Wrong(told) | NotDone::Missing(told) | NotDone::Unsigned(told) => BadInput(told).into(),
        NotDone::Refused(told) | NotDone::Changed { told, .. } => Found(told).into(),
        NotDone::Store(StoreError::Refused(told)) => Found(told).into(),
        NotDone::Store(error) => error.into(),
    })
}

/// An instant for people.
pub(super) fn moment(ms: i64) -> String {
    chrono::DateTime::from_timestamp_millis(ms)
        .map_or_else(String::new, |at| at.format("%Y-%m-%d %H:%M:%S UTC").to_string())
}

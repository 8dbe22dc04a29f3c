//! Where releases come from.

use std::path::PathBuf;

use clap::Args;

use crate::cli::exit::BadInput;
use crate::store::place::StorePlace;

const COPY_DAYS: u32 = 30;

/// Where releases come from. Without a store the set inside the program is served, and nothing is to be set up.
#[derive(Args, Clone)]
pub struct StoreSettings {
    /// Store with the published rule sets: a folder, made at the first start, or `postgres://USER@HOST/NAME`
    #[arg(id = "store", long = "store", env = "LAMMAS_STORE", value_name = "PLACE", hide_env_values = true)]
    pub address: Option<String>,
    /// With a PostgreSQL server: folder of the signing key and the last signed copy on this machine
    #[arg(id = "store_files", long = "store-files", env = "LAMMAS_STORE_FILES", value_name = "DIR")]
    pub files: Option<PathBuf>,
    /// When the store is away at the start, the last signed copy counts for so many days
    #[arg(long, env = "LAMMAS_COPY_DAYS", value_name = "DAYS", default_value_t = COPY_DAYS)]
    pub copy_days: u32,
}

impl std::fmt::Debug for StoreSettings {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // An address may hold a password.
        let address = self.address.as_ref().map(|_| "…");
        f.debug_struct("StoreSettings").field("address", &address).field("copy_days", &self.copy_days).finish()
    }
}

impl StoreSettings {
    /// The place, if there is one.
    ///
    /// # Errors
    /// It is not one.
    pub fn place(&self) -> Result<Option<StorePlace>, BadInput> {
        self.address.as_deref().map(|address| StorePlace::parse(address, self.files.as_deref())).transpose()
    }
}

impl Default for StoreSettings {
    fn default() -> Self {
        Self { address: None, files: None, copy_days: COPY_DAYS }
    }
}

//! The store with its keys: where drafts are kept, releases made and trails examined.

use std::sync::Arc;

use super::NotDone;
use super::signing::Keyring;
use crate::store::place::StorePlace;
use crate::store::{Store, StoreError, open};

/// The store with its keys.
#[derive(Clone, Debug)]
pub struct Desk {
    /// The store.
    pub store: Arc<dyn Store>,
    /// The keys.
    pub keyring: Arc<Keyring>,
}

impl Desk {
    /// Opens both; what is missing is made.
    ///
    /// # Errors
    /// The store can't be opened, or the files of the keys are not right.
    pub async fn open(place: &StorePlace) -> Result<Self, NotDone> {
        let store = open::open(place).await?;
        Ok(Self { store, keyring: Arc::new(Keyring::open(place)?) })
    }
}

/// A name that nobody can guess: a word and 20 digits.
///
/// # Errors
/// This machine gives no random numbers.
pub fn new_name(word: &str) -> Result<String, StoreError> {
    let mut bytes = [0_u8; 10];
    getrandom::fill(&mut bytes).map_err(|error| StoreError::Broken(error.to_string()))?;
    Ok(bytes.iter().fold(format!("{word}-"), |out, byte| out + &format!("{byte:02x}")))
}

/// Now, in milliseconds since 1970.
#[must_use]
pub fn now_ms() -> i64 {
    crate::v1::question::today::now().timestamp_millis()
}

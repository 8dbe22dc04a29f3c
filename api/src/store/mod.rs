//! What outlives the process: sets, drafts, releases, climates, weather, product maps, keys and the audit trail.
//!
//! One trait, [`Store`], with two back ends of equal behaviour: SQLite in a file, the default, and PostgreSQL for many nodes.
//! A [`Transaction`] takes written-out statements with values beside them, never text made of values; whole instants are
//! milliseconds since 1970. Writers stand in line on both back ends (`begin immediate`, an advisory lock), so that
//! what a transaction has read still holds when it commits. Every wait has an end: [`error::StoreError`] says which kind.
//!
//! - [`transaction`] the trait and its values, [`sqlite`] and [`postgres`] the back ends
//! - [`migrations`] how the tables come to be
//! - [`place`] where a store is, [`open`] from there to a store
//! - [`tables`] what is read and written, a file a table
//! - [`backup`] all of it in one file
//! - [`error`] how it can fail

pub mod backup;
pub mod error;
pub mod migrations;
pub mod open;
pub mod place;
pub mod postgres;
pub mod sqlite;
pub mod tables;
pub mod transaction;

pub use error::StoreError;
pub use transaction::{Row, Store, Transaction, Value};

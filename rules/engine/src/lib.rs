//! The rule language of Lammas: read, check, compile, decide, explain, rank.
#![deny(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]
#![cfg_attr(test, allow(clippy::float_cmp))]

pub mod ask;
pub mod compile;
pub mod decide;
pub mod explain;
pub mod fact;
pub mod fault;
pub mod lang;
pub mod nearest;
pub mod pack;
pub mod question;
pub mod rank;
pub mod read;
pub mod scenario;
pub mod text;
pub mod unit;
pub mod validity;
pub mod version;

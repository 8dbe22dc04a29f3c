//! The readers of a request's body, query and path. They replace the framework's own, whose refusals are plain text.
//!
//! One body extractor a handler. Reading has two speeds: a good request is read straight into its type; only one
//! that does not fit is read again, through a plain value, to say everything that is wrong with it at once.
//!
//! - [`body`] `Body<T>`: media type, size, time, nesting, JSON, shape; `LargeBody<T>`: the same for whole rule sets
//! - [`record`] `RecordBody<T>`: the same with a larger bound, or CSV
//! - [`query`] `Query<T>`: unknown parameters are refused
//! - [`path`] `PathParts<T>`
//! - `nesting` the depth of a text before it is parsed
//! - `tree` JSON as a value, with members that stand twice refused
//! - `reader` a value read into a type
//! - `strict` a typed read that takes no list for an object
//! - `collect` every place that does not fit

pub mod body;
mod collect;
mod nesting;
pub mod path;
pub mod query;
mod reader;
pub mod record;
mod strict;
mod tree;

pub use body::{Body, LargeBody};
pub use path::PathParts;
pub use query::Query;
pub use record::RecordBody;
pub(crate) use record::not_utf8;

//! The document and the service say the same.

mod answers;
mod document;
mod drift;
mod examples;
mod pictures;
mod schema;

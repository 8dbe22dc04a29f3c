//! The OpenAPI 3.1 document: made from the routes table, served, and kept in the repository.
//!
//! - [`document`] how it is made
//! - [`serve`] `GET /openapi.json`

pub mod document;
pub mod serve;

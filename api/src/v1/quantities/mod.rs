//! `/v1/quantities`: physical quantities by name.
//!
//! - [`wire`] a quantity and its inputs as they are sent
//! - [`list`] `GET /v1/quantities`
//! - [`reckon`] `POST /v1/quantities/{name}`

pub mod list;
pub mod reckon;
pub mod wire;

//! Pages for people.
//!
//! - [`docs`] the API's document, to read and to try

pub mod docs;

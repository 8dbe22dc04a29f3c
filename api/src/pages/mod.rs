//! Pages for people.
//!
//! - [`home`] what a plant needs now, to try
//! - [`docs`] the API's document, to read and to try

pub mod docs;
pub mod home;

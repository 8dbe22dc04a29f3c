//! The first version of the calls.
//!
//! - [`page`] lists that come page by page
//! - [`question`] what a caller tells about place, plant and condition: shared by several calls
//! - [`advice`] what to do now
//! - [`quantities`] physical quantities by name

pub mod advice;
pub mod page;
pub mod quantities;
pub mod question;

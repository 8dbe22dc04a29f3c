//! The first version of the calls.
//!
//! - [`page`] lists that come page by page
//! - [`question`] what a caller tells about place, plant and condition: shared by several calls
//! - [`climate_differences`] how a climate differs from another
//! - [`climate_error`] how good an estimated climate is
//! - [`weather`] the weather behind an answer
//! - [`language`] the language of an answer
//! - `face` as what an answer is sent: JSON, or a picture
//! - `sent` an answer on its way out
//! - [`advice`] what to do now
//! - [`diagnosis`] what the signs may show
//! - [`replay`] an answer given again
//! - [`season`] what season it is
//! - [`climate_profiles`] a climate from a daily record
//! - [`rules`] what stands behind a piece of advice
//! - [`vocabulary`] the words of the rule set, for building forms
//! - [`quantities`] physical quantities by name
//! - [`editor`] drafts, releases, what is held back

pub mod advice;
pub mod climate_differences;
pub mod climate_error;
pub mod climate_profiles;
pub mod diagnosis;
pub mod editor;
mod face;
pub mod language;
pub mod page;
pub mod quantities;
pub mod question;
pub mod replay;
pub mod rules;
pub mod season;
mod sent;
pub mod vocabulary;
pub mod weather;

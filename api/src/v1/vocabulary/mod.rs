//! The words of the rule set in the asked language, for building forms: what a request may name.
//!
//! - [`list`] what these calls have in common: their parameters, pages, headers
//! - [`plants`], [`signs`], [`jobs`], [`materials`], [`problems`], [`sources`], [`climates`] one vocabulary each
//! - [`facts`] every fact that rules read, with the question that finds it out

pub mod climates;
pub mod facts;
pub mod jobs;
pub mod list;
pub mod materials;
pub mod plants;
pub mod problems;
pub mod signs;
pub mod sources;

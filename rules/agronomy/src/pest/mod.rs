//! Pests by degree days: when a stage comes, from published thresholds and sums.
//!
//! A sum is counted from a day, the biofix, above a lower threshold, and below an upper one where the model
//! has it. States print different sums for one pest: they tell when to look, not when to spray.
//!
//! - [`model`] what a model is, and how one is found by name
//! - [`vegetables`], [`landscape`], [`fruit`] the models

pub mod fruit;
pub mod landscape;
pub mod model;
pub mod vegetables;

pub use model::{Model, Stage, Unmatched, find};

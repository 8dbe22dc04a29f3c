//! A climate profile from coordinates, out of a grid of monthly temperature and rain.
//!
//! - [`grid`] the grid, read from its bytes
//! - [`fault`] what can be wrong with those bytes
//! - `around` what the grid says of a point and of the land around it
//! - [`diurnal`] range of the day, wetness, dew point
//! - [`doubt`] why an estimate is not good, and its grade
//! - [`likely_error`] by how much it is likely to be off
//! - [`refusal`] places of which nothing can be said
//! - [`estimate`] the profile
//!
//! The coefficients were fitted to daily records of some 90 stations; the mean errors that are given here
//! were measured on the same stations, so they are a little too good. Normals of a station are better,
//! and win.

mod around;
pub mod diurnal;
pub mod doubt;
pub mod estimate;
pub mod fault;
pub mod grid;
pub mod likely_error;
pub mod refusal;

pub use doubt::{Doubt, Grade};
pub use estimate::{Coordinates, Estimate};
pub use fault::GridFault;
pub use grid::Grid;
pub use likely_error::LikelyErrors;
pub use refusal::Refusal;

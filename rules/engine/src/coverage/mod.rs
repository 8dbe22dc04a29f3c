//! Coverage: where a set advises and where it is silent, by plant, place and week.
//!
//! A cell is a plant at a place in a week, looked at under every typical condition of the plant: a rule counts once however
//! many of them it comes out under. So a count says that the set has an answer there for somebody, not for everybody.
//!
//! - [`cell`] what is said of a plant at a place in a week
//! - [`row`] the weeks of a plant at a place
//! - [`long_quiet`] places where nothing of a plant opens for half a year, and why
//! - [`map`] every plant at every place

pub mod cell;
pub mod long_quiet;
pub mod map;
pub mod row;

//! What is typical: the places, the weeks and the conditions for which a set is looked at as a whole.
//!
//! - [`places`] the climates that a set brings along, and reference places where it brings few
//! - [`weeks`] the weeks of a year, and runs of them
//! - [`cases`] the conditions of a plant, drawn from what its rules and scenarios speak of

pub mod cases;
pub mod places;
pub mod weeks;

//! Crop coefficients and root depths of FAO-56, and how they are adjusted.

pub mod coefficient;
pub mod table;

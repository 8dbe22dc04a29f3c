//! A year rehearsed: what a basket of plants asks for in a climate, day by day, under a set that may be a draft.
//!
//! - [`days`] what is decided on every day of the year, as if each were asked
//! - [`plan`] the weeks: what is to be done on how many separate days, what gets in each other's way, which are empty

pub mod days;
pub mod plan;

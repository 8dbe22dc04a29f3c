//! Deciding: what becomes of each rule of the plant on the day.

pub mod almanac;
pub mod blocks;
pub mod causes;
pub mod decision;
pub mod emergency;
pub mod group;
pub mod history;
pub mod marker_dates;
pub mod marker_names;
pub mod moment;
pub mod opposed;
pub mod outcome;
pub mod quiet;
pub mod read;
pub mod short;
pub mod stage;
pub mod truth;
pub mod turns;
pub mod water;
pub mod window;

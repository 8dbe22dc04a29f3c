//! What to give a soil that is to be changed: sulphur and iron sulphate to make it more acid, lime to
//! make it less, gypsum to drive out sodium.
//!
//! Tables from different states differ by a third to a factor of two, because texture says little about
//! what a soil holds against a change. An amount here is where to begin: give less, test again, go on.

pub mod gypsum;
pub mod lime;
pub mod sulphur;
mod table;

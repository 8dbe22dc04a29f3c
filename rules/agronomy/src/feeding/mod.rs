//! Sums with fertiliser: from the label to the elements, from a rate to the product, from a strength
//! to the can.
//!
//! Labels give nitrogen as N, phosphorus as P2O5 and potassium as K2O, in percent by mass.

pub mod elements;
pub mod product;

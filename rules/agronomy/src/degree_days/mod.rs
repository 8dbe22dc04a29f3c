//! Degree days: how much warmth a day gives above a threshold, in C d.
//!
//! Every method takes a day's extremes in C, a lower threshold and, if the plant or pest has one, an
//! upper threshold with its [`Cutoff`]. Sines and triangles follow Zalom, Goodell, Wilson, Barnett
//! and Bentley 1983 (leaflet 21373 of the University of California), averages McMaster and Wilhelm
//! 1997.

pub mod average;
pub mod curve;
pub mod sum;
pub mod thresholds;

pub use average::{average_method1, average_method2};
pub use curve::{double_sine, double_triangle, single_sine, single_triangle};
pub use sum::{Method, sum_over};
pub use thresholds::{Cutoff, Thresholds};

//! Reference evapotranspiration of short grass, mm per day.
//!
//! [`penman_monteith()`] when anything beyond temperature is known, [`mod@hargreaves`] when it is not.

pub mod hargreaves;
pub mod inputs;
pub mod penman_monteith;

pub use inputs::{EtInputs, HumidityGiven, RadiationGiven, WindGiven};
pub use penman_monteith::{Et0, Et0Method, penman_monteith};

//! Weather that favours a disease of the leaf: hours of wetness at a temperature.
//!
//! Such a rule tells that infection was possible, not that it happened: without the fungus, or with a leaf
//! that resists it, nothing comes of it.
//!
//! - [`scab`] apple scab by the revised Mills table
//! - [`generic`] any fungus whose cardinal temperatures and wetness are known
//! - [`wet_rule`] rules of thumb for some common diseases

pub mod generic;
pub mod scab;
pub mod wet_rule;

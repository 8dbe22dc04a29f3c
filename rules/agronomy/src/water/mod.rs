//! Water in the soil and in pots: what the plant needs, how much a soak brings, how often.
//!
//! One millimetre on one square metre is one litre. The way from weather to watering can:
//! evapotranspiration of grass x plant factor x microclimate = [`need`]; texture and root depth give the
//! [`root_zone`]; need and root zone give the days between soaks and the litres of one ([`soak`]);
//! pots have their own small store ([`container`]).

pub mod container;
pub mod need;
pub mod root_zone;
pub mod soak;
pub mod texture;

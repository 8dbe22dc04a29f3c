//! Winter chill: how much cold a plant has had, by three models that count different things.
//!
//! - [`hours`] hours between 0 and 7.2 C, the oldest and simplest
//! - [`utah`] units that cold gives and warmth takes back
//! - [`dynamic`] portions, which warm spells can undo only before they are fixed
//! - [`hourly`] the hours of a day from its extremes, where no hourly record is at hand
//!
//! Chill requirements of varieties are given in one of these; they cannot be turned into each other.

pub mod dynamic;
pub mod hourly;
pub mod hours;
pub mod utah;

//! A pack becomes a set that can be asked: names are numbers, conditions are tests of shared terms, rules stand by plant.

mod again;
pub mod amount;
pub mod book;
mod both_ways;
pub mod call;
mod guards;
pub mod marker;
pub mod moves;
pub mod names;
pub mod path;
mod plant;
pub mod report;
mod resolve;
pub mod rivals;
pub mod rule;
pub mod set;
pub mod short;
pub mod sieve;
pub mod source;
pub mod term;
pub mod test;
pub mod typing;
pub mod window;

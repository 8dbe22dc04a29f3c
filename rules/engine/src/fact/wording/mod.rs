//! The words of each fact in English and Spanish: its name in a reason, a sentence about it, the question that finds it out.

mod condition;
mod history;
mod plant;
mod season;
mod site;
mod soil;
mod table;
mod weather;
mod words;

pub use table::words;
pub use words::{AskWords, FactWords, Words};

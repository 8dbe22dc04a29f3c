//! The plain evaluator: it walks the parsed trees and the entries of the pack by name, remembers nothing, and takes its time.
//!
//! It shares with the engine only the reading of text (the entries, the trees of expressions, the units) and the season.
//! What a condition says, when a window is open and what becomes of a rule is written here a second time, on purpose.

pub(crate) mod blocks;
pub(crate) mod causes;
pub(crate) mod clash;
pub(crate) mod facts;
pub(crate) mod markers;
pub(crate) mod outcome;
pub(crate) mod rank;
pub(crate) mod season_facts;
pub(crate) mod stage;
pub(crate) mod tree;
pub(crate) mod value;
pub(crate) mod windows;
pub(crate) mod works;
pub(crate) mod world;

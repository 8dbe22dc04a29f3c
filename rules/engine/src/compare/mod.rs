//! What changed between two sets, or two versions of an entry, said by meaning and not by text.
//!
//! Conditions are compared in a normal form ([`normal`]): the order of parts, units and spaces do not count. What is left is
//! said in sentences, each of a [`Kind`]; nothing left is no change of meaning. A window that hangs on other markers than
//! before is opened and closed in the reference climates, to say by how many days.
//!
//! - [`normal`] one form for each meaning of an expression, and what of it is certain to imply what
//! - `condition`, `hold`, `window` the parts of a rule that are expressions
//! - `listed` whatever is a list by name: materials, cautions, order, separations, amounts
//! - [`rule`], [`material`], `other` the entries
//! - `effect` what a moved window does in the reference climates
//! - [`whole`] two sets

mod condition;
mod effect;
mod hold;
mod kind;
mod listed;
pub mod material;
pub mod normal;
mod other;
pub mod rule;
pub mod whole;
mod window;
mod words;

pub use kind::Kind;
pub use whole::{Change, Comparison, Only, compare};
pub use words::{Sentence, Words};

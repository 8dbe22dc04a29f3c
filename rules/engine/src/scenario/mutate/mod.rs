//! Which change of a rule would no scenario notice?
//!
//! Each [`Mutant`] is an entry with one thing changed: a threshold, a part of a condition, a side of a window, a hold, a
//! separation, a caution. It is put in the place of the entry and the scenarios of its plants are run: one that is no longer
//! as expected has noticed. A mutant that does not compile, or that means the same ([`mod@crate::compare`] finds nothing to
//! say of it), does not count.
//!
//! - `operator` the kinds of change
//! - `literal`, `expression` what is done to numbers and conditions
//! - `rule`, `material` every mutant of an entry
//! - [`mod@bench`] the scenarios, and what they notice

pub mod bench;
mod expression;
mod literal;
pub mod material;
mod operator;
pub mod rule;

pub use bench::{Bench, Score, Subject, Survivor};
pub use operator::Operator;

use crate::fault::Place;

/// An entry with one change.
#[derive(Clone, Debug)]
pub struct Mutant<T> {
    /// What was done.
    pub operator: Operator,
    /// Where the changed field stands.
    pub place: Place,
    /// The entry.
    pub entry: T,
}

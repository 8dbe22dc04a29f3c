//! What becomes of a rule.

use lammas_agronomy::calendar::Day;

use super::window::State;
use crate::fact::value::Truth;

/// Why a rule that would be there is not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Block {
    /// Its own hold, by its number.
    Hold(usize),
    /// A guard, by its number among the plant's rules.
    Guard(u32),
    /// A rule that does the opposite and is safer, by its number in the set.
    Clash(u32),
    /// Something that it is kept apart from: the rule of today, if it is one, and the first day on which it may be done.
    Apart {
        /// The rule that comes first today.
        rule: Option<u32>,
        /// The first day.
        until: Day,
    },
    /// It was done; the first day on which it is due again.
    Done {
        /// The first day.
        until: Day,
        /// Whether it has been done as often as it may be.
        at_most: bool,
    },
    /// The other of two that take turns is due.
    Turn(u32),
    /// Before its window.
    Early,
    /// After it.
    Late,
    /// Where it has none.
    Never,
    /// It is something to leave alone.
    Avoid,
    /// Someone or something is in danger: an emergency comes first, by its number in the set.
    Emergency(u32),
    /// A set above withholds it.
    Withheld,
}

/// What an outcome hangs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hangs {
    /// On a term of the plant, by its number.
    Probe(u32),
    /// On whether the plant has a problem.
    Problem(u16),
    /// On the works done.
    History,
    /// On a marker of its window.
    Window,
}

/// What else could come of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Could {
    /// It could apply.
    Apply,
    /// It could only be held, or not be there at all.
    BeHeld,
}

/// What becomes of a rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It is not there.
    No,
    /// It applies.
    Applies,
    /// It is held, by these.
    Held(Vec<Block>),
    /// It depends.
    Depends {
        /// On what.
        on: Vec<Hangs>,
        /// What else could come of it.
        could: Could,
    },
}

/// A condition of the day, to be checked before the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CheckFirst {
    /// A hold of the rule.
    Hold(usize),
    /// A guard, by its number among the plant's rules.
    Guard(u32),
}

/// A rule with what became of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// Its number among the plant's rules.
    pub at: u32,
    /// Its number in the set.
    pub rule: u32,
    /// What became of it.
    pub outcome: Outcome,
    /// Its window.
    pub window: State,
    /// Conditions of the day.
    pub check_first: Vec<CheckFirst>,
    /// Whether it is past the longest time between two.
    pub overdue: bool,
    /// Its score, of the rules that apply or might.
    pub score: crate::rank::Score,
}

/// The truth of a block, softened for facts of the day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Blocked {
    /// It blocks.
    Yes,
    /// It does not.
    No,
    /// It does not, but its words stand before the work.
    CheckFirst,
    /// Nobody knows.
    Depends(Vec<Hangs>),
}

impl Blocked {
    /// A block that is known.
    #[must_use]
    pub const fn known(truth: Truth) -> Self {
        match truth {
            Truth::True => Self::Yes,
            _ => Self::No,
        }
    }
}

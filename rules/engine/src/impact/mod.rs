//! Impact: which answers are others under another set, how, for whom.
//!
//! Two answers are the same when their *decision* is: outcome of every rule, band and order of the tasks, amounts as shown,
//! days of the windows, the rules and blocks behind each reason, the questions. Wordings, numbers quoted in reasons, scores and
//! days left are no part of it.
//!
//! - [`compared`] a decision as it is compared between two sets: by ids, not by numbers
//! - [`change`] what differs between two of them
//! - [`pair`] one question, answered by both
//! - [`grid`] every plant of both sets, at every place, in every week, under every typical condition
//! - [`requests`] real requests
//! - [`report`] the changes by rule and kind, with their places and weeks, and an example of each
//!
//! - [`unmoved`] plants of which no answer can change
//!
//! Nothing is left out as unlikely to change: but for the plants whose rules and words are the same, every question is
//! answered by both sets.

pub mod change;
pub mod compared;
pub mod grid;
pub mod pair;
pub mod report;
pub mod requests;
pub mod unmoved;

//! The short form of a plant's rules: what most of them are decided by, side by side in memory.
//!
//! Many rules hang on nothing but their condition: no window, hold, guard, problem or rival. Such a rule applies as soon as
//! the sieve has proven it, and all that is left to know of it stands here. A rule that is more than that is judged in
//! full wherever the sieve leaves it possible.

use super::rule::{PlantRule, Repeat, RuleInfo};
use crate::pack::rule::Kind;
use crate::rank::Weights;

/// A rule in short.
#[derive(Clone, Copy, Debug, Default)]
pub struct Short {
    /// Its number in the set.
    pub rule: u32,
    /// Whether it applies as soon as its condition is true, whatever becomes of other rules.
    pub stands_alone: bool,
    /// What its score begins with.
    pub weights: Weights,
}

impl Short {
    /// The short form of a rule, once it knows its guards and rivals.
    #[must_use]
    pub fn of(rule: &PlantRule, infos: &[RuleInfo]) -> Self {
        let info = infos.get(rule.rule as usize);
        Self {
            rule: rule.rule,
            stands_alone: info.is_some_and(|info| stands_alone(rule, info)),
            weights: info.map(Weights::of).unwrap_or_default(),
        }
    }
}

fn stands_alone(rule: &PlantRule, info: &RuleInfo) -> bool {
    let by_itself =
        rule.problem.is_none() && rule.windows.is_empty() && rule.holds.is_empty() && rule.guards.is_empty();
    let of_history = !info.apart.is_empty()
        || !info.after.is_empty()
        || info.repeat != Repeat::default()
        || info.alternate.is_some();
    by_itself
        && !of_history
        && rule.rivals.is_empty()
        && info.blocks.is_none()
        && info.kind != Kind::Avoid
        && !info.withheld
}

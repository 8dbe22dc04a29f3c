//! What the language settles between two rules that come together.

use crate::compile::rule::{JobKind, RuleInfo};
use crate::pack::rule::{Kind, Manner};

/// Whether two rules are put in order by `before` or `after`: they belong together.
#[must_use]
pub(super) fn is_ordered(a: (u32, &RuleInfo), b: (u32, &RuleInfo)) -> bool {
    let names = |x: &RuleInfo, y: u32| x.after.iter().chain(&x.before).any(|(rule, _)| *rule == y);
    names(a.1, b.0) || names(b.1, a.0)
}

/// Whether a rule says itself that it clashes with the other; `clashes` stands on both sides.
#[must_use]
pub(super) fn says_clash(a: (u32, &RuleInfo), b: (u32, &RuleInfo)) -> bool {
    a.1.clashes.contains(&b.0) || b.1.clashes.contains(&a.0)
}

/// Whether the jobs of two rules are opposed whatever the question, and not only where the caller waters from above.
#[must_use]
pub(super) fn jobs_opposed(a: &RuleInfo, b: &RuleInfo) -> bool {
    let one_way = |a: &RuleInfo, b: &RuleInfo| match (a.job_kind, b.job_kind) {
        (JobKind::Prune, JobKind::ProtectFrost | JobKind::ProtectHeat) | (JobKind::Feed, JobKind::Transplant) => true,
        (JobKind::Transplant, JobKind::Prune) => b.manner == Some(Manner::Hard),
        (JobKind::Treat, JobKind::Water) => a.burns && b.manner == Some(Manner::Overhead),
        (JobKind::Feed, JobKind::ProtectFrost) => a.nitrogen,
        _ => false,
    };
    a.kind != Kind::Avoid && b.kind != Kind::Avoid && (one_way(a, b) || one_way(b, a))
}

/// The most days that two rules of one day are kept apart; none: they are not.
#[must_use]
pub(super) fn apart_days(a: (u32, &RuleInfo), b: (u32, &RuleInfo)) -> Option<u16> {
    let from = |x: &RuleInfo, y: (u32, &RuleInfo)| {
        x.apart.iter().filter(|apart| y.1.is(apart.from, y.0)).map(|apart| apart.days).max()
    };
    let ordered = a.1.after.iter().chain(&a.1.before).filter(|(rule, _)| *rule == b.0).map(|(_, days)| *days).max();
    from(a.1, b).max(from(b.1, a)).max(ordered).filter(|days| *days > 0)
}

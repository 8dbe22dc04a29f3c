//! Jobs that undo each other on one plant and day.

use super::moment::Moment;
use crate::compile::rule::{JobKind, RuleInfo};
use crate::fact::catalogue::Fact;
use crate::fact::choices::WATER_METHOD;
use crate::fact::value::Value;
use crate::pack::rule::{Kind, Manner};

/// Whether two rules of today undo each other: they say so, or their jobs do. Two that are put in order by `before` or
/// `after` belong together and never clash; what is to be left alone does no job.
#[must_use]
pub fn opposed(a: (u32, &RuleInfo), b: (u32, &RuleInfo), moment: &Moment<'_>) -> bool {
    let ordered = |x: &RuleInfo, y: u32| x.after.iter().chain(&x.before).any(|(rule, _)| *rule == y);
    if ordered(a.1, b.0) || ordered(b.1, a.0) {
        return false;
    }
    let both_work = a.1.kind != Kind::Avoid && b.1.kind != Kind::Avoid;
    a.1.clashes.contains(&b.0) || both_work && (one_way(a.1, b.1, moment) || one_way(b.1, a.1, moment))
}

fn one_way(a: &RuleInfo, b: &RuleInfo, moment: &Moment<'_>) -> bool {
    match (a.job_kind, b.job_kind) {
        (JobKind::Prune, JobKind::ProtectFrost | JobKind::ProtectHeat) | (JobKind::Feed, JobKind::Transplant) => true,
        (JobKind::Transplant, JobKind::Prune) => b.manner == Some(Manner::Hard),
        (JobKind::Treat, JobKind::Water) => a.burns && is_overhead(b, moment),
        (JobKind::Feed, JobKind::ProtectFrost) => a.nitrogen,
        _ => false,
    }
}

fn is_overhead(water: &RuleInfo, moment: &Moment<'_>) -> bool {
    water.manner == Some(Manner::Overhead)
        || moment.question.given(Fact::WaterMethod).value
            == Value::Choice(WATER_METHOD.position("sprinkler").unwrap_or(u16::MAX))
}

/// The safer of two goes first: leaving alone, protecting, watering, treating, the rest.
#[must_use]
pub fn safety(info: &RuleInfo) -> u8 {
    if info.kind == Kind::Avoid {
        return 0;
    }
    match info.job_kind {
        kind if kind.protects() => 1,
        JobKind::Water => 2,
        JobKind::Treat => 3,
        _ => 4,
    }
}

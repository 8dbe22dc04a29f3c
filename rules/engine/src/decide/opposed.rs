//! Jobs that undo each other on one plant and day.

use super::moment::Moment;
use crate::compile::rule::RuleInfo;
use crate::fact::catalogue::Fact;
use crate::fact::choices::WATER_METHOD;
use crate::fact::value::Value;
use crate::pack::rule::Manner;

/// Whether two rules of today undo each other: they say so, or their jobs do. Two that are put in order by `before` or
/// `after` belong together and never clash.
#[must_use]
pub fn opposed(a: (u32, &RuleInfo), b: (u32, &RuleInfo), moment: &Moment<'_>) -> bool {
    let ordered = |x: &RuleInfo, y: u32| x.after.iter().chain(&x.before).any(|(rule, _)| *rule == y);
    if ordered(a.1, b.0) || ordered(b.1, a.0) {
        return false;
    }
    a.1.clashes.contains(&b.0) || one_way(a.1, b.1, moment) || one_way(b.1, a.1, moment)
}

fn one_way(a: &RuleInfo, b: &RuleInfo, moment: &Moment<'_>) -> bool {
    let jobs = &moment.set.names.jobs;
    let (Some(x), Some(y)) = (a.job, b.job) else { return false };
    let has = |info: &RuleInfo, classes: &[&str]| info.classes.iter().any(|c| classes.contains(&moment.set.names.classes.name(*c)));
    match (jobs.name(x), jobs.name(y)) {
        ("prune", "protect-frost" | "protect-heat") | ("feed", "transplant") => true,
        ("transplant", "prune") => b.manner == Some(Manner::Hard),
        ("treat-pest" | "treat-disease", "water") => has(a, &["oil", "soap", "sulphur"]) && is_overhead(b, moment),
        ("feed", "protect-frost") => has(a, &["nitrogen"]),
        _ => false,
    }
}

fn is_overhead(water: &RuleInfo, moment: &Moment<'_>) -> bool {
    water.manner == Some(Manner::Overhead)
        || moment.question.given(Fact::WaterMethod).value == Value::Choice(WATER_METHOD.position("sprinkler").unwrap_or(u16::MAX))
}

/// The safer of two goes first: leaving alone, protecting, watering, treating, the rest.
#[must_use]
pub fn safety(info: &RuleInfo, moment: &Moment<'_>) -> u8 {
    if info.kind == crate::pack::rule::Kind::Avoid {
        return 0;
    }
    match info.job.map(|job| moment.set.names.jobs.name(job)) {
        Some("protect-frost" | "protect-heat") => 1,
        Some("water") => 2,
        Some("treat-pest" | "treat-disease") => 3,
        _ => 4,
    }
}

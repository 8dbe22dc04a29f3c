//! Rules of a plant that may hold each other on one day: those that a rule may meet, and its rivals, the whole group within
//! which one can reach another.

use super::rule::{JobKind, PlantRule, RuleInfo};
use crate::pack::rule::Kind;

/// Gives each rule those that it may meet in a clash or a separation, and its rivals.
pub fn find(rules: &mut [PlantRule], infos: &[RuleInfo]) {
    let count = rules.len();
    let mut group: Vec<usize> = (0..count).collect();
    let numbers: Vec<(u32, Option<&RuleInfo>)> =
        rules.iter().map(|rule| (rule.rule, infos.get(rule.rule as usize))).collect();
    // Only rules that have something to be apart from, or a job that can clash, are looked at in pairs.
    let touchy: Vec<usize> =
        numbers.iter().enumerate().filter(|(_, (_, info))| info.is_some_and(is_touchy)).map(|(at, _)| at).collect();
    let mut pairs: std::collections::BTreeSet<(usize, usize)> = std::collections::BTreeSet::new();
    for one in &touchy {
        for other in 0..count {
            let (Some((a, Some(x))), Some((b, Some(y)))) = (numbers.get(*one), numbers.get(other)) else { continue };
            if *one != other && may_meet((*a, x), (*b, y)) {
                join(&mut group, *one, other);
                pairs.extend([(*one, other), (other, *one)]);
            }
        }
    }
    let roots: Vec<usize> = (0..count).map(|at| root(&group, at)).collect();
    let mut members: std::collections::BTreeMap<usize, Vec<u32>> = std::collections::BTreeMap::new();
    for (at, root) in roots.iter().enumerate() {
        members.entry(*root).or_default().push(u32::try_from(at).unwrap_or(u32::MAX));
    }
    for (rule, root) in rules.iter_mut().zip(&roots) {
        rule.rivals = members.get(root).filter(|list| list.len() > 1).cloned().unwrap_or_default();
    }
    for (one, other) in pairs {
        if let (Some(rule), Ok(other)) = (rules.get_mut(one), u32::try_from(other)) {
            rule.meets.push(other);
        }
    }
}

fn is_touchy(info: &RuleInfo) -> bool {
    info.kind != Kind::Know
        && info.blocks.is_none()
        && (!info.apart.is_empty()
            || !info.clashes.is_empty()
            || info.job_kind != JobKind::Other
            || info.after.iter().any(|(_, days)| *days > 0))
}

/// Whether two rules could hold each other in some question.
fn may_meet(a: (u32, &RuleInfo), b: (u32, &RuleInfo)) -> bool {
    if b.1.kind == Kind::Know || b.1.blocks.is_some() || a.1.emergency || b.1.emergency {
        return false;
    }
    let kept_apart = a.1.apart.iter().any(|apart| apart.days > 0 && b.1.is(apart.from, b.0));
    let in_days = a.1.after.iter().chain(&a.1.before).any(|(rule, days)| *rule == b.0 && *days > 0);
    let jobs = |x: JobKind, y: JobKind| {
        matches!(
            (x, y),
            (JobKind::Prune, JobKind::ProtectFrost | JobKind::ProtectHeat)
                | (JobKind::Feed, JobKind::Transplant | JobKind::ProtectFrost)
                | (JobKind::Transplant, JobKind::Prune)
                | (JobKind::Treat, JobKind::Water)
        )
    };
    kept_apart
        || in_days
        || a.1.clashes.contains(&b.0)
        || jobs(a.1.job_kind, b.1.job_kind)
        || jobs(b.1.job_kind, a.1.job_kind)
}

fn root(group: &[usize], mut at: usize) -> usize {
    while let Some(parent) = group.get(at).copied().filter(|parent| *parent != at) {
        at = parent;
    }
    at
}

fn join(group: &mut [usize], a: usize, b: usize) {
    let (a, b) = (root(group, a), root(group, b));
    if let Some(slot) = group.get_mut(a.max(b)) {
        *slot = a.min(b);
    }
}

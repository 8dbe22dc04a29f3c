//! Which guards bind which rules.

use super::rule::{Blocks, PlantRule, RuleInfo};

/// Gives each rule the guards that bind it.
pub(super) fn bind_guards(plant: u16, rules: &mut [PlantRule], infos: &[RuleInfo]) {
    let guards: Vec<(u32, u32)> = rules
        .iter()
        .enumerate()
        .filter(|(_, r)| infos.get(r.rule as usize).is_some_and(|i| i.blocks.is_some()))
        .map(|(at, r)| (u32::try_from(at).unwrap_or(u32::MAX), r.rule))
        .collect();
    for rule in rules.iter_mut() {
        let Some(info) = infos.get(rule.rule as usize) else { continue };
        rule.guards = guards
            .iter()
            .filter(|(_, guard)| {
                *guard != rule.rule
                    && infos
                        .get(*guard as usize)
                        .and_then(|g| g.blocks.as_ref())
                        .is_some_and(|b| b.binds(info, rule.rule, plant))
            })
            .map(|(at, _)| *at)
            .collect();
    }
}

impl Blocks {
    /// Whether a rule of a plant is blocked: everything that is named must match.
    #[must_use]
    pub fn binds(&self, info: &RuleInfo, own: u32, plant: u16) -> bool {
        let names_work =
            !(self.jobs.is_empty() && self.materials.is_empty() && self.classes.is_empty() && self.rules.is_empty());
        names_work
            && info.kind == crate::pack::rule::Kind::Task
            && !info.emergency
            && (self.plants.is_empty() || self.plants.contains(&plant))
            && (self.jobs.is_empty() || info.job.is_some_and(|job| self.jobs.contains(&job)))
            && (self.materials.is_empty() || info.materials.iter().any(|m| self.materials.contains(m)))
            && (self.classes.is_empty() || info.classes.iter().any(|c| self.classes.contains(c)))
            && (self.rules.is_empty() || self.rules.contains(&own))
    }
}

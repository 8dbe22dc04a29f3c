//! The ladder of what answers a problem: the gentlest rung first.

use serde::Serialize;

use crate::compile::book::ProblemInfo;
use crate::compile::rule::{PlantRule, RuleInfo};
use crate::compile::set::Set;
use crate::compile::term::{Condition, Term};
use crate::decide::moment::Moment;
use crate::pack::RuleEntry;

/// Classes of materials that live, or are made by something that lives and harms the pest alone.
const LIVING: [&str; 2] = ["bt", "biocontrol"];

/// The job of works against animals; those against diseases without a material are hygiene.
const PEST_WORK: &str = "treat-pest";

/// A rung of the ladder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rung {
    /// Water, food, cuts, hygiene.
    Cultural,
    /// By hand, by water jet, by trap.
    Mechanical,
    /// By the pest's enemies.
    Biological,
    /// By a material whose label says how.
    Material,
    /// By a licensed professional.
    Professional,
}

/// The rules of the plant that answer a problem, by their numbers among the plant's rules, the gentlest rung first and
/// else in the set's order: those that name it, and those that name no problem and speak when a leading sign of it is seen.
pub(super) fn of(problem: &ProblemInfo, moment: &Moment<'_>) -> Vec<(Rung, u32)> {
    let set = moment.set;
    let mut found: Vec<(Rung, u32)> = moment
        .book
        .rules
        .iter()
        .zip(0..)
        .filter(|(rule, _)| match rule.problem {
            Some(named) => named == problem.problem,
            None => speaks_of(&rule.when, problem, moment, true),
        })
        .filter_map(|(rule, at)| Some((rung(rule, set)?, at)))
        .collect();
    found.sort_by_key(|(rung, _)| *rung);
    found
}

fn rung(rule: &PlantRule, set: &Set) -> Option<Rung> {
    let info: &RuleInfo = set.rules.get(rule.rule as usize)?;
    let entry: &RuleEntry = &set.pack.rules.get(rule.rule as usize)?.entry;
    let lives = |class: &u16| LIVING.contains(&set.names.classes.name(*class));
    Some(if !entry.professional.is_empty() {
        Rung::Professional
    } else if info.is_hazardous() && !info.classes.iter().any(lives) {
        Rung::Material
    } else if info.classes.iter().any(lives) {
        Rung::Biological
    } else if info.job.is_some_and(|job| set.names.jobs.name(job) == PEST_WORK) {
        Rung::Mechanical
    } else {
        Rung::Cultural
    })
}

/// Whether a condition asks for a leading sign of a problem to be seen; `wanted` turns over under a `not`.
fn speaks_of(condition: &Condition, problem: &ProblemInfo, moment: &Moment<'_>, wanted: bool) -> bool {
    match condition {
        Condition::Always => false,
        Condition::Atom(number) => {
            let atom = moment.book.atoms.get(*number as usize);
            let term = atom.and_then(|atom| moment.book.probes.get(atom.probe as usize));
            match term {
                Some(Term::Sign(sign)) => wanted && problem.leading.contains(sign),
                _ => false,
            }
        }
        Condition::And(parts) | Condition::Or(parts) => {
            parts.iter().any(|part| speaks_of(part, problem, moment, wanted))
        }
        Condition::Not(inner) => speaks_of(inner, problem, moment, !wanted),
    }
}

//! A sign of danger that is heard for every plant, and that no emergency for every plant answers.

use super::emergency_can_wait::{is_for_all, terms};
use crate::compile::set::Set;
use crate::compile::term::Term;
use crate::fault::Fault;
use crate::pack::Filed;
use crate::pack::expression::place;

/// Looks at every sign that is marked.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    let answers = set.pack.rules.iter().zip(0u32..).filter(|(rule, _)| rule.entry.emergency.is_some());
    let answers: Vec<u32> = answers.filter(|(rule, _)| is_for_all(&rule.entry)).map(|(_, number)| number).collect();
    for (Filed { file, entry }, sign) in set.pack.signs.iter().zip(0u16..).filter(|(sign, _)| sign.entry.emergency) {
        let reads = |number: &u32| terms(*number, set).iter().any(|term| matches!(term, Term::Sign(s) if *s == sign));
        if !answers.iter().any(reads) {
            let message = format!("no emergency for every plant reads the sign `{}`", entry.id.value);
            faults.push(Fault::error("emergency-not-answered", place(file, &entry.id), message).help(
                "write a rule with `emergency` and `for: {plants: all}` that reads it, or take `emergency` away",
            ));
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "emergency-not-answered",
    trips: &[
        super::emergency_can_wait::DANGER[0],
        super::emergency_can_wait::DANGER[1],
        (
            "rules/rose.yaml",
            "  for: {plants: all}\n  when: \"signs has power-line\"",
            "  for: {plant: rose}\n  when: \"signs has power-line\"",
        ),
    ],
    also: &[],
    at: "power-line",
    says: "words/signs.yaml:12:7: error[emergency-not-answered]: no emergency for every plant reads the sign `power-line`\n  help: write a rule with `emergency` and `for: {plants: all}` that reads it, or take `emergency` away",
    just_not: &super::emergency_can_wait::DANGER,
};

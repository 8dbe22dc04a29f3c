//! Conditions that hold in no cell: of a rule (whom it is for, when, its problem), of a guard, of a hold.

use super::Prover;
use super::everywhere::certificate;
use super::search::Found;
use crate::fault::Fault;
use crate::pack::Expression;
use crate::pack::expression::place;

const CODE: &str = "never-true";

/// Looks at every rule and every hold.
pub(crate) fn look(prover: &Prover<'_>, faults: &mut Vec<Fault>) {
    for ((number, info), filed) in (0_u32..).zip(&prover.set.rules).zip(&prover.set.pack.rules) {
        let (file, entry) = (&*filed.file, &filed.entry);
        let here = |written: Option<&Expression>| written.map_or_else(|| place(file, &entry.id), |e| place(file, &e.0));
        let found = prover.anywhere(number, |rules, at| rules.condition(at, true));
        prover.note(found, CODE, &[&info.id]);
        if let Found::No { cells } = found {
            let mut fault = Fault::warning(
                CODE,
                here(entry.when.as_ref().or(entry.whom.traits.as_ref())),
                format!("the condition of `{}` is true in no climate, on no day, with no facts", info.id),
            )
            .help(
                "two of its parts exclude each other, or no climate has what it asks for: mend a bound, or write `or`",
            );
            fault.certificate = Some(certificate(format!("`{}` is never there", info.id), cells));
            faults.push(fault);
        }
        for (hold, written) in entry.hold.iter().enumerate() {
            let found = prover.anywhere(number, |rules, at| rules.holds(at, hold, true));
            prover.note(found, CODE, &[&info.id]);
            let Found::No { cells } = found else { continue };
            let mut fault = Fault::warning(
                CODE,
                place(written.file(file), &written.condition.0),
                format!("this hold of `{}` is true in no climate, on no day, with no facts", info.id),
            )
            .help("it holds nothing back: mend its bounds, or take it out");
            fault.certificate = Some(certificate(format!("`{}` is never held by it", info.id), cells));
            faults.push(fault);
        }
    }
}

#[cfg(test)]
pub(crate) const CASE: crate::check::cases::Case = crate::check::cases::Case {
    code: CODE,
    trips: &[(
        "rules/rose.yaml",
        "when: \"plant.age >= 1 year and signs has spent-blooms\"",
        "when: \"signs has spent-blooms and climate.frost_free and frost.chance > 50 %\"",
    )],
    also: &[],
    at: "\"signs has spent-blooms and climate",
    says: "rules/rose.yaml:9:9: warning[never-true]: the condition of `rose.renewal-cut` is true in no climate, on no day, with no facts\n  help: two of its parts exclude each other, or no climate has what it asks for: mend a bound, or write `or`",
    just_not: &[(
        "rules/rose.yaml",
        "when: \"plant.age >= 1 year and signs has spent-blooms\"",
        "when: \"signs has spent-blooms and climate.frost_free and frost.chance < 5 %\"",
    )],
};

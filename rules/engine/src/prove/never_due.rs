//! Rules whose season and condition never meet: each comes, but never on one day.

use super::Prover;
use super::everywhere::certificate;
use super::formula::Formula;
use super::search::Found;
use crate::fault::Fault;
use crate::pack::expression::place;

const CODE: &str = "never-due";

/// Looks at every rule with a window.
pub(crate) fn look(prover: &Prover<'_>, faults: &mut Vec<Fault>) {
    for ((number, info), filed) in (0_u32..).zip(&prover.set.rules).zip(&prover.set.pack.rules) {
        let Some(window) = filed.entry.window.0.first() else { continue };
        let found = prover.anywhere(number, |rules, at| rules.asked_for(at, true));
        prover.note(found, CODE, &[&info.id]);
        let Found::No { cells } = found else { continue };
        // Where one of the two never comes by itself, that is the finding.
        let comes = |found| found == Found::Yes;
        if !comes(prover.anywhere(number, |rules, at| rules.condition(at, true)))
            || !comes(prover.anywhere(number, |_, at| Formula::Window(at, true)))
        {
            continue;
        }
        let side = window.opens.as_ref().or(window.closes.as_ref());
        let here = side.map_or_else(|| place(&filed.file, &filed.entry.id), |side| place(&filed.file, side));
        let mut fault = Fault::warning(
            CODE,
            here,
            format!("the window of `{}` is open on no day on which its condition is true", info.id),
        )
        .help("the window and the condition speak of different times of the year: mend one of them");
        fault.related.extend(
            filed.entry.when.as_ref().map(|when| (place(&filed.file, &when.0), "its condition stands here".to_owned())),
        );
        fault.certificate = Some(certificate(format!("`{}` is never due", info.id), cells));
        faults.push(fault);
    }
}

#[cfg(test)]
pub(crate) const CASE: crate::check::cases::Case = crate::check::cases::Case {
    code: CODE,
    trips: &[(
        "rules/rose.yaml",
        "  hold:\n    - if: \"soil.moisture = dry\"",
        "  when: \"weeks_to(first_frost.median) < 6 weeks\"\n  hold:\n    - if: \"soil.moisture = dry\"",
    )],
    also: &[],
    at: "growing.start else shortest_day + 8 weeks",
    says: "rules/rose.yaml:31:19: warning[never-due]: the window of `rose.feed` is open on no day on which its condition is true\n  help: the window and the condition speak of different times of the year: mend one of them\n  rules/rose.yaml:32:9: its condition stands here",
    just_not: &[(
        "rules/rose.yaml",
        "  hold:\n    - if: \"soil.moisture = dry\"",
        "  when: \"weeks_to(first_frost.median) < 9 weeks\"\n  hold:\n    - if: \"soil.moisture = dry\"",
    )],
};

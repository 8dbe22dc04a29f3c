//! Two rules that both say that they take turns: which of them begins would hang on the order of the files.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{Filed, Pack};

/// Looks at every rule that takes turns.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.rules {
        let own = &entry.id.value;
        let Some(at) = entry.alternate.as_ref().map(|alternate| &alternate.rule) else { continue };
        let says_so = |rule: &&Filed<crate::pack::RuleEntry>| {
            let other = &rule.entry;
            let partner = other.alternate.as_ref().map(|alternate| &alternate.rule.value);
            // Of two that name each other the second is at fault; of two that name a third, too.
            other.id.value < *own && (partner == Some(own) && other.id.value == at.value || partner == Some(&at.value))
        };
        if let Some(other) = pack.rules.iter().find(says_so) {
            let other = &other.entry.id.value;
            faults.push(
                Fault::error(
                    "turns-both-ways",
                    place(file, at),
                    format!("`{own}` takes turns with `{}`, and `{other}` says so as well", at.value),
                )
                .help("write `alternate` in one rule only: that one begins"),
            );
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "turns-both-ways",
    trips: &[(
        "rules/rose.yaml",
        "materials: [garden-oil]",
        "materials: [garden-oil]\n  alternate: {with: rose.sulphur-mildew, gap: 14 days}",
    )],
    also: &[],
    at: "rose.oil-aphids, gap",
    says: "rules/rose.yaml:82:21: error[turns-both-ways]: `rose.sulphur-mildew` takes turns with `rose.oil-aphids`, and `rose.oil-aphids` says so as well\n  help: write `alternate` in one rule only: that one begins",
    just_not: &[(
        "rules/rose.yaml",
        "alternate: {with: rose.oil-aphids, gap: 14 days}",
        "alternate: {with: rose.oil-aphids, gap: 21 days}",
    )],
};

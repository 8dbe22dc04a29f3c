//! A rule, a material or a problem of which nobody says where it comes from.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{At, Pack};

/// Looks at rules, materials and problems.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    let mut see = |file: &str, id: &At<String>, what: &str, sources: &[At<String>]| {
        if sources.is_empty() {
            faults.push(
                Fault::error("missing-source", place(file, id), format!("the {what} `{}` has no source", id.value))
                    .help(
                        "name one in `sources`; a source may be `common practice` or `from memory`, but it must say so",
                    ),
            );
        }
    };
    pack.rules.iter().for_each(|rule| see(&rule.file, &rule.entry.id, "rule", &rule.entry.sources));
    pack.materials
        .iter()
        .for_each(|material| see(&material.file, &material.entry.id, "material", &material.entry.sources));
    pack.problems.iter().for_each(|problem| see(&problem.file, &problem.entry.id, "problem", &problem.entry.sources));
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "missing-source",
    trips: &[("problems/rose.yaml", "  impact: 1\n  sources: [recalled]\n", "  impact: 1\n")],
    also: &[],
    at: "rose-aphids",
    says: "problems/rose.yaml:1:7: error[missing-source]: the problem `rose-aphids` has no source\n  help: name one in `sources`; a source may be `common practice` or `from memory`, but it must say so",
    just_not: &[(
        "problems/rose.yaml",
        "  impact: 1\n  sources: [recalled]\n",
        "  impact: 1\n  sources: [common-practice]\n",
    )],
};

//! An entry that nothing uses: a left-over, or the other half of a slip.

use std::collections::BTreeSet;

use super::used_names::Used;
use crate::compile::set::Set;
use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{At, Filed};

/// Looks at signs, cautions, sources, materials, classes, outlooks and stages. Jobs are the trade's own list and may wait
/// for their first rule. Only at a set that compiles: a slip elsewhere is not told twice.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    let pack = &set.pack;
    let used = Used::of(pack);
    let mut see = |file: &str, id: &At<String>, what: &str, by: &str, listed: &BTreeSet<&str>| {
        if !listed.contains(id.value.as_str()) && !used.said.contains(&id.value) {
            faults.push(
                Fault::warning("unused-entry", place(file, id), format!("nothing uses the {what} `{}`", id.value))
                    .help(format!("name it in {by}, or take it out")),
            );
        }
    };
    macro_rules! look_at {
        ($list:ident, $what:literal, $by:literal) => {
            pack.$list.iter().for_each(|Filed { file, entry }| see(file, &entry.id, $what, $by, &used.$list));
        };
    }
    // A sign of danger that nothing answers has a fault of its own.
    for Filed { file, entry } in pack.signs.iter().filter(|sign| !sign.entry.emergency) {
        see(file, &entry.id, "sign", "a condition or a problem", &used.signs);
    }
    look_at!(cautions, "caution", "a rule or a material");
    look_at!(sources, "source", "a rule, a material or a problem");
    look_at!(materials, "material", "a rule");
    look_at!(classes, "class", "a material");
    look_at!(outlooks, "outlook", "`expect` of a rule");
    look_at!(stages, "stage", "`stages` of a plant");
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "unused-entry",
    trips: &[("words/classes.yaml", "", "- {id: soap, name: {en: \"Soap\", es: \"Jabón\"}}\n")],
    also: &[],
    at: "soap, name",
    says: "words/classes.yaml:4:8: warning[unused-entry]: nothing uses the class `soap`\n  help: name it in a material, or take it out",
    just_not: &[
        ("words/classes.yaml", "", "- {id: soap, name: {en: \"Soap\", es: \"Jabón\"}}\n"),
        ("rules/guards.yaml", "blocks: {classes: [oil, ", "blocks: {classes: [oil, soap, "),
    ],
};

//! A guard with a hold of its own: nothing would read it.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{Filed, Pack};

/// Looks at every guard.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in pack.rules.iter().filter(|rule| rule.entry.blocks.is_some()) {
        for hold in &entry.hold {
            let says = format!("the guard `{}` has a hold, which would hold nobody", entry.id.value);
            faults.push(
                Fault::error("hold-on-guard", place(file, &hold.condition.0), says)
                    .help("put what must be so into its `when`, or write another guard"),
            );
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "hold-on-guard",
    trips: &[(
        "rules/guards.yaml",
        "  blocks: {classes: [oil, sulphur-spray]}",
        "  hold:\n    - if: \"soil.moisture = wet\"\n      because: {en: \"Wet.\", es: \"Mojado.\"}\n  blocks: {classes: [oil, sulphur-spray]}",
    )],
    also: &[],
    at: "\"soil.moisture = wet\"",
    says: "rules/guards.yaml:7:11: error[hold-on-guard]: the guard `guard.no-oil-in-heat` has a hold, which would hold nobody\n  help: put what must be so into its `when`, or write another guard",
    just_not: &[(
        "rules/guards.yaml",
        "when: \"ahead(max, tmax, 3 days) > 32 °C\"",
        "when: \"ahead(max, tmax, 3 days) > 32 °C or soil.moisture = wet\"",
    )],
};

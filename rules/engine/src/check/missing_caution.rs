//! A hazardous material that nobody is warned of.
//!
//! Which cautions a material must have is our choice: a pest or disease material one for the person who spreads it, one
//! that says that label and law prevail, and one for those who did not ask for it (bees, pets, water). Work with a
//! restricted material must say why it is work for a professional.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::material::Hazard;
use crate::pack::rule::Kind;
use crate::pack::word::CautionKind;
use crate::pack::{Filed, MaterialEntry, Pack};

/// The kinds of which a hazardous material must have one each, and what to call them.
const NEEDED: [(&[CautionKind], &str); 3] = [
    (&[CautionKind::Person], "for the person who spreads it (kind `person`)"),
    (&[CautionKind::Law], "that the label and the law prevail (kind `law`)"),
    (
        &[CautionKind::Bees, CautionKind::Pets, CautionKind::Waterway],
        "for bees, pets or water (kind `bees`, `pets` or `waterway`)",
    ),
];

/// Looks at hazardous materials and at rules with restricted ones.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.materials {
        if entry.hazard < Hazard::Label {
            continue;
        }
        let kinds = kinds(entry, pack);
        for (any_of, words) in NEEDED {
            if !kinds.iter().any(|kind| any_of.contains(kind)) {
                faults.push(
                    Fault::error(
                        "missing-caution",
                        place(file, &entry.id),
                        format!("the material `{}` has no caution {words}", entry.id.value),
                    )
                    .help("add one to its `cautions`: it then stands with every work that uses the material"),
                );
            }
        }
    }
    for Filed { file, entry } in &pack.rules {
        if entry.kind != Kind::Task || !entry.professional.is_empty() {
            continue;
        }
        for id in &entry.materials {
            let restricted =
                pack.materials.iter().any(|m| m.entry.id.value == id.value && m.entry.hazard == Hazard::Restricted);
            if restricted {
                faults.push(
                    Fault::error(
                        "missing-caution",
                        place(file, id),
                        format!(
                            "`{}` is restricted, and the rule `{}` does not send to a professional",
                            id.value, entry.id.value
                        ),
                    )
                    .help("say in `professional` why this is work for a licensed one"),
                );
            }
        }
    }
}

fn kinds(entry: &MaterialEntry, pack: &Pack) -> Vec<CautionKind> {
    let named = |id: &str| pack.cautions.iter().find(|caution| caution.entry.id.value == id);
    entry.cautions.iter().filter_map(|id| named(&id.value)).map(|caution| caution.entry.kind).collect()
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "missing-caution",
    trips: &[(
        "materials/materials.yaml",
        "keep_apart: [{class: oil, days: 14}]\n  cautions: [label-rules, spray-clothing, bees-dusk]",
        "keep_apart: [{class: oil, days: 14}]\n  cautions: [label-rules, bees-dusk]",
    )],
    also: &[],
    at: "wettable-sulphur",
    says: "materials/materials.yaml:16:7: error[missing-caution]: the material `wettable-sulphur` has no caution for the person who spreads it (kind `person`)\n  help: add one to its `cautions`: it then stands with every work that uses the material",
    just_not: &[(
        "materials/materials.yaml",
        "keep_apart: [{class: oil, days: 14}]\n  cautions: [label-rules, spray-clothing, bees-dusk]",
        "keep_apart: [{class: oil, days: 14}]\n  cautions: [label-rules, thorns, bees-dusk]",
    )],
};

#[cfg(test)]
mod tests {
    use crate::check::cases::said;

    #[test]
    fn work_with_a_restricted_material_must_send_to_a_professional() {
        let restricted = (
            "materials/materials.yaml",
            "name: {en: \"Garden oil\", es: \"Aceite de jardín\"}\n  hazard: label",
            "name: {en: \"Garden oil\", es: \"Aceite de jardín\"}\n  hazard: restricted",
        );
        assert_eq!(
            said(&[restricted]),
            "rules/rose.yaml:67:15: error[missing-caution]: `garden-oil` is restricted, and the rule `rose.oil-aphids` does not send to a professional\n  help: say in `professional` why this is work for a licensed one"
        );
        let sent = (
            "rules/rose.yaml",
            "  materials: [garden-oil]\n",
            "  materials: [garden-oil]\n  professional: {en: \"For licensed hands.\", es: \"Para manos con licencia.\"}\n",
        );
        assert_eq!(said(&[restricted, sent]), "");
    }

    #[test]
    fn a_plant_food_needs_none_of_these() {
        assert_eq!(
            said(&[
                ("materials/materials.yaml", "  cautions: [salts-burn]\n", ""),
                ("rules/rose.yaml", "cautions: [clean-blades, thorns]", "cautions: [clean-blades, thorns, salts-burn]")
            ]),
            ""
        );
    }
}

//! A rule that says how much of a pest or disease material: there the amount is the label's, and the label is the law.

use lammas_agronomy::quantity;

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::material::Hazard;
use crate::pack::rule::{AmountEntry, RuleEntry};
use crate::pack::{At, Filed, Pack};
use crate::unit::{Dimension, Unit};

/// Looks at the amounts of rules with such a material.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.rules {
        for amount in &entry.amount {
            let Some(material) = labelled(entry, amount, pack) else { continue };
            if let Some(at) = dose(amount) {
                faults.push(
                    Fault::error(
                        "dose-on-label-material",
                        place(file, at),
                        format!(
                            "the rule `{}` says how much of `{}`, whose label says it",
                            entry.id.value, material.value
                        ),
                    )
                    .help("take the amount out and say in the steps that the label gives it"),
                );
            }
        }
    }
}

/// The pest or disease material that an amount is of.
fn labelled<'p>(rule: &'p RuleEntry, amount: &'p AmountEntry, pack: &Pack) -> Option<&'p At<String>> {
    let of = match &amount.max_of {
        Some(one) => std::slice::from_ref(one),
        None => rule.materials.as_slice(),
    };
    of.iter().find(|id| pack.materials.iter().any(|m| m.entry.id.value == id.value && m.entry.hazard >= Hazard::Label))
}

/// The field that gives the number, if it is a mass or a volume, by itself or on an area.
fn dose(amount: &AmountEntry) -> Option<&At<String>> {
    let is_dose = |unit: &str| {
        Unit::find(unit)
            .is_some_and(|unit| matches!(unit.dimension, Dimension::Mass | Dimension::Volume | Dimension::MassPerArea))
    };
    let called =
        amount.call.as_ref().filter(|call| quantity::find(&call.value).is_ok_and(|quantity| is_dose(quantity.unit)));
    called.or_else(|| amount.typical.as_ref().map(|typical| &typical.unit).filter(|unit| is_dose(&unit.value)))
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "dose-on-label-material",
    trips: &[(
        "rules/rose.yaml",
        "  materials: [garden-oil]\n",
        "  materials: [garden-oil]\n  amount: [{what: {en: \"Oil\", es: \"Aceite\"}, typical: {min: 1, max: 2, unit: oz}}]\n",
    )],
    also: &[],
    at: "oz}}]",
    says: "rules/rose.yaml:68:78: error[dose-on-label-material]: the rule `rose.oil-aphids` says how much of `garden-oil`, whose label says it\n  help: take the amount out and say in the steps that the label gives it",
    just_not: &[(
        "rules/rose.yaml",
        "  materials: [garden-oil]\n",
        "  materials: [garden-oil]\n  amount: [{what: {en: \"Days between\", es: \"Días entre\"}, typical: {min: 7, max: 10, unit: days}}]\n",
    )],
};

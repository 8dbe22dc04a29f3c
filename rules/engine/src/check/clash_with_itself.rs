//! A rule that stands in its own way: it clashes or takes turns with itself, or uses together what must be kept apart.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::rule::{ApartEntry, RuleEntry};
use crate::pack::{Filed, MaterialEntry, Pack};

/// Looks at every rule.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.rules {
        let own = &entry.id.value;
        if let Some(at) = entry.clashes.iter().find(|other| other.value == *own) {
            faults.push(
                Fault::error("clash-with-itself", place(file, at), format!("`{own}` clashes with itself"))
                    .help("name the other rule"),
            );
        }
        if let Some(at) = entry.alternate.as_ref().map(|alternate| &alternate.rule).filter(|other| other.value == *own)
        {
            faults.push(
                Fault::error("clash-with-itself", place(file, at), format!("`{own}` takes turns with itself"))
                    .help("name the other rule"),
            );
        }
        together(file, entry, pack, faults);
    }
}

fn together(file: &str, rule: &RuleEntry, pack: &Pack, faults: &mut Vec<Fault>) {
    let used: Vec<&Filed<MaterialEntry>> = rule
        .materials
        .iter()
        .filter_map(|id| pack.materials.iter().find(|material| material.entry.id.value == id.value))
        .collect();
    for (nth, one) in used.iter().enumerate() {
        for (at, other) in rule.materials.iter().zip(&used).skip(nth + 1) {
            let days = days(one, other).max(days(other, one));
            if days > 0 {
                let (one, other) = (&one.entry.id.value, &other.entry.id.value);
                faults.push(
                    Fault::error(
                        "clash-with-itself",
                        place(file, at),
                        format!(
                            "`{}` uses `{one}` and `{other}` together, which are kept {days} days apart",
                            rule.id.value
                        ),
                    )
                    .help("write a rule for each of them; `alternate` lets them take turns"),
                );
            }
        }
    }
}

/// For how many days one material keeps another away.
fn days(one: &Filed<MaterialEntry>, other: &Filed<MaterialEntry>) -> u16 {
    let other = &other.entry;
    let means = |apart: &ApartEntry| {
        apart.material.as_ref().is_some_and(|material| material.value == other.id.value)
            || apart.class.as_ref().is_some_and(|class| other.classes.iter().any(|own| own.value == class.value))
    };
    one.entry.keep_apart.iter().filter(|apart| means(apart)).map(|apart| apart.days).max().unwrap_or(0)
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "clash-with-itself",
    trips: &[("rules/rose.yaml", "materials: [wettable-sulphur]", "materials: [wettable-sulphur, garden-oil]")],
    also: &[],
    at: "garden-oil]\n  alternate",
    says: "rules/rose.yaml:80:33: error[clash-with-itself]: `rose.sulphur-mildew` uses `wettable-sulphur` and `garden-oil` together, which are kept 14 days apart\n  help: write a rule for each of them; `alternate` lets them take turns",
    just_not: &[("rules/rose.yaml", "materials: [garden-oil]", "materials: [garden-oil, granular-feed]")],
};

#[cfg(test)]
mod tests {
    use crate::check::cases::said;

    #[test]
    fn a_rule_neither_clashes_nor_takes_turns_with_itself() {
        assert_eq!(
            said(&[(
                "rules/rose.yaml",
                "alternate: {with: rose.oil-aphids, gap: 14 days}",
                "alternate: {with: rose.sulphur-mildew, gap: 14 days}\n  clashes: [rose.sulphur-mildew]"
            )]),
            "rules/rose.yaml:81:21: error[clash-with-itself]: `rose.sulphur-mildew` takes turns with itself\n  help: name the other rule\n\
             rules/rose.yaml:82:13: error[clash-with-itself]: `rose.sulphur-mildew` clashes with itself\n  help: name the other rule"
        );
    }
}

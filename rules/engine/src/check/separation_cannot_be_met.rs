//! Works that come sooner than they may: a rule that is repeated faster than its own material allows, or that takes turns
//! with another inside the time that their materials are kept apart.

use crate::compile::rule::{RuleInfo, Subject};
use crate::compile::set::Set;
use crate::fault::Fault;
use crate::pack::expression::place;

/// Looks at what can be shown without a calendar: the longest interval against the shortest separation.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    for ((number, info), filed) in (0_u32..).zip(&set.rules).zip(&set.pack.rules) {
        let (file, entry) = (&*filed.file, &filed.entry);
        let own = days_apart(info, info, number);
        if let (Some((_, longest)), Some(every)) =
            (info.repeat.every, entry.repeat.as_ref().and_then(|repeat| repeat.every.as_ref()))
            && let Some((days, what)) = own
            && longest < days
        {
            let message = format!(
                "`{}` is repeated after {longest} days at most, but is kept {days} days apart from {}",
                info.id,
                named(what, set)
            );
            faults.push(
                Fault::error("separation-cannot-be-met", place(file, every), message)
                    .help("lengthen the interval, or let another material take turns"),
            );
        }
        if let (Some((other, gap, _)), Some(alternate)) = (info.alternate, &entry.alternate)
            && let Some(partner) = set.rules.get(other as usize)
        {
            let apart = days_apart(info, partner, other).max(days_apart(partner, info, number));
            if let Some((days, what)) = apart
                && gap < days
            {
                let message = format!(
                    "`{}` follows `{}` after {gap} days, but is kept {days} days apart from {}",
                    info.id,
                    partner.id,
                    named(what, set)
                );
                faults.push(
                    Fault::error("separation-cannot-be-met", place(file, &alternate.gap), message)
                        .help("lengthen `gap`, or choose another partner"),
                );
            }
        }
    }
}

/// The longest separation that one rule keeps from another, and from what of it.
fn days_apart(one: &RuleInfo, other: &RuleInfo, number: u32) -> Option<(u16, Subject)> {
    one.apart.iter().filter(|apart| other.is(apart.from, number)).map(|apart| (apart.days, apart.from)).max()
}

fn named(what: Subject, set: &Set) -> String {
    let (kind, name) = match what {
        Subject::Job(number) => ("the job", set.names.jobs.name(number)),
        Subject::Material(number) => ("the material", set.names.materials.name(number)),
        Subject::Class(number) => ("the class", set.names.classes.name(number)),
        Subject::Rule(number) => ("the rule", set.rules.get(number as usize).map_or("", |rule| rule.id.as_str())),
    };
    format!("{kind} `{name}`")
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "separation-cannot-be-met",
    trips: &[(
        "materials/materials.yaml",
        "keep_apart: [{class: sulphur-spray, days: 14}]",
        "keep_apart: [{class: sulphur-spray, days: 14}, {class: oil, days: 11}]",
    )],
    also: &[],
    at: "7..10 days}",
    says: "rules/rose.yaml:68:19: error[separation-cannot-be-met]: `rose.oil-aphids` is repeated after 10 days at most, but is kept 11 days apart from the class `oil`\n  help: lengthen the interval, or let another material take turns",
    just_not: &[(
        "materials/materials.yaml",
        "keep_apart: [{class: sulphur-spray, days: 14}]",
        "keep_apart: [{class: sulphur-spray, days: 14}, {class: oil, days: 10}]",
    )],
};

#[cfg(test)]
mod tests {
    use crate::check::cases::said;

    #[test]
    fn rules_that_take_turns_leave_their_materials_the_time_they_need() {
        assert_eq!(
            said(&[("rules/rose.yaml", "gap: 14 days", "gap: 13 days")]),
            "rules/rose.yaml:81:43: error[separation-cannot-be-met]: `rose.sulphur-mildew` follows `rose.oil-aphids` after 13 days, but is kept 14 days apart from the class `sulphur-spray`\n  help: lengthen `gap`, or choose another partner"
        );
    }
}

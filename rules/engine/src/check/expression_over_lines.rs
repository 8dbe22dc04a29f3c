//! An expression that can't be pointed into: it goes on over several lines, or is written with escapes.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{At, Pack};

/// Looks at every expression: the columns of faults are those of its file only where it stands there as it is read.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    each(pack, &mut |file, written| {
        // What a set above added to an entry stands in that set's file.
        let above =
            || !pack.laid.layers.is_empty() && pack.files.keys().any(|other| stands_as_read(pack, other, written));
        if !stands_as_read(pack, file, written) && !above() {
            faults.push(
                Fault::error(
                    "expression-over-lines",
                    place(file, written),
                    "an expression goes on over several lines, or is written with escapes",
                )
                .help("write it on one line in double quotes, as it is"),
            );
        }
    });
}

fn stands_as_read(pack: &Pack, file: &str, written: &At<String>) -> bool {
    let Some(text) = pack.files.get(file) else { return true };
    let place = place(file, written);
    let line = usize::try_from(place.line).ok().and_then(|line| text.lines().nth(line.checked_sub(1)?));
    let from = usize::try_from(place.column).unwrap_or(1).saturating_sub(1);
    let from = from + usize::from(pack.is_quoted(file, written));
    let rest = line.and_then(|line| line.char_indices().nth(from).and_then(|(at, _)| line.get(at..)));
    rest.is_some_and(|rest| rest.starts_with(written.value.as_str()))
}

/// Every expression of a pack with its file.
fn each(pack: &Pack, visit: &mut dyn FnMut(&str, &At<String>)) {
    for filed in &pack.rules {
        let rule = &filed.entry;
        let conditions = rule.whom.traits.iter().chain(&rule.when).chain(rule.hold.iter().map(|hold| &hold.condition));
        conditions.for_each(|condition| visit(&filed.file, &condition.0));
        for window in &rule.window.0 {
            [&window.opens, &window.best, &window.closes]
                .into_iter()
                .flatten()
                .for_each(|side| visit(&filed.file, side));
        }
        for amount in &rule.amount {
            amount.inputs.values().for_each(|input| visit(&filed.file, input));
        }
    }
    for filed in &pack.problems {
        let problem = &filed.entry;
        problem.favours.iter().chain(&problem.threshold).for_each(|condition| visit(&filed.file, &condition.0));
    }
    for filed in &pack.plants {
        filed.entry.stage_model.iter().for_each(|model| visit(&filed.file, &model.begins));
        filed.entry.grown.iter().for_each(|grown| visit(&filed.file, &grown.0));
    }
    for filed in &pack.cautions {
        filed.entry.unless.iter().for_each(|unless| visit(&filed.file, &unless.0));
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "expression-over-lines",
    trips: &[("rules/rose.yaml", "if: \"season.heat_left < 550 °Cd\"", "if: \"season.heat_left\n        < 550 °Cd\"")],
    also: &[],
    at: "\"season.heat_left\n",
    says: "rules/rose.yaml:11:11: error[expression-over-lines]: an expression goes on over several lines, or is written with escapes\n  help: write it on one line in double quotes, as it is",
    just_not: &[("rules/rose.yaml", "if: \"season.heat_left < 550 °Cd\"", "if: 'season.heat_left < 550 °Cd'")],
};

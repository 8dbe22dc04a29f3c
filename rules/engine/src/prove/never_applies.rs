//! Rules that something holds whenever they are due: a hold of their own that is always true, a guard that covers them.

use super::Prover;
use super::confirm::{self, is_held};
use super::everywhere::certificate;
use super::formula::{Formula, Rules};
use super::search::{Aim, Found, Search};
use crate::fault::{Fault, Place};
use crate::pack::expression::place;

const CODE: &str = "never-applies";

/// What holds a rule.
#[derive(Clone, Copy)]
enum By {
    Hold(usize),
    /// A guard, by its number in the set.
    Guard(u32),
}

/// Looks at every rule with a hold or under a guard.
pub(crate) fn look(prover: &Prover<'_>, faults: &mut Vec<Fault>) {
    for (number, info) in (0_u32..).zip(&prover.set.rules) {
        let blockers = blockers(prover, number);
        if blockers.is_empty() {
            continue;
        }
        let found = prover.anywhere(number, |rules, at| rules.applies(at, true));
        prover.note(found, CODE, &[&info.id]);
        let Found::No { cells } = found else { continue };
        // A rule that is never due is another finding.
        if prover.anywhere(number, |rules, at| rules.asked_for(at, true)) != Found::Yes {
            continue;
        }
        let alone = blockers
            .iter()
            .copied()
            .find(|by| matches!(prover.anywhere(number, |rules, at| due_without(rules, at, *by)), Found::No { .. }));
        let (here, what, related) = told(prover, number, alone);
        let mut fault = Fault::warning(CODE, here, format!("`{}` is held whenever it is due: {what}", info.id))
            .help("take the rule out, or give it a day: narrow what holds it, or name in `blocks` only what is meant");
        fault.related = related;
        for (ground, at) in prover.stands(number) {
            let search = Search::of(ground, Aim::Witness, &due_and_held(ground.rules(), at));
            let (found, witness) = confirm::witness(&search, ground, &[at], &mut |answer| {
                is_held(answer, &info.id, &["hold", "guard"], None).then(|| format!("`{}` is due and held", info.id))
            });
            prover.note(found, CODE, &[&info.id]);
            if witness.is_some() {
                fault.witness = witness;
                break;
            }
        }
        // Without a question that shows it nothing is told.
        if fault.witness.is_some() {
            fault.certificate = Some(certificate(format!("`{}` never applies", info.id), cells));
            faults.push(fault);
        }
    }
}

fn blockers(prover: &Prover<'_>, rule: u32) -> Vec<By> {
    let mut out: Vec<By> = Vec::new();
    for (ground, at) in prover.stands(rule) {
        let Some(written) = ground.book.rules.get(at as usize) else { continue };
        if out.is_empty() {
            out.extend((0..written.holds.len()).map(By::Hold));
        }
        for guard in &written.guards {
            let number = ground.book.rules.get(*guard as usize).map(|guard| guard.rule);
            if let Some(number) = number
                && !out.iter().any(|by| matches!(by, By::Guard(known) if *known == number))
            {
                out.push(By::Guard(number));
            }
        }
    }
    out
}

/// It is due, and something holds it: what does is then told, too.
fn due_and_held(rules: Rules<'_>, at: u32) -> Formula {
    let rule = rules.book.rules.get(at as usize);
    let holds = (0..rule.map_or(0, |rule| rule.holds.len())).map(|hold| rules.holds(at, hold, true));
    let guards = rule.into_iter().flat_map(|rule| &rule.guards).map(|guard| rules.asked_for(*guard, true));
    Formula::All(vec![rules.asked_for(at, true), Formula::Any(holds.chain(guards).collect())])
}

/// It is due, and this does not hold it.
fn due_without(rules: Rules<'_>, at: u32, by: By) -> Formula {
    let passes = match by {
        By::Hold(hold) => rules.holds(at, hold, false),
        By::Guard(number) => {
            let guards = rules.book.rules.get(at as usize).map(|rule| rule.guards.as_slice()).unwrap_or_default();
            let is_it = |guard: &&u32| rules.book.rules.get(**guard as usize).is_some_and(|g| g.rule == number);
            guards.iter().find(is_it).map_or(Formula::All(Vec::new()), |guard| rules.asked_for(*guard, false))
        }
    };
    Formula::All(vec![rules.asked_for(at, true), passes])
}

fn told(prover: &Prover<'_>, rule: u32, by: Option<By>) -> (Place, String, Vec<(Place, String)>) {
    let filed = prover.set.pack.rules.get(rule as usize);
    let own = filed.map(|filed| place(&filed.file, &filed.entry.id)).unwrap_or_default();
    match by {
        Some(By::Hold(hold)) => {
            let here = filed.and_then(|filed| {
                let hold = filed.entry.hold.get(hold)?;
                Some(place(hold.file(&filed.file), &hold.condition.0))
            });
            (here.unwrap_or(own), "this hold is then always true".to_owned(), Vec::new())
        }
        Some(By::Guard(guard)) => {
            let guard = prover.set.pack.rules.get(guard as usize);
            let id = guard.map_or("", |guard| guard.entry.id.value.as_str());
            let there = guard.map(|guard| (place(&guard.file, &guard.entry.id), "the guard stands here".to_owned()));
            (own, format!("the guard `{id}` then always stops it"), there.into_iter().collect())
        }
        None => (own, "its holds and guards together leave it no day".to_owned(), Vec::new()),
    }
}

#[cfg(test)]
pub(crate) const CASE: crate::check::cases::Case = crate::check::cases::Case {
    code: CODE,
    trips: &[("rules/rose.yaml", "if: \"soil.moisture = dry\"", "if: \"soil.moisture in {dry, moist, wet}\"")],
    also: &[],
    at: "\"soil.moisture in",
    says: "rules/rose.yaml:33:11: warning[never-applies]: `rose.feed` is held whenever it is due: this hold is then always true\n  help: take the rule out, or give it a day: narrow what holds it, or name in `blocks` only what is meant",
    just_not: &[("rules/rose.yaml", "if: \"soil.moisture = dry\"", "if: \"soil.moisture in {dry, wet}\"")],
};

//! Do and don't on one plant, one day and one set of facts, with nothing in the language that settles it.

use super::Prover;
use super::confirm::{self, is_held, is_there};
use super::formula::Formula;
use super::ground::Ground;
use super::search::{Aim, Search};
use super::settled::{is_ordered, jobs_opposed, says_clash};
use crate::compile::rule::RuleInfo;
use crate::decide::opposed::safety;
use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::rule::Kind;

const CODE: &str = "contradiction";

/// A rule of a plant: its number among the plant's, its number in the set, what it is.
type Told<'s> = (u32, u32, &'s RuleInfo);

/// Looks at every pair of rules of a plant that nothing settles.
pub(crate) fn look(prover: &Prover<'_>, faults: &mut Vec<Fault>) {
    let mut found: Vec<(u32, u32)> = Vec::new();
    for ground in prover.grounds() {
        let rules: Vec<Told<'_>> = (0_u32..)
            .zip(&ground.book.rules)
            .filter_map(|(at, rule)| Some((at, rule.rule, prover.set.rules.get(rule.rule as usize)?)))
            .filter(|(_, _, info)| info.kind != Kind::Know && info.blocks.is_none())
            .collect();
        for (place, a) in rules.iter().enumerate() {
            for b in rules.iter().skip(place + 1) {
                let fault = match (a.2.kind, b.2.kind) {
                    (Kind::Task, Kind::Task) if opposed_and_open(a, b) => opposed(prover, ground, a, b),
                    (Kind::Avoid, Kind::Task) if forbids(a, b) => do_and_dont(prover, ground, a, b),
                    (Kind::Task, Kind::Avoid) if forbids(b, a) => do_and_dont(prover, ground, b, a),
                    _ => None,
                };
                // A pair for several plants is told once.
                if let Some(fault) = fault
                    && !found.contains(&(a.1, b.1))
                {
                    found.push((a.1, b.1));
                    faults.push(fault);
                }
            }
        }
    }
}

/// Opposed works of one class, between which only the score and the id decide.
fn opposed_and_open(a: &Told<'_>, b: &Told<'_>) -> bool {
    jobs_opposed(a.2, b.2)
        && safety(a.2) == safety(b.2)
        && !says_clash((a.1, a.2), (b.1, b.2))
        && !is_ordered((a.1, a.2), (b.1, b.2))
}

/// Something to leave alone that speaks of a task's work, and neither blocks nor names it.
fn forbids(avoid: &Told<'_>, task: &Told<'_>) -> bool {
    let (a, t) = (avoid.2, task.2);
    let job = a.job.is_none() || a.job == t.job;
    let material = a.materials.is_empty() || a.materials.iter().any(|material| t.materials.contains(material));
    let manner = a.manner.is_none() || a.manner == t.manner;
    (a.job.is_some() || !a.materials.is_empty())
        && job
        && material
        && manner
        && !says_clash((avoid.1, a), (task.1, t))
        && !is_ordered((avoid.1, a), (task.1, t))
}

fn both(ground: &Ground<'_>, a: u32, b: u32) -> Formula {
    let rules = ground.rules();
    Formula::All(vec![rules.applies(a, true), rules.applies(b, true)])
}

fn opposed(prover: &Prover<'_>, ground: &Ground<'_>, a: &Told<'_>, b: &Told<'_>) -> Option<Fault> {
    let (first, second) = (a.2.id.as_str(), b.2.id.as_str());
    let search = Search::of(ground, Aim::Witness, &both(ground, a.0, b.0));
    let (found, witness) = confirm::witness(&search, ground, &[a.0, b.0], &mut |answer| {
        let beaten = |by: &str, loser: &str| is_there(answer, by) && is_held(answer, loser, &["clash"], Some(by));
        if beaten(first, second) {
            Some(format!("`{first}` is advised and `{second}` held, by the score alone"))
        } else if beaten(second, first) {
            Some(format!("`{second}` is advised and `{first}` held, by the score alone"))
        } else {
            None
        }
    });
    prover.note(found, CODE, &[first, second]);
    let mut fault = fault(
        prover,
        (a.1, b.1),
        format!("`{first}` and `{second}` undo each other, come on the same day, and nothing says which goes first"),
        "put them in order with `before`, name one in `clashes` of the other, or hold one of them while the other is due",
    )?;
    fault.witness = Some(witness?);
    Some(fault)
}

fn do_and_dont(prover: &Prover<'_>, ground: &Ground<'_>, avoid: &Told<'_>, task: &Told<'_>) -> Option<Fault> {
    let (dont, work) = (avoid.2.id.as_str(), task.2.id.as_str());
    let search = Search::of(ground, Aim::Witness, &both(ground, avoid.0, task.0));
    let (found, witness) = confirm::witness(&search, ground, &[task.0], &mut |answer| {
        (is_there(answer, work) && is_held(answer, dont, &["avoid"], None))
            .then(|| format!("`{work}` is advised and `{dont}` says to leave it alone"))
    });
    prover.note(found, CODE, &[dont, work]);
    let mut fault = fault(
        prover,
        (avoid.1, task.1),
        format!("`{dont}` says to leave alone what `{work}` orders on the same day"),
        "give the one `blocks`, so that it holds the work, or `clashes`; or narrow the condition of either",
    )?;
    fault.witness = Some(witness?);
    Some(fault)
}

fn fault(prover: &Prover<'_>, pair: (u32, u32), message: String, help: &str) -> Option<Fault> {
    let filed = |rule: u32| prover.set.pack.rules.get(rule as usize);
    let (one, other) = (filed(pair.0)?, filed(pair.1)?);
    let mut fault = Fault::warning(CODE, place(&one.file, &one.entry.id), message).help(help);
    fault.related.push((place(&other.file, &other.entry.id), "the other stands here".to_owned()));
    Some(fault)
}

#[cfg(test)]
pub(crate) const CASE: crate::check::cases::Case = crate::check::cases::Case {
    code: CODE,
    trips: &[(
        "rules/rose.yaml",
        "",
        "- id: rose.no-feed\n  kind: avoid\n  job: feed\n  title: {en: \"No feed\", es: \"Sin abono\"}\n  for: {plant: rose}\n  when: \"signs has aphids\"\n  evidence: consensus\n  strength: avoid\n  why: {en: \"Aphids like soft tips.\", es: \"Al pulgón le gusta lo tierno.\"}\n  sources: [recalled]\n",
    )],
    also: &[],
    at: "rose.no-feed",
    says: "rules/rose.yaml:92:7: warning[contradiction]: `rose.no-feed` says to leave alone what `rose.feed` orders on the same day\n  help: give the one `blocks`, so that it holds the work, or `clashes`; or narrow the condition of either\n  rules/rose.yaml:27:7: the other stands here",
    just_not: &[(
        "rules/rose.yaml",
        "",
        "- id: rose.no-feed\n  kind: avoid\n  job: feed\n  title: {en: \"No feed\", es: \"Sin abono\"}\n  for: {plant: rose}\n  when: \"signs has aphids\"\n  clashes: [rose.feed]\n  evidence: consensus\n  strength: avoid\n  why: {en: \"Aphids like soft tips.\", es: \"Al pulgón le gusta lo tierno.\"}\n  sources: [recalled]\n",
    )],
};

//! Plants defects, looks whether they are found, and asks every witness again.

use lammas_engine::check::check_and_prove;
use lammas_engine::compile::set::Set;
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::fault::Fault;
use lammas_engine::question::said::Said;
use lammas_engine::scenario;

use super::defects::Kind;
use super::garden::{Draws, Garden};

/// What came of one kind.
#[derive(Default)]
pub(crate) struct Row {
    pub(crate) planted: usize,
    pub(crate) found: usize,
    pub(crate) witnesses: usize,
    pub(crate) verified: usize,
    pub(crate) certificates: usize,
    /// What was not found, or found without standing up.
    pub(crate) missed: Vec<String>,
}

/// The most draws for one defect: not every rule can have every defect.
const MOST_DRAWS: usize = 60;

/// Plants so many defects of a kind into these sets, each into a set of its own.
pub(crate) fn run(kind: &Kind, gardens: &[(&Garden, usize)], seed: u64) -> Row {
    let mut row = Row::default();
    let mut draws = Draws(seed);
    for (healthy, times) in gardens {
        for _ in 0..*times {
            let mut garden = (*healthy).clone();
            let planted = (0..MOST_DRAWS).find_map(|_| {
                garden = (*healthy).clone();
                (kind.plant)(&mut garden, &mut draws)
            });
            let Some(planted) = planted else { continue };
            row.planted += 1;
            let (checked, proven) = check_and_prove(&garden.files());
            let own: Vec<&Fault> = checked
                .faults
                .iter()
                .filter(|fault| {
                    fault.code == kind.code
                        && planted
                            .ids
                            .iter()
                            .any(|id| fault.message.contains(&format!("`{id}`")) || fault.message.contains(id))
                })
                .collect();
            if own.is_empty() {
                let others: Vec<&str> = checked.faults.iter().map(|fault| fault.message.as_str()).take(3).collect();
                let open = proven.map(|proven| proven.undecided).unwrap_or_default();
                row.missed
                    .push(format!("{}: {:?} not found, but {others:?}, undecided {open:?}", kind.name, planted.ids));
                continue;
            }
            row.found += 1;
            row.certificates += usize::from(own.iter().any(|fault| fault.certificate.is_some()));
            for fault in own {
                let Some(witness) = &fault.witness else { continue };
                row.witnesses += 1;
                if checked.set.as_ref().is_some_and(|set| is_shown(set, fault, &witness.request)) {
                    row.verified += 1;
                } else {
                    row.missed.push(format!("{}: its witness shows nothing: {}", kind.name, witness.request));
                }
            }
        }
    }
    row
}

/// Whether the answer to a witness shows what its finding says, asked anew and read without the prover's help.
fn is_shown(set: &Set, fault: &Fault, request: &str) -> bool {
    let Ok(said) = serde_json::from_str::<Said>(request) else { return false };
    let Ok(question) = scenario::question(set, &said) else { return false };
    let Some(answer) = whole::answer(set, &question, "en", Extent::STANDARD) else { return false };
    let named: Vec<&str> = fault.message.split('`').skip(1).step_by(2).collect();
    let [first, rest @ ..] = named.as_slice() else { return false };
    let advised = |id: &str| answer.tasks.iter().any(|t| t.id == id) || answer.notes.iter().any(|n| n.id == id);
    let held = |id: &str| answer.held.iter().any(|held| held.id == id);
    match (fault.code, rest) {
        ("contradiction", [second, ..]) => advised(first) && held(second) || held(first) && advised(second),
        ("never-applies", _) => held(first) && !advised(first),
        ("masked", [second, ..]) => {
            let by = answer
                .held
                .iter()
                .any(|held| held.id == *first && held.blocks.iter().any(|block| block.rule == Some(*second)));
            by || advised(first) && advised(second)
        }
        ("duplicate-in-meaning", [second, ..]) => (advised(first) || held(first)) && (advised(second) || held(second)),
        ("reckoned-above-maximum", _) => answer
            .tasks
            .iter()
            .find(|task| task.id == *first)
            .is_some_and(|task| task.amounts.iter().any(|amount| amount.value.is_some() && !amount.capped)),
        _ => false,
    }
}

/// The rows as a table for people.
pub(crate) fn shown(rows: &[(&Kind, Row)]) -> String {
    let mut out = "| defect | code | planted | found | witnesses | verified | certificates |\n| --- | --- | --- | --- | --- | --- | --- |\n".to_owned();
    for (kind, row) in rows {
        out += &format!(
            "| {} | {} | {} | {} | {} | {} | {} |\n",
            kind.name, kind.code, row.planted, row.found, row.witnesses, row.verified, row.certificates
        );
    }
    out
}

//! Two rules of one meaning: the same for the same plants at the same time, but for their ids and words.

use std::collections::BTreeMap;

use super::Prover;
use super::confirm::{self, is_there};
use super::formula::Formula;
use super::meaning;
use super::search::{Aim, Found, Search};
use crate::fault::Fault;
use crate::pack::expression::place;

const CODE: &str = "duplicate-in-meaning";

/// Looks at the meaning of every rule.
pub(crate) fn look(prover: &Prover<'_>, faults: &mut Vec<Fault>) {
    let mut known: BTreeMap<String, u32> = BTreeMap::new();
    for (number, filed) in (0_u32..).zip(&prover.set.pack.rules) {
        let meaning = meaning::of(&filed.entry);
        let Some(first) = known.get(&meaning).copied() else {
            known.insert(meaning, number);
            continue;
        };
        let Some(other) = prover.set.pack.rules.get(first as usize) else { continue };
        let (one, two) = (other.entry.id.value.as_str(), filed.entry.id.value.as_str());
        let mut fault = Fault::warning(
            CODE,
            place(&filed.file, &filed.entry.id),
            format!("`{two}` means the same as `{one}`: only the id and the words differ"),
        )
        .help("keep one of the two");
        fault.related.push((place(&other.file, &other.entry.id), "the other stands here".to_owned()));
        let mut outcome = Found::Undecided;
        for (ground, at) in prover.stands(number) {
            let Some((beside, _)) = (0_u32..).zip(&ground.book.rules).find(|(_, rule)| rule.rule == first) else {
                continue;
            };
            let rules = ground.rules();
            // First with nothing in their way, else however they stand there.
            let ways = [
                Formula::All(vec![rules.applies(at, true), rules.applies(beside, true)]),
                Formula::All(vec![rules.asked_for(at, true), rules.asked_for(beside, true)]),
            ];
            for formula in &ways {
                let search = Search::of(ground, Aim::Witness, formula);
                let (found, witness) = confirm::witness(&search, ground, &[at, beside], &mut |answer| {
                    let stands = |id: &str| is_there(answer, id) || answer.held.iter().any(|held| held.id == id);
                    (stands(one) && stands(two)).then(|| format!("`{one}` and `{two}` stand in one answer"))
                });
                outcome = found;
                fault.witness = witness;
                if fault.witness.is_some() {
                    break;
                }
            }
            if fault.witness.is_some() {
                break;
            }
        }
        prover.note(outcome, CODE, &[one, two]);
        if fault.witness.is_some() {
            faults.push(fault);
        }
    }
}

#[cfg(test)]
pub(crate) const CASE: crate::check::cases::Case = crate::check::cases::Case {
    code: CODE,
    trips: &[(
        "rules/rose.yaml",
        "",
        "- id: rose.burnt-petals\n  kind: know\n  title: {en: \"Burnt petals\", es: \"Pétalos tostados\"}\n  for: {plant: rose}\n  when: \"signs has scorched-petals\"\n  evidence: consensus\n  strength: do\n  why: {en: \"Heat burns petals; it is no disease.\", es: \"El calor quema los pétalos; no es una enfermedad.\"}\n  sources: [recalled]\n",
    )],
    also: &[],
    at: "rose.burnt-petals",
    says: "rules/rose.yaml:92:7: warning[duplicate-in-meaning]: `rose.burnt-petals` means the same as `rose.scorch-is-heat`: only the id and the words differ\n  help: keep one of the two\n  rules/rose.yaml:83:7: the other stands here",
    just_not: &[(
        "rules/rose.yaml",
        "",
        "- id: rose.burnt-petals\n  kind: know\n  title: {en: \"Burnt petals\", es: \"Pétalos tostados\"}\n  for: {plant: rose}\n  when: \"signs has scorched-petals\"\n  evidence: consensus\n  strength: do\n  why: {en: \"Shade keeps them.\", es: \"La sombra los conserva.\"}\n  sources: [recalled]\n",
    )],
};

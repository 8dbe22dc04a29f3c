//! Amounts that are reckoned and can come out above what a material of the rule bears, because nothing caps them.

use lammas_agronomy::units::convert_text;

use super::Prover;
use super::confirm;
use super::formula::Formula;
use super::ground::Ground;
use super::request::{self, Done};
use super::search::{Aim, Case, Found, Search};
use crate::compile::amount::{Amount, InputFrom, door_unit};
use crate::compile::term::Term;
use crate::explain::answer::Answer;
use crate::fact::catalogue::{FactType, Giver};
use crate::fact::value::Value;
use crate::fault::Fault;
use crate::pack::expression::place;

const CODE: &str = "reckoned-above-maximum";
/// Shares of the range of an input that are tried, the largest first: amounts mostly grow with their inputs.
const SHARES: [f64; 5] = [1.0, 0.0, 0.5, 0.1, 0.01];
/// The most questions that are asked of one amount.
const MOST_ASKED: usize = 700;

/// Looks at every amount that is reckoned and not capped.
pub(crate) fn look(prover: &Prover<'_>, faults: &mut Vec<Fault>) {
    for ((number, info), filed) in (0_u32..).zip(&prover.set.rules).zip(&prover.set.pack.rules) {
        for (which, written) in filed.entry.amount.iter().enumerate() {
            let Some(call) = written.call.as_ref().filter(|_| written.max_of.is_none()) else { continue };
            let bears = info.materials.iter().any(|material| {
                prover.set.materials.get(usize::from(*material)).is_some_and(|material| !material.maximum.is_empty())
            });
            if !bears {
                continue;
            }
            for (ground, at) in prover.stands(number) {
                let Some(amount) = ground.book.rules.get(at as usize).and_then(|rule| rule.amounts.get(which)) else {
                    continue;
                };
                if let Some((witness, says)) = exceeds(prover, ground, at, (which, amount)) {
                    let mut fault =
                        Fault::warning(CODE, place(&filed.file, call), format!("this amount of `{}` {says}", info.id))
                            .help("name the material in `max_of`: the amount is then never above its maximum");
                    fault.witness = Some(witness);
                    faults.push(fault);
                    break;
                }
            }
        }
    }
}

/// A question whose answer has the amount above the least maximum of a material of the rule.
fn exceeds(
    prover: &Prover<'_>,
    ground: &Ground<'_>,
    at: u32,
    (which, amount): (usize, &Amount),
) -> Option<(super::Witness, String)> {
    let id = prover.set.rules.get(ground.book.rules.get(at as usize)?.rule as usize)?.id.as_str();
    let formula: Formula = ground.rules().applies(at, true);
    let search = Search::of(ground, Aim::Witness, &formula);
    let inputs: Vec<(u32, Vec<Value>)> = inputs(ground, amount);
    let mut shown = None;
    let mut asked = 0;
    let found = search.run(&mut |case: &Case| {
        let mut choice = vec![0_usize; inputs.len()];
        loop {
            if asked >= MOST_ASKED {
                return true;
            }
            asked += 1;
            let mut tried = case.clone();
            for ((probe, values), at) in inputs.iter().zip(&choice) {
                // What the condition reads stays as the condition wants it.
                let free = !tried.terms.iter().any(|(known, _)| known == probe);
                if let Some(value) = values.get(*at).filter(|_| free) {
                    tried.terms.push((*probe, vec![*value]));
                }
            }
            if let Some(body) = request::of(&tried, tried.day(false), &[at], Done::AsAsked, ground) {
                let says = confirm::ask(ground.set, &body, |answer| above(answer, id, which, ground));
                if let Some(Some(says)) = says {
                    shown = Some((super::Witness { request: body.to_string(), shows: says.clone() }, says));
                    return true;
                }
            }
            if !next(&mut choice, &inputs) {
                return false;
            }
        }
    });
    // Accepted without a witness: the questions ran out.
    let found = match (&shown, found) {
        (None, Found::Yes) => Found::Undecided,
        (_, found) => found,
    };
    prover.note(found, CODE, &[id]);
    shown
}

/// The next combination of values; false after the last.
fn next(choice: &mut [usize], inputs: &[(u32, Vec<Value>)]) -> bool {
    for (at, (_, values)) in choice.iter_mut().zip(inputs) {
        *at += 1;
        if *at < values.len() {
            return true;
        }
        *at = 0;
    }
    false
}

/// The facts that the caller gives among the inputs, each with values over its range.
fn inputs(ground: &Ground<'_>, amount: &Amount) -> Vec<(u32, Vec<Value>)> {
    let mut out: Vec<(u32, Vec<Value>)> = Vec::new();
    for input in &amount.inputs {
        let (InputFrom::Number(term, _) | InputFrom::Choice(term, _)) = &input.from else { continue };
        term.walk(&mut |leaf| {
            let Term::Fact(fact) = leaf else { return };
            let entry = fact.entry();
            if entry.giver != Giver::Caller {
                return;
            }
            let values: Vec<Value> = match (entry.ty, entry.range) {
                (FactType::Choice(list), _) => {
                    (0..list.values.len()).filter_map(|at| u16::try_from(at).ok()).map(Value::Choice).collect()
                }
                (_, Some((low, high))) => {
                    SHARES.iter().map(|share| Value::Number(entry.step.round(low + (high - low) * share))).collect()
                }
                _ => return,
            };
            let probe = ground.book.probes.iter().position(|known| known == leaf).and_then(|at| u32::try_from(at).ok());
            if let Some(probe) = probe
                && !out.iter().any(|(known, _)| *known == probe)
            {
                out.push((probe, values));
            }
        });
    }
    out
}

/// What an answer shows of an amount that is above the least maximum of a material.
fn above(answer: &Answer<'_>, id: &str, which: usize, ground: &Ground<'_>) -> Option<String> {
    let task = answer.tasks.iter().find(|task| task.id == id)?;
    let amount = task.amounts.get(which)?;
    let (value, unit) = (amount.value?, amount.unit.as_deref()?);
    let rule = ground.set.rules.iter().find(|rule| rule.id == id)?;
    rule.materials.iter().find_map(|material| {
        let name = ground.set.names.materials.name(*material);
        let most = ground.set.materials.get(usize::from(*material))?;
        let (_, bears, of) = most
            .maximum
            .iter()
            .filter(|(_, most, of)| convert_text(*most, door_unit(of), door(unit)).is_ok_and(|most| value > most))
            .min_by(|a, b| a.1.total_cmp(&b.1))?;
        Some(format!("comes out as {value} {unit}, and `{name}` bears {bears} {}", of.symbol))
    })
}

/// A unit as it is shown, by the name that the door of quantities knows.
fn door(unit: &str) -> &str {
    match crate::unit::Unit::find(unit) {
        Some(known) => door_unit(known),
        None => unit,
    }
}

#[cfg(test)]
pub(crate) const CASE: crate::check::cases::Case = crate::check::cases::Case {
    code: CODE,
    trips: &[(
        "rules/rose.yaml",
        "      typical: {min: 30, max: 60, unit: g}\n      max_of: granular-feed\n",
        "      call: product_for_rate\n      with: {nutrient_rate: 3.1 g/m², area: 2 m², analysis: 10 %}\n",
    )],
    also: &[],
    at: "product_for_rate",
    says: "rules/rose.yaml:43:13: warning[reckoned-above-maximum]: this amount of `rose.feed` comes out as 62 g, and `granular-feed` bears 60 g\n  help: name the material in `max_of`: the amount is then never above its maximum",
    just_not: &[(
        "rules/rose.yaml",
        "      typical: {min: 30, max: 60, unit: g}\n      max_of: granular-feed\n",
        "      call: product_for_rate\n      with: {nutrient_rate: 3 g/m², area: 2 m², analysis: 10 %}\n",
    )],
};

//! Values of a term between which no test of it can tell: if none of them passes, no value does.

use super::may_be_absent::may_be_absent;
use crate::compile::book::PlantBook;
use crate::compile::call;
use crate::compile::path::SERIES;
use crate::compile::set::Set;
use crate::compile::term::{Term, Test};
use crate::fact::catalogue::{Fact, FactType};
use crate::fact::step::Step;
use crate::fact::value::Value;

/// At least one value for every answer that these tests can give together.
#[must_use]
pub(crate) fn samples(term: &Term, tests: &[&Test], book: &PlantBook, set: &Set) -> Vec<Value> {
    let mut out = Vec::new();
    if may_be_absent(term) {
        out.push(Value::Absent);
    }
    let mut cuts = Vec::new();
    let mut choices = None;
    let mut truth = false;
    for test in tests {
        match test {
            Test::Number(_, cut) => cuts.push(*cut),
            Test::OneOfNumbers(list) => cuts.extend(list),
            Test::Choice(_, choice) => choices = choices.max(Some(choice + 1)),
            Test::OneOf(list) => choices = choices.max(list.iter().max().map(|choice| choice + 1)),
            Test::Holds => truth = true,
            Test::IsAbsent => {}
        }
    }
    if let Some(named) = choices {
        out.extend((0..count(term, book, set).max(named)).map(Value::Choice));
    } else if !cuts.is_empty() {
        out.extend(numbers(term, &cuts).into_iter().map(Value::Number));
    } else if truth {
        out.extend([Value::Truth(false), Value::Truth(true)]);
    } else {
        // Only its absence is asked: any value stands for all.
        out.push(Value::Truth(true));
    }
    out
}

/// How many choices there are.
fn count(term: &Term, book: &PlantBook, set: &Set) -> u16 {
    let many = match term {
        Term::Trait(number) => book.names.values.get(usize::from(*number)).map_or(0, crate::compile::names::Index::len),
        Term::Severity(_) => crate::fact::choices::SEVERITY.values.len(),
        Term::Fact(fact) => match fact.entry().ty {
            FactType::Choice(list) => list.values.len(),
            FactType::Plant => set.names.plants.len(),
            FactType::Stage => book.names.stages.len(),
            _ => 0,
        },
        _ => 0,
    };
    u16::try_from(many).unwrap_or(u16::MAX)
}

/// The range of a term's number in its own unit, where it has one.
#[must_use]
pub(super) fn range(term: &Term) -> Option<(f64, f64)> {
    use lammas_agronomy::season::Aggregate;
    match term {
        // What is summed can grow beyond the range of a day.
        Term::Past(Aggregate::Sum, ..) | Term::Ahead(Aggregate::Sum, ..) => None,
        Term::Past(_, series, _) | Term::Ahead(_, series, _) => {
            SERIES.iter().find(|(_, row, _)| row == series).and_then(|(.., fact): &(_, _, Fact)| fact.entry().range)
        }
        other => other.fact().and_then(|fact| fact.entry().range),
    }
}

/// Numbers at, between and beyond the cuts; of a fact only those that its step and range allow.
fn numbers(term: &Term, cuts: &[f64]) -> Vec<f64> {
    let mut out = Vec::new();
    match call::step(term) {
        Some(step) => {
            // A value is a multiple of its step, so the nearest multiples on both sides of each cut stand for every stretch.
            let width = width(step);
            for cut in cuts {
                let near = step.round(*cut);
                out.extend([near - width, near, near + width].map(|value| step.round(value)));
            }
        }
        None => {
            let mut sorted = cuts.to_vec();
            sorted.sort_by(f64::total_cmp);
            out.extend(sorted.windows(2).filter_map(|pair| Some((pair.first()? + pair.last()?) / 2.0)));
            out.extend(sorted.iter().flat_map(|cut| [cut - 1.0, *cut, cut + 1.0]));
        }
    }
    if let Some((low, high)) = range(term) {
        out.retain(|value| (low..=high).contains(value));
        out.extend([low, high]);
    }
    out
}

/// The width of a step.
fn width(step: Step) -> f64 {
    // A step does not tell its width, but it leaves alone what is a multiple of it. A test holds the list complete.
    [0.01, 0.05, 0.1, 0.5, 1.0, 5.0].into_iter().find(|width| (step.round(*width) - width).abs() < 1e-9).unwrap_or(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_step_of_the_catalogue_has_its_width() {
        for (step, expected) in
            [((1, 100), 0.01), ((1, 20), 0.05), ((1, 10), 0.1), ((1, 2), 0.5), ((1, 1), 1.0), ((5, 1), 5.0)]
        {
            assert_eq!(width(Step::new(step.0, step.1)), expected, "{step:?}");
        }
        for fact in crate::fact::catalogue::CATALOGUE {
            assert_eq!(fact.step.round(width(fact.step)), width(fact.step), "{}", fact.name);
        }
    }
}

//! The short form of a plant's rules: what decides most of them, side by side in memory.
//!
//! Most conditions are a conjunction of tests, and many rules hang on nothing else: no window, hold, guard, problem or
//! rival. What such a rule needs stands here in a row, so that a request touches no more memory than it has to. A rule
//! that is more than that is judged in full wherever its short form does not already make it false.

use super::rule::{PlantRule, Repeat, RuleInfo};
use super::source::Source;
use super::term::{Atom, Condition, Test};
use crate::pack::rule::Kind;
use crate::rank::Weights;

/// A test of one term that must turn out so.
#[derive(Clone, Debug)]
pub struct Literal {
    /// Where the value stands.
    pub source: Source,
    /// The number of the term.
    pub probe: u32,
    /// What the test must say: it is so, or it is not so.
    pub so: bool,
    /// The test.
    pub test: Test,
}

/// A rule in short.
#[derive(Clone, Copy, Debug)]
pub struct Short {
    /// Its number in the set.
    pub rule: u32,
    /// Where its literals begin and end; none: its condition is no conjunction of tests.
    pub literals: Option<(u32, u32)>,
    /// Whether it applies as soon as its condition is true, whatever becomes of other rules.
    pub stands_alone: bool,
    /// What its score begins with.
    pub weights: Weights,
}

/// The rules of a plant in short.
#[derive(Clone, Debug, Default)]
pub struct Shorts {
    /// In the order of the plant's rules.
    pub rules: Vec<Short>,
    /// The literals of all.
    pub literals: Vec<Literal>,
}

impl Shorts {
    /// The short form of these rules, once they know their guards and rivals.
    #[must_use]
    pub fn of(rules: &[PlantRule], infos: &[RuleInfo], atoms: &[Atom], sources: &[Source]) -> Self {
        let mut out = Self::default();
        for rule in rules {
            let begin = out.literals.len();
            let whole = [&rule.whom, &rule.when]
                .into_iter()
                .all(|part| literals(part, true, atoms, sources, &mut out.literals));
            if !whole {
                out.literals.truncate(begin);
            }
            let end = out.literals.len();
            let range = u32::try_from(begin).ok().zip(u32::try_from(end).ok()).filter(|_| whole);
            let info = infos.get(rule.rule as usize);
            out.rules.push(Short {
                rule: rule.rule,
                literals: range,
                stands_alone: info.is_some_and(|info| stands_alone(rule, info)),
                weights: info.map(Weights::of).unwrap_or_default(),
            });
        }
        out
    }
}

/// Adds the literals of a condition; whether it is nothing but a conjunction of them.
fn literals(condition: &Condition, so: bool, atoms: &[Atom], sources: &[Source], out: &mut Vec<Literal>) -> bool {
    match condition {
        Condition::Always => so,
        Condition::And(parts) => so && parts.iter().all(|part| literals(part, true, atoms, sources, out)),
        Condition::Not(inner) => literals(inner, !so, atoms, sources, out),
        Condition::Or(_) => false,
        Condition::Atom(number) => {
            let atom = atoms.get(*number as usize);
            let source = atom.and_then(|atom| sources.get(atom.probe as usize));
            let Some((atom, source)) = atom.zip(source) else { return false };
            out.push(Literal { source: *source, probe: atom.probe, so, test: atom.test.clone() });
            true
        }
    }
}

fn stands_alone(rule: &PlantRule, info: &RuleInfo) -> bool {
    let by_itself =
        rule.problem.is_none() && rule.windows.is_empty() && rule.holds.is_empty() && rule.guards.is_empty();
    let of_history = !info.apart.is_empty()
        || !info.after.is_empty()
        || info.repeat != Repeat::default()
        || info.alternate.is_some();
    by_itself && !of_history && rule.rivals.is_empty() && info.blocks.is_none() && info.kind != Kind::Avoid
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::catalogue::Fact;

    fn found(condition: &Condition) -> Option<Vec<(u32, bool)>> {
        let atoms: Vec<Atom> = (0..3).map(|probe| Atom { probe, test: Test::Holds }).collect();
        let sources = [Source::Given(Fact::SiteMulched), Source::Sign(0), Source::Worked(0)];
        let mut out = Vec::new();
        let whole = literals(condition, true, &atoms, &sources, &mut out);
        whole.then(|| out.iter().map(|literal| (literal.probe, literal.so)).collect())
    }

    #[test]
    fn a_conjunction_of_tests_and_their_opposites_is_short() {
        let not = |condition| Condition::Not(Box::new(condition));
        let inner = Condition::And(vec![Condition::Atom(1), Condition::Always, not(not(Condition::Atom(2)))]);
        let whole = Condition::And(vec![not(Condition::Atom(0)), inner]);
        assert_eq!(found(&whole), Some(vec![(0, false), (1, true), (2, true)]));
        assert_eq!(found(&Condition::Always), Some(vec![]));
    }

    #[test]
    fn a_choice_between_tests_is_not_short() {
        let either = Condition::Or(vec![Condition::Atom(0), Condition::Atom(1)]);
        let both = Condition::And(vec![Condition::Atom(0), Condition::Atom(1)]);
        assert_eq!(found(&Condition::And(vec![Condition::Atom(2), either])), None);
        assert_eq!(found(&Condition::Not(Box::new(both))), None);
        assert_eq!(found(&Condition::Not(Box::new(Condition::Always))), None);
    }
}

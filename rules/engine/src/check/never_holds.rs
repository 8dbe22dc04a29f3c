//! A condition that can't be true, whatever is known: two parts of it, both needed, speak of one fact and exclude each
//! other.
//!
//! Only parts that read the same term are compared, by trying values of it. What hangs on two different terms is not
//! looked into, so no condition is called impossible that is not.

use super::samples::{range, samples};
use crate::compile::book::PlantBook;
use crate::compile::set::Set;
use crate::compile::term::{Atom, Condition, Term};
use crate::fact::value::Truth;
use crate::fault::Fault;
use crate::lang::ast::{Expr, ExprKind};
use crate::lang::{parse, print};
use crate::pack::Expression;

/// An expression with what it was compiled to.
struct Source<'s> {
    file: &'s str,
    written: &'s Expression,
    expr: Expr,
    condition: &'s Condition,
}

/// A part that must be true (or, behind `not`, false) for the whole to be true.
#[derive(Clone, Copy)]
struct Claim<'s> {
    source: &'s Source<'s>,
    expr: &'s Expr,
    atom: &'s Atom,
    positive: bool,
}

/// Looks at every condition of every plant.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    for book in &set.plants {
        let mut eye = Eye { set, book, faults };
        for rule in &book.rules {
            let Some(filed) = set.pack.rules.get(rule.rule as usize) else { continue };
            let (file, entry) = (&*filed.file, &filed.entry);
            let own =
                [source(file, entry.whom.traits.as_ref(), &rule.whom), source(file, entry.when.as_ref(), &rule.when)];
            eye.together(&own.iter().flatten().collect::<Vec<_>>());
            for (hold, written) in rule.holds.iter().zip(&entry.hold) {
                eye.alone(written.file(file), Some(&written.condition), &hold.condition);
            }
        }
        for problem in &book.problems {
            let Some(filed) = set.pack.problems.get(usize::from(problem.problem)) else { continue };
            for (condition, written) in problem.favours.iter().zip(&filed.entry.favours) {
                eye.alone(&filed.file, Some(written), condition);
            }
            if let Some(threshold) = &problem.threshold {
                eye.alone(&filed.file, filed.entry.threshold.as_ref(), threshold);
            }
        }
        for (number, unless) in &book.cautions {
            if let Some(filed) = set.pack.cautions.get(usize::from(*number)) {
                eye.alone(&filed.file, filed.entry.unless.as_ref(), unless);
            }
        }
        if let (Some(grown), Some(filed)) = (&book.grown, set.pack.plants.get(usize::from(book.plant))) {
            eye.alone(&filed.file, filed.entry.grown.as_ref(), grown);
        }
    }
}

fn source<'s>(file: &'s str, written: Option<&'s Expression>, condition: &'s Condition) -> Option<Source<'s>> {
    let written = written?;
    Some(Source { file, written, expr: parse::condition(written.text()).ok()?, condition })
}

struct Eye<'a, 'f> {
    set: &'a Set,
    book: &'a PlantBook,
    faults: &'f mut Vec<Fault>,
}

impl Eye<'_, '_> {
    fn alone(&mut self, file: &str, written: Option<&Expression>, condition: &Condition) {
        if let Some(source) = source(file, written, condition) {
            self.together(&[&source]);
        }
    }

    /// Conditions that must all be true.
    fn together(&mut self, sources: &[&Source<'_>]) {
        let parts: Vec<Part<'_>> = sources
            .iter()
            .map(|source| Part { source, expr: &source.expr, condition: source.condition, positive: true })
            .collect();
        self.walk(&parts, &[]);
    }

    /// Parts that must all be true, beside what is already claimed.
    fn walk(&mut self, parts: &[Part<'_>], inherited: &[Claim<'_>]) {
        let mut claims: Vec<Claim<'_>> = inherited.to_vec();
        let mut alternatives: Vec<Vec<Part<'_>>> = Vec::new();
        let mut stack: Vec<Part<'_>> = parts.iter().rev().copied().collect();
        while let Some(part) = stack.pop() {
            match (&part.expr.kind, part.condition) {
                (ExprKind::Not(expr), Condition::Not(condition)) => {
                    stack.push(Part { expr, condition, positive: !part.positive, ..part });
                }
                (ExprKind::And(exprs), Condition::And(conditions))
                | (ExprKind::Or(exprs), Condition::Or(conditions)) => {
                    let inner: Vec<Part<'_>> = exprs
                        .iter()
                        .zip(conditions)
                        .map(|(expr, condition)| Part { expr, condition, ..part })
                        .collect();
                    let all_needed = matches!(part.condition, Condition::And(_)) == part.positive;
                    if all_needed {
                        stack.extend(inner.into_iter().rev());
                    } else {
                        alternatives.push(inner);
                    }
                }
                (_, Condition::Atom(number)) => {
                    let Some(atom) = self.book.atoms.get(*number as usize) else { continue };
                    let claim = Claim { source: part.source, expr: part.expr, atom, positive: part.positive };
                    if let Some(fault) = self.contradiction(&claims, claim) {
                        self.faults.push(fault);
                    } else {
                        claims.push(claim);
                    }
                }
                _ => {}
            }
        }
        for part in alternatives.iter().flatten() {
            self.walk(&[*part], &claims);
        }
    }

    fn contradiction(&self, earlier: &[Claim<'_>], claim: Claim<'_>) -> Option<Fault> {
        let term = self.book.probes.get(claim.atom.probe as usize)?;
        let same: Vec<Claim<'_>> =
            earlier.iter().filter(|other| other.atom.probe == claim.atom.probe).copied().collect();
        let whole: Vec<Claim<'_>> = same.iter().copied().chain([claim]).collect();
        if self.possible(term, &whole) {
            return None;
        }
        let here = self.place(claim);
        let said = print::expr(claim.expr);
        if !self.possible(term, &[claim]) {
            let fault = Fault::error(
                "never-holds",
                here,
                format!("`{said}` can never be {}", if claim.positive { "true" } else { "false" }),
            );
            return Some(match range(term) {
                Some((low, high)) => fault.help(format!("its value lies between {low} and {high}")),
                None => fault.help("look at the comparison and its numbers"),
            });
        }
        let partner = same.iter().copied().find(|other| !self.possible(term, &[*other, claim]));
        let others = partner.map_or(same, |one| vec![one]);
        let names: Vec<String> = others.iter().map(|other| format!("`{}`", spoken(*other))).collect();
        let mut fault = Fault::error(
            "never-holds",
            here,
            format!("`{}` can't hold together with {}", spoken(claim), names.join(" and ")),
        )
        .help("both are needed here: write `or` between them, or mend one of the bounds");
        fault.related.extend(others.iter().map(|other| (self.place(*other), "it stands here".to_owned())));
        Some(fault)
    }

    /// Whether some value passes all these.
    fn possible(&self, term: &Term, claims: &[Claim<'_>]) -> bool {
        let tests: Vec<_> = claims.iter().map(|claim| &claim.atom.test).collect();
        samples(term, &tests, self.book, self.set)
            .into_iter()
            .any(|value| claims.iter().all(|claim| claim.atom.test.of(value) == Truth::known(claim.positive)))
    }

    fn place(&self, claim: Claim<'_>) -> crate::fault::Place {
        let Source { file, written, .. } = claim.source;
        written.place(file, claim.expr.span, self.set.pack.is_quoted(file, &written.0))
    }
}

#[derive(Clone, Copy)]
struct Part<'s> {
    source: &'s Source<'s>,
    expr: &'s Expr,
    condition: &'s Condition,
    positive: bool,
}

fn spoken(claim: Claim<'_>) -> String {
    let said = print::expr(claim.expr);
    if claim.positive { said } else { format!("not {said}") }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "never-holds",
    trips: &[(
        "rules/rose.yaml",
        "when: \"plant.age >= 1 year and",
        "when: \"plant.age < 0.9 years and not plant.age <= 0.8 years and",
    )],
    also: &[],
    at: "plant.age <= 0.8 years",
    says: "rules/rose.yaml:9:40: error[never-holds]: `not plant.age <= 0.8 years` can't hold together with `plant.age < 0.9 years`\n  help: both are needed here: write `or` between them, or mend one of the bounds\n  rules/rose.yaml:9:10: it stands here",
    just_not: &[(
        "rules/rose.yaml",
        "when: \"plant.age >= 1 year and",
        "when: \"plant.age <= 0.9 years and not plant.age <= 0.8 years and",
    )],
};

#[cfg(test)]
mod tests {
    use crate::check::cases::codes;

    fn codes_of(when: &str) -> Vec<&'static str> {
        let when = format!("when: \"{when}\"");
        codes(&[
            ("rules/rose.yaml", "when: \"not climate.frost_free or water.interval < 8 days\"", &when),
            ("rules/rose.yaml", "every {water.interval}.\"", "often.\""),
            ("rules/rose.yaml", "cada {water.interval}.\"", "a menudo.\""),
        ])
    }

    #[test]
    fn what_can_hold_is_not_called_impossible() {
        for when in [
            "soil.ph > 6 and soil.ph < 7",
            "soil.ph > 7 or soil.ph < 6",
            "not (soil.ph > 6 and soil.ph < 5.9)",
            "soil.moisture != dry and soil.moisture != wet",
            "first_frost.median is absent or days_to(first_frost.median) > 30 days",
            "not days_to(first_frost.median) > 30 days and not days_to(first_frost.median) <= 30 days",
            "soil.ph in {6, 7} and soil.ph >= 7",
            "tmax > 30 °C and tmin < 30 °C",
            "sum(rain, 7 days) > 5000 mm",
            "mean(tmax, 7 days) - tmin > 12 K and mean(tmax, 7 days) - tmin < 12.01 K",
        ] {
            let found = codes_of(when);
            assert!(!found.contains(&"never-holds"), "{when}: {found:?}");
        }
    }

    #[test]
    fn what_can_not_hold_is_found_in_every_shape() {
        for when in [
            "soil.ph > 7 and soil.ph < 6",
            "soil.ph > 7.2 and soil.ph < 7.3",
            "soil.ph < 2",
            "soil.moisture = dry and soil.moisture = wet",
            "soil.moisture != dry and soil.moisture != moist and soil.moisture != wet",
            "plant.stage = bloom and plant.stage < bloom",
            "signs has aphids and not signs has aphids",
            "signs has aphids and (soil.ph > 5 or not signs has aphids)",
            "not (signs has aphids or soil.ph < 7) and soil.ph < 6",
            "first_frost.median is absent and not first_frost.median is absent",
            "soil.ph in {6, 7} and soil.ph > 7",
            "water.interval < 1 day",
            "tmax > 68 °F and tmax < 20 °C",
        ] {
            assert_eq!(codes_of(when), ["never-holds"], "{when}");
        }
    }
}

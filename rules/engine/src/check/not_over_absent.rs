//! `not` over a comparison with something that may not exist: the comparison is then false, and `not` makes it true.

use lammas_agronomy::marker::MarkerState;

use super::may_be_absent::{markers, may_be_absent};
use super::reference::places;
use crate::compile::book::PlantBook;
use crate::compile::set::Set;
use crate::compile::term::{Condition, MarkerRef, Term, Test};
use crate::fault::Fault;
use crate::lang::ast::{Comparison, Expr, ExprKind};
use crate::lang::{parse, print};
use crate::pack::Expression;

/// Looks at the conditions and holds of every plant's rules.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    for book in &set.plants {
        for rule in &book.rules {
            let Some(filed) = set.pack.rules.get(rule.rule as usize) else { continue };
            let entry = &filed.entry;
            let holds = rule
                .holds
                .iter()
                .zip(&entry.hold)
                .map(|(hold, written)| (&hold.condition, &written.condition, written.file(&filed.file)));
            let whole = entry.when.iter().map(|written| (&rule.when, written, &*filed.file));
            for (condition, written, file) in whole.chain(holds) {
                let eye = Eye { set, book, file, written };
                if let Ok(expr) = parse::condition(written.text()) {
                    eye.walk(&expr, condition, false, faults);
                }
            }
        }
    }
}

struct Eye<'a> {
    set: &'a Set,
    book: &'a PlantBook,
    file: &'a str,
    written: &'a Expression,
}

impl Eye<'_> {
    fn walk(&self, expr: &Expr, condition: &Condition, turned: bool, faults: &mut Vec<Fault>) {
        match (&expr.kind, condition) {
            (ExprKind::Not(inner), Condition::Not(of)) => self.walk(inner, of, !turned, faults),
            (ExprKind::And(exprs), Condition::And(parts)) | (ExprKind::Or(exprs), Condition::Or(parts)) => {
                exprs.iter().zip(parts).for_each(|(expr, part)| self.walk(expr, part, turned, faults));
            }
            (_, Condition::Atom(number)) if turned => faults.extend(self.fault(expr, *number)),
            _ => {}
        }
    }

    fn fault(&self, expr: &Expr, atom: u32) -> Option<Fault> {
        let atom = self.book.atoms.get(atom as usize)?;
        let term = self.book.probes.get(atom.probe as usize)?;
        if atom.test == Test::IsAbsent || !may_be_absent(term) {
            return None;
        }
        let (marker, example) = absence(term);
        let said = print::expr(expr);
        let here = self.written.place(self.file, expr.span, self.set.pack.is_quoted(self.file, &self.written.0));
        let (alone, behind_not) = if unequal(expr) { ("true", "false") } else { ("false", "true") };
        let message = format!("where there is no `{marker}`, `{said}` is {alone} and `not` makes it {behind_not}");
        let cure = match turned(expr) {
            Some(other) => format!("write `{other}`, and add `or {marker} is absent` if that is meant"),
            None => format!("say what is meant there with `{marker} is absent`"),
        };
        let help = example.map_or_else(|| cure.clone(), |example| format!("{example}; {cure}"));
        Some(Fault::warning("not-over-absent", here, message).help(help))
    }
}

/// The marker that may not exist, and where it does not.
fn absence(term: &Term) -> (String, Option<String>) {
    for at in markers(term) {
        let name = print_marker(&at.text);
        let example = match &at.marker {
            MarkerRef::Season(marker) => {
                let without = |state: MarkerState| state.is_absent();
                let found: Vec<&str> = places()
                    .iter()
                    .filter(|place| without(place.climate.season.marker(*marker)))
                    .map(|place| place.name.as_str())
                    .collect();
                found.first().map(|first| match found.len() {
                    1 => format!("as in {first}"),
                    many => format!("as in {first} and {} more of the {} reference climates", many - 1, places().len()),
                })
            }
            MarkerRef::Last(_) => Some("as when no such work was ever done".to_owned()),
            MarkerRef::HarvestWait => Some("as when nothing was sprayed lately".to_owned()),
            MarkerRef::Planted | MarkerRef::Since(_) => Some("as once the day has passed".to_owned()),
            MarkerRef::HeatReached { .. } | MarkerRef::Stage(_) => {
                Some("as where the warmth never suffices".to_owned())
            }
            MarkerRef::ChillReached(_) => Some("as where the winter never brings as much cold".to_owned()),
            MarkerRef::Today => continue,
        };
        return (name, example);
    }
    (String::new(), None)
}

/// The marker without what is added to it.
fn print_marker(text: &str) -> String {
    parse::side(text)
        .ok()
        .and_then(|side| side.choices.first().map(|choice| print::expr(&choice.marker)))
        .unwrap_or_else(|| text.to_owned())
}

fn unequal(expr: &Expr) -> bool {
    matches!(&expr.kind, ExprKind::Compare(_, Comparison::Unequal, _))
}

/// The comparison that is true where this one is false and both sides exist.
fn turned(expr: &Expr) -> Option<String> {
    let ExprKind::Compare(left, comparison, right) = &expr.kind else { return None };
    let other = match comparison {
        Comparison::Less => Comparison::AtLeast,
        Comparison::AtMost => Comparison::More,
        Comparison::More => Comparison::AtMost,
        Comparison::AtLeast => Comparison::Less,
        Comparison::Equal | Comparison::Unequal => return None,
    };
    Some(print::expr(&Expr { span: expr.span, kind: ExprKind::Compare(left.clone(), other, right.clone()) }))
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "not-over-absent",
    trips: &[(
        "rules/rose.yaml",
        "when: \"not climate.frost_free or",
        "when: \"not weeks_to(first_frost.median) < 8 weeks or",
    )],
    also: &[],
    at: "weeks_to(first_frost.median) < 8",
    says: "rules/rose.yaml:51:14: warning[not-over-absent]: where there is no `first_frost.median`, `weeks_to(first_frost.median) < 8 weeks` is false and `not` makes it true\n  help: as in Anguededou CI and 22 more of the 57 reference climates; write `weeks_to(first_frost.median) >= 8 weeks`, and add `or first_frost.median is absent` if that is meant",
    just_not: &[(
        "rules/rose.yaml",
        "when: \"not climate.frost_free or",
        "when: \"weeks_to(first_frost.median) >= 8 weeks or not first_frost.median is absent or",
    )],
};

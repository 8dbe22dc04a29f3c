//! Holds: one more, one less, or one in other cases.

use super::condition::{Read, Relation, detail, read, relation};
use super::{Kind, Sentence, Words};
use crate::explain::plain::Plain;
use crate::lang::ast::ExprKind;
use crate::pack::rule::HoldEntry;

pub(super) fn of_rule(
    before: &[HoldEntry],
    after: &[HoldEntry],
    plain: (Plain<'_>, Plain<'_>),
    words: Words<'_>,
    out: &mut Vec<Sentence>,
) {
    let conditions = |list: &[HoldEntry]| list.iter().map(|hold| read(Some(&hold.condition))).collect::<Vec<_>>();
    let (b, a) = (conditions(before), conditions(after));
    let mut taken = vec![false; after.len()];
    let mut left = Vec::new();
    // The same condition first, then the same words or the same fact: what is left is one less, and one more.
    for (at, (hold, condition)) in before.iter().zip(&b).enumerate() {
        match find(&a, &taken, |_, other| relation(condition.as_ref(), other) == Relation::Same) {
            Some(same) => {
                if let (Some(taken), Some(now)) = (taken.get_mut(same), after.get(same)) {
                    *taken = true;
                    strict(hold, now, words, out);
                }
            }
            None => left.push(at),
        }
    }
    for at in left {
        let (Some(hold), Some(condition)) = (before.get(at), b.get(at)) else { continue };
        let alike = |other_at: usize, other: Option<&Read>| {
            let same_words = after.get(other_at).is_some_and(|now| now.because == hold.because);
            same_words || same_term(condition.as_ref(), other)
        };
        match find(&a, &taken, alike) {
            Some(other) => {
                if let (Some(taken), Some(now)) = (taken.get_mut(other), after.get(other)) {
                    *taken = true;
                    let now_read = a.get(other).and_then(Option::as_ref);
                    changed(condition.as_ref(), now_read, plain, words, out);
                    strict(hold, now, words, out);
                }
            }
            None => {
                let gone = plain.0.condition(&hold.condition);
                let text = words.pick(format!("no longer waits when: {gone}"), format!("ya no espera cuando: {gone}"));
                out.push(Sentence { kind: Kind::HoldDropped, text });
            }
        }
    }
    for (hold, _) in after.iter().zip(&taken).filter(|(_, taken)| !**taken) {
        let new = plain.1.condition(&hold.condition);
        let text = words.pick(format!("now waits when: {new}"), format!("ahora espera cuando: {new}"));
        out.push(Sentence { kind: Kind::HoldAdded, text });
    }
}

fn find(list: &[Option<Read>], taken: &[bool], fits: impl Fn(usize, Option<&Read>) -> bool) -> Option<usize> {
    list.iter()
        .zip(taken)
        .enumerate()
        .find(|(at, (read, taken))| !**taken && fits(*at, read.as_ref()))
        .map(|(at, _)| at)
}

/// Both compare the same term with something.
fn same_term(one: Option<&Read>, other: Option<&Read>) -> bool {
    match (one.map(|read| &read.normal.kind), other.map(|read| &read.normal.kind)) {
        (Some(ExprKind::Compare(a, ..)), Some(ExprKind::Compare(b, ..))) => a == b,
        _ => false,
    }
}

fn changed(
    before: Option<&Read>,
    after: Option<&Read>,
    plain: (Plain<'_>, Plain<'_>),
    words: Words<'_>,
    out: &mut Vec<Sentence>,
) {
    let lead = match relation(before, after) {
        Relation::Same => return,
        Relation::Narrower => words.pick("waits in fewer cases: ", "espera en menos casos: "),
        Relation::Wider => words.pick("waits in more cases: ", "espera en más casos: "),
        Relation::Other => words.pick("waits in other cases: ", "espera en otros casos: "),
    };
    out.push(Sentence { kind: Kind::HoldChanged, text: lead + &detail(before, after, plain, words) });
}

fn strict(before: &HoldEntry, after: &HoldEntry, words: Words<'_>, out: &mut Vec<Sentence>) {
    if before.strict != after.strict {
        let text = match after.strict {
            true => words.pick(
                "a hold must now be known to be false, or the work is not advised",
                "ahora una espera debe saberse falsa, o no se aconseja la labor",
            ),
            false => words.pick(
                "a hold that nobody can judge is now said as a condition of the day",
                "una espera que nadie puede juzgar se dice ahora como condición del día",
            ),
        };
        out.push(Sentence { kind: Kind::Strict, text });
    }
}

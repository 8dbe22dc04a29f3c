//! Windows: which side moved, and by how much.

use super::{Kind, Sentence, Words, normal};
use crate::explain::plain::Plain;
use crate::pack::At;
use crate::pack::rule::WindowEntry;

/// A side that says something else, and whether its markers are others: then only the climates can tell by how many days.
#[derive(Clone, Debug)]
pub(super) struct Moved {
    /// Which window, before and after.
    pub(super) windows: (usize, usize),
    /// opens, best, closes.
    pub(super) kind: Kind,
    /// The sentence's place in the list.
    pub(super) sentence: usize,
}

/// Says what changed; returns the sides whose markers are others.
pub(super) fn of_rule(
    before: &[WindowEntry],
    after: &[WindowEntry],
    plain: (Plain<'_>, Plain<'_>),
    words: Words<'_>,
    out: &mut Vec<Sentence>,
) -> Vec<Moved> {
    let mut taken = vec![false; after.len()];
    let mut left = Vec::new();
    for (at, window) in before.iter().enumerate() {
        let same = after.iter().zip(&taken).position(|(other, taken)| !taken && same(window, other));
        match same.and_then(|same| taken.get_mut(same)) {
            Some(taken) => *taken = true,
            None => left.push(at),
        }
    }
    let mut moved = Vec::new();
    for at in left {
        let Some(window) = before.get(at) else { continue };
        let Some((other, taken)) = taken.iter_mut().enumerate().find(|(_, taken)| !**taken) else {
            let gone = said(window, plain.0, words);
            let text = words.pick(format!("a window is gone: {gone}"), format!("falta un plazo: {gone}"));
            out.push(Sentence { kind: Kind::WindowRemoved, text });
            continue;
        };
        *taken = true;
        if let Some(now) = after.get(other) {
            sides(window, now, (at, other), plain, words, out, &mut moved);
        }
    }
    for (window, _) in after.iter().zip(&taken).filter(|(_, taken)| !**taken) {
        let new = said(window, plain.1, words);
        let text = words.pick(format!("a window more: {new}"), format!("un plazo más: {new}"));
        out.push(Sentence { kind: Kind::WindowAdded, text });
    }
    moved
}

fn same(one: &WindowEntry, other: &WindowEntry) -> bool {
    let of = |side: &Option<At<String>>| side.as_ref().map(|side| normal::side(&side.value));
    of(&one.opens) == of(&other.opens)
        && of(&one.best) == of(&other.best)
        && of(&one.closes) == of(&other.closes)
        && one.if_absent == other.if_absent
}

fn said(window: &WindowEntry, plain: Plain<'_>, words: Words<'_>) -> String {
    let side = |side: &Option<At<String>>| side.as_ref().map(|side| plain.side(&side.value));
    let opens = side(&window.opens).map(|side| words.pick(format!("opens {side}"), format!("se abre {side}")));
    let closes = side(&window.closes).map(|side| words.pick(format!("closes {side}"), format!("se cierra {side}")));
    opens.into_iter().chain(closes).collect::<Vec<_>>().join(", ")
}

fn sides(
    before: &WindowEntry,
    after: &WindowEntry,
    windows: (usize, usize),
    plain: (Plain<'_>, Plain<'_>),
    words: Words<'_>,
    out: &mut Vec<Sentence>,
    moved: &mut Vec<Moved>,
) {
    let opens = words.pick("opens", "se abre");
    let best = words.pick("the best day comes", "el mejor día llega");
    let closes = words.pick("closes", "se cierra");
    for (kind, verb, b, a) in [
        (Kind::OpensMoved, opens, &before.opens, &after.opens),
        (Kind::BestMoved, best, &before.best, &after.best),
        (Kind::ClosesMoved, closes, &before.closes, &after.closes),
    ] {
        let of = |side: &Option<At<String>>| side.as_ref().map(|side| normal::side(&side.value)).unwrap_or_default();
        let (from, to) = (of(b), of(a));
        if from == to {
            continue;
        }
        let mut text = match by_days(&from, &to, words) {
            Some(by) => format!("{verb} {by}"),
            None => {
                moved.push(Moved { windows, kind, sentence: out.len() });
                let none = words.pick("no such side", "sin ese lado");
                let plain_of = |side: &Option<At<String>>, plain: Plain<'_>| {
                    side.as_ref().map_or_else(|| none.clone(), |side| plain.side(&side.value))
                };
                let (was, now) = (plain_of(b, plain.0), plain_of(a, plain.1));
                words.pick(format!("{verb} {now}, instead of {was}"), format!("{verb} {now}, en vez de {was}"))
            }
        };
        if kind == Kind::BestMoved && to.is_empty() {
            text = words.pick("has no best day of its own any more", "ya no tiene mejor día propio");
        }
        out.push(Sentence { kind, text });
    }
    if before.if_absent != after.if_absent {
        let text = match after.if_absent.is_some() {
            true => words
                .pick("open all year where its markers never come", "abierto todo el año donde sus marcas no llegan"),
            false => words.pick(
                "no longer open all year where its markers never come",
                "ya no abierto todo el año donde sus marcas no llegan",
            ),
        };
        out.push(Sentence { kind: Kind::WindowAbsence, text });
    }
}

/// The same markers with other offsets: `2 weeks earlier`.
fn by_days(from: &[(String, f64)], to: &[(String, f64)], words: Words<'_>) -> Option<String> {
    if from.len() != to.len() || from.is_empty() || from.iter().zip(to).any(|((a, _), (b, _))| a != b) {
        return None;
    }
    let moved: Vec<f64> = from.iter().zip(to).map(|((_, a), (_, b))| b - a).collect();
    let each: Vec<String> = moved
        .iter()
        .map(|days| match days {
            days if *days < 0.0 => {
                words.pick(format!("{} earlier", words.days(*days)), format!("{} antes", words.days(*days)))
            }
            days if *days > 0.0 => {
                words.pick(format!("{} later", words.days(*days)), format!("{} después", words.days(*days)))
            }
            _ => words.pick("as before", "como antes"),
        })
        .collect();
    let (first, rest) = each.split_first()?;
    if rest.iter().all(|one| one == first) {
        return Some(first.clone());
    }
    let otherwise = words.pick("; where that never comes: ", "; donde eso no llega nunca: ");
    Some(each.join(&otherwise))
}

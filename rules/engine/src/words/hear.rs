//! What of a text is understood as signs, what may be one of a few, and what is not understood. Nothing is guessed.

use std::collections::BTreeSet;
use std::ops::Range;

use super::clause::{Clause, Piece, clauses};
use super::fold::tokens;
use super::language::Part;
use super::lexicon::Meaning;
use super::sayings::{Said, Sayings};
use super::score::{Fit, Heard, fits};
use super::{Words, beginning};

/// What a thought must reach to be understood: this much of it is explained, this much of a name or lay word is in it, so
/// much do the words weigh that tell, and so far ahead is it of the next sign.
const COVER: f64 = 0.68;
const WAY: f64 = 0.8;
const MASS: f64 = 3.2;
const CORE: f64 = 2.2;
const LEAD: f64 = 1.2;
/// One word alone is understood only where it is all of a name or lay word, and of one sign of the plant only.
const WAY_ALONE: f64 = 0.95;
/// An emergency is taken for one with less: to call for nothing costs little, not to be heard may cost a life.
const DANGER_COVER: f64 = 0.4;
const DANGER_WAY: f64 = 0.5;
const DANGER_CORE: f64 = 3.6;
/// What a thought costs: what can be one is one.
const EACH: f64 = 0.5;
/// What it must reach to be one of a few, and how near to the best of them.
const PERHAPS_COVER: f64 = 0.5;
const PERHAPS_CORE: f64 = 1.2;
const PERHAPS_WAY_ALONE: f64 = 0.75;
const PERHAPS_OF_BEST: f64 = 0.65;
/// The most signs that a thought may be.
const MOST_PERHAPS: usize = 4;
/// The most pieces that are tried as one thought.
const MOST_PIECES: usize = 4;

/// What was heard in a text, in its order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Hearing {
    /// A sign and the words for it. These count as seen.
    pub understood: Vec<(u16, String)>,
    /// Words and the signs that they could be, best first.
    pub unsure: Vec<(String, Vec<u16>)>,
    /// Words that are no sign of this plant, or that say what is not there.
    pub not_understood: Vec<String>,
}

/// What becomes of a thought.
#[derive(Clone, Debug, PartialEq)]
enum Becomes {
    Understood(u16),
    Unsure(Vec<u16>),
    Nothing,
}

impl Words {
    /// What of a text is understood of a plant. `language` is taken where the words don't tell. Only the first
    /// [`super::MOST_LETTERS`] letters are heard.
    #[must_use]
    pub fn hear(&self, text: &str, plant: u16, language: &str) -> Hearing {
        let text = beginning(text);
        let Some(sayings) = self.spoken_in(&tokens(text), language) else {
            return Hearing { not_understood: vec![text.to_owned()], ..Hearing::default() };
        };
        let mut hearing = Hearing::default();
        let mut before = BTreeSet::new();
        for clause in clauses(text, &sayings.lexicon) {
            let mut silent: Option<Range<usize>> = None;
            for (pieces, becomes) in self.thoughts(&clause, &mut before, plant, sayings) {
                let Some(place) = place(pieces) else { continue };
                if becomes == Becomes::Nothing {
                    silent = Some(silent.map_or(place.start, |silent| silent.start)..place.end);
                    continue;
                }
                hearing.not_understood.extend(silent.take().and_then(|place| text.get(place)).map(str::to_owned));
                let words = text.get(place).unwrap_or_default().to_owned();
                match becomes {
                    Becomes::Understood(sign) => hearing.understood.push((sign, words)),
                    Becomes::Unsure(signs) => hearing.unsure.push((words, signs)),
                    Becomes::Nothing => {}
                }
            }
            hearing.not_understood.extend(silent.take().and_then(|place| text.get(place)).map(str::to_owned));
        }
        hearing
    }

    /// How many signs of a plant have this in a name or lay word.
    fn saying(&self, said: Said, plant: u16, sayings: &Sayings) -> usize {
        let says = |sign: &u16| {
            sayings.signs.get(usize::from(*sign)).is_some_and(|words| words.ways.iter().any(|way| way.contains(&said)))
        };
        self.signs_of(plant).filter(says).count()
    }

    /// The clause in the runs of pieces that explain the most of it, and what becomes of each.
    fn thoughts<'a>(
        &self,
        clause: &'a Clause,
        before: &mut BTreeSet<Part>,
        plant: u16,
        sayings: &Sayings,
    ) -> Vec<(&'a [Piece], Becomes)> {
        let pieces = clause.pieces.as_slice();
        // best[n]: the worth of the first n pieces, how long the last run of them is, and what becomes of it.
        let mut best: Vec<(f64, usize, Becomes)> = vec![(0.0, 0, Becomes::Nothing)];
        for end in 1..=pieces.len() {
            let mut here: Option<(f64, usize, Becomes)> = None;
            for length in 1..=end.min(MOST_PIECES) {
                let Some(run) = pieces.get(end - length..end) else { continue };
                let mut heard = Heard::of(run, sayings);
                heard.before = parts_before(pieces.get(..end - length).unwrap_or_default(), before, sayings);
                let (worth, becomes) = self.judged(&heard, clause.is_doubtful, plant, sayings);
                let so_far = best.get(end - length).map_or(0.0, |(worth, ..)| *worth);
                if here.as_ref().is_none_or(|(most, ..)| so_far + worth > *most) {
                    here = Some((so_far + worth, length, becomes));
                }
            }
            best.extend(here);
        }
        *before = parts_before(pieces, before, sayings);
        let mut out = Vec::new();
        let mut end = pieces.len();
        while let Some((_, length, becomes)) = best.get(end).filter(|(_, length, _)| *length > 0) {
            out.push((pieces.get(end - length..end).unwrap_or_default(), becomes.clone()));
            end -= length;
        }
        out.reverse();
        out
    }

    /// What becomes of a thought, and what it is worth: the weight that is explained less what is not.
    fn judged(&self, heard: &Heard, is_doubtful: bool, plant: u16, sayings: &Sayings) -> (f64, Becomes) {
        if !heard.says_something(sayings) {
            return (0.0, Becomes::Nothing);
        }
        let all = fits(heard, sayings);
        let mut own = all.iter().filter(|fit| self.concerns(plant, fit.sign));
        let Some(first) = own.next() else { return (0.0, Becomes::Nothing) };
        let next = own.next().map_or(0.0, |fit| fit.score);
        let left = first.mass / first.cover.max(0.01) - first.mass;
        // A sign of another plant that fits better: it is not this one that is spoken of.
        let is_own = all.first().is_some_and(|fit| fit.score <= first.score * LEAD);
        let is_alone = first.shared.len() < 2;
        let is_telling = || match first.shared.as_slice() {
            [] => false,
            [said] => first.way >= WAY_ALONE && self.saying(*said, plant, sayings) == 1,
            _ => true,
        };
        if !is_doubtful && is_own && is_clear(first, next) && is_telling() {
            return (first.mass - left - EACH, Becomes::Understood(first.sign));
        }
        if is_own && self.is_danger(first.sign) && is_clear_danger(first, sayings) {
            return (first.mass - left - EACH, Becomes::Understood(first.sign));
        }
        let says_enough = first.core >= PERHAPS_CORE && (!is_alone || first.way >= PERHAPS_WAY_ALONE);
        if first.cover < PERHAPS_COVER || !says_enough || !first.is_whole {
            return self
                .named(heard, &all, plant)
                .map_or((0.0, Becomes::Nothing), |signs| (0.0, Becomes::Unsure(signs)));
        }
        let near = |fit: &&Fit| {
            self.concerns(plant, fit.sign)
                && fit.is_whole
                && fit.core > 0.0
                && fit.score >= first.score * PERHAPS_OF_BEST
        };
        let signs: Vec<u16> = all.iter().filter(near).take(MOST_PERHAPS).map(|fit| fit.sign).collect();
        (0.4 * (first.mass - left) - EACH, Becomes::Unsure(signs))
    }

    /// Signs that are each named in full in a run of words: `aphids black spot mildew`.
    fn named(&self, heard: &Heard, all: &[Fit], plant: u16) -> Option<Vec<u16>> {
        let is_named =
            |fit: &&Fit| self.concerns(plant, fit.sign) && fit.is_whole && fit.way >= WAY_ALONE && fit.core >= CORE;
        let signs: Vec<u16> = all.iter().filter(is_named).take(MOST_PERHAPS).map(|fit| fit.sign).collect();
        (heard.unknown == 0 && !signs.is_empty()).then_some(signs)
    }
}

/// Two things of it at least are said that are neither a part of a plant nor how something is.
fn is_clear_danger(first: &Fit, sayings: &Sayings) -> bool {
    let tells = |said: &&Said| sayings.lexicon.part(said.0).is_none();
    first.is_whole
        && first.shared.iter().filter(tells).count() >= 2
        && first.cover >= DANGER_COVER
        && first.way >= DANGER_WAY
        && first.core >= DANGER_CORE
}

fn is_clear(first: &Fit, next: f64) -> bool {
    first.is_whole
        && first.cover >= COVER
        && first.way >= WAY
        && first.mass >= MASS
        && first.core >= CORE
        && first.score >= next * LEAD
}

/// The parts that were named last.
fn parts_before(pieces: &[Piece], before: &BTreeSet<Part>, sayings: &Sayings) -> BTreeSet<Part> {
    pieces
        .iter()
        .rev()
        .map(|piece| Heard::of([piece], sayings).parts)
        .find(|parts| !parts.is_empty())
        .unwrap_or_else(|| before.clone())
}

/// Where some pieces stand in the text; none when all their words say nothing.
fn place(pieces: &[Piece]) -> Option<Range<usize>> {
    let words = || pieces.iter().flat_map(|piece| &piece.words);
    if words().all(|word| word.meaning == Meaning::Noise) {
        return None;
    }
    Some(words().next()?.place.start..words().last()?.place.end)
}

//! Signs for a few words, best first.

use std::collections::BTreeSet;

use super::clause::{Word, clauses};
use super::fold::tokens;
use super::lexicon::Meaning;
use super::sayings::Said;
use super::score::{Heard, fits};
use super::{Words, beginning};

/// What a sign must reach, and what part of the best, to be found.
const LEAST: f64 = 0.12;
const LEAST_OF_BEST: f64 = 0.3;

/// A sign that was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// Its number.
    pub sign: u16,
    /// How well it fits; about 1 at most.
    pub score: f64,
    /// The words that fit it, as they were typed.
    pub matched: Vec<String>,
}

impl Words {
    /// The signs that fit a few words, best first; those of one plant, if one is given. `language` is taken where the
    /// words don't tell.
    #[must_use]
    pub fn search(&self, text: &str, plant: Option<u16>, language: &str) -> Vec<Found> {
        let text = beginning(text);
        let Some(sayings) = self.spoken_in(&tokens(text), language) else { return Vec::new() };
        let clauses = clauses(text, &sayings.lexicon);
        let pieces = || clauses.iter().flat_map(|clause| &clause.pieces);
        let heard = Heard::of(pieces(), sayings);
        let mut fits = fits(&heard, sayings);
        fits.retain(|fit| plant.is_none_or(|plant| self.concerns(plant, fit.sign)));
        let best = fits.first().map_or(0.0, |fit| fit.score);
        // Where something is denied, a part of the plant alone asks for nothing: `no spots on the leaves`.
        let denies = heard.said.keys().any(|(_, is_denied)| *is_denied);
        fits.retain(|fit| fit.score >= LEAST && fit.score >= best * LEAST_OF_BEST && (!denies || fit.core > 0.0));
        let words = || pieces().flat_map(|piece| &piece.words);
        fits.into_iter()
            .map(|fit| {
                let bag = sayings.signs.get(usize::from(fit.sign)).map(|words| &words.bag);
                let mut seen = BTreeSet::new();
                let matched = words()
                    .filter(|word| bag.is_some_and(|bag| said(word).any(|said| bag.contains_key(&said))))
                    .filter_map(|word| text.get(word.place.clone()))
                    .filter(|word| seen.insert(word.to_lowercase()))
                    .map(str::to_owned)
                    .collect();
                Found { sign: fit.sign, score: fit.score, matched }
            })
            .collect()
    }
}

fn said(word: &Word) -> impl Iterator<Item = Said> + '_ {
    let concepts = match &word.meaning {
        Meaning::Meant(concepts) => concepts.as_slice(),
        Meaning::Noise | Meaning::Unknown => &[],
    };
    concepts.iter().map(|(concept, _)| (*concept, word.is_denied))
}

//! What the signs are called in one language: each name and each lay word as what it means.

use std::collections::{BTreeMap, BTreeSet};

use super::clause::clauses;
use super::fold::{Mark, Token, tokens};
use super::language::{Part, Speech};
use super::lexicon::{Lexicon, Meaning};
use crate::pack::word::Where;
use crate::pack::{Pack, SignEntry};

/// How much a word counts that stands only in how to look for a sign.
const OF_LOOK: f64 = 0.5;

/// A concept and whether it is denied: `buds won't open` means bud and not open.
pub(super) type Said = (u32, bool);

/// What is known of one sign.
#[derive(Clone, Debug, Default)]
pub(super) struct SignWords {
    /// Each name and lay word.
    pub(super) ways: Vec<BTreeSet<Said>>,
    /// All that they say, each with how much it counts there.
    pub(super) bag: BTreeMap<Said, f64>,
    /// Parts of the plant that they name; empty: the whole plant.
    pub(super) parts: BTreeSet<Part>,
}

/// The signs' words in one language.
#[derive(Clone, Debug)]
pub(super) struct Sayings {
    pub(super) lexicon: Lexicon,
    pub(super) signs: Vec<SignWords>,
}

impl Sayings {
    /// The sayings of a pack in the language of a lexicon, which learns the pack's words.
    pub(super) fn of(mut lexicon: Lexicon, pack: &Pack) -> Self {
        let speech = lexicon.speech;
        for token in pack.signs.iter().flat_map(|sign| written(&sign.entry, speech)).flat_map(tokens) {
            if token.mark == Mark::Word {
                lexicon.learn(&token.word);
            }
        }
        let ways: Vec<Vec<BTreeSet<Said>>> = pack
            .signs
            .iter()
            .map(|sign| {
                written(&sign.entry, speech).map(|text| said(text, &lexicon)).filter(|s| !s.is_empty()).collect()
            })
            .collect();
        let looks: Vec<BTreeSet<Said>> =
            pack.signs.iter().map(|sign| said(look(&sign.entry, speech), &lexicon)).collect();
        let mut said_of: BTreeMap<Said, usize> = BTreeMap::new();
        for ways in &ways {
            let said: BTreeSet<Said> = ways.iter().flatten().copied().collect();
            said.into_iter().for_each(|said| *said_of.entry(said).or_default() += 1);
        }
        lexicon.weigh(&said_of, pack.signs.len());
        let signs = ways
            .into_iter()
            .zip(looks)
            .zip(&pack.signs)
            .map(|((ways, look), sign)| sign_words(ways, &look, sign.entry.place, &lexicon))
            .collect();
        Self { lexicon, signs }
    }

    pub(super) fn code(&self) -> &'static str {
        self.lexicon.speech.code
    }

    /// How many of the words are known as they are written.
    pub(super) fn known(&self, tokens: &[Token]) -> usize {
        tokens.iter().filter(|token| token.mark == Mark::Word && self.lexicon.knows(&token.word)).count()
    }
}

fn written<'a>(sign: &'a SignEntry, speech: &Speech) -> impl Iterator<Item = &'a str> {
    let name = sign.name.0.get(speech.code).map(String::as_str);
    name.into_iter().chain(sign.words.0.get(speech.code).into_iter().flatten().map(String::as_str))
}

fn look<'a>(sign: &'a SignEntry, speech: &Speech) -> &'a str {
    sign.look.0.get(speech.code).map_or("", String::as_str)
}

fn said(text: &str, lexicon: &Lexicon) -> BTreeSet<Said> {
    let clauses = clauses(text, lexicon);
    let words = clauses.iter().flat_map(|clause| &clause.pieces).flat_map(|piece| &piece.words);
    words
        .filter_map(|word| match &word.meaning {
            Meaning::Meant(concepts) => Some(concepts.iter().map(|(concept, _)| (*concept, word.is_denied))),
            Meaning::Noise | Meaning::Unknown => None,
        })
        .flatten()
        .collect()
}

fn sign_words(ways: Vec<BTreeSet<Said>>, look: &BTreeSet<Said>, place: Where, lexicon: &Lexicon) -> SignWords {
    let mut bag: BTreeMap<Said, f64> =
        look.iter().filter(|said| lexicon.weight(**said) > 0.0).map(|said| (*said, OF_LOOK)).collect();
    bag.extend(ways.iter().flatten().map(|said| (*said, 1.0)));
    let mut parts = BTreeSet::new();
    if place != Where::WholePlant {
        parts.extend(part(place));
        parts.extend(ways.iter().flatten().filter_map(|(concept, _)| lexicon.part(*concept)));
    }
    SignWords { ways, bag, parts }
}

const fn part(place: Where) -> Option<Part> {
    Some(match place {
        Where::ShootTip => Part::Shoot,
        Where::LeafUpper | Where::LeafUnder => Part::Leaf,
        Where::Bud => Part::Bud,
        Where::Flower => Part::Flower,
        Where::Fruit => Part::Fruit,
        Where::Stem => Part::Stem,
        Where::Crown => Part::Crown,
        Where::Root => Part::Root,
        Where::Soil => Part::Soil,
        Where::WholePlant => return None,
    })
}

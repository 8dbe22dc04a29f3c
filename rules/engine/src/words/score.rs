//! How well what is heard fits a sign.

use std::collections::{BTreeMap, BTreeSet};

use super::clause::{Piece, Word};
use super::language::Part;
use super::lexicon::Meaning;
use super::sayings::{Said, Sayings, SignWords};

/// What a word weighs that no sign speaks of: about as much as a rather rare one.
const UNKNOWN: f64 = 2.0;
/// What is left of a fit when another part of the plant is spoken of, and when the sign's very word is denied.
const OTHER_PART: f64 = 0.4;
const DENIED: f64 = 0.3;
/// What a part adds that was named in the thought before.
const SAME_PART: f64 = 0.08;

/// What is heard, as concepts.
#[derive(Clone, Debug, Default)]
pub(super) struct Heard {
    /// Each with how sure it is.
    pub(super) said: BTreeMap<Said, f64>,
    /// Words that no sign speaks of.
    pub(super) unknown: usize,
    /// Parts that are named.
    pub(super) parts: BTreeSet<Part>,
    /// Parts that were named before.
    pub(super) before: BTreeSet<Part>,
}

impl Heard {
    /// What some pieces say together.
    pub(super) fn of<'a>(pieces: impl IntoIterator<Item = &'a Piece>, sayings: &Sayings) -> Self {
        let mut heard = Self::default();
        for word in pieces.into_iter().flat_map(|piece| &piece.words) {
            heard.add(word, sayings);
        }
        heard
    }

    fn add(&mut self, word: &Word, sayings: &Sayings) {
        match &word.meaning {
            Meaning::Noise => {}
            Meaning::Unknown => self.unknown += 1,
            Meaning::Meant(concepts) => {
                for (concept, sure) in concepts {
                    let known = self.said.entry((*concept, word.is_denied)).or_insert(*sure);
                    *known = known.max(*sure);
                    self.parts.extend(sayings.lexicon.part(*concept).filter(|_| !word.is_denied));
                }
            }
        }
    }

    /// Whether there is more in it than parts of plants and how things are.
    pub(super) fn says_something(&self, sayings: &Sayings) -> bool {
        self.said.keys().any(|(concept, denied)| {
            *denied || (sayings.lexicon.part(*concept).is_none() && !sayings.lexicon.is_soft(*concept))
        })
    }
}

/// How well a sign fits.
#[derive(Clone, Debug)]
pub(super) struct Fit {
    /// Its number.
    pub(super) sign: u16,
    /// 0..=1 and a little, to rank by.
    pub(super) score: f64,
    /// How much of what was heard the sign explains, 0..=1.
    pub(super) cover: f64,
    /// How much of its best name or lay word was heard, 0..=1.
    pub(super) way: f64,
    /// The weight of what both have.
    pub(super) mass: f64,
    /// The same without parts and without how things are.
    pub(super) core: f64,
    /// What both have, without how things are.
    pub(super) shared: Vec<Said>,
    /// Whether the part fits and nothing is denied.
    pub(super) is_whole: bool,
}

/// The signs that what is heard fits at all, best first; equals in the order of the set.
pub(super) fn fits(heard: &Heard, sayings: &Sayings) -> Vec<Fit> {
    let mut found: Vec<Fit> = sayings
        .signs
        .iter()
        .enumerate()
        .filter_map(|(sign, words)| fit(u16::try_from(sign).ok()?, words, heard, sayings))
        .collect();
    found.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.sign.cmp(&b.sign)));
    found
}

fn fit(sign: u16, words: &SignWords, heard: &Heard, sayings: &Sayings) -> Option<Fit> {
    let lexicon = &sayings.lexicon;
    let (mut explained, mut mass, mut core, mut all) = (0.0, 0.0, 0.0, 0.0);
    let (mut is_denied, mut both_say) = (false, Vec::new());
    for (said, sure) in &heard.said {
        let (concept, denied) = *said;
        let weight = lexicon.weight(*said);
        match words.bag.get(said) {
            Some(counts) => {
                if !lexicon.is_soft(concept) {
                    both_say.push(*said);
                }
                explained += weight * sure * counts;
                mass += weight * sure;
                all += weight;
                if denied || (lexicon.part(concept).is_none() && !lexicon.is_soft(concept)) {
                    core += weight * sure * counts;
                }
            }
            None => {
                all += lexicon.missed(*said);
                is_denied |= denied && words.bag.contains_key(&(concept, false));
            }
        }
    }
    if mass <= 0.0 {
        return None;
    }
    #[expect(clippy::cast_precision_loss, reason = "a few words")]
    let all = all + heard.unknown as f64 * UNKNOWN;
    let cover = explained / all;
    let (mut way, mut both) = (0.0_f64, 0.0_f64);
    for said in &words.ways {
        let (mut shared, mut whole) = (0.0, 0.0);
        for part in said {
            match heard.said.get(part) {
                Some(sure) => {
                    shared += lexicon.weight(*part) * sure;
                    whole += lexicon.weight(*part);
                }
                None => whole += lexicon.missed(*part),
            }
        }
        if whole > 0.0 && shared > 0.0 {
            let (here, there) = (shared / whole, shared / all);
            way = way.max(here);
            both = both.max(2.0 * here * there / (here + there));
        }
    }
    let other_part =
        !heard.parts.is_empty() && !words.parts.is_empty() && heard.parts.intersection(&words.parts).next().is_none();
    let mut score = 0.5 * cover + 0.5 * both;
    if heard.parts.is_empty() && heard.before.intersection(&words.parts).next().is_some() {
        score += SAME_PART;
    }
    if other_part {
        score *= OTHER_PART;
    }
    if is_denied {
        score *= DENIED;
    }
    Some(Fit { sign, score, cover, way, mass, core, shared: both_say, is_whole: !other_part && !is_denied })
}

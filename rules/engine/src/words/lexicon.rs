//! What a word means: the words of a language and of the signs, found also when they are misspelt.

use std::collections::{BTreeMap, BTreeSet};

use super::grammar::Grammar;
use super::language::{Part, Speech};
use super::sayings::Said;
use super::stem::{full_size, sound, stem};

/// How sure it is that a word is meant which is written otherwise: as a small thing, by ear, as one word of two, misspelt.
const SMALL: f64 = 0.95;
const BY_EAR: f64 = 0.9;
const OF_TWO: f64 = 0.9;
const MISSPELT: f64 = 0.8;
/// The fewest letters of a word that may be misspelt, and of one that may be misspelt twice.
const LETTERS_FOR_A_SLIP: usize = 4;
const LETTERS_FOR_TWO: usize = 8;
/// What a word of `soft` weighs where the other side does not have it.
const SOFT: f64 = 0.35;

/// What words mean that mean the same.
#[derive(Clone, Debug)]
struct Concept {
    is_soft: bool,
    part: Option<Part>,
    /// How much it tells, and how much that it is denied; nought when no sign says so.
    weights: (f64, f64),
}

/// What a word means.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Meaning {
    /// Nothing that concerns a plant.
    Noise,
    /// One or two concepts, each with how sure that is, 0..=1.
    Meant(Vec<(u32, f64)>),
    /// Something that no sign speaks of.
    Unknown,
}

/// The words of one language.
#[derive(Clone, Debug)]
pub(super) struct Lexicon {
    pub(super) speech: &'static Speech,
    pub(super) grammar: Grammar,
    noise: BTreeSet<&'static str>,
    other: BTreeSet<&'static str>,
    soft: BTreeSet<String>,
    parts: BTreeMap<&'static str, Part>,
    concepts: Vec<Concept>,
    is_weighed: bool,
    /// The words of the groups as they are written: stems that fall together are kept apart by them.
    by_word: BTreeMap<&'static str, u32>,
    by_stem: BTreeMap<String, u32>,
    /// None: two concepts sound the same.
    by_sound: BTreeMap<String, Option<u32>>,
    /// Known words by their first letter; a word without a concept says nothing of a plant.
    spelt: BTreeMap<char, BTreeMap<String, Option<u32>>>,
}

fn words(list: &'static str) -> impl Iterator<Item = &'static str> {
    list.split(' ').filter(|word| !word.is_empty())
}

impl Lexicon {
    /// The words of a language, without those of the signs.
    pub(super) fn of(speech: &'static Speech) -> Self {
        let mut lexicon = Self {
            speech,
            grammar: Grammar::of(speech),
            noise: words(speech.noise).collect(),
            other: words(speech.other).collect(),
            soft: words(speech.soft).map(|word| stem(word, speech.algorithm)).collect(),
            parts: speech.parts.iter().map(|(part, name)| (*name, *part)).collect(),
            concepts: Vec::new(),
            is_weighed: false,
            by_word: BTreeMap::new(),
            by_stem: BTreeMap::new(),
            by_sound: BTreeMap::new(),
            spelt: BTreeMap::new(),
        };
        for group in speech.groups {
            let mut concept = None;
            for word in words(group) {
                let here = *concept.get_or_insert_with(|| lexicon.found(word));
                lexicon.by_word.insert(word, here);
                lexicon.name(word, here);
            }
        }
        let plain = [speech.noise, speech.other, speech.deny, speech.deny_ends, speech.joins, speech.or, speech.turns];
        for word in plain.into_iter().flat_map(words) {
            lexicon.spell(word, None);
        }
        lexicon
    }

    /// Adds a word of a sign.
    pub(super) fn learn(&mut self, word: &str) {
        let speech = self.speech;
        let (denies, is_between) = (self.grammar.denies(word), self.grammar.is_between(word));
        if denies || is_between || self.is_noise(word) || self.by_word.contains_key(word) {
            return;
        }
        self.other.remove(word);
        let known = self.by_stem.get(&stem(word, speech.algorithm)).copied();
        let concept = known.unwrap_or_else(|| self.found(word));
        self.name(word, concept);
    }

    /// A new concept, by one of its words.
    fn found(&mut self, word: &str) -> u32 {
        let stem = stem(word, self.speech.algorithm);
        let number = u32::try_from(self.concepts.len()).unwrap_or(u32::MAX);
        let (is_soft, part) = (self.soft.contains(&stem), self.parts.get(word).copied());
        self.concepts.push(Concept { is_soft, part, weights: (0.0, 0.0) });
        number
    }

    /// Gives a concept one more word.
    fn name(&mut self, word: &str, concept: u32) {
        let stem = stem(word, self.speech.algorithm);
        if self.speech.by_ear {
            for heard in [sound(word), sound(&stem)] {
                let known = self.by_sound.entry(heard).or_insert(Some(concept));
                if *known != Some(concept) {
                    *known = None;
                }
            }
        }
        self.by_stem.entry(stem).or_insert(concept);
        self.spell(word, Some(concept));
    }

    fn spell(&mut self, word: &str, concept: Option<u32>) {
        if let Some(first) = word.chars().next() {
            self.spelt.entry(first).or_default().entry(word.to_owned()).or_insert(concept);
        }
    }

    /// Weighs what can be said by how few of `signs` signs say it.
    pub(super) fn weigh(&mut self, said_of: &BTreeMap<Said, usize>, signs: usize) {
        self.is_weighed = true;
        for ((concept, is_denied), count) in said_of {
            #[expect(clippy::cast_precision_loss, reason = "a few hundred signs")]
            let rarity = signs as f64 / (*count).max(1) as f64;
            if let Some(concept) = self.concepts.get_mut(*concept as usize) {
                let weight = if *is_denied { &mut concept.weights.1 } else { &mut concept.weights.0 };
                *weight = libm::log(1.0 + rarity);
            }
        }
    }

    /// How much it tells where both sides say it; nought when no sign does.
    pub(super) fn weight(&self, (concept, is_denied): Said) -> f64 {
        let weights = self.concepts.get(concept as usize).map_or((0.0, 0.0), |concept| concept.weights);
        if is_denied { weights.1 } else { weights.0 }
    }

    /// How much it counts where the other side does not say it.
    pub(super) fn missed(&self, said: Said) -> f64 {
        let weight = self.weight(said).max(self.weight((said.0, !said.1)));
        weight * if self.is_soft(said.0) { SOFT } else { 1.0 }
    }

    /// Whether it says how, not what.
    pub(super) fn is_soft(&self, concept: u32) -> bool {
        self.concepts.get(concept as usize).is_some_and(|concept| concept.is_soft)
    }

    /// The part of a plant that it names.
    pub(super) fn part(&self, concept: u32) -> Option<Part> {
        self.concepts.get(concept as usize)?.part
    }

    fn is_noise(&self, word: &str) -> bool {
        self.noise.contains(word) || !word.chars().any(char::is_alphabetic)
    }

    /// Whether a word is known as it is written.
    pub(super) fn knows(&self, word: &str) -> bool {
        self.is_noise(word)
            || self.other.contains(word)
            || self.by_stem.contains_key(&stem(word, self.speech.algorithm))
            || self.spelt.get(&word.chars().next().unwrap_or_default()).is_some_and(|known| known.contains_key(word))
    }

    fn meant(&self, word: &str) -> Option<u32> {
        let concept = self.by_word.get(word).or_else(|| self.by_stem.get(&stem(word, self.speech.algorithm)));
        concept.copied().filter(|concept| self.tells(*concept))
    }

    /// Whether any sign speaks of it; while the signs are read, every concept may.
    fn tells(&self, concept: u32) -> bool {
        !self.is_weighed || self.missed((concept, false)) > 0.0
    }

    /// What two words mean that are written apart and are one: `water logged`.
    pub(super) fn joined(&self, first: &str, second: &str) -> Option<Meaning> {
        if self.is_noise(first) || first.len() < 3 || second.len() < 3 {
            return None;
        }
        let whole = format!("{first}{second}");
        self.meant(&whole).map(|concept| Meaning::Meant(vec![(concept, 1.0)]))
    }

    /// What a folded word means.
    pub(super) fn meaning(&self, word: &str) -> Meaning {
        if self.is_noise(word) {
            return Meaning::Noise;
        }
        if self.other.contains(word) {
            return Meaning::Unknown;
        }
        let one = |concept: u32, sure: f64| Meaning::Meant(vec![(concept, sure)]);
        if let Some(concept) = self.meant(word) {
            return one(concept, 1.0);
        }
        if self.grammar.is_between(word) {
            return Meaning::Noise;
        }
        // A set is spelt well, so its own words are looked for as they are written.
        if !self.is_weighed || self.knows(word) {
            return Meaning::Unknown;
        }
        if self.speech.by_ear {
            if let Some(concept) = full_size(word).and_then(|whole| self.meant(&whole)) {
                return one(concept, SMALL);
            }
            let heard = [sound(word), sound(&stem(word, self.speech.algorithm))];
            let heard = heard.iter().find_map(|heard| self.by_sound.get(heard).copied().flatten());
            if let Some(concept) = heard.filter(|concept| self.tells(*concept)) {
                return one(concept, BY_EAR);
            }
        }
        if let Some((first, second)) = self.of_two(word) {
            return Meaning::Meant(vec![(first, OF_TWO), (second, OF_TWO)]);
        }
        match self.misspelt(word) {
            Some(Some(concept)) if self.tells(concept) => one(concept, MISSPELT),
            Some(None) if self.noise.contains(word) => Meaning::Noise,
            _ => Meaning::Unknown,
        }
    }

    /// Two words that are written as one: `blackspot`.
    fn of_two(&self, word: &str) -> Option<(u32, u32)> {
        word.char_indices().map(|(at, _)| at).filter(|at| *at >= 4 && word.len() - at >= 4).find_map(|at| {
            let (first, second) = word.split_at_checked(at)?;
            Some((self.meant(first)?, self.meant(second)?))
        })
    }

    /// The one known word that is nearest; none when there is none near, or two that mean different things. A known word
    /// that says nothing of a plant is near, too.
    fn misspelt(&self, word: &str) -> Option<Option<u32>> {
        let letters = word.chars().count();
        if letters < LETTERS_FOR_A_SLIP {
            return None;
        }
        let reach = if letters >= LETTERS_FOR_TWO { 2 } else { 1 };
        let mut nearest: Option<(usize, Option<u32>)> = None;
        // Hardly anybody gets the first letter wrong.
        for (known, concept) in self.spelt.get(&word.chars().next()?)? {
            if known.len().abs_diff(word.len()) > reach {
                continue;
            }
            let edits = strsim::osa_distance(word, known);
            if edits > reach {
                continue;
            }
            match nearest {
                Some((least, _)) if edits > least => {}
                Some((least, other)) if edits == least => {
                    if other != *concept {
                        nearest = Some((least, None));
                    }
                }
                _ => nearest = Some((edits, *concept)),
            }
        }
        nearest.map(|(_, concept)| concept)
    }
}

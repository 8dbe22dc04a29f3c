//! How people speak of plants: what must be known of a language beyond the words of a set.
//!
//! A set brings names and lay words of its signs; a language brings which words mean nothing, which are one, which deny
//! and which doubt. All words stand folded: lower case, no accents, no apostrophes. A third language is a third file.

mod en;
mod es;

use rust_stemmers::Algorithm;

/// The languages that are understood.
pub(super) const LANGUAGES: [&Speech; 2] = [&en::ENGLISH, &es::SPANISH];

/// A part of a plant, as far as it tells signs apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Part {
    Leaf,
    Shoot,
    Bud,
    Flower,
    Fruit,
    Stem,
    Crown,
    Root,
    Soil,
    Lawn,
}

/// What is known of a language. Lists of words are separated by spaces.
#[derive(Debug)]
pub(super) struct Speech {
    /// Its code.
    pub(super) code: &'static str,
    /// What takes its endings off.
    pub(super) algorithm: Algorithm,
    /// Whether a word is also known by its sound and by its full size: Spanish is written as it sounds.
    pub(super) by_ear: bool,
    /// Words that say nothing of a plant.
    pub(super) noise: &'static str,
    /// Ordinary words of other matters: they count as not understood, and are no misspelling of ours.
    pub(super) other: &'static str,
    /// Words that say how, not what: not to hear them in a sign's words costs little.
    pub(super) soft: &'static str,
    /// Words that deny what follows them.
    pub(super) deny: &'static str,
    /// Words that end what is denied.
    pub(super) deny_ends: &'static str,
    /// Runs of words that say nothing, looked for before words that deny: `don't know why`.
    pub(super) sayings: &'static [&'static str],
    /// Runs of words after which nothing is certain to be seen here and now: a clause that has one is never understood.
    pub(super) doubt: &'static [&'static str],
    /// Words between clauses of one thought.
    pub(super) joins: &'static str,
    /// Words between alternatives: what is denied before them is denied after them.
    pub(super) or: &'static str,
    /// Words that begin another thought.
    pub(super) turns: &'static str,
    /// Words that are one; the first is its name.
    pub(super) groups: &'static [&'static str],
    /// What names a part: the first word of a group, or a word.
    pub(super) parts: &'static [(Part, &'static str)],
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::super::fold::folded;
    use super::*;

    #[test]
    fn every_word_stands_folded_and_means_one_thing() {
        let mut wrong: Vec<String> = Vec::new();
        for speech in LANGUAGES {
            let mut groups: BTreeMap<&str, &str> = BTreeMap::new();
            for group in speech.groups {
                let name = group.split(' ').next().expect("a name");
                for word in group.split(' ') {
                    assert_eq!(folded(word), word, "{}", speech.code);
                    let before = groups.insert(word, name);
                    if let Some(before) = before.filter(|before| *before != name) {
                        wrong.push(format!("{word}: {before} or {name}"));
                    }
                }
            }
            let lists = [speech.noise, speech.other, speech.soft, speech.deny, speech.deny_ends, speech.joins];
            let runs = speech.sayings.iter().chain(speech.doubt).copied();
            for word in lists.into_iter().chain([speech.or, speech.turns]).chain(runs).flat_map(|list| list.split(' '))
            {
                assert_eq!(folded(word), word, "{}", speech.code);
            }
            for word in speech.noise.split(' ').chain(speech.other.split(' ')).filter(|word| !word.is_empty()) {
                if let Some(meaning) = groups.get(word) {
                    wrong.push(format!("{word}: nothing or {meaning}"));
                }
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join(", "));
    }

    #[test]
    fn every_part_has_a_name() {
        for speech in LANGUAGES {
            for (part, name) in speech.parts {
                assert!(!name.contains(' ') && folded(name) == *name, "{part:?} {name}");
            }
        }
    }
}

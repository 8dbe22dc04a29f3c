//! From a gardener's words to coded signs.
//!
//! Built once a set: each sign's name and lay words, read as what they mean. `fold` takes case and accents off, `stem` the
//! endings; `language` knows which words mean nothing, which are one, which deny and which doubt (the last two are looked
//! up in a `grammar`); `lexicon` finds what a word means, also misspelt; `clause` parts a text into thoughts and marks what is denied; `sayings` holds what the
//! signs are called; `score` says how well a thought fits a sign. On these stand [`search`], which ranks signs for a few
//! words, [`plants`], which finds plants by what customers call them, and [`hear`], which says what of a text is understood, and never guesses.

mod clause;
mod fold;
mod grammar;
pub mod hear;
mod language;
mod lexicon;
pub mod plants;
mod sayings;
mod score;
pub mod search;
mod stem;

use std::collections::BTreeSet;
use std::sync::LazyLock;

use crate::compile::book::PlantBook;
use crate::compile::term::Term;
use crate::pack::Pack;
use language::LANGUAGES;
use lexicon::Lexicon;
use sayings::Sayings;

/// The most letters of a text that is heard or searched for.
pub const MOST_LETTERS: usize = 500;

/// The languages without the words of any set, read once.
static PLAIN: LazyLock<Vec<Lexicon>> = LazyLock::new(|| LANGUAGES.iter().map(|speech| Lexicon::of(speech)).collect());

/// What the signs of a set are called, in every language of it that is understood.
#[derive(Clone, Debug)]
pub struct Words {
    sayings: Vec<Sayings>,
    /// What its plants are called.
    plants: Vec<plants::Called>,
    /// For each plant its signs: those that its rules and problems speak of; then those of emergencies.
    of_plant: Vec<BTreeSet<u16>>,
}

impl Words {
    /// The words of a pack.
    #[must_use]
    pub fn of(pack: &Pack, plants: &[PlantBook]) -> Self {
        let spoken = |code: &str| pack.header.languages.iter().any(|language| language == code);
        Self {
            sayings: PLAIN
                .iter()
                .filter(|plain| spoken(plain.speech.code))
                .map(|plain| Sayings::of(plain.clone(), pack))
                .collect(),
            plants: plants::names(pack),
            of_plant: plants.iter().map(signs_of).chain(std::iter::once(emergencies(pack))).collect(),
        }
    }

    /// The signs that the rules and problems of a plant speak of, by their numbers.
    pub fn signs_of(&self, plant: u16) -> impl Iterator<Item = u16> + '_ {
        self.of_plant.get(usize::from(plant)).into_iter().flatten().copied()
    }

    /// Under which number a text is heard where the plant is not known: only emergencies are understood.
    #[must_use]
    pub fn without_plant(&self) -> u16 {
        u16::try_from(self.of_plant.len().saturating_sub(1)).unwrap_or(u16::MAX)
    }

    /// Whether a sign tells of an emergency.
    fn is_danger(&self, sign: u16) -> bool {
        self.of_plant.last().is_some_and(|signs| signs.contains(&sign))
    }

    fn concerns(&self, plant: u16, sign: u16) -> bool {
        self.of_plant.get(usize::from(plant)).is_some_and(|signs| signs.contains(&sign))
    }

    /// The language in which most of the words are known; that which is asked for when it is a tie.
    fn spoken_in(&self, tokens: &[fold::Token], asked: &str) -> Option<&Sayings> {
        let is_asked = |sayings: &Sayings| asked.split('-').next().is_some_and(|code| code == sayings.code());
        // Of equals the last is taken, so the one that is asked for comes last.
        let in_order = self.sayings.iter().filter(|s| !is_asked(s)).chain(self.sayings.iter().filter(|s| is_asked(s)));
        in_order.max_by_key(|sayings| sayings.known(tokens))
    }
}

/// As much of a text as is heard.
fn beginning(text: &str) -> &str {
    text.char_indices().nth(MOST_LETTERS).and_then(|(at, _)| text.get(..at)).unwrap_or(text)
}

fn signs_of(book: &PlantBook) -> BTreeSet<u16> {
    let mut signs: BTreeSet<u16> =
        book.problems.iter().flat_map(|problem| problem.signs.iter().map(|(sign, ..)| *sign)).collect();
    for probe in &book.probes {
        probe.walk(&mut |term| {
            if let Term::Sign(sign) | Term::Severity(sign) | Term::Share(sign) = term {
                signs.insert(*sign);
            }
        });
    }
    signs
}

fn emergencies(pack: &Pack) -> BTreeSet<u16> {
    pack.signs.iter().zip(0..).filter(|(sign, _)| sign.entry.emergency).map(|(_, number)| number).collect()
}

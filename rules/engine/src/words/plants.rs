//! From what customers call a plant to the plant and its kind: names, synonyms, botanical names, slips of the finger. What
//! is no name of a plant is not known; the nearest names are told beside it, and are never taken for it.

use rust_stemmers::Algorithm;

use super::fold::{Mark, tokens};
use super::stem::{sound, stem};
use super::{Words, beginning};
use crate::pack::{Pack, PlantEntry};

/// How a plant was found, the surest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum How {
    /// By its name.
    Name,
    /// By another name of it, or by the name of a kind.
    Synonym,
    /// By a botanical name.
    Scientific,
    /// By a name that is written otherwise.
    Misspelling,
    /// It is not what was said, only what comes nearest.
    Near,
}

/// A plant that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlantFound {
    /// Its number.
    pub plant: u16,
    /// What the name says of its traits: the trait's and the value's number.
    pub kind: Option<(u16, u16)>,
    /// The name by which it was found, as the set writes it.
    pub name: String,
    /// How.
    pub how: How,
}

/// One name of a plant.
#[derive(Clone, Debug)]
pub(super) struct Called {
    plant: u16,
    kind: Option<(u16, u16)>,
    name: String,
    how: How,
    /// Its words, folded.
    words: Vec<String>,
    /// What is left without words that any plant may have.
    core: Vec<String>,
    tongue: Tongue,
}

/// Whose endings a name has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Tongue {
    English,
    Spanish,
    Latin,
}

/// The most names that are told where nothing is known.
const MOST_NEAR: usize = 3;
/// The fewest letters of a name with a slip, and with two.
const LETTERS_FOR_A_SLIP: usize = 5;
const LETTERS_FOR_TWO: usize = 8;

/// Words that say nothing of which plant it is, wherever they stand.
const ARTICLES: &str = "a an the my our your some in x el la los las un una mi mis su en al";
/// How a plant looks.
const LOOKS: &str = "young old small little big large tall dwarf potted new red white pink yellow purple blue \
     joven viejo vieja pequeno pequena grande enano enana nuevo nueva rojo roja blanco blanca amarillo amarilla";
/// Words that say it only at the end: `lemon tree`, not `tree tomato`.
const AT_THE_END: &str = "tree trees plant plants bush bushes shrub shrubs seedling seedlings bulb bulbs vine vines";
/// Words that say it only at the beginning: `mata de tomate`, not `tomate de árbol`.
const AT_THE_BEGINNING: &str =
    "arbol arboles arbolito planta plantas plantita mata matas arbusto arbustos bulbo bulbos";

fn is_one_of(list: &str, word: &str) -> bool {
    list.split_whitespace().any(|known| known == word)
}

fn words_of(text: &str) -> Vec<String> {
    tokens(text).into_iter().filter(|token| token.mark == Mark::Word).map(|token| token.word).collect()
}

/// The words without those that any plant may have; all of them where nothing would be left. Size and colour are a part of
/// names (`tall fescue`), and may stand before one (`tall lemon tree`): so they go only from what is said.
fn core_of(words: &[String], with_looks: bool) -> Vec<String> {
    let is_left = |word: &str| is_one_of(ARTICLES, word) || (!with_looks && is_one_of(LOOKS, word));
    let mut core: Vec<&String> = words.iter().filter(|word| !is_left(word)).collect();
    while core.len() > 1 && core.last().is_some_and(|word| is_one_of(AT_THE_END, word)) {
        core.pop();
    }
    if core.len() > 1 && core.first().is_some_and(|word| is_one_of(AT_THE_BEGINNING, word)) {
        core.remove(0);
        if core.len() > 1 && core.first().is_some_and(|word| matches!(word.as_str(), "de" | "del")) {
            core.remove(0);
        }
    }
    if core.is_empty() { words.to_vec() } else { core.into_iter().cloned().collect() }
}

/// The names of every plant of a pack.
pub(super) fn names(pack: &Pack) -> Vec<Called> {
    let mut out = Vec::new();
    for (filed, plant) in pack.plants.iter().zip(0u16..) {
        of_plant(&filed.entry, plant, &mut out);
    }
    out
}

fn of_plant(entry: &PlantEntry, plant: u16, out: &mut Vec<Called>) {
    let mut add = |name: &str, how: How, tongue: Tongue, kind: Option<(u16, u16)>| {
        let words = words_of(name);
        if !words.is_empty() {
            let core = core_of(&words, true);
            out.push(Called { plant, kind, name: name.to_owned(), how, words, core, tongue });
        }
    };
    let tongue = |language: &str| match language {
        "es" => Tongue::Spanish,
        "scientific" => Tongue::Latin,
        _ => Tongue::English,
    };
    let how = |language: &str| if language == "scientific" { How::Scientific } else { How::Synonym };
    // What a kind is called says more than what all of them are called.
    for (part, trait_number) in entry.traits.iter().zip(0u16..) {
        for (value, number) in part.values.iter().zip(0u16..) {
            for (language, list) in &value.names {
                for name in list {
                    add(name, how(language), tongue(language), Some((trait_number, number)));
                }
            }
        }
    }
    add(&entry.id.value, How::Name, Tongue::English, None);
    for (language, name) in &entry.name.0 {
        add(name, How::Name, tongue(language), None);
    }
    for (language, list) in &entry.names {
        for name in list {
            add(name, how(language), tongue(language), None);
        }
    }
}

fn same(a: &str, b: &str, tongue: Tongue) -> bool {
    let by = |algorithm: Algorithm| stem(a, algorithm) == stem(b, algorithm);
    a == b
        || match tongue {
            Tongue::English => by(Algorithm::English),
            Tongue::Spanish => by(Algorithm::Spanish),
            Tongue::Latin => false,
        }
}

/// Whether two lists have the same words, in whatever order.
fn same_words(a: &[String], b: &[String], tongue: Tongue) -> bool {
    a.len() == b.len()
        && a.iter().all(|x| b.iter().any(|y| same(x, y, tongue)))
        && b.iter().all(|y| a.iter().any(|x| same(x, y, tongue)))
}

/// How many edits lie between two names, if few enough for a slip.
fn slip(said: &str, name: &str) -> Option<usize> {
    let letters = name.chars().count();
    let reach = match letters {
        0..LETTERS_FOR_A_SLIP => 0,
        LETTERS_FOR_A_SLIP..LETTERS_FOR_TWO => 1,
        _ => 2,
    };
    let edits = strsim::osa_distance(said, name);
    let sorted = |text: &str| {
        let mut letters: Vec<char> = text.chars().collect();
        letters.sort_unstable();
        letters
    };
    let is_swap = edits == 1 && letters == LETTERS_FOR_A_SLIP - 1 && sorted(said) == sorted(name);
    (edits <= reach || is_swap || (letters >= 4 && sound(said) == sound(name))).then_some(edits)
}

impl Words {
    /// The plants that a customer means by a few words, best first, one of each plant and kind. Where no name fits, the
    /// nearest are told, each as [`How::Near`]: what was said is then not known.
    #[must_use]
    pub fn plants(&self, text: &str) -> Vec<PlantFound> {
        let words = words_of(beginning(text));
        if words.is_empty() {
            return Vec::new();
        }
        let (core, with_looks) = (core_of(&words, false), core_of(&words, true));
        let (whole, short) = (words.concat(), core.concat());
        let mut found: Vec<(usize, How, usize, &Called)> = Vec::new();
        for called in &self.plants {
            let joined = called.core.concat();
            // Written the same; the same words, with and without how it looks; the same when written as one; nearly the same.
            let rank = if called.words == words {
                Some((0, called.how, 0))
            } else if same_words(&called.core, &with_looks, called.tongue) {
                Some((1, called.how, 0))
            } else if same_words(&called.core, &core, called.tongue) {
                Some((2, called.how, 0))
            } else if whole == called.words.concat() || short == joined {
                Some((3, called.how, 0))
            } else {
                slip(&short, &joined).map(|edits| (4, How::Misspelling, edits))
            };
            found.extend(rank.map(|(tier, how, edits)| (tier, how, edits, called)));
        }
        found.sort_by_key(|(tier, how, edits, called)| (*tier, *edits, *how, called.kind.is_none(), called.plant));
        // What fits less well is only looked for where nothing fits better.
        let best = found.first().map_or(0, |(tier, ..)| *tier);
        found.retain(|(tier, ..)| *tier == best);
        if found.is_empty() {
            return self.near(&core);
        }
        let mut out: Vec<PlantFound> = Vec::new();
        for (_, how, _, called) in found {
            let one = PlantFound { plant: called.plant, kind: called.kind, name: called.name.clone(), how };
            let is_told = out.iter().any(|other| {
                other.plant == one.plant && (other.kind == one.kind || one.kind.is_none() || other.how < one.how)
            });
            if !is_told {
                out.push(one);
            }
        }
        out
    }

    /// The plant and kind that are surely meant: by a name, and of one plant only.
    #[must_use]
    pub fn plant(&self, text: &str) -> Option<PlantFound> {
        let found = self.plants(text);
        let first = found.first().filter(|first| first.how < How::Misspelling)?;
        let is_one = found.iter().all(|other| other.plant == first.plant);
        let kinds = found.iter().filter(|other| other.kind != first.kind && other.kind.is_some()).count();
        is_one.then(|| PlantFound { kind: first.kind.filter(|_| kinds == 0), ..first.clone() })
    }

    /// Names that have a word in common with what was said, or look like it.
    fn near(&self, core: &[String]) -> Vec<PlantFound> {
        let short = core.concat();
        let letters = short.chars().count();
        let mut near: Vec<(usize, &Called)> = Vec::new();
        for called in &self.plants {
            let shares = called.core.iter().all(|word| core.iter().any(|said| same(said, word, called.tongue)));
            let edits = strsim::osa_distance(&short, &called.core.concat());
            if shares || edits <= letters.div_ceil(3) {
                near.push((if shares { 0 } else { edits }, called));
            }
        }
        near.sort_by_key(|(edits, called)| (*edits, called.kind.is_none(), called.plant));
        let mut out: Vec<PlantFound> = Vec::new();
        for (_, called) in near {
            if out.len() < MOST_NEAR && !out.iter().any(|other| other.plant == called.plant) {
                let name = called.name.clone();
                out.push(PlantFound { plant: called.plant, kind: called.kind, name, how: How::Near });
            }
        }
        out
    }
}

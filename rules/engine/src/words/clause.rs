//! A text as thoughts: where one ends and the next begins, what in them is denied and what is only supposed.

use std::ops::Range;

use super::fold::{Mark, Token, tokens};
use super::lexicon::{Lexicon, Meaning};

/// A word of a thought.
#[derive(Clone, Debug)]
pub(super) struct Word {
    /// What it means.
    pub(super) meaning: Meaning,
    /// Whether it is denied.
    pub(super) is_denied: bool,
    /// Bytes of the text.
    pub(super) place: Range<usize>,
}

/// The least that can be a thought of its own: between commas, `and`s and the like.
#[derive(Clone, Debug, Default)]
pub(super) struct Piece {
    /// Its words, those that say nothing among them.
    pub(super) words: Vec<Word>,
}

/// What stands between full stops or words such as `but`.
#[derive(Clone, Debug, Default)]
pub(super) struct Clause {
    /// Its pieces, in order.
    pub(super) pieces: Vec<Piece>,
    /// Whether it says that something was, may be, or is elsewhere.
    pub(super) is_doubtful: bool,
}

/// The clauses of a text.
pub(super) fn clauses(text: &str, lexicon: &Lexicon) -> Vec<Clause> {
    let all = tokens(text);
    let ends = |token: &Token| token.mark == Mark::Strong || lexicon.grammar.turns(&token.word);
    all.split(ends).filter(|run| !run.is_empty()).map(|run| clause(run, lexicon)).collect()
}

fn clause(tokens: &[Token], lexicon: &Lexicon) -> Clause {
    let grammar = &lexicon.grammar;
    let mut clause = Clause::default();
    let mut piece = Piece::default();
    let (mut is_denied, mut skip) = (false, 0_usize);
    for (at, token) in tokens.iter().enumerate() {
        let word = token.word.as_str();
        clause.is_doubtful |= grammar.doubts(tokens, at);
        skip = skip.max(grammar.saying(tokens, at));
        if token.mark == Mark::Weak || grammar.joins(word) {
            clause.pieces.push(std::mem::take(&mut piece));
        }
        if token.mark == Mark::Weak {
            is_denied = is_denied && goes_on(tokens.get(at + 1..).unwrap_or_default(), lexicon);
            continue;
        }
        // `and` is between two thoughts and in neither; `ni` denies as well.
        if grammar.joins(word) && !grammar.denies(word) {
            is_denied &= !grammar.ends_denial(word);
            skip = skip.saturating_sub(1);
            continue;
        }
        let mut meaning = Meaning::Noise;
        if skip > 0 {
            skip -= 1;
        } else if grammar.denies(word) {
            is_denied = true;
        } else {
            is_denied &= !grammar.ends_denial(word);
            meaning = lexicon.meaning(word);
            let next = tokens.get(at + 1).map_or("", |next| next.word.as_str());
            if let Some(whole) = lexicon.joined(word, next).filter(|_| !is_certain(&meaning)) {
                meaning = whole;
                skip = 1;
            }
        }
        piece.words.push(Word { meaning, is_denied, place: token.place.clone() });
    }
    clause.pieces.push(piece);
    clause.pieces.retain(|piece| !piece.words.is_empty());
    clause
}

/// Whether a word is known as it is written.
fn is_certain(meaning: &Meaning) -> bool {
    match meaning {
        Meaning::Noise => true,
        Meaning::Meant(concepts) => concepts.iter().all(|(_, sure)| *sure >= 1.0),
        Meaning::Unknown => false,
    }
}

/// Whether what is denied before a comma is denied after it: `no spots, holes or webs`.
fn goes_on(rest: &[Token], lexicon: &Lexicon) -> bool {
    let grammar = &lexicon.grammar;
    let ends = |word: &str| grammar.denies(word) || grammar.ends_denial(word) || grammar.joins(word);
    rest.iter().find(|token| ends(&token.word)).is_some_and(|token| grammar.is_or(&token.word))
}

#[cfg(test)]
mod tests {
    use super::super::PLAIN;
    use super::*;

    /// The words that are denied, and all pieces, each as it stands in the text.
    fn heard(text: &str, language: usize) -> (Vec<&str>, Vec<&str>) {
        let pieces: Vec<Piece> = clauses(text, &PLAIN[language]).into_iter().flat_map(|clause| clause.pieces).collect();
        let denied = pieces.iter().flat_map(|piece| &piece.words).filter(|word| word.is_denied);
        let denied = denied.map(|word| &text[word.place.clone()]).collect();
        let place = |piece: &Piece| piece.words[0].place.start..piece.words[piece.words.len() - 1].place.end;
        (denied, pieces.iter().map(|piece| &text[place(piece)]).collect())
    }

    #[test]
    fn what_is_denied_ends_where_people_end_it() {
        for (text, language, denied) in [
            ("no spots, holes or webs", 0, "no spots holes webs"),
            ("no flowers, yellow leaves", 0, "no flowers"),
            ("no flowers and yellow leaves", 0, "no flowers"),
            ("it isn't sticky but has spots", 0, "isn't sticky"),
            ("a few spots and I don't know why", 0, ""),
            ("no problem with aphids", 0, "no problem aphids"),
            ("sin manchas ni agujeros", 1, "sin manchas ni agujeros"),
            ("no abren y son marrones", 1, "no abren"),
            ("no sé por qué se caen", 1, ""),
        ] {
            assert_eq!(heard(text, language).0.join(" "), denied, "{text}");
        }
    }

    #[test]
    fn thoughts_end_at_commas_and_small_words() {
        let (_, pieces) = heard("Yellow leaves, sticky and torn; but ants: on stems", 0);
        assert_eq!(pieces, ["Yellow leaves", "sticky", "torn", "ants", "on stems"]);
        assert_eq!(heard("and, , and. but", 0).1, Vec::<&str>::new());
    }

    #[test]
    fn what_was_or_may_be_is_in_doubt() {
        let doubtful = |text: &str, language: usize| clauses(text, &PLAIN[language]).iter().any(|c| c.is_doubtful);
        for (text, language) in [("maybe aphids", 0), ("last year it had aphids", 0), ("creo que tiene pulgones", 1)] {
            assert!(doubtful(text, language), "{text}");
        }
        assert!(!doubtful("it has aphids", 0) && !doubtful("tiene pulgones", 1));
    }
}

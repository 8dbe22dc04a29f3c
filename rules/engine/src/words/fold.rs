//! A text as its words: without case, accents and apostrophes, each with its place in the text.

use std::ops::Range;

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// What a token is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark {
    /// A word.
    Word,
    /// A comma or the like: a clause may end here.
    Weak,
    /// A full stop or the like: a clause ends here.
    Strong,
}

/// A word or a mark between words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Token {
    /// Which.
    pub(super) mark: Mark,
    /// The word, folded; empty for a mark.
    pub(super) word: String,
    /// Bytes of the text.
    pub(super) place: Range<usize>,
}

/// The words and marks of a text, in order.
pub(super) fn tokens(text: &str) -> Vec<Token> {
    let mut out: Vec<Token> = Vec::new();
    let mut word: Option<Range<usize>> = None;
    let mut after_gap = true;
    for (at, letter) in text.char_indices() {
        let end = at + letter.len_utf8();
        if letter.is_alphanumeric() || (is_combining_mark(letter) && word.is_some()) {
            word = Some(word.map_or(at, |range| range.start)..end);
            after_gap = false;
            continue;
        }
        // `won't` is one word; an apostrophe that ends a word changes nothing.
        if matches!(letter, '\'' | '’' | 'ʼ' | '`' | '´') && word.is_some() {
            continue;
        }
        push_word(text, word.take(), &mut out);
        let mark = match letter {
            '.' | ';' | ':' | '!' | '?' | '¿' | '¡' | '\n' | '\r' | '(' | ')' | '…' => Some(Mark::Strong),
            ',' | '/' | '&' | '+' | '–' | '—' | '、' => Some(Mark::Weak),
            // A hyphen inside `papery-brown` parts two words, one between spaces two thoughts.
            '-' if after_gap => Some(Mark::Weak),
            _ => None,
        };
        if let Some(mark) = mark {
            out.push(Token { mark, word: String::new(), place: at..end });
        }
        after_gap = letter.is_whitespace();
    }
    push_word(text, word, &mut out);
    out
}

fn push_word(text: &str, place: Option<Range<usize>>, out: &mut Vec<Token>) {
    let Some(place) = place else { return };
    let word = folded(text.get(place.clone()).unwrap_or_default());
    if !word.is_empty() {
        out.push(Token { mark: Mark::Word, word, place });
    }
}

/// A word in lower case, without accents and apostrophes: `Won’t` is `wont`, `PÉTALOS` is `petalos`, `ñ` is `n`.
pub(super) fn folded(word: &str) -> String {
    word.nfkd().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).filter(|c| c.is_alphanumeric()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> Vec<String> {
        tokens(text)
            .into_iter()
            .map(|token| match token.mark {
                Mark::Word => token.word,
                Mark::Weak => ",".to_owned(),
                Mark::Strong => ".".to_owned(),
            })
            .collect()
    }

    #[test]
    fn case_accents_and_apostrophes_do_not_count() {
        assert_eq!(words("Won’t OPEN, Pétalos; ñ"), ["wont", "open", ",", "petalos", ".", "n"]);
        assert_eq!(words("papery-brown - no"), ["papery", "brown", ",", "no"]);
        assert_eq!(words("pe\u{301}talo"), words("pétalo"), "composed or not");
        assert_eq!(words("\u{301}'' …"), ["."]);
    }

    #[test]
    fn every_token_stands_where_it_says() {
        let text = "Las hojas, ¿están amarillas? I can't tell — 5 cm";
        for token in tokens(text) {
            let there = text.get(token.place.clone()).expect("a place in the text");
            assert!(token.mark != Mark::Word || folded(there) == token.word, "{there}");
        }
    }
}

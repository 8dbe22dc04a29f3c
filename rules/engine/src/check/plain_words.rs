//! Plain words: sentences that can be read at a glance, without phrases that say nothing.
//!
//! What can be judged without knowing the grammar of a language is judged: how long a sentence is, and phrases of a list.

use super::wording::{Wording, all};
use crate::fault::Fault;
use crate::pack::Pack;
use crate::pack::rule::PlainEntry;

const LONG: &str = "long-sentence";
const EMPTY: &str = "empty-phrase";

/// The most words of a sentence (own choice, after the usual advice of plain-language guides: *common practice*).
const MOST_WORDS: usize = 20;

/// Phrases that say nothing, or hide who does what, by language (own list).
const PHRASES: [(&str, &[&str]); 2] = [
    (
        "en",
        &[
            "it is important to",
            "it is recommended",
            "it should be noted",
            "should be considered",
            "make sure to",
            "in order to",
            "due to the fact",
            "at this point in time",
            "as appropriate",
            "if necessary",
            "please",
        ],
    ),
    (
        "es",
        &[
            "es importante",
            "se recomienda",
            "cabe señalar",
            "debe considerarse",
            "asegúrese de que",
            "con el fin de",
            "debido al hecho",
            "en este momento",
            "según corresponda",
            "en caso necesario",
            "por favor",
        ],
    ),
];

/// Sentences of rules and cautions that are too long.
pub(super) fn long_sentences(pack: &Pack, faults: &mut Vec<Fault>) {
    each(pack, LONG, &mut |wording, language, text| {
        for sentence in sentences(text) {
            let words = words(sentence);
            if words > MOST_WORDS {
                let message = format!("{words} words in one sentence of `{}` ({language})", wording.field);
                faults.push(
                    Fault::warning(LONG, wording.place_in(language, sentence), message)
                        .help(format!("make two of it: at most {MOST_WORDS}, figures and brackets not counted")),
                );
            }
        }
    });
}

/// Phrases that say nothing.
pub(super) fn empty_phrases(pack: &Pack, faults: &mut Vec<Fault>) {
    each(pack, EMPTY, &mut |wording, language, text| {
        let small = text.to_lowercase();
        let list = PHRASES.iter().find(|(own, _)| *own == language).map(|(_, list)| *list).unwrap_or_default();
        for phrase in list.iter().filter(|phrase| stands_in(&small, phrase)) {
            faults.push(
                Fault::warning(
                    EMPTY,
                    wording.place_of(language),
                    format!("`{phrase}` in `{}` ({language}) tells the gardener nothing", wording.field),
                )
                .help("begin with the work itself, or leave the phrase out"),
            );
        }
    });
}

/// Calls `visit` for every text that a gardener reads and for which the finding is not waived.
pub(super) fn each(pack: &Pack, code: &str, visit: &mut dyn FnMut(&Wording<'_>, &str, &str)) {
    if waived(pack.header.plain.as_ref(), code) {
        return;
    }
    for wording in all(pack).iter().filter(|wording| matches!(wording.owner, "rule" | "caution")) {
        if waived(wording.rule.and_then(|rule| rule.plain.as_ref()), code) {
            continue;
        }
        for (language, texts) in wording.languages() {
            texts.iter().for_each(|text| visit(wording, language, text));
        }
    }
}

fn waived(plain: Option<&PlainEntry>, code: &str) -> bool {
    plain.is_some_and(|plain| !plain.because.trim().is_empty() && plain.waive.iter().any(|waived| waived.value == code))
}

/// The sentences of a text: they end with `.`, `!` or `?` before a space or the end.
pub(super) fn sentences(text: &str) -> impl Iterator<Item = &str> {
    let mut rest = text;
    std::iter::from_fn(move || {
        if rest.trim().is_empty() {
            return None;
        }
        let end = rest
            .char_indices()
            .zip(rest.chars().skip(1).map(Some).chain([None]))
            .find(|((_, c), next)| ".!?".contains(*c) && next.is_none_or(char::is_whitespace))
            .map_or(rest.len(), |((at, c), _)| at + c.len_utf8());
        let (sentence, more) = rest.split_at_checked(end).unwrap_or((rest, ""));
        rest = more;
        Some(sentence.trim())
    })
}

/// The words of a sentence: what holds a letter and stands in no brackets.
fn words(sentence: &str) -> usize {
    let mut depth = 0_u32;
    let mut open = String::with_capacity(sentence.len());
    for c in sentence.chars() {
        match c {
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            c if depth == 0 => open.push(c),
            _ => {}
        }
    }
    open.split_whitespace().filter(|word| word.chars().any(char::is_alphabetic)).count()
}

/// Whether a phrase stands in a text as whole words.
fn stands_in(text: &str, phrase: &str) -> bool {
    text.match_indices(phrase).any(|(at, _)| {
        let before = text.get(..at).and_then(|text| text.chars().next_back());
        let after = text.get(at + phrase.len()..).and_then(|text| text.chars().next());
        !before.is_some_and(char::is_alphanumeric) && !after.is_some_and(char::is_alphanumeric)
    })
}

#[cfg(test)]
pub(super) const LONG_CASE: super::cases::Case = super::cases::Case {
    code: LONG,
    trips: &[(
        "rules/rose.yaml",
        "en: \"Oil smothers them.\"",
        "en: \"One two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty more. Yes.\"",
    )],
    also: &[],
    at: "One two",
    says: "rules/rose.yaml:65:14: warning[long-sentence]: 21 words in one sentence of `why` (en)\n  help: make two of it: at most 20, figures and brackets not counted",
    just_not: &[(
        "rules/rose.yaml",
        "en: \"Oil smothers them.\"",
        "en: \"One two three four five six (not these) seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen 20 21 more. Yes.\"",
    )],
};

#[cfg(test)]
pub(super) const EMPTY_CASE: super::cases::Case = super::cases::Case {
    code: EMPTY,
    trips: &[("rules/rose.yaml", "en: \"Oil smothers them.\"", "en: \"It is important to smother them.\"")],
    also: &[],
    at: "en: \"It is important",
    says: "rules/rose.yaml:65:9: warning[empty-phrase]: `it is important to` in `why` (en) tells the gardener nothing\n  help: begin with the work itself, or leave the phrase out",
    just_not: &[
        ("rules/rose.yaml", "en: \"Oil smothers them.\"", "en: \"It is important to smother them.\""),
        (
            "rules/rose.yaml",
            "  materials: [garden-oil]\n",
            "  materials: [garden-oil]\n  plain: {waive: [empty-phrase], because: \"The label says so.\"}\n",
        ),
    ],
};

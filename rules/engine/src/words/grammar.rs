//! The words that hold a sentence together: which deny, which doubt, which part one thought from the next.

use std::collections::{BTreeMap, BTreeSet};

use super::fold::Token;
use super::language::Speech;

/// Runs of words by their first.
type Runs = BTreeMap<&'static str, Vec<&'static str>>;

/// The lists of a language, to be looked up in.
#[derive(Clone, Debug)]
pub(super) struct Grammar {
    deny: BTreeSet<&'static str>,
    deny_ends: BTreeSet<&'static str>,
    joins: BTreeSet<&'static str>,
    or: BTreeSet<&'static str>,
    turns: BTreeSet<&'static str>,
    sayings: Runs,
    doubt: Runs,
}

impl Grammar {
    pub(super) fn of(speech: &Speech) -> Self {
        let list = |words: &'static str| words.split_whitespace().collect();
        Self {
            deny: list(speech.deny),
            deny_ends: list(speech.deny_ends),
            joins: list(speech.joins),
            or: list(speech.or),
            turns: list(speech.turns),
            sayings: runs(speech.sayings),
            doubt: runs(speech.doubt),
        }
    }

    /// Whether a word denies what follows.
    pub(super) fn denies(&self, word: &str) -> bool {
        self.deny.contains(word)
    }

    /// Whether it ends what is denied.
    pub(super) fn ends_denial(&self, word: &str) -> bool {
        self.deny_ends.contains(word)
    }

    /// Whether it stands between two thoughts.
    pub(super) fn joins(&self, word: &str) -> bool {
        self.joins.contains(word) || self.is_or(word)
    }

    /// Whether it stands between alternatives.
    pub(super) fn is_or(&self, word: &str) -> bool {
        self.or.contains(word)
    }

    /// Whether it begins another thought.
    pub(super) fn turns(&self, word: &str) -> bool {
        self.turns.contains(word)
    }

    /// Whether it does no more than hold a sentence together.
    pub(super) fn is_between(&self, word: &str) -> bool {
        self.joins(word) || self.turns(word) || self.ends_denial(word)
    }

    /// How many words from here on are a saying that says nothing.
    pub(super) fn saying(&self, tokens: &[Token], at: usize) -> usize {
        stands(&self.sayings, tokens, at)
    }

    /// Whether something begins here after which nothing is certain.
    pub(super) fn doubts(&self, tokens: &[Token], at: usize) -> bool {
        stands(&self.doubt, tokens, at) > 0
    }
}

fn runs(list: &[&'static str]) -> Runs {
    let mut out = Runs::new();
    for run in list {
        out.entry(run.split(' ').next().unwrap_or_default()).or_default().push(run);
    }
    out
}

/// How many words the longest run has that stands here.
fn stands(runs: &Runs, tokens: &[Token], at: usize) -> usize {
    let here = tokens.get(at..).unwrap_or_default();
    let Some(runs) = here.first().and_then(|token| runs.get(token.word.as_str())) else { return 0 };
    let length = |run: &&str| {
        let words = run.split(' ').count();
        let is_here = here.len() >= words && run.split(' ').zip(here).all(|(word, token)| token.word == word);
        is_here.then_some(words)
    };
    runs.iter().filter_map(length).max().unwrap_or_default()
}

//! Headlines: a title that fits the narrowest receipt and begins with the work, a first step that fits a small face.

use super::plain_words::each;
use crate::fault::Fault;
use crate::pack::Pack;
use crate::pack::rule::{Kind, RuleEntry};

const LONG: &str = "long-headline";
const SUMMARY: &str = "long-summary";
const VERB: &str = "not-verb-first";

/// Columns of the narrowest receipt.
const COLUMNS: usize = 32;
/// Characters that small faces show of a rule beside its title.
const SUMMARY_CHARACTERS: usize = 140;

/// Verbs with which work begins, by language, one a line (own lists). A language without a list is not judged.
const VERBS: [(&str, &str); 2] = [("en", include_str!("verbs/en.txt")), ("es", include_str!("verbs/es.txt"))];

/// Words before the verb that leave it the first that says what to do.
const BEFORE_THE_VERB: [(&str, &[&str]); 2] = [("en", &["do", "don't", "not", "never"]), ("es", &["no", "nunca"])];

/// Titles of rules that don't fit.
pub(super) fn long_titles(pack: &Pack, faults: &mut Vec<Fault>) {
    each(pack, LONG, &mut |wording, language, text| {
        let columns = text.chars().count();
        if wording.rule.is_some() && wording.field == "title" && columns > COLUMNS {
            let message = format!("the title of `{}` ({language}) has {columns} columns", wording.id);
            faults.push(
                Fault::warning(LONG, wording.place_in(language, text), message)
                    .help(format!("a receipt has {COLUMNS}: say the work, and the rest in `why` or `steps`")),
            );
        }
    });
}

/// First steps, or reasons where there are no steps, that don't fit.
pub(super) fn long_summaries(pack: &Pack, faults: &mut Vec<Fault>) {
    each(pack, SUMMARY, &mut |wording, language, text| {
        let Some(rule) = wording.rule else { return };
        let is_first = rule.steps.get(language).first().is_some_and(|first| first == text);
        let stands_for =
            if rule.steps.is_empty() { wording.field == "why" } else { wording.field == "steps" && is_first };
        let summary = super::plain_words::sentences(text).next().unwrap_or_default();
        let length = summary.chars().count();
        if stands_for && length > SUMMARY_CHARACTERS {
            let message = format!("the first sentence of `{}` ({language}) has {length} characters", wording.field);
            faults.push(
                Fault::warning(SUMMARY, wording.place_in(language, summary), message)
                    .help(format!("small faces show it alone: at most {SUMMARY_CHARACTERS}")),
            );
        }
    });
}

/// Titles of tasks that don't begin with the work.
pub(super) fn not_verb_first(pack: &Pack, faults: &mut Vec<Fault>) {
    each(pack, VERB, &mut |wording, language, text| {
        let is_task = |rule: &RuleEntry| rule.kind == Kind::Task;
        if wording.field != "title" || !wording.rule.is_some_and(is_task) {
            return;
        }
        if let Some(word) = first_word_no_verb(language, text) {
            let message = format!("the title of `{}` ({language}) begins with `{word}`", wording.id);
            faults.push(
                Fault::warning(VERB, wording.place_in(language, word), message)
                    .help("begin with the work: a verb that says what to do, such as `spray`, `cut`, `look for`"),
            );
        }
    });
}

/// The first word, where it is no verb that is known.
fn first_word_no_verb<'t>(language: &str, text: &'t str) -> Option<&'t str> {
    let (_, verbs) = VERBS.iter().find(|(own, _)| *own == language)?;
    let before = BEFORE_THE_VERB.iter().find(|(own, _)| *own == language).map(|(_, words)| *words).unwrap_or_default();
    let words = text.split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '\'')).filter(|word| !word.is_empty());
    let first = words.into_iter().find(|word| !before.contains(&word.to_lowercase().as_str()))?;
    let small = first.to_lowercase();
    (!verbs.lines().any(|verb| verb == small)).then_some(first)
}

#[cfg(test)]
pub(super) const LONG_CASE: super::cases::Case = super::cases::Case {
    code: LONG,
    trips: &[("rules/rose.yaml", "en: \"Soak the root zone\"", "en: \"Soak the root zone of each big rose\"")],
    also: &[],
    at: "Soak the root zone of",
    says: "rules/rose.yaml:49:16: warning[long-headline]: the title of `rose.soak` (en) has 35 columns\n  help: a receipt has 32: say the work, and the rest in `why` or `steps`",
    just_not: &[("rules/rose.yaml", "en: \"Soak the root zone\"", "en: \"Soak the root zone of each rose,\"")],
};

#[cfg(test)]
pub(super) const SUMMARY_CASE: super::cases::Case = super::cases::Case {
    code: SUMMARY,
    trips: &[(
        "rules/rose.yaml",
        "en: \"Heat burns petals; it is no disease.\"",
        "en: \"Straightforwardly suffocating insecticidal horticultural applications overwhelmingly incapacitate soft-bodied leaf-sucking microscopic xxxxx.\"",
    )],
    also: &[],
    at: "Straightforwardly",
    says: "rules/rose.yaml:90:14: warning[long-summary]: the first sentence of `why` (en) has 141 characters\n  help: small faces show it alone: at most 140",
    just_not: &[(
        "rules/rose.yaml",
        "en: \"Heat burns petals; it is no disease.\"",
        "en: \"Straightforwardly suffocating insecticidal horticultural applications overwhelmingly incapacitate soft-bodied leaf-sucking microscopic xxxx.\"",
    )],
};

#[cfg(test)]
pub(super) const VERB_CASE: super::cases::Case = super::cases::Case {
    code: VERB,
    trips: &[("rules/rose.yaml", "en: \"Soak the root zone\"", "en: \"A deep soak\"")],
    also: &[],
    at: "A deep soak",
    says: "rules/rose.yaml:49:16: warning[not-verb-first]: the title of `rose.soak` (en) begins with `A`\n  help: begin with the work: a verb that says what to do, such as `spray`, `cut`, `look for`",
    just_not: &[("rules/rose.yaml", "en: \"Soak the root zone\"", "en: \"Don't soak it twice\"")],
};

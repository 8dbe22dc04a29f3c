//! A text that quotes what its rule does not read, or quotes something in one language only.

use std::collections::BTreeSet;

use super::placeholder::{self, Placeholder};
use super::read_by_rule::read_by;
use super::wording::{self, Wording};
use crate::compile::set::Set;
use crate::fault::Fault;
use crate::nearest::nearest;

/// Looks at every text of a set that compiles: a slip in a condition is not told again at each text that quotes it.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    for wording in wording::all(&set.pack) {
        let languages = wording.languages();
        if !languages.iter().flat_map(|(_, texts)| texts).any(|text| text.contains(['{', '}'])) {
            continue;
        }
        let reads = wording.rule.map(read_by).unwrap_or_default();
        let mut quoted: Vec<(&str, BTreeSet<String>)> = Vec::new();
        for (language, texts) in &languages {
            let mut here = BTreeSet::new();
            for found in texts.iter().flat_map(|text| placeholder::all(text)) {
                match &found {
                    Placeholder::Fact(_, printed) => here.insert(printed.clone()),
                    Placeholder::Number(number) => here.insert((*number).to_owned()),
                    _ => false,
                };
                faults.extend(wrong(&wording, language, &found, &reads));
            }
            quoted.push((language, here));
        }
        uneven(&wording, &quoted, faults);
    }
}

fn wrong(wording: &Wording<'_>, language: &str, found: &Placeholder<'_>, reads: &BTreeSet<String>) -> Option<Fault> {
    let fault =
        |words: &str, message: String| Fault::error("unknown-placeholder", wording.place_in(language, words), message);
    let braced = |inner: &str| format!("{{{inner}}}");
    match found {
        Placeholder::Lone(brace) => Some(
            fault(brace, format!("`{brace}` has no partner"))
                .help("braces hold a fact that the rule reads, such as `{soil.ph}`"),
        ),
        Placeholder::Unreadable(inner, why) => {
            let message = format!("`{{{inner}}}` is neither a fact nor a number: {why}");
            Some(
                fault(&braced(inner), message)
                    .help("braces hold a fact that the rule reads, such as `{soil.ph}`, or a number such as `{36 °C}`"),
            )
        }
        Placeholder::Number(inner) | Placeholder::Fact(inner, _) if wording.rule.is_none() => {
            let message = format!("`{{{inner}}}` stays as it is: only the texts of rules are filled in");
            Some(fault(&braced(inner), message).help("write it out"))
        }
        Placeholder::Number(_) => None,
        Placeholder::Fact(_, printed) if reads.contains(printed) => None,
        Placeholder::Fact(inner, printed) => {
            let message = format!("the rule `{}` does not read `{printed}`", wording.id);
            let help = match nearest(printed, reads.iter().map(String::as_str)) {
                Some(name) => format!("did you mean `{name}`?"),
                None if reads.is_empty() => {
                    "it reads no fact at all: a text may quote only what the rule reads".to_owned()
                }
                None => format!("it reads `{}`", reads.iter().map(String::as_str).collect::<Vec<_>>().join("`, `")),
            };
            Some(fault(&braced(inner), message).help(help))
        }
    }
}

fn uneven(wording: &Wording<'_>, quoted: &[(&str, BTreeSet<String>)], faults: &mut Vec<Fault>) {
    let every: BTreeSet<&String> = quoted.iter().flat_map(|(_, here)| here).collect();
    for (language, here) in quoted {
        for missing in every.iter().filter(|name| !here.contains(**name)) {
            let other = quoted.iter().find(|(_, there)| there.contains(*missing)).map_or("", |(language, _)| *language);
            faults.push(
                Fault::error(
                    "unknown-placeholder",
                    wording.place_of(language),
                    format!("`{}` quotes `{{{missing}}}` in `{other}` and not in `{language}`", wording.field),
                )
                .help("every language quotes the same facts and numbers"),
            );
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "unknown-placeholder",
    trips: &[
        ("rules/rose.yaml", "en: \"It wants water every {water.interval}.\"", "en: \"It wants {water.need}.\""),
        ("rules/rose.yaml", "es: \"Pide agua cada {water.interval}.\"", "es: \"Pide {water.need}.\""),
    ],
    also: &[],
    at: "{water.need}",
    says: "rules/rose.yaml:55:23: error[unknown-placeholder]: the rule `rose.soak` does not read `water.need`\n  help: it reads `climate.frost_free`, `water.interval`\nrules/rose.yaml:55:49: error[unknown-placeholder]: the rule `rose.soak` does not read `water.need`\n  help: it reads `climate.frost_free`, `water.interval`",
    just_not: &[
        (
            "rules/rose.yaml",
            "en: \"It wants water every {water.interval}.\"",
            "en: \"It wants water every {water.interval}, over {3 mm/day}.\"",
        ),
        (
            "rules/rose.yaml",
            "es: \"Pide agua cada {water.interval}.\"",
            "es: \"Pide agua cada {water.interval}, sobre {3 mm/day}.\"",
        ),
    ],
};

//! A text that is not there in every language of the pack, or has more steps in one than in another.

use super::wording::{self, Wording, Words};
use crate::fault::Fault;
use crate::pack::Pack;

/// Looks at every text.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    let wanted: Vec<&str> = pack.header.languages.iter().map(String::as_str).collect();
    if wanted.is_empty() {
        // Told once, as a missing field of the header.
        return;
    }
    for wording in wording::all(pack) {
        let languages = wording.languages();
        if languages.is_empty() {
            continue;
        }
        let Wording { owner, id, field, .. } = wording;
        for language in &wanted {
            if !languages.iter().any(|(has, _)| has == language) {
                faults.push(
                    Fault::error(
                        "missing-translation",
                        wording.place(),
                        format!("`{field}` of the {owner} `{id}` is not there in `{language}`"),
                    )
                    .help(format!("the pack is written in {}", wanted.join(", "))),
                );
            }
        }
        for (language, _) in &languages {
            if !wanted.contains(language) {
                let fault = Fault::error(
                    "missing-translation",
                    wording.place_of(language),
                    format!("`{language}` is no language of the pack"),
                );
                faults.push(fault.help(format!(
                    "the pack is written in {}; a further language is declared in `pack.yaml`",
                    wanted.join(", ")
                )));
            }
        }
        if matches!(wording.words, Words::Many(_)) && !wording.lay {
            uneven(&wording, &languages, faults);
        }
    }
}

fn uneven(wording: &Wording<'_>, languages: &[(&str, Vec<&str>)], faults: &mut Vec<Fault>) {
    let Some(((first, steps), others)) = languages.split_first() else { return };
    for (language, other) in others {
        if other.len() != steps.len() {
            let (owner, id, field) = (wording.owner, wording.id, wording.field);
            faults.push(
                Fault::error(
                    "missing-translation",
                    wording.place_of(language),
                    format!(
                        "`{field}` of the {owner} `{id}` has {} in `{language}` and {} in `{first}`",
                        other.len(),
                        steps.len()
                    ),
                )
                .help("each step stands once in every language, in the same order"),
            );
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "missing-translation",
    trips: &[("rules/rose.yaml", ", es: \"Solo en suelo húmedo.\"", "")],
    also: &[],
    at: "because: {en: \"Only on moist soil.\"}",
    says: "rules/rose.yaml:34:7: error[missing-translation]: `hold.because` of the rule `rose.feed` is not there in `es`\n  help: the pack is written in en, es",
    just_not: &[(
        "words/signs.yaml",
        "words: {en: [\"old flowers\"], es",
        "words: {en: [\"old flowers\", \"dead heads\"], es",
    )],
};

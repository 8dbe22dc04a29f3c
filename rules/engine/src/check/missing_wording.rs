//! A text that must be there and is empty.

use super::wording;
use crate::fault::Fault;
use crate::pack::Pack;
use crate::pack::expression::place;

/// Looks at every text.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for wording in wording::all(pack) {
        let (owner, id, field) = (wording.owner, wording.id, wording.field);
        let languages = wording.languages();
        if wording.needed && languages.iter().all(|(_, texts)| texts.is_empty()) {
            faults.push(
                Fault::error(
                    "missing-wording",
                    wording.place(),
                    format!("`{field}` of the {owner} `{id}` says nothing"),
                )
                .help(format!("write it in every language: {}", pack.header.languages.join(", "))),
            );
        }
        for (language, texts) in languages {
            if texts.iter().any(|text| text.trim().is_empty()) {
                faults.push(
                    Fault::error(
                        "missing-wording",
                        wording.place_of(language),
                        format!("`{field}` of the {owner} `{id}` is empty in `{language}`"),
                    )
                    .help("write it, or take the empty text out"),
                );
            }
        }
    }
    for source in &pack.sources {
        let entry = &source.entry;
        for (field, text) in [("title", &entry.title), ("how_read", &entry.how_read)] {
            if text.trim().is_empty() {
                faults.push(
                    Fault::error("missing-wording", place(&source.file, &entry.id), format!("`{field}` of the source `{}` is empty", entry.id.value))
                        .help("name the work as it names itself, and say how it was read: `common practice` and `from memory` are answers too"),
                );
            }
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "missing-wording",
    trips: &[("rules/rose.yaml", "es: \"Solo en suelo húmedo.\"", "es: \" \"")],
    also: &[],
    at: "es: \" \"",
    says: "rules/rose.yaml:34:44: error[missing-wording]: `hold.because` of the rule `rose.feed` is empty in `es`\n  help: write it, or take the empty text out",
    just_not: &[("rules/rose.yaml", "es: \"Solo en suelo húmedo.\"", "es: \".\"")],
};

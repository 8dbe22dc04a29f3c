//! A text that names a month: it is true in one place, and the other half of the world has it the other way round.

use super::wording;
use crate::fault::Fault;
use crate::pack::Pack;

const ENGLISH: [&str; 10] =
    ["January", "February", "April", "June", "July", "August", "September", "October", "November", "December"];
/// Months that are also other words: taken as months only behind a word that leads to a date.
const ENGLISH_DOUBTFUL: [&str; 2] = ["March", "May"];
const ENGLISH_LEADS: [&str; 22] = [
    "in", "of", "by", "early", "late", "mid", "since", "until", "till", "from", "to", "through", "during", "before",
    "after", "around", "about", "this", "next", "every", "and", "or",
];
const SPANISH: [&str; 13] = [
    "enero",
    "febrero",
    "marzo",
    "abril",
    "mayo",
    "junio",
    "julio",
    "agosto",
    "septiembre",
    "setiembre",
    "octubre",
    "noviembre",
    "diciembre",
];

/// Looks at every text that is shown to gardeners. Climates are described by those who live there, and lay words are
/// theirs as well; titles of sources stand as published.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for wording in wording::all(pack) {
        if wording.lay || matches!(wording.owner, "climate" | "pack") {
            continue;
        }
        for (language, texts) in wording.languages() {
            for text in texts {
                if let Some(month) = month(language, text) {
                    faults.push(
                        Fault::error(
                            "month-named",
                            wording.place_in(language, month),
                            format!(
                                "`{}` of the {} `{}` names a month: `{month}`",
                                wording.field, wording.owner, wording.id
                            ),
                        )
                        .help("say it by the season: `before the first frost`, `when the heat breaks`"),
                    );
                }
            }
        }
    }
}

fn month<'t>(language: &str, text: &'t str) -> Option<&'t str> {
    let mut before = "";
    for word in text.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty()) {
        let named = match language.get(..2) {
            Some("en") => {
                let leads = ENGLISH_LEADS.contains(&before.to_lowercase().as_str());
                ENGLISH.contains(&word) || (ENGLISH_DOUBTFUL.contains(&word) && leads)
            }
            Some("es") => SPANISH.contains(&word.to_lowercase().as_str()),
            _ => false,
        };
        if named {
            return Some(word);
        }
        before = word;
    }
    None
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "month-named",
    trips: &[("rules/rose.yaml", "en: \"Oil smothers them.\"", "en: \"Oil smothers them in May.\"")],
    also: &[],
    at: "May.\"",
    says: "rules/rose.yaml:65:35: error[month-named]: `why` of the rule `rose.oil-aphids` names a month: `May`\n  help: say it by the season: `before the first frost`, `when the heat breaks`",
    just_not: &[("rules/rose.yaml", "en: \"Oil smothers them.\"", "en: \"May smother them on the march.\"")],
};

#[cfg(test)]
mod tests {
    use super::month;

    #[test]
    fn months_are_told_from_words_that_look_like_them() {
        assert_eq!(month("en", "Cut in late August."), Some("August"));
        assert_eq!(month("en", "From March on"), Some("March"));
        assert_eq!(month("en", "May need staking; ants march in."), None);
        assert_eq!(month("en", "An august tree in Junes"), None);
        assert_eq!(month("es", "Pode en Agosto"), Some("Agosto"));
        assert_eq!(month("es", "mayonesa"), None);
        assert_eq!(month("en", "mayo"), None);
    }
}

//! An id that is not written as ids are: kebab-case, and for a rule the plant first.

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{At, Filed, Pack};

/// What a rule's id begins with when it is not of one plant.
const OF_NO_PLANT: [&str; 2] = ["guard", "any"];

/// Looks at every id.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    macro_rules! ids {
        ($($list:ident)*) => {
            $(for Filed { file, entry } in &pack.$list {
                one_word(file, &entry.id, faults);
            })*
        };
    }
    ids!(jobs classes stages outlooks signs cautions sources materials problems plants climates);
    one_word("pack.yaml", &pack.header.name, faults);
    for Filed { file, entry } in &pack.plants {
        for part in &entry.traits {
            one_word(file, &part.id, faults);
            part.values.iter().for_each(|value| one_word(file, &value.id, faults));
        }
    }
    let plants: Vec<&str> = pack.plants.iter().map(|plant| plant.entry.id.value.as_str()).collect();
    for Filed { file, entry } in &pack.rules {
        rule(file, &entry.id, &plants, faults);
    }
}

fn is_kebab(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_lowercase())
        && word
            .split('-')
            .all(|part| !part.is_empty() && part.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit()))
}

/// The nearest id that is written as ids are.
fn mended(word: &str) -> String {
    let letters: String =
        word.trim().to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
    letters.split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-")
}

fn not_kebab(file: &str, id: &At<String>, mended: &str) -> Fault {
    let fault = Fault::error("bad-id", place(file, id), format!("`{}` is not written as an id is", id.value));
    if mended.starts_with(|c: char| c.is_ascii_lowercase()) {
        fault.help(format!("small letters, digits and hyphens: `{mended}`"))
    } else {
        fault.help("small letters, digits and hyphens, a letter first")
    }
}

fn one_word(file: &str, id: &At<String>, faults: &mut Vec<Fault>) {
    if !is_kebab(&id.value) {
        faults.push(not_kebab(file, id, &mended(&id.value)));
    }
}

fn rule(file: &str, id: &At<String>, plants: &[&str], faults: &mut Vec<Fault>) {
    let parts: Vec<&str> = id.value.split('.').collect();
    if !parts.iter().all(|part| is_kebab(part)) {
        let mended: Vec<String> = parts.iter().map(|part| mended(part)).collect();
        faults.push(not_kebab(file, id, &mended.join(".")));
        return;
    }
    let first = parts.first().copied().unwrap_or_default();
    let known = || plants.iter().copied().chain(OF_NO_PLANT);
    if parts.len() < 2 {
        faults.push(
            Fault::error("bad-id", place(file, id), format!("`{}` does not say which plant it is for", id.value))
                .help("the plant comes first, then a dot: `rose.renewal-cut`; `guard.` or `any.` for several plants"),
        );
    } else if !known().any(|name| name == first) {
        let fault =
            Fault::error("bad-id", place(file, id), format!("`{first}` in `{}` is no plant of the set", id.value));
        let fault = fault.nearest(first, known());
        faults.push(if fault.help.is_some() {
            fault
        } else {
            fault.help("a rule's id begins with its plant, `guard.` or `any.`")
        });
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "bad-id",
    trips: &[("rules/rose.yaml", "- id: rose.soak", "- id: Rose.Deep Soak")],
    also: &[],
    at: "Rose.Deep Soak",
    says: "rules/rose.yaml:47:7: error[bad-id]: `Rose.Deep Soak` is not written as an id is\n  help: small letters, digits and hyphens: `rose.deep-soak`",
    just_not: &[("rules/rose.yaml", "- id: rose.soak", "- id: any.deep-soak-2")],
};

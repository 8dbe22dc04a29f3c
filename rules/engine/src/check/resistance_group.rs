//! Resistance groups that are not written as the committees write them: who compares them with a label finds no match.

use std::collections::BTreeSet;

use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{At, Filed, Pack};

/// The codes of a problem, their committee, whether a text is one of its codes, and examples.
type Committee<'p> = (&'p [At<String>], &'static str, fn(&str) -> bool, &'static str);

/// Looks at every problem.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.problems {
        let groups = &entry.resistance;
        let lists: [Committee<'_>; 2] = [
            (&groups.irac, "IRAC", is_irac, "such as `3A`, `28` or `UN`"),
            (&groups.frac, "FRAC", is_frac, "such as `3`, `M04` or `BM02`"),
        ];
        for (list, committee, is_one, help) in lists {
            let mut seen = BTreeSet::new();
            for code in list {
                let message = if !is_one(&code.value) {
                    format!("`{}` is no {committee} group", code.value)
                } else if !seen.insert(&code.value) {
                    format!("the {committee} group `{}` stands twice", code.value)
                } else {
                    continue;
                };
                faults.push(Fault::error("resistance-group", place(file, code), message).help(help));
            }
        }
    }
}

/// IRAC Mode of Action Classification: a number of up to two digits, perhaps with a letter; or unknown.
fn is_irac(code: &str) -> bool {
    let number = code.strip_suffix(|letter: char| letter.is_ascii_uppercase()).unwrap_or(code);
    is_number(number, 1..=2) || matches!(code, "UN" | "UNB" | "UNE" | "UNF" | "UNM" | "UNP" | "UNV")
}

/// FRAC Code List: a number; `M`, `P`, `U` or `BM` with two digits; or not classified.
fn is_frac(code: &str) -> bool {
    let number = ["BM", "M", "P", "U"].iter().find_map(|prefix| code.strip_prefix(prefix));
    number.map_or_else(|| is_number(code, 1..=2), |number| is_number(number, 2..=2)) || code == "NC"
}

fn is_number(text: &str, digits: std::ops::RangeInclusive<usize>) -> bool {
    digits.contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit())
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "resistance-group",
    trips: &[("problems/rose.yaml", "  impact: 1\n", "  resistance: {irac: [\"4A\", \"M04\"]}\n  impact: 1\n")],
    also: &[],
    at: "\"M04\"",
    says: "problems/rose.yaml:9:29: error[resistance-group]: `M04` is no IRAC group\n  help: such as `3A`, `28` or `UN`",
    just_not: &[(
        "problems/rose.yaml",
        "  impact: 1\n",
        "  resistance: {irac: [\"4A\", \"UN\"], frac: [\"M04\", \"11\"]}\n  impact: 1\n",
    )],
};

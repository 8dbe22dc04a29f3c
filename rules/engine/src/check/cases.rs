//! For each check the smallest edit of the mini pack that trips it and one that just doesn't, walked beside the table.

use super::{CHECKS, PackFile, Weight, layer_cases, page};
use super::{
    amount_above_maximum, bad_id, clash_with_itself, dose_on_label_material, emergency_can_wait,
    emergency_not_answered, expression_over_lines, headlines, hold_on_guard, missing_caution, missing_field,
    missing_source, missing_translation, missing_wording, month_named, never_holds, not_over_absent,
    number_out_of_range, order_in_a_circle, plain_words, range_reversed, repeated_id, resistance_group,
    separation_cannot_be_met, turns_both_ways, unknown_placeholder, unused_entry, window_nearly_always_open,
    window_never_opens, window_pairing_is_close,
};
use crate::fault::Fault;
use crate::layer::check_layers_and_prove;
use support::{Edit, edited};

#[path = "../../tests/support/mod.rs"]
pub(super) mod support;

/// One check's case.
pub(crate) struct Case {
    /// The check.
    pub(crate) code: &'static str,
    /// The edits that trip it.
    pub(crate) trips: &'static [Edit<'static>],
    /// Codes that can't be kept from coming along.
    pub(crate) also: &'static [&'static str],
    /// What stands in the file where the fault points.
    pub(crate) at: &'static str,
    /// The fault as it is shown, in full.
    pub(crate) says: &'static str,
    /// Edits that just don't trip it, nor anything else.
    pub(crate) just_not: &'static [Edit<'static>],
}

const SOAK: &str = "when: \"not climate.frost_free or water.interval < 8 days\"";
const OFTEN: [Edit<'static>; 2] = [
    ("rules/rose.yaml", "every {water.interval}.\"", "often.\""),
    ("rules/rose.yaml", "cada {water.interval}.\"", "a menudo.\""),
];

/// What is found on the way stands here; every other case stands beside its check.
const CASES: &[Case] = &[
    Case {
        code: "not-yaml",
        trips: &[("words/jobs.yaml", "name: {en: \"Feed\", es: \"Abonar\"}", "name: {en: \"Feed, es: \"Abonar\"}")],
        also: &[],
        at: "Abonar",
        says: "words/jobs.yaml:2:37: error[not-yaml]: invalid trailing content after double-quoted scalar\n  help: the slip is here or close by: look for a quote or bracket left open, or a tab at the beginning of a line",
        just_not: &[("words/jobs.yaml", "name: {en: \"Feed\", es: \"Abonar\"}", "name: {en: 'Feed', es: Abonar}")],
    },
    Case {
        code: "wrong-shape",
        trips: &[("words/signs.yaml", "- id: white-powder\n  where", "- id: white-powder\n  were")],
        also: &[],
        at: "were: leaf-upper",
        says: "words/signs.yaml:13:3: error[wrong-shape]: there is no field `were` here\n  help: did you mean `where`?",
        just_not: &[("words/signs.yaml", "- id: white-powder\n  where", "- id: white-powder\n  \"where\"")],
    },
    Case {
        code: "unreadable-expression",
        trips: &[("rules/rose.yaml", "if: \"season.heat_left < 550 °Cd\"", "if: \"season.heat_left < 550 °Cd and\"")],
        also: &[],
        at: "\"",
        says: "rules/rose.yaml:11:42: error[unreadable-expression]: a fact or a number is missing here",
        just_not: &[("rules/rose.yaml", "if: \"season.heat_left < 550 °Cd\"", "if: \"(season.heat_left<550°Cd)\"")],
    },
    Case {
        code: "unknown-fact",
        trips: &[("rules/rose.yaml", "if: \"season.heat_left <", "if: \"season.heat_lft <")],
        also: &[],
        at: "season.heat_lft",
        says: "rules/rose.yaml:11:12: error[unknown-fact]: there is no fact or marker `season.heat_lft`\n  help: did you mean `season.heat_left`?",
        just_not: &[("rules/rose.yaml", "if: \"season.heat_left <", "if: \"season.heat_left <=")],
    },
    Case {
        code: "unknown-name",
        trips: &[("scenarios/rose/late-summer.yaml", "absent: [rose.scorch-is-heat]", "absent: [rose.scorch-is-het]")],
        also: &[],
        at: "rose.scorch-is-het",
        says: "scenarios/rose/late-summer.yaml:10:12: error[unknown-name]: there is no rule `rose.scorch-is-het`\n  help: did you mean `rose.scorch-is-heat`?",
        just_not: &[("scenarios/rose/late-summer.yaml", "absent: [rose.scorch-is-heat]", "absent: [rose.soak]")],
    },
    Case {
        code: "unknown-marker",
        trips: &[(
            "rules/rose.yaml",
            "opens: hot_season.end - 4 weeks else warmest_week - 1 week",
            "opens: hot_season.end - 4 weeks else warmest_wek - 1 week",
        )],
        also: &[],
        at: "warmest_wek",
        says: "rules/rose.yaml:6:42: error[unknown-marker]: there is no marker `warmest_wek`\n  help: did you mean `warmest_week`?",
        just_not: &[(
            "rules/rose.yaml",
            "opens: hot_season.end - 4 weeks else warmest_week - 1 week",
            "opens: hot_season.end - 4 weeks else falls(tmax, 27 °C) - 1 week",
        )],
    },
    Case {
        code: "unknown-quantity",
        trips: &[("rules/rose.yaml", "      typical: {min: 30, max: 60, unit: g}\n", "      call: product_for_rat\n")],
        also: &[],
        at: "product_for_rat",
        says: "rules/rose.yaml:43:13: error[unknown-quantity]: there is no quantity `product_for_rat`\n  help: did you mean `product_for_rate`?",
        just_not: &[(
            "rules/rose.yaml",
            "      typical: {min: 30, max: 60, unit: g}\n",
            "      call: product_for_rate\n      with: {nutrient_rate: 10 g/m², area: 2 m², analysis: 10 %}\n",
        )],
    },
    Case {
        code: "wrong-unit",
        trips: &[("rules/rose.yaml", "if: \"season.heat_left < 550 °Cd\"", "if: \"season.heat_left < 550 °C\"")],
        also: &[],
        at: "season.heat_left < 550 °C\"",
        says: "rules/rose.yaml:11:12: error[wrong-unit]: `season.heat_left` is a heat sum (°Cd, °Fd), `550 °C` is a temperature (°C, °F)\n  help: compare `season.heat_left` with a heat sum (°Cd, °Fd)",
        just_not: &[("rules/rose.yaml", "if: \"season.heat_left < 550 °Cd\"", "if: \"season.heat_left < 990 °Fd\"")],
    },
    Case {
        code: "wrong-type",
        trips: &[("rules/rose.yaml", SOAK, "when: \"water.interval\""), OFTEN[0], OFTEN[1]],
        also: &[],
        at: "water.interval\"",
        says: "rules/rose.yaml:51:10: error[wrong-type]: `water.interval` is a duration (h, days, weeks), not a condition\n  help: compare it with something, such as `> 7 day`",
        just_not: &[("rules/rose.yaml", SOAK, "when: \"site.mulched\""), OFTEN[0], OFTEN[1]],
    },
    repeated_id::CASE,
    bad_id::CASE,
    missing_field::CASE,
    missing_wording::CASE,
    missing_translation::CASE,
    missing_source::CASE,
    missing_caution::CASE,
    unknown_placeholder::CASE,
    month_named::CASE,
    dose_on_label_material::CASE,
    emergency_can_wait::CASE,
    emergency_not_answered::CASE,
    amount_above_maximum::CASE,
    order_in_a_circle::CASE,
    clash_with_itself::CASE,
    turns_both_ways::CASE,
    hold_on_guard::CASE,
    separation_cannot_be_met::CASE,
    never_holds::CASE,
    window_never_opens::CASE,
    not_over_absent::CASE,
    window_nearly_always_open::CASE,
    window_pairing_is_close::CASE,
    unused_entry::CASE,
    range_reversed::CASE,
    resistance_group::CASE,
    number_out_of_range::CASE,
    expression_over_lines::CASE,
    headlines::LONG_CASE,
    headlines::SUMMARY_CASE,
    headlines::VERB_CASE,
    plain_words::LONG_CASE,
    plain_words::EMPTY_CASE,
];

/// Those above and those of what is proven.
fn cases() -> impl Iterator<Item = &'static Case> {
    CASES.iter().chain(&crate::prove::CASES).chain(&layer_cases::CASES)
}

/// The set `house`, which lies over the mini pack where an edit makes a file of it.
const HOUSE: &str = "name: house\nversion: \"2026.11.1\"\nlanguages: [en, es]\ntitle: {en: \"House rules\", es: \"Reglas de la casa\"}\nover: [mini]\n";

/// The mini pack after these edits, and what they lay over it.
fn layers(edits: &[Edit<'_>]) -> Vec<Vec<PackFile>> {
    let (mut mini, mut house) = (Vec::new(), Vec::new());
    for (path, text) in edited(edits) {
        match path.strip_prefix("house/") {
            Some(inside) => house.push(PackFile { path: inside.to_owned(), text }),
            None => mini.push(PackFile { path, text }),
        }
    }
    if house.is_empty() {
        return vec![mini];
    }
    house.push(PackFile { path: "pack.yaml".to_owned(), text: HOUSE.to_owned() });
    vec![mini, house]
}

fn faults(edits: &[Edit<'_>]) -> Vec<Fault> {
    let (checked, _) = check_layers_and_prove(&layers(edits));
    let errors = checked.faults.iter().any(|fault| fault.weight == Weight::Error);
    assert_eq!(checked.set.is_none(), errors, "a set is there exactly when nothing is in its way");
    checked.faults
}

/// What is said of the mini pack after these edits.
pub(super) fn said(edits: &[Edit<'_>]) -> String {
    faults(edits).iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

/// The codes of it, each once.
pub(super) fn codes(edits: &[Edit<'_>]) -> Vec<&'static str> {
    let mut codes: Vec<&'static str> = faults(edits).iter().map(|fault| fault.code).collect();
    codes.sort_unstable();
    codes.dedup();
    codes
}

/// What stands in a file from a place on.
fn text_at(edits: &[Edit<'_>], place: &crate::fault::Place) -> String {
    let (_, text) = edited(edits).into_iter().find(|(path, _)| *path == place.file).unwrap_or_default();
    let from = text.split_inclusive('\n').skip(place.line as usize - 1).collect::<String>();
    from.chars().skip(place.column as usize - 1).collect()
}

#[test]
fn nothing_is_wrong_with_the_mini_pack() {
    assert_eq!(said(&[]), "");
}

#[test]
fn every_check_has_one_case_and_no_case_is_left_over() {
    let mut table: Vec<&str> = CHECKS.iter().map(|check| check.code).collect();
    let mut walked: Vec<&str> = cases().map(|case| case.code).collect();
    table.sort_unstable();
    walked.sort_unstable();
    assert_eq!(table, walked);
}

#[test]
fn the_smallest_edit_that_trips_a_check_is_told_in_full_and_at_its_place() {
    let mut wrong = String::new();
    for case in cases() {
        let faults = faults(case.trips);
        let Some(own) = faults.iter().find(|fault| fault.code == case.code) else {
            wrong += &format!("{} is not raised but: {faults:?}\n", case.code);
            continue;
        };
        let weight = CHECKS.iter().find(|check| check.code == case.code).map(|check| check.weight);
        assert_eq!(Some(own.weight), weight, "{}", case.code);
        let there = text_at(case.trips, &own.place);
        if !there.starts_with(case.at) {
            wrong += &format!("{} points at `{}`\n", case.code, there.lines().next().unwrap_or_default());
        }
        let strangers = faults.iter().any(|fault| fault.code != case.code && !case.also.contains(&fault.code));
        let said = said(case.trips);
        if strangers || said != case.says {
            wrong += &format!("{} says\n{said}\n", case.code);
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
}

#[test]
fn an_edit_that_just_does_not_trip_a_check_leaves_nothing_to_say() {
    let talk: Vec<String> = cases()
        .map(|case| (case.code, said(case.just_not)))
        .filter(|(_, said)| !said.is_empty())
        .map(|(code, said)| format!("{code}: {said}"))
        .collect();
    assert!(talk.is_empty(), "{}", talk.join("\n"));
}

#[test]
fn every_page_has_its_headings_in_order() {
    for check in CHECKS {
        let headings: Vec<&str> =
            check.page.lines().filter(|line| line.starts_with('#') && !line.contains(".yaml")).collect();
        let first = format!("# {}", check.code);
        let expected =
            [&first, "## What it finds", "## Why it matters to the gardener", "## Example", "## How to put it right"];
        assert_eq!(headings, expected, "{}", check.code);
        assert_eq!(page(check.code), Some(check.page));
    }
    assert_eq!(page("no-such-code"), None);
}

/// A material by itself is used by no rule, and one file is all that an example shows.
const COMES_ALONG: [(&str, &str); 1] = [("missing-caution", "unused-entry")];

#[test]
fn the_example_of_each_page_trips_its_check_and_nothing_else() {
    let mut wrong = String::new();
    for check in CHECKS {
        let block = check
            .page
            .split("```yaml\n")
            .nth(1)
            .and_then(|rest| rest.split("```").next())
            .unwrap_or_else(|| panic!("{} has no example", check.code));
        let (comment, example) = block.split_once('\n').unwrap();
        let file = comment.strip_prefix("# ").unwrap_or_else(|| panic!("the example of {} names no file", check.code));
        let mut found = codes(&[(file, "", example)]);
        found.retain(|code| !COMES_ALONG.contains(&(check.code, code)));
        if found != [check.code] {
            wrong += &format!("{}: {}\n", check.code, said(&[(file, "", example)]));
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
}

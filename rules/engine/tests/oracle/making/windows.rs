//! Windows of every kind, as they are written.

use proptest::prelude::*;
use proptest::sample::select;

/// Opens, best, closes; empty: not written. The last word: `all-year` where an absent marker means that.
pub(crate) type Pattern = (&'static str, &'static str, &'static str, bool);

/// Every kind of pair: rising and falling, the same marker, two of a kind, wet, of the plant, one side only, with `else`.
pub(crate) const PATTERNS: &[Pattern] = &[
    ("hot_season.end - 4 weeks", "hot_season.end - 2 weeks", "first_frost.median - 8 weeks", false),
    (
        "hot_season.end - 4 weeks else warmest_week - 1 week",
        "hot_season.end - 2 weeks else warmest_week + 1 week",
        "first_frost.median - 8 weeks",
        false,
    ),
    ("growing.start + 3 weeks", "", "first_frost.median - 8 weeks", false),
    ("last_frost.late + 2 weeks", "", "hot_season.start - 4 weeks", false),
    ("last_frost.median - 6 weeks", "last_frost.median - 4 weeks", "last_frost.median - 2 weeks", false),
    (
        "last_frost.median - 6 weeks else coldest_week + 2 weeks",
        "",
        "last_frost.median - 2 weeks else coldest_week + 6 weeks",
        false,
    ),
    ("first_frost.median + 2 weeks", "coldest_week", "last_frost.median - 6 weeks", false),
    ("growing.start", "", "growing.end", false),
    ("growing.end", "", "growing.start", false),
    ("growing.start + 2 weeks", "warmest_week", "growing.end - 4 weeks", true),
    ("first_frost.early", "", "last_frost.late", false),
    ("rains.start", "rains.start + 2 weeks", "rains.end", false),
    ("rains.end", "", "rains.start - 2 weeks", false),
    ("second_rains.start", "", "second_rains.end", false),
    ("rains.start - 3 weeks else longest_day", "", "first_frost.median else rains.end", false),
    ("shortest_day", "spring_equinox", "longest_day", false),
    ("longest_day - 2 weeks", "", "", false),
    ("", "warmest_week", "autumn_equinox + 1 week", false),
    ("", "", "first_frost.early - 3 weeks", false),
    ("hot_season.start", "", "", false),
    ("rises(tmean, 10 °C)", "rises(tmean, 12 °C)", "falls(tmean, 10 °C)", false),
    ("rises(tmax, 18 °C) - 1 week", "", "rises(tmax, 27 °C)", true),
    ("falls(tmax, 27 °C)", "", "rises(tmax, 27 °C)", false),
    ("coldest_week - 26 weeks", "coldest_week", "coldest_week + 26 weeks", false),
    ("warmest_week - 20 weeks", "longest_day", "warmest_week + 20 weeks", false),
    ("shortest_day - 6 weeks", "", "shortest_day + 6 weeks", false),
    ("last_killing_frost.median", "", "first_killing_frost.median", true),
    ("heat_reached(200 °Cd, 5 °C, from coldest_week)", "", "first_frost.median", false),
    ("heat_reached(150 °Cd, 10 °C, from growing.start)", "", "heat_reached(600 °Cd, 10 °C, from growing.start)", false),
    ("chill_reached(400 h)", "", "heat_reached(150 °Cd, 5 °C, from chill_reached(400 h))", false),
    ("growing.end", "", "chill_reached(900 h) + 2 weeks", false),
    ("autumn_equinox", "first_frost.median", "falls(tmean, 5 °C) else shortest_day", false),
];

/// Windows that hang on the plant and its history.
pub(crate) const OF_THE_PLANT: &[Pattern] = &[
    ("stage(bud-break)", "", "stage(bloom)", false),
    ("stage(bloom) + 1 week", "", "first_frost.median - 6 weeks", false),
    ("planted", "", "planted + 8 weeks", false),
    ("last(prune) + 1 week", "", "last(prune) + 10 weeks", false),
    ("since(frost-damage)", "", "since(frost-damage) + 6 weeks", false),
    ("last(feed) + 2 weeks else growing.start", "", "", false),
    ("", "", "stage(harvest) - 1 week", false),
    ("stage(leaf-fall)", "", "stage(bud-break) - 2 weeks", false),
];

/// As an entry of a rule.
pub(crate) fn written(pattern: &Pattern) -> String {
    let (opens, best, closes, all_year) = pattern;
    let mut fields: Vec<String> = [("opens", opens), ("best", best), ("closes", closes)]
        .into_iter()
        .filter(|(_, text)| !text.is_empty())
        .map(|(key, text)| format!("{key}: \"{text}\""))
        .collect();
    if *all_year {
        fields.push("if_absent: all-year".to_owned());
    }
    format!("{{{}}}", fields.join(", "))
}

/// None, one or two windows.
pub(crate) fn windows() -> impl Strategy<Value = Vec<Pattern>> {
    let one = prop_oneof![4 => select(PATTERNS), 1 => select(OF_THE_PLANT)];
    prop_oneof![
        4 => Just(Vec::new()),
        5 => proptest::collection::vec(one.clone(), 1),
        1 => proptest::collection::vec(one, 2),
    ]
}

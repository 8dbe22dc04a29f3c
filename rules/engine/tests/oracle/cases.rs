//! Differences that the comparison found, each as a case of its own with the outcome that the rules of the language ask for.

use lammas_agronomy::profile::{DailyWeather, Forecast, FrostTriple, GivenFrost, Profile};
use lammas_engine::question::said::{ConditionSaid, Said, SignSaid};

use crate::asking::{about, day, outcome, rule, set, verdicts, work};
use crate::making::climates::year;
use crate::plain::outcome::Outcome;
use crate::plain::windows::State;

const DATE: &str = "2025-09-10";
const APPLIES: Outcome = Outcome::Applies;
const DEPENDS: Outcome = Outcome::Depends { could_apply: true };

/// Days up to 27 °C in July, frost in winter.
fn mild() -> Profile {
    year(44.0, 11.0, 11.0, 5.0, 200.0)
}

fn held(block: &str) -> Outcome {
    Outcome::Held(vec![block.to_owned()])
}

fn rose() -> Said {
    about("rose", DATE)
}

fn with_history(list: Vec<lammas_engine::question::said::WorkSaid>) -> Said {
    Said { history: Some(list), ..rose() }
}

#[test]
fn a_guard_for_a_problem_holds_nobody_who_has_it_not() {
    let set = set(&[
        rule("any.feed", "job: feed"),
        rule("guard.rot", "kind: avoid\nfor: {problem: rot}\nblocks: {jobs: [feed]}"),
    ]);
    let signs = |signs: Vec<SignSaid>, problems: Vec<String>| Said {
        condition: Some(ConditionSaid {
            signs: Some(signs),
            looked_closely: true,
            problems,
            ..ConditionSaid::default()
        }),
        ..rose()
    };
    assert_eq!(outcome(&set, &signs(Vec::new(), Vec::new()), &mild(), "any.feed"), APPLIES);
    assert_eq!(outcome(&set, &signs(Vec::new(), vec!["rot".to_owned()]), &mild(), "any.feed"), held("guard guard.rot"));
    let root = SignSaid { sign: "root-rot".to_owned(), ..SignSaid::default() };
    assert_eq!(
        outcome(&set, &signs(vec![root], Vec::new()), &mild(), "any.feed"),
        DEPENDS,
        "possible: 4 points less 1"
    );
}

#[test]
fn a_strict_guard_asks_for_the_day() {
    for (strict, expected) in [("", APPLIES), ("\nstrict: true", DEPENDS)] {
        let guard = format!("kind: avoid\nwhen: \"soil.moisture = dry\"\nblocks: {{jobs: [feed]}}{strict}");
        let set = set(&[rule("any.feed", "job: feed"), rule("guard.dry", &guard)]);
        assert_eq!(outcome(&set, &rose(), &mild(), "any.feed"), expected);
    }
}

#[test]
fn a_guard_of_the_day_in_a_window_that_nobody_knows_asks_for_the_window() {
    let guard = "kind: avoid\nwindow: {opens: last(feed), closes: last(feed) + 4 weeks}\nwhen: \"soil.moisture = dry\"\nblocks: {jobs: [prune]}";
    let set = set(&[rule("any.prune", "job: prune"), rule("guard.dry", guard)]);
    assert_eq!(outcome(&set, &rose(), &mild(), "any.prune"), DEPENDS);
    assert_eq!(outcome(&set, &with_history(Vec::new()), &mild(), "any.prune"), APPLIES, "never fed: no such window");
}

#[test]
fn a_hold_that_wants_the_day_alone_is_a_condition_of_the_day_whatever_only_the_curve_makes_false() {
    let hold =
        "hold: [{if: \"(ahead(max, tmax, 7 days) > 40 °C and soil.ph > 7) or soil.moisture = wet\", because: {en: B}}]";
    let verdicts = verdicts(&set(&[rule("any.one", hold)]), &rose(), &mild());
    assert_eq!(verdicts[0].outcome, APPLIES);
    assert!(verdicts[0].check_first.contains("hold 0"));
}

#[test]
fn a_forecast_beside_a_normal_is_still_a_forecast() {
    let mut profile = mild();
    let days = (0..7).map(|ahead| {
        let mut weather = DailyWeather::unknown(day(DATE) + ahead);
        (weather.tmin_c, weather.tmax_c) = (Some(9.0), Some(19.0));
        weather
    });
    profile.forecast = Some(Forecast { issued: day(DATE), days: days.collect() });
    let set = set(&[rule(
        "any.one",
        "hold: [{if: \"ahead(max, tmax, 7 days) - mean(tmax, 7 days) > 4 K\", because: {en: B}}]",
    )]);
    for (profile, conditions) in [(&mild(), 1), (&profile, 0)] {
        let verdicts = verdicts(&set, &rose(), profile);
        assert_eq!((&verdicts[0].outcome, verdicts[0].check_first.len()), (&APPLIES, conditions));
    }
}

#[test]
fn a_separation_holds_from_both_sides_against_the_history() {
    // The copper says that it is kept 3 days from pruning; the prune says nothing.
    let set = set(&[
        rule("any.prune", "job: prune"),
        rule("any.feed", "job: feed\nkeep_apart: [{job: deadhead, days: 9}]"),
        rule("any.deadhead", "job: deadhead"),
    ]);
    let copper = with_history(vec![work(&[("job", "treat-disease"), ("material", "copper-salt")], "2025-09-08")]);
    assert_eq!(outcome(&set, &copper, &mild(), "any.prune"), held("apart until 2025-09-11"));
    let fed = with_history(vec![work(&[("rule", "any.feed")], "2025-09-05")]);
    assert_eq!(outcome(&set, &fed, &mild(), "any.deadhead"), held("apart until 2025-09-14"));
}

#[test]
fn a_work_that_names_its_rule_was_done_with_the_materials_of_the_rule() {
    let set = set(&[
        rule("any.feed", "job: feed\nmaterials: [urea]"),
        rule("any.oil", "job: treat-pest\nmaterials: [oil-spray]"),
        rule("any.sulphur", "job: treat-disease\nmaterials: [sulphur-dust]"),
        rule("any.one", "when: \"done(nitrogen, within 28 days)\""),
    ]);
    let said =
        with_history(vec![work(&[("rule", "any.feed")], "2025-09-01"), work(&[("rule", "any.oil")], "2025-09-04")]);
    assert_eq!(outcome(&set, &said, &mild(), "any.one"), APPLIES);
    assert_eq!(outcome(&set, &said, &mild(), "any.sulphur"), held("apart until 2025-09-18"));
}

#[test]
fn without_a_history_a_rule_near_a_hazardous_material_depends_on_it() {
    let set = set(&[
        rule("any.compost", "materials: [compost]\nkeep_apart: [{class: sulphur, days: 14}]"),
        rule("any.prune", "job: prune"),
        rule("any.mow", "job: mow\nkeep_apart: [{job: harvest, days: 3}]"),
    ]);
    assert_eq!(outcome(&set, &rose(), &mild(), "any.compost"), DEPENDS, "sulphur is a spray");
    assert_eq!(outcome(&set, &rose(), &mild(), "any.prune"), DEPENDS, "copper is kept from pruning");
    assert_eq!(outcome(&set, &rose(), &mild(), "any.mow"), APPLIES, "no spray has to do with it");
}

#[test]
fn a_separation_from_its_own_class_holds_a_rule_as_well() {
    let set = set(&[rule("any.oil", "job: treat-pest\nmaterials: [oil-spray]\nkeep_apart: [{class: oil, days: 10}]")]);
    let said = with_history(vec![work(&[("job", "treat-pest"), ("material", "oil-spray")], "2025-09-08")]);
    assert_eq!(outcome(&set, &said, &mild(), "any.oil"), held("apart until 2025-09-18"));
}

#[test]
fn nobody_takes_turns_with_a_rule_of_another_plant() {
    let set = set(&[
        rule("any.second", "job: feed"),
        rule("fern.first", "job: feed\nfor: {plant: fern}\nalternate: {with: any.second, gap: 14 days}"),
    ]);
    assert_eq!(outcome(&set, &rose(), &mild(), "any.second"), APPLIES);
    assert_eq!(outcome(&set, &about("fern", DATE), &mild(), "any.second"), held("turn of fern.first"));
}

#[test]
fn of_two_that_take_turns_the_one_that_says_so_comes_first_wherever_it_stands() {
    let first = rule("any.b", "job: feed\nmaterials: [urea]\nalternate: {with: any.a, gap: 14 days}");
    let second = rule("any.a", "job: feed\nmaterials: [compost]");
    for rules in [[first.clone(), second.clone()], [second, first]] {
        let set = set(&rules);
        for said in [rose(), with_history(Vec::new())] {
            assert_eq!(outcome(&set, &said, &mild(), "any.b"), APPLIES);
            assert_eq!(outcome(&set, &said, &mild(), "any.a"), held("turn of any.b"));
        }
    }
}

#[test]
fn a_frost_date_that_the_caller_gave_counts_as_given() {
    let set = set(&[rule("any.one", "when: \"weeks_to(first_frost.median) < 60 weeks\"")]);
    let mut given = mild();
    let triple = |date: &str| FrostTriple { early: None, median: Some(date.parse().unwrap()), late: None };
    given.frost = Some(GivenFrost { last: triple("04-20"), first: triple("10-15") });
    let score = |profile: &Profile| verdicts(&set, &rose(), profile)[0].score;
    // Certainty: computed 7, given 10.
    assert_eq!((score(&mild()), score(&given)), (7, 10));
}

#[test]
fn a_difference_of_decimals_is_a_decimal() {
    let set = set(&[rule("any.one", "when: \"plant.height - plant.canopy_diameter >= 0.3 m\"")]);
    let mut said = rose();
    (said.plant.height_m, said.plant.canopy_diameter_m) = (Some(1.15), Some(0.85));
    assert_eq!(outcome(&set, &said, &mild(), "any.one"), APPLIES);
}

#[test]
fn who_tells_of_a_sign_by_its_date_is_told_of_the_season() {
    let fields = "window: {opens: growing.start, closes: growing.start + 4 weeks}\nwhen: \"days_from(since(frost-damage)) < 40 weeks\"\noutside: {late: {en: L}}";
    let damage =
        SignSaid { sign: "frost-damage".to_owned(), since: Some("2025-04-20".parse().unwrap()), ..SignSaid::default() };
    let said =
        Said { condition: Some(ConditionSaid { signs: Some(vec![damage]), ..ConditionSaid::default() }), ..rose() };
    assert_eq!(outcome(&set(&[rule("any.one", fields)]), &said, &mild(), "any.one"), held("late"));
}

#[test]
fn a_rule_for_a_problem_is_not_for_a_plant_that_does_not_get_it() {
    let set = set(&[rule("any.one", "for: {problem: chlorosis}")]);
    let named = ConditionSaid { problems: vec!["chlorosis".to_owned()], ..ConditionSaid::default() };
    for (plant, expected) in [("rose", APPLIES), ("fern", Outcome::No)] {
        let said = Said { condition: Some(named.clone()), ..about(plant, DATE) };
        assert_eq!(outcome(&set, &said, &mild(), "any.one"), expected, "{plant}");
    }
}

#[test]
fn a_region_said_too_coarsely_is_unknown_and_lasts() {
    let set = set(&[rule("any.one", "hold: [{if: \"region = US-CA and soil.moisture = dry\", because: {en: B}}]")]);
    for (region, expected) in [("US", DEPENDS), ("US-CA", APPLIES), ("GB", APPLIES)] {
        let mut said = rose();
        said.site.region = Some(region.to_owned());
        assert_eq!(outcome(&set, &said, &mild(), "any.one"), expected, "{region}");
    }
}

#[test]
fn a_window_of_all_365_days_has_no_gap_in_a_leap_year() {
    let set = set(&[rule("any.one", "window: {opens: coldest_week - 26 weeks, closes: coldest_week + 26 weeks}")]);
    let south = year(-44.0, 11.0, 11.0, 5.0, 18.0);
    let mut date = day("2023-12-20");
    while date < day("2024-04-01") {
        let verdicts = verdicts(&set, &about("rose", &date.date().to_string()), &south);
        assert_eq!(verdicts[0].window, State::AllYear, "{}", date.date());
        date = date + 1;
    }
}

//! Both sides of every number of the language: the last day on which it holds and the first on which it does not.

use lammas_agronomy::marker::Marker;
use lammas_agronomy::profile::{DailyWeather, FrostTriple, GivenFrost, Profile};
use lammas_agronomy::season::{Season, SiteShift};
use lammas_engine::question::said::Said;

use crate::asking::{about, day, occurrences, outcome, rule, set, verdicts, work};
use crate::making::climates::year;
use crate::plain::outcome::Outcome;

fn mild() -> Profile {
    year(44.0, 11.0, 11.0, 5.0, 200.0)
}

fn marker_in(profile: &Profile, marker: Marker, year: i32) -> lammas_agronomy::calendar::Day {
    Season::new(profile, SiteShift::default()).marker(marker).day().unwrap().in_year(year)
}

/// The score and the band of a rule without urgency and impact, asked so many days before its window closes.
fn before_closing(window: &str, days: i32) -> (i32, u8) {
    let set = set(&[rule("any.one", &format!("window: {window}"))]);
    let date = marker_in(&mild(), Marker::LongestDay, 2025) - days;
    let verdict = verdicts(&set, &about("rose", &date.date().to_string()), &mild()).remove(0);
    (verdict.score, verdict.band)
}

#[test]
fn the_time_points_grow_as_the_window_closes() {
    // No facts: certainty 10. The best day is the opening, so 6 at least.
    for (days, time) in [(0, 16), (3, 16), (4, 12), (7, 12), (8, 9), (14, 9), (15, 6), (28, 6), (29, 6)] {
        let (score, _) = before_closing("{opens: longest_day - 20 weeks, closes: longest_day}", days);
        assert_eq!(score, 10 + time, "{days} days before closing");
    }
    // Before the best day only closing counts.
    for (days, time) in [(2, 16), (15, 5), (28, 5), (29, 0)] {
        let window = "{opens: longest_day - 20 weeks, best: longest_day + 1 day, closes: longest_day + 1 day}";
        assert_eq!(before_closing(window, days - 1).0, 10 + time, "{days} days before closing");
    }
}

#[test]
fn the_band_follows_the_days_to_closing() {
    let (now, this_week, this_month, later) = (0, 1, 2, 3);
    for (days, band) in
        [(0, now), (2, now), (3, this_week), (9, this_week), (10, this_month), (34, this_month), (35, later)]
    {
        let (_, found) = before_closing("{opens: longest_day - 20 weeks, closes: longest_day}", days);
        assert_eq!(found, band, "{days} days before closing");
    }
    // Before its best day and not closing within 21 days, one band later.
    for (days, band) in [(2, now), (9, this_week), (21, this_month), (22, later), (34, later)] {
        let window = "{opens: longest_day - 20 weeks, best: longest_day + 1 day, closes: longest_day + 1 day}";
        assert_eq!(before_closing(window, days - 1).1, band, "{days} days before closing");
    }
}

#[test]
fn urgency_sets_the_band_whatever_the_window() {
    for (urgency, band) in [(0, 3), (1, 2), (2, 1), (3, 0)] {
        let set = set(&[rule("any.one", &format!("rank: {{urgency: {urgency}, impact: 0}}"))]);
        let verdict = verdicts(&set, &about("rose", "2025-06-10"), &mild()).remove(0);
        assert_eq!((verdict.score, verdict.band), (10 + 8 * urgency, band));
    }
}

/// What becomes of a rule that was done so many days ago.
fn done_ago(fields: &str, days: i32) -> (Outcome, bool) {
    let set = set(&[rule("any.one", fields)]);
    let date = (day("2025-06-10") - days).date().to_string();
    let said = Said { history: Some(vec![work(&[("rule", "any.one")], &date)]), ..about("rose", "2025-06-10") };
    let verdict = verdicts(&set, &said, &mild()).remove(0);
    (verdict.outcome, verdict.overdue)
}

#[test]
fn a_repeat_is_due_after_the_shortest_time_and_overdue_after_the_longest() {
    let fields = "repeat: {every: 7..10 days}";
    assert_eq!(done_ago(fields, 6), (Outcome::Held(vec!["done until 2025-06-11".to_owned()]), false));
    assert_eq!(done_ago(fields, 7), (Outcome::Applies, false));
    assert_eq!(done_ago(fields, 10), (Outcome::Applies, false));
    assert_eq!(done_ago(fields, 11), (Outcome::Applies, true));
}

#[test]
fn a_work_counts_towards_the_most_for_as_long_as_the_span_lasts() {
    let fields = "repeat: {at_most: {times: 1, within: 30 days}}";
    assert_eq!(done_ago(fields, 29).0, Outcome::Held(vec!["at most until 2025-06-11".to_owned()]));
    assert_eq!(done_ago(fields, 30).0, Outcome::Applies);
}

#[test]
fn a_separation_ends_after_its_days() {
    let set = set(&[rule("any.one", "keep_apart: [{job: prune, days: 5}]")]);
    for (date, expected) in
        [("2025-06-06", Outcome::Held(vec!["apart until 2025-06-11".to_owned()])), ("2025-06-05", Outcome::Applies)]
    {
        let said = Said { history: Some(vec![work(&[("job", "prune")], date)]), ..about("rose", "2025-06-10") };
        assert_eq!(outcome(&set, &said, &mild(), "any.one"), expected);
    }
}

#[test]
fn late_lasts_to_half_way_to_the_next_opening() {
    let fields = "window: {opens: longest_day, closes: longest_day + 5 days}\nwhen: site.mulched\noutside: {early: {en: E}, late: {en: L}}";
    let set = set(&[rule("any.one", fields)]);
    let closes = marker_in(&mild(), Marker::LongestDay, 2025) + 5;
    // 360 days from closing to the next opening: half-way is day 180.
    for (days, word) in [(1, "late"), (180, "late"), (181, "early"), (359, "early")] {
        let mut said = about("rose", &(closes + days).date().to_string());
        said.site.mulched = Some(true);
        assert_eq!(
            outcome(&set, &said, &mild(), "any.one"),
            Outcome::Held(vec![word.to_owned()]),
            "{days} days after closing"
        );
    }
}

/// A first frost on this day, by the caller's own words.
fn first_frost(days_after_longest_day: i32) -> Profile {
    let mut profile = mild();
    let longest = Season::new(&profile, SiteShift::default()).marker(Marker::LongestDay).day().unwrap();
    let first = FrostTriple { early: None, median: Some(longest.plus(days_after_longest_day)), late: None };
    profile.frost = Some(GivenFrost { last: FrostTriple::default(), first });
    profile
}

#[test]
fn a_pair_of_one_kind_lies_from_90_days_before_to_275_days_after() {
    let set = set(&[rule("any.one", "window: {opens: longest_day - 20 weeks, closes: first_frost.median}")]);
    // No leap day lies between June 2025 and March 2026, one between June 2023 and March 2024: then no occurrence is lost.
    for (year, after, length) in
        [(2025, 275, 140 + 275), (2025, 276, 140 - 89), (2023, 275, 140 + 276), (2023, 276, 140 - 89)]
    {
        let profile = first_frost(after);
        let opens = marker_in(&profile, Marker::LongestDay, year) - 140;
        let found = outcome_window(&set, &profile, &format!("{year}-08-01"));
        let of_year = found.iter().find(|open| open.0 == opens).unwrap_or_else(|| panic!("{after} days, {year}: lost"));
        assert_eq!(of_year.1 - of_year.0, length, "{after} days after the opens marker, {year}");
    }
}

/// Opening and closing of each occurrence, as the engine finds them before it joins them.
fn outcome_window(
    set: &lammas_engine::compile::set::Set,
    profile: &Profile,
    date: &str,
) -> Vec<(lammas_agronomy::calendar::Day, lammas_agronomy::calendar::Day)> {
    use lammas_engine::decide::{moment::Moment, window};
    let question = crate::asking::question(set, &about("rose", date), profile);
    let book = &set.plants[usize::from(question.plant)];
    let moment = Moment::new(set, book, &question, question.day);
    match window::occurrences(&book.rules[0].windows[0], &moment) {
        window::Found::Some(list) => list.iter().map(|o| (o.opens, o.closes)).collect(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_half_that_begins_and_ends_on_one_day_runs_to_the_next_year() {
    // The shortest day is rising, the first frost falling; the frost is given on that very day.
    let set = set(&[rule("any.one", "window: {opens: shortest_day, closes: first_frost.median - 30 weeks}")]);
    let shortest = Season::new(&mild(), SiteShift::default()).marker(Marker::ShortestDay).day().unwrap();
    let mut profile = mild();
    let first = FrostTriple { early: None, median: Some(shortest), late: None };
    profile.frost = Some(GivenFrost { last: FrostTriple::default(), first });
    let found = occurrences(&set, &about("rose", "2025-08-01"), &profile, "any.one").unwrap();
    let open = found.iter().find(|open| open.opens == shortest.in_year(2024)).unwrap();
    assert_eq!(open.closes, shortest.in_year(2025) - 210);
}

#[test]
fn warmth_since_a_computed_day_is_computed_though_every_day_of_it_was_measured() {
    let mut profile = mild();
    let start = marker_in(&profile, Marker::GrowingStart, 2025);
    profile.observations = (0..40)
        .map(|at| {
            let mut weather = DailyWeather::unknown(start + at);
            (weather.tmin_c, weather.tmax_c) = (Some(8.0), Some(20.0));
            weather
        })
        .collect();
    let set = set(&[rule("any.one", "when: \"heat_sum(5 °C, from growing.start) > 100 °Cd\"")]);
    let verdict = verdicts(&set, &about("rose", &(start + 40).date().to_string()), &profile).remove(0);
    assert_eq!(verdict.score, 7);
}

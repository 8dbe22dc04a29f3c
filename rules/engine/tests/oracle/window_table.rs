//! The worked examples of windows, row by row. The dates of each row are the design's own, reckoned by hand.

use lammas_agronomy::marker::Marker;
use lammas_agronomy::profile::{FrostTriple, GivenFrost, Profile};
use lammas_agronomy::season::{Season, SiteShift};

use crate::asking::{about, day, occurrences, rule, set};
use crate::making::climates::year;
use crate::making::words;
use crate::plain::windows::{Open, State};
use crate::plain::world::World;

/// The month and day of a marker; none if it is absent.
fn marker(profile: &Profile, name: &str) -> Option<String> {
    let season = Season::new(profile, SiteShift::default());
    season.marker(Marker::named(name).unwrap()).day().map(|day| format!("{:02}-{:02}", day.month(), day.day_of_month()))
}

/// A year whose marker falls on this day, found by trying means (or warmest days) between two bounds.
fn with(name: &str, on: &str, bounds: (f64, f64), make: impl Fn(f64) -> Profile) -> Profile {
    let (mut low, mut high) = bounds;
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        let profile = make(middle);
        let found = marker(&profile, name).unwrap_or_else(|| panic!("{name} is absent at {middle}"));
        if found == on {
            return profile;
        }
        // Both bounds lie so that the marker moves one way between them.
        let later = |a: &str, b: &str| a > b;
        let rises = later(&marker(&make(bounds.1), name).unwrap(), &marker(&make(bounds.0), name).unwrap());
        if later(&found, on) == rises { high = middle } else { low = middle }
    }
    panic!("{name} never falls on {on}")
}

fn frost(mut profile: Profile, last: &str, first: &str) -> Profile {
    let triple =
        |day: &str| FrostTriple { early: None, median: (!day.is_empty()).then(|| day.parse().unwrap()), late: None };
    profile.frost = Some(GivenFrost { last: triple(last), first: triple(first) });
    profile
}

/// Hot season's end on a day: hotter years end later.
fn hot_until(on: &str) -> Profile {
    with("hot_season.end", on, (16.5, 26.0), |mean_c| year(36.0, mean_c, 9.0, 8.0, 200.0))
}

/// The occurrence that opens or closes in the year asked, as dates; empty: there is none at all.
fn shown(window: &str, profile: &Profile, year: i32) -> Vec<(String, String)> {
    let set = set(&[rule("any.one", &format!("window: {window}"))]);
    let found =
        occurrences(&set, &about("rose", &format!("{year}-06-15")), profile, "any.one").expect("some occurrences");
    let of_year = found.iter().filter(|open| open.opens.year() == year);
    of_year.map(|open| (open.opens.date().to_string(), open.closes.date().to_string())).collect()
}

fn once(opens: &str, closes: &str) -> Vec<(String, String)> {
    vec![(opens.to_owned(), closes.to_owned())]
}

const BOTH_FALLING: &str = "{opens: hot_season.end - 4 weeks, closes: first_frost.median - 8 weeks}";
const RISING_AND_FALLING: &str = "{opens: growing.start + 3 weeks, closes: first_frost.median - 8 weeks}";
const BOTH_RISING: &str = "{opens: last_frost.late + 2 weeks, closes: hot_season.start - 4 weeks}";

#[test]
fn both_falling_with_time_between_them() {
    let profile = frost(hot_until("09-28"), "02-20", "12-10");
    assert_eq!(shown(BOTH_FALLING, &profile, 2025), once("2025-08-31", "2025-10-15"));
}

#[test]
fn both_falling_with_no_time_between_them_is_empty_and_not_carried_on() {
    let profile = frost(hot_until("09-10"), "04-20", "10-01");
    let set = set(&[rule("any.one", &format!("window: {BOTH_FALLING}"))]);
    let found = occurrences(&set, &about("rose", "2025-08-15"), &profile, "any.one");
    assert_eq!(found, Some(Vec::new()));
}

#[test]
fn a_frost_that_does_not_come_does_not_limit() {
    let profile = with("hot_season.end", "09-28", (22.0, 30.0), |mean_c| year(30.0, mean_c, 9.0, 3.0, 200.0));
    assert_eq!(marker(&profile, "first_frost.median"), None);
    assert_eq!(shown(BOTH_FALLING, &profile, 2025), once("2025-08-31", "2026-03-01"));
}

#[test]
fn rising_and_falling_is_the_warm_half_however_long() {
    let growing = with("growing.start", "03-01", (9.0, 14.0), |mean_c| year(45.0, mean_c, 10.0, 5.0, 200.0));
    let profile = frost(growing, "04-01", "12-05");
    assert_eq!(shown(RISING_AND_FALLING, &profile, 2025), once("2025-03-22", "2025-10-10"));
}

#[test]
fn growth_that_never_stops_has_no_lower_end() {
    let profile = frost(year(38.0, 16.0, 7.0, 6.0, 200.0), "02-15", "11-22");
    assert_eq!(marker(&profile, "growing.start"), None);
    assert_eq!(shown(RISING_AND_FALLING, &profile, 2025), once("2025-03-29", "2025-09-27"));
}

/// The late last frost on 5 April, by the caller's own words.
fn late_frost(mut profile: Profile) -> Profile {
    profile.frost = Some(GivenFrost {
        last: FrostTriple { early: None, median: None, late: Some("04-05".parse().unwrap()) },
        first: FrostTriple::default(),
    });
    profile
}

fn hot_from(on: &str) -> Profile {
    with("hot_season.start", on, (16.5, 31.0), |mean_c| year(33.0, mean_c, 9.0, 8.0, 200.0))
}

#[test]
fn both_rising_with_time_between_them() {
    assert_eq!(shown(BOTH_RISING, &late_frost(hot_from("06-01")), 2025), once("2025-04-19", "2025-05-04"));
}

#[test]
fn both_rising_with_no_time_between_them_is_empty() {
    let set = set(&[rule("any.one", &format!("window: {BOTH_RISING}"))]);
    let profile = late_frost(hot_from("03-31"));
    assert_eq!(occurrences(&set, &about("rose", "2025-04-25"), &profile, "any.one"), Some(Vec::new()));
}

/// No frost, and the coldest week around 10 January.
fn frost_free() -> Profile {
    with("coldest_week", "01-10", (186.0, 204.0), |warmest| year(28.0, 22.0, 6.0, 5.0, warmest))
}

#[test]
fn work_that_hangs_on_a_frost_that_does_not_come_is_not_due() {
    let window = "{opens: last_frost.median - 6 weeks, closes: last_frost.median - 2 weeks}";
    let set = set(&[rule("any.one", &format!("window: {window}"))]);
    assert_eq!(occurrences(&set, &about("rose", "2025-02-01"), &frost_free(), "any.one"), Some(Vec::new()));
}

#[test]
fn an_alternative_steps_in_where_the_frost_does_not_come() {
    let window = "{opens: last_frost.median - 6 weeks else coldest_week + 1 week, closes: last_frost.median - 2 weeks else coldest_week + 4 weeks}";
    assert_eq!(shown(window, &frost_free(), 2025), once("2025-01-17", "2025-02-07"));
}

#[test]
fn a_window_over_new_year_is_one_occurrence() {
    let window = "{opens: first_frost.median + 2 weeks, closes: last_frost.median - 6 weeks}";
    let profile = frost(year(42.0, 11.0, 11.0, 5.0, 200.0), "03-15", "11-20");
    assert_eq!(shown(window, &profile, 2025), once("2025-12-04", "2026-02-01"));
    // Asked before New Year and after it.
    let set = set(&[rule("any.one", &format!("window: {window}"))]);
    for date in ["2025-12-31", "2026-01-01"] {
        let said = about("rose", date);
        let world = World::new(&set.pack, &said, &profile);
        let state = world.window(&world.rule("any.one").window.0);
        let open = Open { opens: day("2025-12-04"), best: day("2025-12-04"), closes: day("2026-02-01") };
        assert_eq!(state, State::Open(open), "{date}");
        assert!(occurrences(&set, &said, &profile, "any.one").unwrap().contains(&open), "{date}");
    }
}

#[test]
fn the_growing_season_is_all_year_where_it_never_ends() {
    let set = set(&[rule("any.one", "window: {opens: growing.start, closes: growing.end}")]);
    let profile = year(38.0, 16.0, 7.0, 6.0, 200.0);
    let said = about("rose", "2025-01-20");
    assert_eq!(occurrences(&set, &said, &profile, "any.one"), None);
    let world = World::new(&set.pack, &said, &profile);
    assert_eq!(world.window(&world.rule("any.one").window.0), State::AllYear);
}

#[test]
fn windows_that_touch_are_one_and_windows_a_day_apart_are_two() {
    for (second, count) in [("longest_day + 15 days", 1), ("longest_day + 16 days", 2)] {
        let fields = format!(
            "window: [{{opens: longest_day, closes: longest_day + 2 weeks}}, {{opens: {second}, best: longest_day + 3 weeks, closes: longest_day + 4 weeks}}]"
        );
        let set = set(&[rule("any.one", &fields)]);
        let found =
            occurrences(&set, &about("rose", "2025-06-25"), &year(42.0, 11.0, 11.0, 5.0, 200.0), "any.one").unwrap();
        let of_year: Vec<&Open> = found.iter().filter(|open| open.opens.year() == 2025).collect();
        assert_eq!(of_year.len(), count, "{second}");
        let (first, last) = (of_year.first().unwrap(), of_year.last().unwrap());
        assert_eq!(last.closes - first.opens, 28);
        assert_eq!(first.best, first.opens, "the first best day");
    }
}

#[test]
fn a_window_as_long_as_the_year_is_open_on_all_days() {
    let set = set(&[rule("any.one", "window: {opens: longest_day - 26 weeks, closes: longest_day + 27 weeks}")]);
    let profile = year(42.0, 11.0, 11.0, 5.0, 200.0);
    for date in ["2025-01-01", "2025-06-21", "2025-12-20", "2024-02-29"] {
        let said = about("rose", date);
        let (verdicts, _) = crate::agreement::of_engine(&set, &said, &profile);
        assert_eq!(verdicts[0].window, State::AllYear, "{date}");
        let world = World::new(&set.pack, &said, &profile);
        assert_eq!(world.window(&world.rule("any.one").window.0), State::AllYear, "{date}");
    }
}

#[test]
fn a_best_day_before_a_closing_lies_before_it() {
    // Growth starts on 1 March; the frost that closes the window comes 279 days later.
    let growing = with("growing.start", "03-01", (9.0, 14.0), |mean_c| year(45.0, mean_c, 10.0, 5.0, 200.0));
    let profile = frost(growing, "04-01", "12-05");
    let set = words::set_of(&[(
        "rules/all.yaml".to_owned(),
        rule("any.one", "window: {best: growing.start, closes: first_frost.median}"),
    )]);
    let found = occurrences(&set, &about("rose", "2025-09-01"), &profile, "any.one").unwrap();
    let open = found.iter().find(|open| open.closes == day("2025-12-05")).unwrap();
    assert_eq!(
        (open.opens, open.best),
        (day("2025-06-06"), day("2025-06-06")),
        "moved into the window from its early side"
    );
}

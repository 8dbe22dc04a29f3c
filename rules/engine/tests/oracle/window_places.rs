//! Windows of every kind over 57 places, their mirror images and invented extremes: both find the same, and what must hold holds.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::Set;
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::window;
use lammas_engine::lang::{parse, print};
use lammas_engine::question::Climate;
use lammas_engine::question::said::{ConditionSaid, Said, SignSaid};
use lammas_engine::question::understand::understand;

use crate::agreement::state;
use crate::asking::{about, day, rule, work};
use crate::making::climates::{Place, extremes, mirrored, places};
use crate::making::windows::{OF_THE_PLANT, PATTERNS, Pattern, written};
use crate::making::words;
use crate::plain::markers::{Turn, turn};
use crate::plain::tree::days;
use crate::plain::windows::State;
use crate::plain::world::World;

/// One rule a pattern, in their order.
fn set_of_patterns(patterns: &[Pattern]) -> Set {
    let rules: Vec<String> = patterns
        .iter()
        .enumerate()
        .map(|(at, p)| rule(&format!("any.w{at:02}"), &format!("window: {}", written(p))))
        .collect();
    words::set_of(&[("rules/all.yaml".to_owned(), rules.concat())])
}

fn all_places() -> Vec<Place> {
    let straight: Vec<Place> = places().into_iter().chain(extremes()).collect();
    let turned = straight
        .iter()
        .map(|place| Place { name: format!("{} mirrored", place.name), profile: mirrored(&place.profile) });
    straight.iter().cloned().chain(turned).collect()
}

/// Calls `visit` with each place, pattern and day: what the engine says and what the plain evaluator says.
fn each(
    patterns: &[Pattern],
    said: &dyn Fn(&str) -> Said,
    dates: &[&str],
    visit: &mut dyn FnMut(&str, &Pattern, Day, &window::State, &World<'_>),
) {
    let set = set_of_patterns(patterns);
    for place in all_places() {
        let climate = Arc::new(Climate::new(None, place.profile.clone(), SiteShift::default()));
        for date in dates {
            let said = said(date);
            let question = understand(&said, &set, Arc::clone(&climate), None).unwrap();
            let book = &set.plants[usize::from(question.plant)];
            let moment = Moment::new(&set, book, &question, question.day);
            let world = World::new(&set.pack, &said, &place.profile);
            for (pattern, rule) in patterns.iter().zip(&book.rules) {
                visit(&place.name, pattern, question.day, &window::state(&rule.windows, &moment), &world);
            }
        }
    }
}

const ROUND_THE_YEAR: [&str; 13] = [
    "2023-12-31",
    "2024-01-01",
    "2024-02-01",
    "2024-02-29",
    "2024-03-20",
    "2024-05-05",
    "2024-06-10",
    "2024-07-15",
    "2024-08-20",
    "2024-09-25",
    "2024-10-30",
    "2024-11-30",
    "2025-01-10",
];

#[test]
fn both_find_the_same_windows_everywhere() {
    let mut open = 0;
    let mut closed = 0;
    each(PATTERNS, &|date| about("rose", date), &ROUND_THE_YEAR, &mut |place, pattern, day, engine, world| {
        let written = world.rules()[PATTERNS.iter().position(|p| p == pattern).unwrap()];
        assert_eq!(state(engine), world.window(&written.window.0), "{place} {pattern:?} {}", day.date());
        match engine {
            window::State::Open(_) => open += 1,
            window::State::Closed { .. } => closed += 1,
            window::State::AllYear | window::State::Unknown => {}
        }
    });
    // Enough of both kinds, or nothing was compared.
    assert!(open > 5_000 && closed > 5_000, "{open} open, {closed} closed");
}

#[test]
fn both_find_the_same_windows_of_a_plant_with_a_history() {
    let with_history = |date: &str| Said {
        history: Some(vec![work(&[("job", "prune")], "2023-11-01"), work(&[("job", "feed")], "2023-12-20")]),
        condition: Some(ConditionSaid {
            signs: Some(vec![SignSaid {
                sign: "frost-damage".to_owned(),
                since: Some("2023-12-28".parse().unwrap()),
                ..SignSaid::default()
            }]),
            ..ConditionSaid::default()
        }),
        plant: lammas_engine::question::said::PlantSaid {
            kind: "apple".to_owned(),
            planted_on: Some("2022-03-01".parse().unwrap()),
            ..Default::default()
        },
        ..about("apple", date)
    };
    let nothing_said = |date: &str| about("apple", date);
    for said in [&with_history as &dyn Fn(&str) -> Said, &nothing_said] {
        each(OF_THE_PLANT, said, &ROUND_THE_YEAR, &mut |place, pattern, day, engine, world| {
            let written = world.rules()[OF_THE_PLANT.iter().position(|p| p == pattern).unwrap()];
            assert_eq!(state(engine), world.window(&written.window.0), "{place} {pattern:?} {}", day.date());
        });
    }
}

/// The one marker of a side and its offset; none where there are several or none.
fn single(side: &str) -> Option<(lammas_engine::lang::ast::Expr, i32)> {
    let [choice] = <[_; 1]>::try_from(parse::side(side).ok()?.choices).ok()?;
    Some((*choice.marker, choice.offset.as_ref().map_or(0, |(literal, _)| days(literal))))
}

#[test]
fn a_season_that_is_too_short_is_never_carried_on_to_the_next_year() {
    let mut looked_at = 0;
    each(PATTERNS, &|date| about("rose", date), &ROUND_THE_YEAR, &mut |place, pattern, _, engine, world| {
        let (Some((opens, before)), Some((closes, after))) = (single(pattern.0), single(pattern.2)) else { return };
        let window::State::Open(open) = engine else { return };
        // Where a side is absent the other alone decides.
        let seasonal = |marker| matches!(world.dates(marker).0, crate::plain::markers::Dates::On(_));
        if !seasonal(&opens) || !seasonal(&closes) || open.closes - open.opens > 366 {
            return;
        }
        let apart = (open.closes - after) - (open.opens - before);
        let allowed = match (turn(&opens), turn(&closes)) {
            _ if print::expr(&opens) == print::expr(&closes) => 0..=0,
            (Turn::Rising, Turn::Falling)
            | (Turn::Falling, Turn::Rising)
            | (Turn::Wet, Turn::Wet)
            | (Turn::Plant, Turn::Plant) => 1..=366,
            _ => -89..=275,
        };
        assert!(
            allowed.contains(&apart),
            "{place} {pattern:?}: {apart} days from {} to {}",
            open.opens.date(),
            open.closes.date()
        );
        looked_at += 1;
    });
    assert!(looked_at > 2_000, "{looked_at}");
}

#[test]
fn no_occurrence_is_lost_at_new_year() {
    let dates = ["2023-12-20", "2023-12-30", "2023-12-31", "2024-01-01", "2024-01-02", "2024-01-10"];
    let mut last: Option<(Day, window::State)> = None;
    let mut over_new_year = 0;
    // By pattern and place the days follow each other, so they are gathered first.
    let mut seen: std::collections::BTreeMap<(String, Pattern), Vec<(Day, window::State)>> =
        std::collections::BTreeMap::new();
    each(PATTERNS, &|date| about("rose", date), &dates, &mut |place, pattern, day, engine, _| {
        seen.entry((place.to_owned(), *pattern)).or_default().push((day, engine.clone()));
    });
    for ((place, pattern), states) in seen {
        for (day, state) in states {
            if let Some((before, window::State::Open(open))) = &last
                && *before < day
                && open.closes >= day
            {
                assert_eq!(
                    state,
                    window::State::Open(*open),
                    "{place} {pattern:?}: open on {} until {}",
                    before.date(),
                    open.closes.date()
                );
                over_new_year += 1;
            }
            if let Some((before, window::State::Closed { next: Some(next), .. })) = &last
                && *before < day
                && *next <= day
                && let window::State::Closed { before: closed, .. } = &state
            {
                assert!(
                    closed.is_some_and(|closed| closed >= *next),
                    "{place} {pattern:?}: the window of {} is lost",
                    next.date()
                );
            }
            last = Some((day, state));
        }
        last = None;
    }
    assert!(over_new_year > 500, "{over_new_year}");
}

#[test]
fn a_window_opens_on_the_day_on_which_it_is_said_to_open() {
    let set = set_of_patterns(PATTERNS);
    let mut looked_at = 0;
    for place in all_places() {
        let climate = Arc::new(Climate::new(None, place.profile, SiteShift::default()));
        let said = about("rose", "2024-01-15");
        let question = understand(&said, &set, climate, None).unwrap();
        let book = &set.plants[usize::from(question.plant)];
        let mut moment = Moment::new(&set, book, &question, question.day);
        for (pattern, rule) in PATTERNS.iter().zip(&book.rules) {
            moment.move_to(question.day);
            let window::State::Closed { next: Some(next), .. } = window::state(&rule.windows, &moment) else {
                continue;
            };
            moment.move_to(next);
            let window::State::Open(open) = window::state(&rule.windows, &moment) else {
                panic!("{} {pattern:?}: not open on {}", place.name, next.date());
            };
            assert_eq!(open.opens, next, "{} {pattern:?}", place.name);
            moment.move_to(open.closes);
            assert_eq!(window::state(&rule.windows, &moment), window::State::Open(open), "{} {pattern:?}", place.name);
            looked_at += 1;
        }
    }
    assert!(looked_at > 500, "{looked_at}");
}

/// Months differ in length and harmonics are cut off, so a marker moves by a few days beside the half year.
const TOLERANCE_DAYS: i32 = 6;

#[test]
fn on_the_other_hemisphere_windows_come_half_a_year_later() {
    let set = set_of_patterns(PATTERNS);
    let said = about("rose", "2025-06-30");
    let half_later = about("rose", "2025-12-30");
    let (mut alike, mut different) = (0, Vec::new());
    for place in places() {
        let world = World::new(&set.pack, &said, &place.profile);
        let other = World::new(&set.pack, &half_later, &mirrored(&place.profile));
        for (pattern, rule) in PATTERNS.iter().zip(world.rules()) {
            let (here, there) = (world.window(&rule.window.0), other.window(&rule.window.0));
            let shift = day("2025-12-30") - day("2025-06-30");
            let near = |a: Day, b: Day| (b - a - shift).abs() <= TOLERANCE_DAYS;
            let same = match (&here, &there) {
                (State::AllYear, State::AllYear) | (State::Unknown, State::Unknown) => true,
                (State::Open(a), State::Open(b)) => {
                    near(a.opens, b.opens) && near(a.best, b.best) && near(a.closes, b.closes)
                }
                (State::Closed { next: a, .. }, State::Closed { next: b, .. }) => match (a, b) {
                    (Some(a), Some(b)) => near(*a, *b),
                    (None, None) => true,
                    _ => false,
                },
                _ => false,
            };
            if same {
                alike += 1;
            } else {
                different.push(format!("{} {pattern:?}: {here:?} {there:?}", place.name));
            }
        }
    }
    // A marker that grazes its threshold may be there on one side and not on the other; a day at a side may tip.
    assert!(different.len() * 50 <= alike, "{alike} alike, {} different:\n{}", different.len(), different.join("\n"));
}

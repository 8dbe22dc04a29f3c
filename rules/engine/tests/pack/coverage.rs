//! The cells of the coverage are what the answers say.

use std::collections::BTreeSet;

use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::coverage::row;
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::window::{self, State};
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::pack::rule::{Evidence, Kind};
use lammas_engine::question::understand::understand;
use lammas_engine::typical::cases::{self, Case};
use lammas_engine::typical::places::{self, Spot};
use lammas_engine::typical::weeks::{WEEKS, day, week_of};

use crate::shipped::set;

fn ids(set: &Set, rules: &BTreeSet<u32>) -> BTreeSet<String> {
    rules.iter().map(|rule| set.rules[*rule as usize].id.clone()).collect()
}

/// The first later day on which the window of a task that is closed today is open, found by looking at every day.
fn opening_day_by_day(set: &Set, case: &Case, spot: &Spot, today: Day) -> Option<(Day, u32)> {
    let question = understand(&case.at(spot, today), set, spot.climate(false), None).unwrap();
    let book = &set.plants[usize::from(question.plant)];
    let state = |at: u32, day: Day| window::of_rule(at, &Moment::new(set, book, &question, day));
    let closed: Vec<u32> = (0..)
        .zip(&book.rules)
        .filter(|(_, rule)| set.rules[rule.rule as usize].kind == Kind::Task)
        .map(|(at, _)| at)
        .filter(|at| matches!(state(*at, today), State::Closed { .. }))
        .collect();
    (1..=400).map(|ahead| today + ahead).find_map(|day| {
        let open = closed.iter().filter(|at| matches!(state(**at, day), State::Open(_) | State::AllYear));
        open.map(|at| book.rules[*at as usize].rule).min().map(|rule| (day, rule))
    })
}

#[test]
fn the_counts_of_a_cell_are_those_of_the_whole_answers() {
    let set = set();
    let extent = Extent { most_depends: usize::MAX, ..Extent::STANDARD };
    let (mut silent, mut weak, mut told) = (0, 0, 0);
    for (number, spot) in places::of(&[&set], false).iter().enumerate().filter(|(at, _)| at % 5 == 0) {
        for plant in set.names.plants.names().skip(number % 3).step_by(3) {
            let mut cases = cases::of(&[&set], plant);
            let mut at = 0;
            cases.retain(|_| {
                at += 1;
                // In the first place only what is said to somebody who tells nothing: there the year has gaps.
                at == 1 || number > 0 && (at + number).is_multiple_of(9)
            });
            let row = row::of(&set, plant, &cases, spot);
            assert_eq!(row.len(), usize::from(WEEKS));
            for (week, cell) in (1..=WEEKS).zip(&row).filter(|(week, _)| usize::from(*week) % 4 == number % 4) {
                let name = format!("{plant}, {}, week {week}", spot.id);
                let (mut applies, mut noted, mut held, mut depends) =
                    (BTreeSet::new(), BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
                let mut evidence: Option<Evidence> = None;
                let mut opens = None;
                for (at, case) in cases.iter().enumerate() {
                    let question =
                        understand(&case.at(spot, day(week)), &set, spot.climate(case.is_hollow()), None).unwrap();
                    let answer = whole::answer(&set, &question, "en", extent).unwrap();
                    applies.extend(answer.tasks.iter().map(|t| t.id.to_owned()));
                    evidence = evidence.max(answer.tasks.iter().map(|t| t.evidence).max());
                    noted.extend(answer.notes.iter().map(|n| n.id.to_owned()));
                    held.extend(answer.held.iter().map(|h| h.id.to_owned()));
                    depends.extend(answer.depends_on.iter().map(|d| d.id.to_owned()));
                    if at == 0 {
                        opens = answer.next_opening.map(|next| (next.date, next.rule.to_owned()));
                        assert_eq!(usize::from(cell.untold), answer.tasks.len(), "{name}");
                    }
                }
                assert_eq!(ids(&set, &cell.applies), applies, "{name}");
                assert_eq!(ids(&set, &cell.noted), noted, "{name}");
                assert_eq!(ids(&set, &cell.held), held, "{name}");
                assert_eq!(ids(&set, &cell.depends), depends, "{name}");
                assert_eq!(cell.weakest(&set), evidence, "{name}");
                assert_eq!(cell.is_nothing_due(), applies.is_empty());
                let found = cell.next_opening.map(|(day, rule)| (day.date(), set.rules[rule as usize].id.clone()));
                assert!(cell.untold == 0 || found.is_none(), "{name}");
                // An answer names the next opening only when nothing else is left to be said.
                if let Some(opens) = opens {
                    assert_eq!(found, Some(opens), "{name}");
                }
                if cell.untold == 0 {
                    assert_eq!(cell.next_opening, opening_day_by_day(&set, &cases[0], spot, day(week)), "{name}");
                    told += u32::from(found.is_some());
                }
                silent += u32::from(cell.is_nothing_due());
                weak += u32::from(evidence > Some(Evidence::Trial));
            }
        }
    }
    assert!(silent > 0 && weak > 0 && told > 0, "{silent} cells with nothing due, {weak} weak ones, {told} openings");
}

#[test]
fn every_scenario_at_a_place_of_its_set_is_counted_once() {
    let set = set();
    let places = places::of(&[&set], false);
    let mut counted = 0;
    for plant in set.names.plants.names() {
        for spot in &places {
            // Without conditions there are no decisions, only the scenarios.
            counted += row::of(&set, plant, &[], spot).iter().map(|cell| usize::from(cell.scenarios)).sum::<usize>();
        }
    }
    let at_a_place = set.pack.scenarios.iter().filter(|s| s.entry.ask.climate.id.is_some()).count();
    assert_eq!(counted, at_a_place);
    let september = chrono::NaiveDate::from_ymd_opt(2026, 9, 15).unwrap();
    // The 258th day of the year lies in the 37th run of seven.
    assert_eq!(week_of(Day::from_date(september)), 37);
}

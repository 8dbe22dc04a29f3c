//! The random packs reach every outcome and every block: a comparison of cases in which nothing happens would say nothing.

use std::collections::BTreeMap;

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

use crate::agreement::cases;
use crate::making::{rules, words};
use crate::plain::outcome::Outcome;
use crate::plain::windows::State;
use crate::plain::world::World;

/// How many cases are looked at, the same ones every time.
const CASES: usize = 1500;

#[test]
fn every_outcome_and_every_block_is_met_in_random_packs() {
    let mut runner = TestRunner::deterministic();
    let mut met: BTreeMap<String, usize> = BTreeMap::new();
    for _ in 0..CASES {
        let case = cases().new_tree(&mut runner).unwrap().current();
        let set = words::set_of(&rules::file(&case.rules));
        let world = World::new(&set.pack, &case.said, &case.profile());
        let verdicts = world.decide();
        let mut meet = |what: &str| *met.entry(what.to_owned()).or_default() += 1;
        for _ in verdicts.len()..world.rules().len() {
            meet("no");
        }
        for verdict in verdicts {
            match &verdict.outcome {
                Outcome::No => meet("no"),
                Outcome::Applies => meet("applies"),
                Outcome::Depends { could_apply } => {
                    meet(if *could_apply { "depends" } else { "depends, held at best" });
                }
                // The first word, or two: `apart until`, `apart from`.
                Outcome::Held(blocks) => blocks.iter().for_each(|block| {
                    let mut parts = block.split(' ');
                    let (first, second) = (parts.next().unwrap(), parts.next().unwrap_or_default());
                    meet(&if matches!(first, "apart" | "at") { format!("{first} {second}") } else { first.to_owned() });
                }),
            }
            match verdict.window {
                State::Open(_) => meet("open"),
                State::Unknown => meet("window unknown"),
                State::AllYear | State::Closed { .. } => {}
            }
            if !verdict.check_first.is_empty() {
                meet("check first");
            }
            if verdict.check_first.iter().any(|first| first.starts_with("guard")) {
                meet("guard of the day");
            }
            if verdict.overdue {
                meet("overdue");
            }
            for fact in &verdict.on {
                meet(if fact.starts_with("problem ") { "on a problem" } else { fact });
            }
        }
    }
    let wanted = [
        "no",
        "applies",
        "depends",
        "depends, held at best",
        "hold",
        "guard",
        "clash",
        "apart until",
        "apart from",
        "done",
        "at most",
        "turn",
        "early",
        "late",
        "never",
        "avoid",
        "open",
        "window unknown",
        "check first",
        "guard of the day",
        "overdue",
        "history",
        "window",
        "on a problem",
        "signs",
        "soil.ph",
    ];
    let seldom: Vec<&str> = wanted.into_iter().filter(|what| met.get(*what).copied().unwrap_or_default() < 3).collect();
    assert!(seldom.is_empty(), "seldom met: {seldom:?} in {met:?}");
}

//! What must hold of any pack and any question.

use std::collections::BTreeMap;

use lammas_engine::fact::value::Truth;
use lammas_engine::lang::parse;
use proptest::collection::vec;
use proptest::prelude::*;

use crate::agreement::{Case, cases, differences, of_engine};
use crate::asking::{rule, set};
use crate::making::{climates, conditions, hiding, questions, rules, words};
use crate::plain::outcome::{Outcome, Verdict};
use crate::plain::tree::{Curve, Names};
use crate::plain::world::World;

/// A case whose entries, and the keys of each, stand in another order, over two files.
fn shuffled() -> impl Strategy<Value = (Case, Vec<(String, String)>)> {
    cases().prop_flat_map(|case| {
        let entries = Just(rules::entries(&case.rules)).prop_shuffle().prop_flat_map(|entries| {
            let keys: Vec<_> = entries.into_iter().map(|entry| Just(entry).prop_shuffle()).collect();
            keys
        });
        let cut = 0..=case.rules.len();
        (entries, cut).prop_map(move |(entries, cut)| {
            let text = |entries: &[Vec<String>]| entries.iter().map(|entry| rules::text(entry)).collect::<String>();
            let (first, second) = entries.split_at(cut);
            let files = [("rules/z.yaml", first), ("rules/a.yaml", second)];
            let files = files.into_iter().filter(|(_, list)| !list.is_empty());
            (case.clone(), files.map(|(path, list)| (path.to_owned(), text(list))).collect())
        })
    })
}

/// Whether a task that the fuller answer holds may still be given when less is said, by the exceptions of the law.
fn is_excepted(block: &str, given: &Verdict, history_hidden: bool) -> bool {
    let of_the_day = given.check_first.contains(block);
    // From a rule of today that the facts brought in, or that they made the higher of two.
    let by_another = block.starts_with("apart from ") || block.starts_with("clash with ");
    let by_history =
        ["done until ", "at most until ", "turn of ", "apart until "].iter().any(|kind| block.starts_with(kind));
    of_the_day || by_another || history_hidden && by_history
}

/// What is wrong with the answer to less: tasks given that the full answer denies.
fn denied(
    less: &[Verdict],
    full: &[Verdict],
    for_a_problem: &dyn Fn(&str) -> bool,
    history_hidden: bool,
) -> Vec<String> {
    let full: BTreeMap<&str, &Verdict> = full.iter().map(|verdict| (verdict.rule.as_str(), verdict)).collect();
    let mut out = Vec::new();
    for given in less.iter().filter(|verdict| verdict.outcome == Outcome::Applies) {
        // The points of causes are added up, so what speaks for one may speak against another.
        if for_a_problem(&given.rule) {
            continue;
        }
        match full.get(given.rule.as_str()).map(|verdict| &verdict.outcome) {
            Some(Outcome::Applies | Outcome::Depends { could_apply: true }) => {}
            Some(Outcome::Held(blocks)) if blocks.iter().all(|block| is_excepted(block, given, history_hidden)) => {}
            other => out.push(format!("{}: given when less is said, {other:?} when all is", given.rule)),
        }
    }
    out
}

proptest! {
    #![proptest_config(ProptestConfig { max_shrink_iters: 4096, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_order_of_files_rules_and_keys_never_matters((case, files) in shuffled()) {
        let (straight, turned) = (words::set_of(&rules::file(&case.rules)), words::set_of(&files));
        prop_assert_eq!(&straight.sha256, &turned.sha256, "the same rules have the same hash");
        let profile = case.profile();
        let (one, one_order) = of_engine(&straight, &case.said, &profile);
        let (other, other_order) = of_engine(&turned, &case.said, &profile);
        let found = differences(&one, &other);
        prop_assert!(found.is_empty(), "{}\n{files:?}", found.join("\n"));
        prop_assert_eq!(one_order, other_order);
    }

    #[test]
    fn less_said_never_gives_a_task_that_all_said_denies(case in cases(), mask in hiding::masks()) {
        let set = words::set_of(&rules::file(&case.rules));
        let profile = case.profile();
        let said = hiding::with_sizes(&case.said);
        let less = hiding::hidden(&said, &mask);
        let world = World::new(&set.pack, &said, &profile);
        let for_a_problem = |id: &str| world.rule(id).whom.problem.is_some();
        let (full, _) = of_engine(&set, &said, &profile);
        // Who does not tell of danger gets the usual advice.
        let waits = |block: &String| block.starts_with("emergency ");
        prop_assume!(!full.iter().any(|v| matches!(&v.outcome, Outcome::Held(blocks) if blocks.iter().any(waits))));
        let (given, _) = of_engine(&set, &less, &profile);
        let history_hidden = said.history.is_some() && less.history.is_none();
        let found = denied(&given, &full, &for_a_problem, history_hidden);
        prop_assert!(found.is_empty(), "{}\n{}", found.join("\n"), rules::file(&case.rules)[0].1);
    }

    #[test]
    fn more_knowledge_turns_unknown_into_known_and_nothing_else(
        texts in vec(conditions::hold(), 8),
        said in questions::questions(vec!["any.c0".to_owned(), "any.c1".to_owned()]),
        climate in climates::climates(),
        mask in hiding::masks(),
    ) {
        let entries: Vec<String> = texts.iter().enumerate().map(|(at, text)| rule(&format!("any.c{at}"), &format!("when: \"{text}\""))).collect();
        let set = set(&entries);
        let profile = climate.on(lammas_agronomy::calendar::Day::from_date(said.date.unwrap()));
        let said = hiding::with_sizes(&said);
        let less = hiding::hidden(&said, &mask);
        let (full, part) = (World::new(&set.pack, &said, &profile), World::new(&set.pack, &less, &profile));
        let (engine_full, _) = of_engine(&set, &said, &profile);
        let (engine_part, _) = of_engine(&set, &less, &profile);
        for (at, text) in texts.iter().enumerate() {
            let of = |list: &[Verdict]| match list.iter().find(|v| v.rule == format!("any.c{at}")).map(|v| &v.outcome) {
                Some(Outcome::Applies) => Truth::True,
                Some(Outcome::Depends { .. }) => Truth::Unknown,
                None => Truth::False,
                other => panic!("{other:?}"),
            };
            let tree = parse::condition(text).unwrap();
            let truth = |world: &World<'_>| world.truth(&tree, Names::Full, Curve::Counts);
            for (little, much) in [(truth(&part), truth(&full)), (of(&engine_part), of(&engine_full))] {
                prop_assert!(little == Truth::Unknown || little == much, "{text}: {little:?}, and {much:?} when more is said");
            }
        }
    }
}

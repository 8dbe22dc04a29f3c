use crate::agreement::*;
use crate::making::{rules, words};
use crate::plain::world::World;
use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::TestRunner;
#[test]
#[ignore]
fn survey() {
    let mut runner = TestRunner::deterministic();
    let n: usize = std::env::var("SURVEY").ok().and_then(|s| s.parse().ok()).unwrap_or(300);
    let mut bad = 0;
    for _ in 0..n {
        let case = cases().new_tree(&mut runner).unwrap().current();
        let file = rules::file(&case.rules);
        let set = words::set_of(&file);
        let profile = case.profile();
        let (engine, engine_order) = of_engine(&set, &case.said, &profile);
        let world = World::new(&set.pack, &case.said, &profile);
        let plain = world.decide();
        let found = differences(&engine, &plain);
        if !found.is_empty() {
            bad += 1;
            for f in &found {
                let id = f.split('\n').next().unwrap();
                let text = rules::entries(&case.rules)
                    .iter()
                    .find(|e| e[0] == format!("id: {id}"))
                    .map(|e| rules::text(e))
                    .unwrap_or_default();
                println!("==== {f}\n{text}");
            }
            println!("SAID {}", serde_json::to_string(&case.said).unwrap());
        } else if engine_order != world.order(&plain) {
            println!("ORDER {engine_order:?} {:?}", world.order(&plain));
            bad += 1;
        }
    }
    println!("TOTAL {bad} of {n}");
}

//! The compiled engine and the plain evaluator agree on every rule of random packs.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use lammas_agronomy::marker::Marker;
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::Set;
use lammas_engine::decide::decision::decide;
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::outcome::{self as engine, Block, CheckFirst, Could, Hangs};
use lammas_engine::decide::{read, window};
use lammas_engine::fact::catalogue::CATALOGUE;
use lammas_engine::fact::value::Value;
use lammas_engine::question::Climate;
use lammas_engine::question::said::Said;
use lammas_engine::question::understand::understand;
use lammas_engine::rank;
use proptest::prelude::*;

use crate::making::{climates, questions, rules, words};
use crate::plain::outcome::{Outcome, Verdict};
use crate::plain::windows::{Open, State};
use crate::plain::world::World;

/// What the engine says, in the words of the plain evaluator: verdicts in the order of the pack, and the tasks in order.
pub(crate) fn of_engine(set: &Set, said: &Said, profile: &Profile) -> (Vec<Verdict>, Vec<String>) {
    let shift = SiteShift { frost_hollow: said.site.frost_hollow == Some(true) };
    let climate = Arc::new(Climate::new(None, profile.clone(), shift));
    let question = understand(said, set, climate, None).unwrap_or_else(|troubles| panic!("{troubles:#?}"));
    let book = set.plants.get(usize::from(question.plant)).unwrap();
    let moment = Moment::new(set, book, &question, question.day);
    let decision = decide(&moment);
    let verdicts = decision.verdicts.iter().map(|verdict| in_words(verdict, &moment)).collect();
    let tasks = |verdict: &&engine::Verdict| {
        verdict.outcome == engine::Outcome::Applies
            && set.rules[verdict.rule as usize].kind == lammas_engine::pack::rule::Kind::Task
    };
    let mut order: Vec<&engine::Verdict> = decision.verdicts.iter().filter(tasks).collect();
    rank::order::put(&mut order, &moment);
    (verdicts, order.into_iter().map(|verdict| set.rules[verdict.rule as usize].id.clone()).collect())
}

fn in_words(verdict: &engine::Verdict, moment: &Moment<'_>) -> Verdict {
    let set = moment.set;
    let id = |rule: u32| set.rules[rule as usize].id.clone();
    let of_plant = |at: u32| id(moment.book.rules[at as usize].rule);
    let block = |block: &Block| match block {
        Block::Hold(at) => format!("hold {at}"),
        Block::Guard(at) => format!("guard {}", of_plant(*at)),
        Block::Clash(rule) => format!("clash with {}", id(*rule)),
        Block::Apart { rule: None, until } => format!("apart until {}", until.date()),
        Block::Apart { rule: Some(rule), until } => format!("apart from {} until {}", id(*rule), until.date()),
        Block::Done { until, at_most: false } => format!("done until {}", until.date()),
        Block::Done { until, at_most: true } => format!("at most until {}", until.date()),
        Block::Turn(rule) => format!("turn of {}", id(*rule)),
        Block::Early => "early".to_owned(),
        Block::Late => "late".to_owned(),
        Block::Never => "never".to_owned(),
        Block::Avoid => "avoid".to_owned(),
        Block::Emergency(rule) => format!("emergency {}", id(*rule)),
        Block::Withheld => "withheld".to_owned(),
    };
    let (outcome, on) = match &verdict.outcome {
        engine::Outcome::No => (Outcome::No, BTreeSet::new()),
        engine::Outcome::Applies => (Outcome::Applies, BTreeSet::new()),
        engine::Outcome::Held(blocks) => (Outcome::Held(blocks.iter().map(block).collect()), BTreeSet::new()),
        engine::Outcome::Depends { on, could } => {
            let on = on.iter().flat_map(|hangs| hangs_on(hangs, moment)).collect();
            (Outcome::Depends { could_apply: *could == Could::Apply }, on)
        }
    };
    let info = &set.rules[verdict.rule as usize];
    Verdict {
        rule: info.id.clone(),
        outcome,
        window: state(&verdict.window),
        check_first: verdict
            .check_first
            .iter()
            .map(|first| match first {
                CheckFirst::Hold(at) => format!("hold {at}"),
                CheckFirst::Guard(at) => format!("guard {}", of_plant(*at)),
            })
            .collect(),
        overdue: verdict.overdue,
        score: i32::from(verdict.score.total),
        band: rank::band(info, &verdict.window, moment) as u8,
        on,
    }
}

/// The names of the facts that an outcome hangs on: of a sum, of those parts that are not known.
fn hangs_on(hangs: &Hangs, moment: &Moment<'_>) -> Vec<String> {
    match hangs {
        Hangs::Probe(probe) => {
            let mut names = Vec::new();
            moment.book.probes[*probe as usize].walk(&mut |term| {
                let reading = read::term(term, moment);
                let only_the_curve = matches!(reading.origin, Origin::Computed | Origin::Estimated);
                names.extend(term.fact().map(lammas_engine::fact::catalogue::Fact::entry).and_then(|entry| {
                    let is_missing = reading.value == Value::Unknown || entry.of_the_day && only_the_curve;
                    is_missing.then(|| entry.name.to_owned())
                }));
            });
            names
        }
        Hangs::Problem(problem) => vec![format!("problem {}", moment.set.names.problems.name(*problem))],
        Hangs::History => vec!["history".to_owned()],
        Hangs::Window => vec!["window".to_owned()],
    }
}

pub(crate) fn state(state: &window::State) -> State {
    match state {
        window::State::AllYear => State::AllYear,
        window::State::Open(o) => State::Open(Open { opens: o.opens, best: o.best, closes: o.closes }),
        window::State::Closed { before, next } => State::Closed { before: *before, next: *next },
        window::State::Unknown => State::Unknown,
    }
}

/// A pack, a question and a climate, all of them random.
#[derive(Clone, Debug)]
pub(crate) struct Case {
    pub(crate) rules: Vec<rules::RuleSpec>,
    pub(crate) said: Said,
    pub(crate) climate: climates::ClimateSpec,
}

pub(crate) fn cases() -> impl Strategy<Value = Case> {
    (rules::rules(), climates::climates()).prop_flat_map(|(rules, climate)| {
        let ids = rules::ids(&rules);
        questions::questions(ids).prop_map(move |said| Case { rules: rules.clone(), said, climate: climate.clone() })
    })
}

impl Case {
    pub(crate) fn profile(&self) -> Profile {
        self.climate.on(lammas_agronomy::calendar::Day::from_date(self.said.date.unwrap()))
    }
}

/// The name of a fact as the catalogue has it: one row may have several names.
fn in_catalogue(name: &str) -> String {
    let of_marker =
        matches!(name, "since" | "last" | "planted" | "harvest_wait" | "stage" | "heat_reached" | "chill_reached");
    if of_marker || Marker::named(name).is_some() {
        return "marker".to_owned();
    }
    let entry = CATALOGUE.iter().find(|entry| entry.name == name || entry.name.split(", ").any(|one| one == name));
    entry.map_or(name, |entry| entry.name).to_owned()
}

/// Of several separations from one thing the one that lasts longest; all sorted.
fn in_few_words(blocks: &[String]) -> Vec<String> {
    let mut longest: BTreeMap<&str, &str> = BTreeMap::new();
    for block in blocks {
        let (what, until) = block.split_once(" until ").unwrap_or((block, ""));
        let is_apart = what.starts_with("apart");
        let known = longest.entry(if is_apart { what } else { block }).or_default();
        *known = (*known).max(if is_apart { until } else { "" });
    }
    longest
        .into_iter()
        .map(|(what, until)| if until.is_empty() { what.to_owned() } else { format!("{what} until {until}") })
        .collect()
}

/// What differs between two lists of verdicts, one line a rule.
pub(crate) fn differences(engine: &[Verdict], plain: &[Verdict]) -> Vec<String> {
    let mut out = Vec::new();
    let ids: BTreeSet<&str> = engine.iter().chain(plain).map(|verdict| verdict.rule.as_str()).collect();
    for id in ids {
        let of = |list: &[Verdict]| list.iter().find(|verdict| verdict.rule == id).cloned();
        let (mut a, mut b) = (of(engine), of(plain));
        for verdict in [&mut a, &mut b].into_iter().flatten() {
            verdict.on = verdict.on.iter().map(|name| in_catalogue(name)).collect();
            // What is held is not ranked.
            if let Outcome::Held(blocks) = &mut verdict.outcome {
                *blocks = in_few_words(blocks);
                (verdict.score, verdict.band) = (0, 0);
            }
            if !matches!(verdict.outcome, Outcome::Applies | Outcome::Depends { .. }) {
                verdict.check_first.clear();
            }
        }
        if a != b {
            out.push(format!("{id}\n  engine {a:?}\n  plain  {b:?}"));
        }
    }
    out
}

proptest! {
    #![proptest_config(ProptestConfig { max_shrink_iters: 4096, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_engine_says_of_every_rule_what_the_plain_evaluator_says(case in cases()) {
        let file = rules::file(&case.rules);
        let set = words::set_of(&file);
        let profile = case.profile();
        let (engine, engine_order) = of_engine(&set, &case.said, &profile);
        let world = World::new(&set.pack, &case.said, &profile);
        let plain = world.decide();
        let found = differences(&engine, &plain);
        prop_assert!(found.is_empty(), "{}\n{}", found.join("\n"), file[0].1);
        prop_assert_eq!(engine_order, world.order(&plain), "{}", file[0].1);
    }
}

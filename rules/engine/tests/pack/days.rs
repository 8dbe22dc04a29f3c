//! Looking ahead jumps from turn to turn; here every day is judged, and it comes out the same.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;
use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::Set;
use lammas_engine::decide::decision::{decide, one};
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::outcome::{Block, Outcome, Verdict};
use lammas_engine::explain::held;
use lammas_engine::explain::voice::Voice;
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::fact::catalogue::Fact;
use lammas_engine::fact::value::{Reading, Value};
use lammas_engine::question::{Climate, Question, WorkDone};
use lammas_engine::scenario;
use lammas_engine::validity::{self, lines};

use crate::shipped::set;

/// Days by which the questions of the scenarios are moved on, so that they fall into every season.
const LATER: [i32; 5] = [0, 41, 97, 203, 290];

/// The questions of the scenarios on other days too; of each third one works were done, of each fourth it is said when it was
/// planted.
fn questions(set: &Set) -> Vec<(String, Question)> {
    let mut out = Vec::new();
    for (at, filed) in set.pack.scenarios.iter().enumerate() {
        for (shift, later) in LATER.iter().enumerate() {
            let mut question = scenario::question(set, &filed.entry.ask).unwrap();
            question.day = question.day + *later;
            if (at + shift) % 3 == 0 {
                let mut works = question.history.take().unwrap_or_default();
                works.extend(["feed", "treat-pest", "water", "prune"].iter().zip(0_i32..).filter_map(|(job, n)| {
                    Some(WorkDone {
                        job: Some(set.names.jobs.number(job)?),
                        rule: None,
                        material: None,
                        class: None,
                        day: question.day - 3 - 11 * n,
                        place: 0,
                        label_days_to_harvest: (n == 1).then_some(14),
                    })
                }));
                works.sort_by_key(|work| work.day);
                question.history = Some(works);
            }
            if (at + shift) % 4 == 0 {
                question.planted = Some(question.day - 300);
            }
            out.push((format!("{} +{later}", filed.file), question));
        }
    }
    out
}

fn on<'a>(set: &'a Set, question: &'a Question, day: Day) -> Moment<'a> {
    Moment::new(set, &set.plants[usize::from(question.plant)], question, day)
}

#[test]
fn what_others_asked_of_the_same_climate_before_changes_nothing() {
    let set = set();
    let answer = |question: &Question| {
        let answer = whole::answer(&set, question, "en", Extent::FULL).unwrap();
        serde_json::to_string(&answer).unwrap()
    };
    let mut shared: Vec<Question> = Vec::new();
    let mut again = 0;
    for (name, question) in questions(&set).into_iter().step_by(3) {
        let alone = answer(&question);
        let mut beside = question.clone();
        let is_same = |other: &&Question| {
            let shift = |q: &Question| q.given(Fact::SiteFrostHollow).value == Value::Truth(true);
            other.climate.sha256 == question.climate.sha256 && shift(other) == shift(&question)
        };
        match shared.iter().find(is_same) {
            Some(other) => beside.climate = Arc::clone(&other.climate),
            None => shared.push(beside.clone()),
        }
        // A stage that one caller tells must not be another's.
        let mut told = beside.clone();
        told.given[Fact::PlantStage as usize] = Reading::new(Value::Choice(1), Origin::Given);
        let fresh = answer(&Question { climate: fresh(&told), ..told.clone() });
        assert_eq!(answer(&told), fresh, "{name}, with a stage");
        assert_eq!(answer(&beside), alone, "{name}");
        again += 1;
    }
    assert!(shared.len() * 4 < again, "{} climates for {again} questions", shared.len());
}

/// The climate of a question as if nobody had asked of it yet.
fn fresh(question: &Question) -> Arc<Climate> {
    let hollow = question.given(Fact::SiteFrostHollow).value == Value::Truth(true);
    let climate = &question.climate;
    Arc::new(Climate::new(climate.id.clone(), climate.profile.clone(), SiteShift { frost_hollow: hollow }))
}

#[test]
fn an_answer_holds_as_long_as_every_day_decides_the_same() {
    let set = set();
    let mut long = 0;
    for (name, question) in questions(&set) {
        let today = on(&set, &question, question.day);
        let decision = decide(&today);
        let found = validity::of(&decision, &today);
        if decision.emergency.is_some() {
            assert_eq!((found.from, found.until, found.change), (question.day, question.day, None), "{name}");
            continue;
        }
        let same = |day: Day| {
            let there = on(&set, &question, day);
            lines(&decide(&there), &there) == lines(&decision, &today)
        };
        if validity::reads_weather(&decision, &today) {
            assert_eq!((found.from, found.until), (question.day, question.day), "{name}");
            continue;
        }
        let until = (1..=60).find(|ahead| !same(question.day + *ahead)).unwrap_or(61) - 1;
        let from = (1..=60).find(|back| !same(question.day - *back)).unwrap_or(61) - 1;
        let before = on(&set, &question, question.day - from - 1);
        assert_eq!(
            (found.from, found.until),
            (question.day - from, question.day + until),
            "{name}: {}, {:?}",
            question.day.date(),
            lines(&decide(&before), &before).iter().zip(&lines(&decision, &today)).find(|(a, b)| a != b)
        );
        assert_eq!(found.change.is_some(), until < 60, "{name}");
        long += i32::from(until > 5);
    }
    assert!(long > 50, "only {long} answers hold for more than five days: too few to show anything");
}

#[test]
fn a_held_rule_is_looked_at_again_on_the_first_day_on_which_it_is_held_no_longer() {
    let set = set();
    let mut found = 0;
    for (name, question) in questions(&set).into_iter().step_by(2) {
        let today = on(&set, &question, question.day);
        let decision = decide(&today);
        // Nobody knows when danger is over.
        if decision.emergency.is_some() {
            continue;
        }
        let verdicts: Vec<&Verdict> =
            decision.verdicts.iter().filter(|v| matches!(v.outcome, Outcome::Held(_))).collect();
        for (verdict, held) in verdicts.iter().zip(held::of(&verdicts, Voice::new(&today, "en").unwrap())) {
            let Outcome::Held(blocks) = &verdict.outcome else { unreachable!() };
            // These two are told their day by the other rule.
            if matches!(blocks.as_slice(), [Block::Turn(_) | Block::Apart { rule: Some(_), .. }]) {
                continue;
            }
            let free = |ahead: &i32| {
                !matches!(one(verdict.at, &on(&set, &question, question.day + *ahead)), Some(Outcome::Held(_)))
            };
            let expected = (1..=400).find(free).map(|ahead| (question.day + ahead).date());
            assert_eq!(held.look_again, expected, "{name}: {}", held.id);
            found += i32::from(expected.is_some());
        }
    }
    assert!(found > 100, "only {found} days: too few to show anything");
}

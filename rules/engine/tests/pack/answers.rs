//! Properties of every answer to the questions of the scenarios, in both languages.

use std::collections::BTreeSet;

use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::explain::answer::{Answer, FactValue};
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::question::Question;
use lammas_engine::scenario;

use crate::shipped::set;

fn questions(set: &Set) -> Vec<(String, Question)> {
    set.pack
        .scenarios
        .iter()
        .map(|s| (s.file.to_string(), scenario::question(set, &s.entry.ask).unwrap_or_else(|why| panic!("{why:?}"))))
        .collect()
}

fn answer<'a>(set: &'a Set, question: &'a Question, language: &str) -> Answer<'a> {
    whole::answer(set, question, language, Extent::FULL).unwrap()
}

#[test]
fn every_task_says_why_on_which_facts_and_from_which_source() {
    let set = set();
    for (file, question) in questions(&set) {
        let answer = answer(&set, &question, "en");
        for task in &answer.tasks {
            assert!(!task.title.is_empty() && !task.steps.is_empty(), "{file}: {}", task.id);
            assert!(task.reasons.iter().all(|r| !r.text.is_empty()), "{file}: {}", task.id);
            assert!(!task.sources.is_empty() && !task.version.is_empty(), "{file}: {}", task.id);
            let facts: Vec<_> = task.reasons.iter().flat_map(|r| &r.facts).collect();
            assert!(
                facts.iter().all(|f| !f.words.is_empty() && f.value != FactValue::Unknown),
                "{file}: {}: {facts:?}",
                task.id
            );
        }
        for held in &answer.held {
            assert!(!held.because.is_empty(), "{file}: {}", held.id);
            assert!(!held.blocks.is_empty(), "{file}: {}", held.id);
        }
    }
}

#[test]
fn both_languages_give_the_same_advice_in_other_words() {
    let set = set();
    for (file, question) in questions(&set) {
        let (en, es) = (answer(&set, &question, "en"), answer(&set, &question, "es"));
        assert_eq!(en.digest, es.digest, "{file}");
        let ids = |a: &Answer| a.tasks.iter().map(|t| t.id.to_owned()).collect::<Vec<_>>();
        assert_eq!(ids(&en), ids(&es), "{file}");
        for (a, b) in en.tasks.iter().zip(&es.tasks) {
            assert_eq!(a.cautions.len(), b.cautions.len());
            assert_eq!(a.check_first.len(), b.check_first.len());
            assert_eq!(a.steps.len(), b.steps.len(), "{}", a.id);
            assert_ne!(**a.title, **b.title, "{}", a.id);
            assert_eq!(
                a.amounts.iter().map(|x| x.value).collect::<Vec<_>>(),
                b.amounts.iter().map(|x| x.value).collect::<Vec<_>>()
            );
        }
        for text in texts(&en).into_iter().chain(texts(&es)) {
            assert!(!text.contains(['{', '}']), "{file}: {text}");
        }
    }
}

fn texts(answer: &Answer) -> Vec<String> {
    let mut out = Vec::new();
    for task in &answer.tasks {
        out.extend(task.reasons.iter().map(|r| r.text.to_string()));
        out.extend(task.check_first.iter().map(|c| c.text.to_string()));
        out.extend(task.steps.iter().cloned());
    }
    out.extend(answer.held.iter().flat_map(|h| &h.blocks).map(|b| b.because.to_string()));
    out.extend(answer.notes.iter().map(|n| n.text.to_string()));
    out.extend(answer.questions.iter().map(|q| q.text.clone()));
    out
}

/// What belongs to the decision.
fn decision(answer: &Answer) -> String {
    let tasks: Vec<String> = answer
        .tasks
        .iter()
        .map(|t| {
            let amounts: Vec<_> = t.amounts.iter().map(|a| (a.value, a.capped)).collect();
            format!("{} {:?} {:?} {:?} {:?}", t.id, t.priority.band, t.window.opens, t.window.closes, amounts)
        })
        .collect();
    let held: Vec<String> = answer
        .held
        .iter()
        .map(|h| format!("{} {:?}", h.id, h.blocks.iter().map(|b| b.kind).collect::<Vec<_>>()))
        .collect();
    // Scores move from day to day, and with them the order of what depends.
    let depends: BTreeSet<&str> = answer.depends_on.iter().map(|d| d.id).collect();
    // What is said of the weather is of the question, not of a rule.
    let notes: Vec<&str> = answer.notes.iter().map(|n| n.id).filter(|id| !id.starts_with("climate.")).collect();
    format!("{} {tasks:?} {held:?} {depends:?} {notes:?}", answer.status)
}

#[test]
fn the_decision_is_the_same_on_every_day_on_which_it_is_said_to_hold_and_another_on_the_day_after() {
    let set = set();
    let mut changed = 0;
    for (file, question) in questions(&set).into_iter().step_by(5) {
        let whole = |day: Day| {
            let mut other = question.clone();
            other.day = day;
            let extent = Extent { most_depends: usize::MAX, ..Extent::FULL };
            let answer = whole::answer(&set, &other, "en", extent).unwrap();
            let change = answer.next_change.as_ref().map(|change| change.date);
            (decision(&answer), Day::from_date(answer.valid_from), Day::from_date(answer.valid_until), change)
        };
        let (today, from, until, change) = whole(question.day);
        assert!(from <= question.day && question.day <= until && until - question.day <= 60, "{file}");
        for day in [from, from + (until - from) / 2, until] {
            assert_eq!(whole(day).0, today, "{file} on {}", day.date());
        }
        if let Some(change) = change {
            assert_eq!(Day::from_date(change), until + 1, "{file}");
            changed += 1;
        }
    }
    assert!(changed > 5, "{changed}");
}

#[test]
fn the_same_question_gives_the_same_bytes() {
    let set = set();
    for (file, question) in questions(&set).into_iter().step_by(7) {
        let text = |q: &Question| serde_json::to_string(&answer(&set, q, "es")).unwrap();
        assert_eq!(text(&question), text(&question), "{file}");
    }
}

#[test]
fn a_held_rule_is_free_on_the_day_to_look_again() {
    let set = set();
    let mut looked = 0;
    for (file, question) in questions(&set).into_iter().step_by(3) {
        let today = answer(&set, &question, "en");
        for held in today.held.iter().filter(|h| h.look_again.is_some()) {
            // Of two that take turns the other is done in between, which only the gardener can say.
            if held.blocks.iter().any(|b| b.kind == "apart") {
                continue;
            }
            let mut later = question.clone();
            later.day = Day::from_date(held.look_again.unwrap());
            let then = answer(&set, &later, "en");
            assert!(!then.held.iter().any(|h| h.id == held.id), "{file}: {} on {}", held.id, later.day.date());
            later.day = later.day - 1;
            let before = answer(&set, &later, "en");
            assert!(before.held.iter().any(|h| h.id == held.id), "{file}: {} before {}", held.id, later.day.date());
            looked += 1;
        }
    }
    assert!(looked > 50, "{looked}");
}

#[test]
fn a_question_shows_the_exact_value_and_settles_what_it_says() {
    let set = set();
    let mut asked = 0;
    for (file, question) in questions(&set) {
        for shown in answer(&set, &question, "en").questions {
            assert!(!shown.text.is_empty() && !shown.look.is_empty(), "{file}: {}", shown.fact);
            assert!(shown.pointer.starts_with('/'), "{file}: {}", shown.fact);
            assert!(!shown.settles.is_empty(), "{file}: {}", shown.fact);
            let (last, others) = shown.answers.split_last().unwrap();
            assert!(last.value.is_none() && last.leads_to.is_empty(), "{file}: {}", shown.fact);
            assert!(others.iter().all(|a| a.value.is_some() && !a.text.is_empty()), "{file}: {}", shown.fact);
            asked += 1;
        }
    }
    assert!(asked > 100, "{asked}");
}

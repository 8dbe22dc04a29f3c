//! What is told in words goes into the advice as signs that are seen, and as nothing else.

use lammas_engine::compile::set::Set;
use lammas_engine::explain::answer::Answer;
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::fact::value::Truth;
use lammas_engine::question::Question;
use lammas_engine::question::said::{ConditionSaid, Said, SignSaid};
use lammas_engine::scenario;

use crate::shipped::set;

const TOLD: [&str; 6] = [
    "buds stay shut and brown",
    "black spots on the leaves, sticky leaves and aphids",
    "leaves full of holes. limp even at dawn",
    "white powder, no aphids, yellow leaves",
    "hojas pegajosas con hormigas en los tallos",
    "hello there",
];

fn question(set: &Set, said: &Said) -> Question {
    scenario::question(set, said).unwrap_or_else(|why| panic!("{why:?}"))
}

fn answer<'a>(set: &'a Set, question: &'a Question) -> Answer<'a> {
    whole::answer(set, question, "en", Extent::FULL).unwrap()
}

fn condition(words: &str) -> Option<ConditionSaid> {
    Some(ConditionSaid { words: Some(words.to_owned()), ..ConditionSaid::default() })
}

fn rose_in_june() -> Said {
    let mut said = Said::default();
    said.climate.id = Some("mild-maritime".to_owned());
    said.date = chrono::NaiveDate::from_ymd_opt(2026, 6, 5);
    said.plant.kind = "rose".to_owned();
    said
}

fn understood(question: &Question) -> Vec<u16> {
    question.heard.iter().flat_map(|heard| &heard.understood).map(|(sign, _)| *sign).collect()
}

#[test]
fn with_words_alone_what_is_understood_is_seen_and_all_else_stays_unknown() {
    let set = set();
    for words in TOLD {
        let asked = question(&set, &Said { condition: condition(words), ..rose_in_june() });
        let understood = understood(&asked);
        for (sign, state) in asked.signs.iter().enumerate() {
            let is_told = understood.iter().any(|told| usize::from(*told) == sign);
            // Danger that nobody told of is not there.
            let untold = if set.pack.signs[sign].entry.emergency { Truth::False } else { Truth::Unknown };
            assert_eq!(state.seen, if is_told { Truth::True } else { untold }, "{words}: {sign}");
        }
    }
}

#[test]
fn beside_a_list_of_signs_words_only_add_to_what_is_seen() {
    let set = set();
    let listed = ConditionSaid {
        signs: Some(vec![SignSaid { sign: "spent-blooms".to_owned(), ..SignSaid::default() }]),
        not_seen: vec!["webbing".to_owned()],
        ..ConditionSaid::default()
    };
    let alone = question(&set, &Said { condition: Some(listed.clone()), ..rose_in_june() });
    for words in TOLD.into_iter().chain(["spider mites, webs under the leaves"]) {
        let told = Some(ConditionSaid { words: Some(words.to_owned()), ..listed.clone() });
        let asked = question(&set, &Said { condition: told, ..rose_in_june() });
        let understood = understood(&asked);
        for (sign, (before, after)) in alone.signs.iter().zip(&asked.signs).enumerate() {
            let is_told = understood.iter().any(|told| usize::from(*told) == sign);
            assert_eq!(after.seen, if is_told { Truth::True } else { before.seen }, "{words}: {sign}");
        }
        let webbing = set.names.signs.number("webbing").unwrap();
        assert!(!understood.contains(&webbing), "what is denied by its id stays denied");
    }
}

#[test]
fn words_never_take_away_a_task_of_any_scenario() {
    let set = set();
    let mut tasks = 0;
    for filed in &set.pack.scenarios {
        let said = Said { condition: None, ..filed.entry.ask.clone() };
        let asked = question(&set, &said);
        let before = answer(&set, &asked);
        for words in TOLD {
            let asked = question(&set, &Said { condition: condition(words), ..said.clone() });
            let after = answer(&set, &asked);
            // A task may have to wait for one that the words brought in; it is never gone.
            let is_there = |id: &str| after.tasks.iter().any(|t| t.id == id) || after.held.iter().any(|h| h.id == id);
            for task in &before.tasks {
                assert!(is_there(task.id), "{}: {} after `{words}`", filed.file, task.id);
                tasks += 1;
            }
        }
    }
    assert!(tasks > 100, "only {tasks} tasks were looked at");
}

#[test]
fn the_signs_are_in_the_digest_and_the_words_are_not() {
    let set = set();
    let ask = |words: &str| question(&set, &Said { condition: condition(words), ..rose_in_june() });
    let asked =
        [ask("the leaves feel sticky"), ask("Hojas pegajosas!"), ask("hello there"), question(&set, &rose_in_june())];
    let [one, other, hello, nothing] = [0, 1, 2, 3].map(|at| answer(&set, &asked[at]));
    assert_eq!((one.asked, &one.digest), (other.asked, &other.digest));
    assert_eq!(one.asked["signs"], serde_json::json!([{"sign": "sticky-leaves"}]));
    assert!(!one.asked.to_string().contains("feel"));
    assert_eq!(hello.digest, nothing.digest, "what is not understood changes nothing");
    assert_ne!(one.digest, nothing.digest);
    assert!(nothing.heard.is_none() && one.heard.is_some());
}

#[test]
fn what_could_be_several_signs_is_asked_first() {
    let set = set();
    let asked = question(&set, &Said { condition: condition("yellow leaves"), ..rose_in_june() });
    let answer = answer(&set, &asked);
    let first = answer.questions.first().unwrap();
    assert!(first.text.contains("“yellow leaves”"), "{first:?}");
    let unsure = &answer.heard.unwrap().unsure[0];
    assert!(unsure.could_be.len() > 1);
    for (choice, sign) in first.answers.iter().zip(&unsure.could_be) {
        assert_eq!(
            (choice.text.as_str(), choice.value.as_ref().unwrap()["sign"].as_str()),
            (sign.name, Some(sign.sign))
        );
    }
    assert_eq!(first.answers.len(), unsure.could_be.len() + 1, "and one for those who can't tell");
    assert!(answer.questions.len() <= 5);
}

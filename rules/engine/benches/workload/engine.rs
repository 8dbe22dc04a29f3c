//! The same rules and documents as a compiled set and questions.

use std::fmt::Write as _;
use std::sync::Arc;

use lammas_agronomy::origin::Origin;
use lammas_engine::compile::set::{Set, compile};
use lammas_engine::decide::decision::decide;
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::outcome::Outcome;
use lammas_engine::fact::catalogue::Fact;
use lammas_engine::fact::value::{Reading, Truth, Value};
use lammas_engine::pack::shapes::AllOr;
use lammas_engine::pack::{Filed, Pack, RuleEntry};
use lammas_engine::question::{Question, SignState, WorkDone};
use lammas_engine::read::{PackFile, read};
use lammas_engine::scenario;
use serde_json::json;

use crate::facts::{CHOICES, COUNTS, FLAGS, NUMBERS, PLANTS, SHARES, SIGNS};
use crate::making::{Condition, Document, Rule};

/// Everything but the rules, and one rule to copy.
fn bare() -> Pack {
    let signs =
        (0..SIGNS).map(|at| format!("sign-{at:02}")).chain(SHARES.map(|at| format!("part-{:02}", at - SHARES.start)));
    let signs: String = signs.fold(String::new(), |mut text, id| {
        let _ =
            writeln!(text, "- {{id: {id}, where: soil, seen: plain, name: {{en: \"{id}\"}}, look: {{en: \"look\"}}}}");
        text
    });
    let plants = (0..PLANTS).fold(String::new(), |mut text, at| {
        let _ = writeln!(
            text,
            "- {{id: plant-{at:02}, name: {{en: \"Plant {at}\"}}, names: {{}}, stages: [rest], in_leaf: [], traits: [], \
             size: {{height: 1 m, canopy_diameter: 1 m}}, water: {{factor: 0.6, root_depth: 40 cm, depletion: 0.4}}}}"
        );
        text
    });
    let files = [
        ("pack.yaml", "{name: made, version: \"2026.11.1\", languages: [en], title: {en: \"Made\"}}".to_owned()),
        (
            "words/jobs.yaml",
            "[{id: look, name: {en: Look}}, {id: sweep, name: {en: Sweep}}, {id: rake, name: {en: Rake}}]".to_owned(),
        ),
        ("words/stages.yaml", "[{id: rest, name: {en: Rest}}]".to_owned()),
        ("words/signs.yaml", signs),
        ("plants/made.yaml", plants),
        (
            "rules/made.yaml",
            "[{id: any.made, job: look, title: {en: Look}, for: {plants: [plant-00]}, when: \"site.mulched\", \
             rank: {urgency: 1, impact: 1}, evidence: common-practice, strength: do, why: {en: Because}}]"
                .to_owned(),
        ),
    ];
    read(&files.map(|(path, text)| PackFile { path: path.to_owned(), text })).unwrap()
}

fn written(condition: Condition) -> String {
    match condition {
        Condition::Range { fact, low, high } => {
            let of = NUMBERS[fact];
            format!("{0} >= {low} {1} and {0} <= {high} {1}", of.name, of.unit).replace("  ", " ").trim_end().to_owned()
        }
        Condition::OneOf { fact, mask } => {
            let (name, values) = CHOICES[fact];
            let named = values.iter().enumerate().filter(|(at, _)| mask >> at & 1 == 1).map(|(_, value)| *value);
            format!("{name} in {{{}}}", named.collect::<Vec<_>>().join(", "))
        }
        Condition::Flag { fact, yes } => format!("{}{}", if yes { "" } else { "not " }, FLAGS[fact]),
        Condition::Sign(sign) => format!("signs has sign-{sign:02}"),
    }
}

/// The rules as entries of a pack.
fn entry(rule: &Rule, like: &Filed<RuleEntry>) -> Filed<RuleEntry> {
    let mut filed = like.clone();
    filed.entry.id.value = format!("any.made-{}", rule.number);
    if let Some(AllOr::These(plants)) = &mut filed.entry.whom.plants {
        let like = plants[0].clone();
        *plants = rule
            .plants
            .iter()
            .map(|plant| {
                let mut at = like.clone();
                at.value = format!("plant-{plant:02}");
                at
            })
            .collect();
    }
    if let Some(when) = &mut filed.entry.when {
        when.0.value = rule.conditions.iter().map(|c| written(*c)).collect::<Vec<_>>().join(" and ");
    }
    filed
}

/// The rules, compiled.
pub(crate) fn set(rules: &[Rule]) -> Set {
    let mut pack = bare();
    let like = pack.rules.remove(0);
    pack.rules = rules.iter().map(|rule| entry(rule, &like)).collect();
    let (set, faults) = compile(pack);
    assert!(faults.is_empty(), "{:#?}", faults.first());
    set.unwrap()
}

/// The documents as questions, each fact given.
pub(crate) fn questions(set: &Set, documents: &[Document]) -> Vec<Question> {
    let said = json!({
        "climate": {"latitude": 34.2, "elevation_m": 230, "normals": {
            "tmin_c": [4.0, 4.8, 6.4, 9.0, 12.0, 15.0, 18.0, 18.2, 16.0, 12.2, 7.0, 4.2],
            "tmax_c": [18.5, 19.5, 22.5, 25.5, 28.5, 33.0, 36.8, 37.0, 33.4, 28.0, 22.0, 18.0]}},
        "date": "2026-09-15",
        "plant": {"type": "plant-00"}
    });
    let like = scenario::question(set, &serde_json::from_value(said).unwrap()).unwrap();
    documents.iter().map(|document| question(&like, document)).collect()
}

fn question(like: &Question, document: &Document) -> Question {
    let mut question = like.clone();
    question.climate = Arc::clone(&like.climate);
    question.plant = document.plant;
    let mut give = |name: &str, value: Value| {
        let fact = Fact::find(name).unwrap();
        question.given[fact as usize] = Reading::new(value, Origin::Given);
    };
    for (of, value) in NUMBERS.iter().zip(document.numbers).take(SHARES.start) {
        give(of.name, Value::Number(value));
    }
    for ((name, _), value) in CHOICES.iter().zip(document.choices) {
        give(name, Value::Choice(u16::from(value)));
    }
    for (name, yes) in FLAGS.iter().zip(document.flags) {
        give(name, Value::Truth(yes));
    }
    let nothing = SignState { seen: Truth::False, severity: None, share_pct: None, since: None };
    let listed = (0..SIGNS).map(|at| document.signs.iter().any(|sign| usize::from(*sign) == at));
    let listed = listed.map(|seen| SignState { seen: Truth::known(seen), ..nothing });
    let shares = SHARES.map(|at| SignState { seen: Truth::True, share_pct: Some(document.numbers[at]), ..nothing });
    question.signs = listed.chain(shares).collect();
    let works = COUNTS.flat_map(|at| {
        let job = u16::try_from(1 + at - COUNTS.start).unwrap();
        let done = WorkDone {
            job: Some(job),
            rule: None,
            material: None,
            class: None,
            day: like.day - 7,
            place: 0,
            label_days_to_harvest: None,
        };
        std::iter::repeat_n(done, document.numbers[at] as usize)
    });
    question.history = Some(works.collect());
    question
}

/// The rules that apply.
pub(crate) fn decided(set: &Set, question: &Question) -> Vec<u32> {
    let moment = Moment::new(set, &set.plants[usize::from(question.plant)], question, question.day);
    let decision = decide(&moment);
    decision.verdicts.iter().filter(|v| v.outcome == Outcome::Applies).map(|v| v.rule).collect()
}

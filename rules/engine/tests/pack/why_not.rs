//! What it would take, over the rules of the shipped set and the questions of its scenarios: every change that is told is
//! applied and asked again, and no smaller set of changes does as much. `LAMMAS_LONG=1` asks for many more.

use std::collections::BTreeMap;

use lammas_engine::compile::set::Set;
use lammas_engine::compile::term::Work;
use lammas_engine::fact::catalogue::{CATALOGUE, Giver};
use lammas_engine::question::Question;
use lammas_engine::question::said::Said;
use lammas_engine::question::understand::understand;
use lammas_engine::scenario;
use lammas_engine::why_not::edit::{self, Edit};
use lammas_engine::why_not::{Ground, Lever, Reach, Setting, levers, reached, settings, smallest, why_not};

use crate::shipped::set;

/// A sequence that looks random and is the same everywhere (xorshift, Marsaglia 2003).
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 % u64::try_from(n.max(1)).unwrap()).unwrap()
    }
}

pub(crate) fn is_long() -> bool {
    #[expect(clippy::disallowed_methods, reason = "a test may be asked to do more")]
    std::env::var_os("LAMMAS_LONG").is_some()
}

struct Case<'s> {
    set: &'s Set,
    file: String,
    said: Said,
    question: Question,
    rule: u32,
}

impl Case<'_> {
    fn ground(&self) -> Ground<'_> {
        Ground::new(self.set, &self.said, &self.question, self.rule).unwrap()
    }

    fn name(&self) -> String {
        format!("{} asked by {}", self.set.rules[self.rule as usize].id, self.file)
    }
}

/// Rules that are not there, drawn with questions of scenarios.
fn cases(set: &Set, count: usize) -> Vec<Case<'_>> {
    let mut dice = Dice(0x5eed_2026_1125);
    let mut out = Vec::new();
    while out.len() < count {
        let filed = &set.pack.scenarios[dice.below(set.pack.scenarios.len())];
        let question = scenario::question(set, &filed.entry.ask).unwrap();
        let book = &set.plants[usize::from(question.plant)];
        let rule = book.rules[dice.below(book.rules.len())].rule;
        let case = Case { set, file: filed.file.to_string(), said: filed.entry.ask.clone(), question, rule };
        if !reached(&case.ground().outcome()) {
            out.push(case);
        }
    }
    out
}

/// Every lever that there is for a plant, whether it bears on the rule or not.
fn every_lever(ground: &Ground<'_>) -> Vec<Lever> {
    let names = &ground.set.names;
    let number = |at: usize| u16::try_from(at).unwrap();
    let own = CATALOGUE.iter().filter(|entry| entry.giver == Giver::Caller && entry.arguments.is_empty());
    let mut out: Vec<Lever> = own
        .filter(|entry| !["plant.type", "site.frost_hollow", "region", "water.restricted_days"].contains(&entry.name))
        // The age is told by the day of planting where that is said.
        .filter(|entry| entry.name != "plant.age" || ground.said.plant.planted_on.is_none())
        .map(|entry| Lever::Fact(entry.fact))
        .collect();
    out.extend((0..ground.book.names.traits.len()).map(|at| Lever::Trait(number(at))));
    out.extend((0..names.signs.len()).map(|at| Lever::Sign(number(at))));
    out.extend((0..names.jobs.len()).map(|at| Lever::Wish(number(at))));
    out.extend((0..names.problems.len()).map(|at| Lever::Problem(number(at))));
    out.extend((0..names.jobs.len()).map(|at| Lever::Done(Work::Job(number(at)))));
    out.extend((0..names.materials.len()).map(|at| Lever::Done(Work::Material(number(at)))));
    out.push(Lever::LookedClosely);
    if ground.said.condition.as_ref().is_none_or(|condition| condition.signs.is_none()) {
        out.push(Lever::NoSigns);
    }
    match &ground.said.history {
        None => out.push(Lever::NoHistory),
        Some(works) => out.extend((0..works.len()).map(Lever::NotDone)),
    }
    out
}

fn tried(levers: &[Lever], ground: &Ground<'_>) -> Vec<(Lever, Setting)> {
    levers
        .iter()
        .flat_map(|lever| settings(lever, ground).into_iter().map(|setting| (lever.clone(), setting)))
        .collect()
}

fn helps(ground: &Ground<'_>, edits: &[Edit]) -> bool {
    ground.after(edits).is_some_and(|question| ground.is_there_in_all(&question))
}

/// Whether some set of so many of these settings brings the rule; none: there are more sets than may be tried.
fn brute(ground: &Ground<'_>, of: &[(Lever, Setting)], changes: usize, most: usize) -> Option<bool> {
    let mut left = most;
    let mut edits = Vec::new();
    step(ground, of, 0, changes, &mut edits, &mut left)
}

fn step(
    ground: &Ground<'_>,
    of: &[(Lever, Setting)],
    from: usize,
    changes: usize,
    edits: &mut Vec<(Lever, Vec<Edit>)>,
    left: &mut usize,
) -> Option<bool> {
    if changes == 0 {
        *left = left.checked_sub(1)?;
        let all: Vec<Edit> = edits.iter().flat_map(|(_, edits)| edits.clone()).collect();
        return Some(helps(ground, &all));
    }
    for at in from..of.len() {
        let (lever, setting) = &of[at];
        if edits.iter().any(|(other, _)| other == lever) {
            continue;
        }
        edits.push((lever.clone(), setting.edits.clone()));
        let found = step(ground, of, at + 1, changes - 1, edits, left);
        edits.pop();
        if found != Some(false) {
            return found;
        }
    }
    Some(false)
}

#[test]
fn every_change_that_is_told_brings_the_rule_when_the_whole_question_is_asked_again() {
    let set = set();
    let count = if is_long() { 3000 } else { 120 };
    let (mut told, mut days) = (0, 0);
    for case in cases(&set, count) {
        let id = &set.rules[case.rule as usize].id;
        let answer = why_not(&set, &case.said, &case.question, id, "en", Reach::USUAL).unwrap();
        assert!(!answer.because.is_empty(), "{} has no reason", case.name());
        let said = Said { date: Some(case.question.day.date()), ..case.said.clone() };
        for way in &answer.ways {
            // As the caller would: the patch is applied to the question, and the rest is left to the engine.
            let patched = edit::said(edit::patched(&edit::document(&said), &way.patch)).unwrap();
            let climate = std::sync::Arc::clone(&case.question.climate);
            let then = understand(&patched, &set, climate, None).unwrap_or_else(|t| panic!("{}: {t:?}", case.name()));
            assert!(case.ground().is_there_in_all(&then), "{}: {way:?} does not bring it", case.name());
            assert!(!way.changes.is_empty() && way.changes.len() <= 3);
            told += 1;
            days += usize::from(way.changes.iter().any(|change| change.pointer == "/date"));
        }
    }
    println!("{count} rules that were not there: {told} ways told, all of them right; {days} with another day");
    assert!(told > count && days > 0);
}

#[test]
fn no_fewer_changes_do_as_much() {
    let set = set();
    let (count, most) = if is_long() { (600, 150_000) } else { (40, 6_000) };
    // By how many changes were told (none: 0): cases, cases where all smaller sets were tried, smaller ones found.
    let mut table: BTreeMap<usize, [usize; 3]> = BTreeMap::new();
    let mut missed = Vec::new();
    let mut tries = Vec::new();
    for case in cases(&set, count) {
        let ground = case.ground();
        let found = smallest(&ground, Reach { most_tries: 1_000_000, ..Reach::USUAL });
        tries.push(found.tries);
        let size = found.ways.first().map_or(0, |way| way.settings.len());
        let row = table.entry(size).or_default();
        row[0] += 1;
        let wide = tried(&every_lever(&ground), &ground);
        let near = tried(&levers(&ground), &ground);
        let smaller = 1..if size == 0 { Reach::USUAL.most_changes + 1 } else { size };
        let mut all = true;
        for changes in smaller {
            match brute(&ground, if changes == 1 { &wide } else { &near }, changes, most) {
                Some(true) => {
                    row[2] += 1;
                    missed.push(format!("{}: {changes} instead of {size}", case.name()));
                    break;
                }
                Some(false) => {}
                None => all = false,
            }
        }
        row[1] += usize::from(all);
    }
    tries.sort_unstable();
    println!("changes told | rules | of these every smaller set tried | a smaller one does");
    for (size, [rules, tried, smaller]) in &table {
        println!("{size:12} | {rules:5} | {tried:32} | {smaller}");
    }
    println!("questions decided: median {}, most {}", tries[tries.len() / 2], tries[tries.len() - 1]);
    assert!(missed.len() * 100 <= count, "{missed:#?}");
}

//! What was expected and what was answered, in words.

use crate::compile::set::Set;
use crate::explain::answer::{AmountShown, Answer, Task};
use crate::pack::At;
use crate::pack::rule::Strength;
use crate::pack::scenario::{AdvisedExpected, AmountExpected, DependsExpected, Expected, HeldExpected};

/// Whatever differs; empty when all is as expected.
pub(super) fn differences(expected: &Expected, answer: &Answer<'_>, set: &Set) -> Vec<String> {
    let mut out = Vec::new();
    if let Some(status) = &expected.status
        && status != answer.status
    {
        out.push(format!("status: expected {status}, got {}", answer.status));
    }
    for advised in &expected.advised {
        advised_as(advised, answer, set, &mut out);
    }
    for held in &expected.held {
        held_as(held, answer, set, &mut out);
    }
    for depends in &expected.depends {
        depends_as(depends, answer, set, &mut out);
    }
    for noted in &expected.noted {
        if !answer.notes.iter().any(|note| note.id == noted.value) {
            out.push(format!("{}: expected among the notes, got {}", noted.value, found(&noted.value, answer, set)));
        }
    }
    for absent in &expected.absent {
        let got = found(&absent.value, answer, set);
        if got != "nothing" {
            out.push(format!("{}: expected nothing, got {got}", absent.value));
        }
    }
    order(&expected.order, answer, &mut out);
    let asked: Vec<&str> = answer.questions.iter().map(|q| q.fact.as_str()).collect();
    let is_asked =
        |fact: &str, question: &str| question == fact || (fact == "signs" && question.starts_with("signs has"));
    for fact in &expected.asked {
        if !asked.iter().any(|question| is_asked(fact, question)) {
            out.push(format!("{fact}: expected to be asked, got questions about {asked:?}"));
        }
    }
    if let Some(first) = &expected.asked_first
        && !asked.first().is_some_and(|question| is_asked(first, question))
    {
        out.push(format!("{first}: expected to be asked first, got questions about {asked:?}"));
    }
    out
}

/// The tasks that must stand in this order, whatever stands between them.
fn order(expected: &[At<String>], answer: &Answer<'_>, out: &mut Vec<String>) {
    let place = |rule: &At<String>| answer.tasks.iter().position(|task| task.id == rule.value);
    let places: Vec<Option<usize>> = expected.iter().map(place).collect();
    if places.iter().any(Option::is_none) || !places.is_sorted() {
        let wanted: Vec<&str> = expected.iter().map(|rule| rule.value.as_str()).collect();
        let got: Vec<&str> = answer.tasks.iter().map(|task| task.id).collect();
        out.push(format!("expected in this order: {}, got {}", wanted.join(", "), got.join(", ")));
    }
}

/// What an answer says of a rule.
fn found(rule: &str, answer: &Answer<'_>, set: &Set) -> String {
    if set.names.rules.wide(rule).is_none() {
        return format!("no rule `{rule}` in the set");
    }
    if let Some(task) = answer.tasks.iter().find(|t| t.id == rule) {
        return format!("advised ({})", task.priority.band.as_str());
    }
    if let Some(held) = answer.held.iter().find(|h| h.id == rule) {
        return format!("held ({}: {})", held.kind, &*held.because);
    }
    if let Some(depends) = answer.depends_on.iter().find(|d| d.id == rule) {
        return format!("depends on {}", depends.on.iter().map(|fact| &**fact).collect::<Vec<&str>>().join(", "));
    }
    if answer.notes.iter().any(|n| n.id == rule) {
        return "noted".to_owned();
    }
    "nothing".to_owned()
}

fn advised_as(expected: &AdvisedExpected, answer: &Answer<'_>, set: &Set, out: &mut Vec<String>) {
    let rule = &expected.rule.value;
    let Some(task) = answer.tasks.iter().find(|t| t.id == *rule) else {
        out.push(format!("{rule}: expected advised, got {}", found(rule, answer, set)));
        return;
    };
    let facts: Vec<&str> = task.reasons.iter().flat_map(|r| &r.facts).map(|f| &*f.name).collect();
    for because in &expected.because {
        if !facts.iter().any(|fact| fact == because || *fact == format!("signs has {because}")) {
            out.push(format!("{rule}: expected because of {because}, got {}", facts.join(", ")));
        }
    }
    if let Some(words) = &expected.check_first
        && !task.check_first.iter().any(|check| check.text.contains(words.as_str()))
    {
        let got: Vec<&str> = task.check_first.iter().map(|c| &*c.text).collect();
        out.push(format!("{rule}: expected to check first `{words}`, got {got:?}"));
    }
    if let Some(band) = &expected.band
        && band != task.priority.band.as_str()
    {
        out.push(format!("{rule}: expected {band}, got {}", task.priority.band.as_str()));
    }
    further(expected, task, out);
}

/// What is asked less often: cautions, amounts, order, weight, and what it is done with.
fn further(expected: &AdvisedExpected, task: &Task<'_>, out: &mut Vec<String>) {
    let rule = &expected.rule.value;
    let mut among = |what: &str, wanted: &[String], got: &[&str]| {
        for id in wanted.iter().filter(|id| !got.contains(&id.as_str())) {
            let got = if got.is_empty() { "none".to_owned() } else { got.join(", ") };
            out.push(format!("{rule}: expected {what} {id}, got {got}"));
        }
    };
    let cautions: Vec<&str> = task.cautions.iter().map(|caution| caution.id.as_str()).collect();
    among("the caution", &expected.cautions, &cautions);
    let materials: Vec<&str> = task.materials.iter().map(|material| material.id.as_str()).collect();
    among("the material", &expected.materials, &materials);
    among("it after", &expected.after, &task.after);
    if let Some(score) = expected.score
        && score != task.priority.score
    {
        out.push(format!("{rule}: expected {score} points, got {}", task.priority.score));
    }
    if let Some(strength) = expected.strength
        && strength != task.strength
    {
        out.push(format!("{rule}: expected {}, got {}", strength_word(strength), strength_word(task.strength)));
    }
    if let Some(words) = &expected.professional
        && !task.professional.is_some_and(|text| text.contains(words.as_str()))
    {
        let got = task.professional.map_or("no such word", |text| text.as_str());
        out.push(format!("{rule}: expected it left to a professional with `{words}`, got {got}"));
    }
    for amount in &expected.amounts {
        if !task.amounts.iter().any(|shown| is_amount(amount, shown)) {
            let got: Vec<String> = task.amounts.iter().map(amount_words).collect();
            let got = if got.is_empty() { "none".to_owned() } else { got.join("; ") };
            out.push(format!("{rule}: expected the amount {}, got {got}", expected_words(amount)));
        }
    }
}

fn strength_word(strength: Strength) -> &'static str {
    match strength {
        Strength::Do => "do",
        Strength::Consider => "consider",
        Strength::Avoid => "avoid",
    }
}

/// Numbers are as they are shown, so a hair's difference is another number.
fn near(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9
}

fn is_amount(expected: &AmountExpected, shown: &AmountShown<'_>) -> bool {
    let unit = expected.unit.as_ref().is_none_or(|unit| {
        shown.unit.as_deref() == Some(unit.as_str()) || shown.typical.is_some_and(|typical| typical.unit == *unit)
    });
    unit && expected.value.is_none_or(|value| shown.value.is_some_and(|got| near(value, got)))
        && expected.usual.is_none_or(|(min, max)| {
            shown.typical.is_some_and(|typical| near(typical.min, min) && near(typical.max, max))
        })
        && expected.capped.is_none_or(|capped| capped == shown.capped)
        && expected.needs.iter().all(|fact| shown.needs.contains(fact))
}

fn amount_words(shown: &AmountShown<'_>) -> String {
    let mut words = Vec::new();
    if let Some(value) = shown.value {
        words.push(format!("{value} {}", shown.unit.as_deref().unwrap_or_default()));
    }
    if let Some(typical) = shown.typical {
        words.push(format!("usual {} to {} {}", typical.min, typical.max, typical.unit));
    }
    if shown.capped {
        words.push("capped".to_owned());
    }
    if !shown.needs.is_empty() {
        words.push(format!("needs {}", shown.needs.join(", ")));
    }
    words.join(", ")
}

fn expected_words(expected: &AmountExpected) -> String {
    let unit = expected.unit.as_deref().unwrap_or_default();
    let mut words = Vec::new();
    words.extend(expected.value.map(|value| format!("{value} {unit}").trim().to_owned()));
    words.extend(expected.usual.map(|(min, max)| format!("usual {min} to {max} {unit}").trim().to_owned()));
    words.extend(expected.capped.map(|capped| if capped { "capped" } else { "not capped" }.to_owned()));
    words.extend((!expected.needs.is_empty()).then(|| format!("needs {}", expected.needs.join(", "))));
    words.join(", ")
}

fn held_as(expected: &HeldExpected, answer: &Answer<'_>, set: &Set, out: &mut Vec<String>) {
    let rule = &expected.rule.value;
    let Some(held) = answer.held.iter().find(|h| h.id == *rule) else {
        out.push(format!("{rule}: expected held, got {}", found(rule, answer, set)));
        return;
    };
    if let Some(kind) = &expected.kind
        && !held.blocks.iter().any(|block| block.kind == kind)
    {
        out.push(format!("{rule}: expected held by {kind}, got {}", found(rule, answer, set)));
    }
    if let Some(because) = &expected.because
        && !held.blocks.iter().any(|block| block.because.to_lowercase().contains(&because.to_lowercase()))
    {
        out.push(format!("{rule}: expected held because `{because}`, got {}", found(rule, answer, set)));
    }
    if let Some(until) = expected.until
        && held.look_again != Some(until)
    {
        let got = held.look_again.map_or_else(|| "no day".to_owned(), |day| day.to_string());
        out.push(format!("{rule}: expected to look again on {until}, got {got}"));
    }
}

fn depends_as(expected: &DependsExpected, answer: &Answer<'_>, set: &Set, out: &mut Vec<String>) {
    let rule = &expected.rule.value;
    let Some(depends) = answer.depends_on.iter().find(|d| d.id == *rule) else {
        out.push(format!("{rule}: expected to depend, got {}", found(rule, answer, set)));
        return;
    };
    let on: Vec<&str> = depends.on.iter().map(|fact| &**fact).collect();
    for fact in &expected.on {
        if !on.contains(&fact.as_str()) {
            out.push(format!("{rule}: expected to depend on {fact}, got {}", on.join(", ")));
        }
    }
}

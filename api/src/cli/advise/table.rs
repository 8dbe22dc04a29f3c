//! An answer for people: tasks by how soon they are due, then what must wait, what is worth knowing, what to ask.

use std::fmt::Write as _;

use lammas_engine::compile::set::Set;

use super::called::Called;
use super::headings::Headings;
use crate::cli::differing;
use crate::cli::wrapped::lines;
use crate::v1::advice::amount::{AdviceAmount, AdviceMeasure};
use crate::v1::advice::answer::AdviceAnswer;
use crate::v1::advice::held::AdviceHeld;
use crate::v1::advice::task::{AdviceApart, AdviceCaution, AdviceCheck, AdviceTask, AdviceWindow};
use crate::v1::advice::words::{AdviceStrength, HeldKind};
use crate::v1::question::choices::Language;
use crate::v1::question::date::Date;

/// Where the labels of a task begin, and how wide they are.
const LABEL: usize = 13;

/// The answer as text.
pub(super) fn shown(answer: &AdviceAnswer, language: Language, set: &Set) -> String {
    let words = Headings(language);
    let called = Called { set, language };
    let mut out = String::new();
    head(answer, words, &mut out);
    heard(answer, words, &mut out);
    let mut band = None;
    for (place, task) in answer.tasks.iter().enumerate() {
        if band != Some(task.priority.band) {
            band = Some(task.priority.band);
            let _ = writeln!(out, "\n{}", words.band(task.priority.band));
        }
        one(place + 1, task, answer, words, called, &mut out);
    }
    cut(answer, words, &mut out);
    waiting(answer, words, called, &mut out);
    if !answer.notes.is_empty() {
        let _ = writeln!(out, "\n{}", words.worth_knowing());
        for note in &answer.notes {
            out.push_str(&lines("  * ", &format!("{}: {}", note.title, note.text)));
        }
    }
    if !answer.causes.is_empty() {
        let _ = writeln!(out, "\n{}", words.causes());
        for cause in &answer.causes {
            let _ = writeln!(out, "  * {} ({})", cause.name, likelihood(cause, words));
        }
    }
    questions(answer, words, called, &mut out);
    foot(answer, words, called, &mut out);
    out
}

fn likelihood(cause: &crate::v1::advice::answer::AdviceCause, words: Headings) -> &'static str {
    use crate::v1::advice::words::CauseLikelihood as Likely;
    match cause.likelihood {
        Likely::Likely => words.pick("likely", "probable"),
        Likely::Possible => words.pick("possible", "posible"),
        Likely::Unlikely => words.pick("unlikely", "poco probable"),
    }
}

fn head(answer: &AdviceAnswer, words: Headings, out: &mut String) {
    let text = |name: &str| answer.asked[name].as_str().unwrap_or_default().to_owned();
    let date = text("date").parse().ok().map(|date| words.date(Date(date))).unwrap_or_default();
    let place = answer.climate.id.as_ref().map(|id| format!(", {id}")).unwrap_or_default();
    let status = words.status(answer.status, answer.tasks.len());
    let plant = Some(text("plant")).filter(|plant| !plant.is_empty()).map(|plant| plant + ", ").unwrap_or_default();
    let _ = writeln!(out, "{plant}{date}{place}: {status}");
    if let Some(differing) = &answer.climate.differences {
        out.push_str(&differing::brief(differing, words.0));
        for marker in &differing.markers {
            out.push_str(&lines("  ", &format!("{}: {}", marker.words, marker.text)));
        }
    }
    if let Some(next) = &answer.next_opening {
        out.push_str(&lines(&format!("{}: ", words.next()), &format!("{}, {}", next.title, words.date(next.date))));
    }
    if let Some(why) = &answer.quiet {
        out.push_str(&lines("  ", why));
    }
}

/// What was heard in the caller's own words.
fn heard(answer: &AdviceAnswer, words: Headings, out: &mut String) {
    for entry in answer.understood.iter().flatten() {
        let label = format!("{}: ", words.understood());
        out.push_str(&lines(&label, &format!("“{}” → {} ({})", entry.text, entry.name, entry.sign)));
    }
    for entry in answer.unsure.iter().flatten() {
        let signs: Vec<String> = entry.could_be.iter().map(|sign| format!("{} ({})", sign.name, sign.sign)).collect();
        let label = format!("{}: ", words.unsure());
        out.push_str(&lines(&label, &format!("“{}” → {}?", entry.text, signs.join(" / "))));
    }
    for entry in answer.not_understood.iter().flatten() {
        out.push_str(&lines(&format!("{}: ", words.not_understood()), &format!("“{}”", entry.text)));
    }
}

fn one(place: usize, task: &AdviceTask, answer: &AdviceAnswer, words: Headings, called: Called<'_>, out: &mut String) {
    let consider = match task.strength {
        Some(AdviceStrength::Consider) => words.pick(" (worth considering)", " (vale la pena pensarlo)"),
        _ => "",
    };
    out.push_str(&lines(&format!("{place:>3}. "), &format!("{}{consider}", task.title)));
    let mut row = |label: &str, text: &str| {
        out.push_str(&lines(&format!("     {label:LABEL$}"), text));
    };
    if let Some(emergency) = &task.emergency {
        row(words.emergency(), &emergency.call);
    }
    row(words.window(), &window(&task.window, words));
    each(&mut row, words.check_first(), task.check_first.iter().map(|check| check.text.clone()));
    if let Some(why) = &task.professional {
        row(words.professional(), why);
    }
    let before = task.after.iter().flatten().filter_map(|id| answer.tasks.iter().find(|other| other.id == *id));
    each(&mut row, words.after(), before.map(|other| other.title.clone()));
    each(&mut row, words.how(), task.steps.iter().enumerate().map(|(at, step)| format!("{}) {step}", at + 1)));
    each(&mut row, words.amount(), task.amounts.iter().map(|amount| self::amount(amount, words, called)));
    each(
        &mut row,
        words.material(),
        task.materials.iter().flatten().map(|material| match &material.analysis {
            Some(analysis) => format!("{} ({analysis})", material.name),
            None => material.name.clone(),
        }),
    );
    each(&mut row, words.why(), task.reasons.iter().map(|reason| reason.text.clone()));
    each(&mut row, words.mind(), task.cautions.iter().map(caution));
    if !task.keep_apart.is_empty() {
        row(words.apart(), &apart(&task.keep_apart, words));
    }
    if let Some(repeat) = &task.repeat {
        let every = match (repeat.min_days, repeat.max_days) {
            (Some(min), Some(max)) if min != max => {
                Some(words.pick("every", "cada").to_owned() + &format!(" {min}–{max} {}", words.days()))
            }
            (Some(min), _) => Some(words.pick("every", "cada").to_owned() + &format!(" {min} {}", words.days())),
            _ => None,
        };
        let most = repeat.times.zip(repeat.within_days).map(|(times, days)| {
            format!(
                "{} {times} {} {days} {}",
                words.pick("at most", "como mucho"),
                words.pick("times in", "veces en"),
                words.days()
            )
        });
        row(words.repeat(), &[every, most].into_iter().flatten().collect::<Vec<_>>().join(", "));
    }
    each(
        &mut row,
        words.expect(),
        task.expect.iter().flatten().map(|expect| match (expect.from, expect.until) {
            (Some(from), Some(until)) if from != until => {
                format!("{}: {} – {}", expect.name, words.day(from), words.day(until))
            }
            (Some(from), _) => format!("{}: {} {}", expect.name, words.pick("about", "hacia el"), words.day(from)),
            (None, _) => format!("{}: {}", expect.name, words.pick("not within a year", "no en un año")),
        }),
    );
}

/// Rows of one kind: the label stands once.
fn each(row: &mut impl FnMut(&str, &str), label: &str, texts: impl Iterator<Item = String>) {
    for (at, text) in texts.enumerate() {
        row(if at == 0 { label } else { "" }, &text);
    }
}

fn window(window: &AdviceWindow, words: Headings) -> String {
    if window.all_year {
        return words.all_year().to_owned();
    }
    let side = |date: Option<Date>| date.map(|date| words.day(date)).unwrap_or_default();
    let best = window
        .best
        .filter(|best| Some(*best) != window.opens)
        .map(|best| format!(" ({} {})", words.best(), words.day(best)));
    format!("{} – {}{}", side(window.opens), side(window.closes), best.unwrap_or_default())
}

fn amount(amount: &AdviceAmount, words: Headings, called: Called<'_>) -> String {
    let us =
        |us: &Option<AdviceMeasure>| us.as_ref().map(|us| format!(" ({} {})", us.value, us.unit)).unwrap_or_default();
    let mut text = match (&amount.value, &amount.typical) {
        (Some(value), _) => {
            let unit = called.unit(amount.unit.as_deref().unwrap_or_default(), *value);
            format!("{}: {value} {unit}{}", amount.what, us(&amount.us))
        }
        (None, Some(usual)) => {
            let range = |min: f64, max: f64, unit: &str| {
                let unit = called.unit(unit, max);
                if (min - max).abs() < f64::EPSILON { format!("{min} {unit}") } else { format!("{min}–{max} {unit}") }
            };
            let us = usual.us.as_ref().map(|us| format!(" ({})", range(us.min, us.max, &us.unit))).unwrap_or_default();
            format!("{}: {} {}{us}", amount.what, words.usual(), range(usual.min, usual.max, &usual.unit))
        }
        (None, None) => amount.what.clone(),
    };
    if amount.capped {
        let _ = write!(text, ", {}", words.capped());
    }
    if !amount.needs.is_empty() {
        let _ = write!(text, " [{}: {}]", words.needs(), called.all(&amount.needs));
    }
    text.trim_end().to_owned()
}

fn caution(caution: &AdviceCaution) -> String {
    caution.text.clone()
}

fn apart(list: &[AdviceApart], words: Headings) -> String {
    let each =
        |apart: &AdviceApart| format!("{} {} {} {}", apart.days, words.days(), words.pick("from", "de"), apart.name);
    list.iter().map(each).collect::<Vec<_>>().join("; ")
}

fn cut(answer: &AdviceAnswer, words: Headings, out: &mut String) {
    let Some(cut) = &answer.safety_of_cut else { return };
    let _ = writeln!(out, "\n{}", words.cut());
    for task in cut {
        out.push_str(&lines("  * ", &task.title));
        let checks = task.check_first.iter().map(|AdviceCheck { text, .. }| text.clone());
        for text in checks.chain(task.cautions.iter().map(caution)).chain(task.professional.clone()) {
            out.push_str(&lines("      ", &text));
        }
        if !task.keep_apart.is_empty() {
            out.push_str(&lines("      ", &format!("{}: {}", words.apart(), apart(&task.keep_apart, words))));
        }
    }
}

fn waiting(answer: &AdviceAnswer, words: Headings, called: Called<'_>, out: &mut String) {
    if answer.held.is_empty() {
        return;
    }
    let _ = writeln!(out, "\n{}", words.wait());
    let (avoid, wait): (Vec<&AdviceHeld>, Vec<&AdviceHeld>) =
        answer.held.iter().partition(|held| held.kind == HeldKind::Avoid);
    for held in avoid.into_iter().chain(wait) {
        out.push_str(&lines("  * ", &format!("{}: {}", held.title, held.because)));
        match held.look_again {
            Some(date) => {
                let _ = writeln!(out, "      {}: {}", words.look_again(), words.date(date));
            }
            None if !held.changes_with.is_empty() => {
                out.push_str(&lines(
                    "      ",
                    &format!("{}: {}", words.changes_with(), called.all(&held.changes_with)),
                ));
            }
            None => {}
        }
    }
}

fn questions(answer: &AdviceAnswer, words: Headings, called: Called<'_>, out: &mut String) {
    if answer.questions.is_empty() {
        return;
    }
    let _ = writeln!(out, "\n{}", words.ask());
    for question in &answer.questions {
        out.push_str(&lines("  ? ", &question.text));
        out.push_str(&lines("      ", &question.look));
        let answers: Vec<&str> = question.answers.iter().map(|choice| choice.text.as_str()).collect();
        out.push_str(&lines("      ", &format!("{} → {}", answers.join(" / "), question.pointer)));
    }
    if !answer.depends_on.is_empty() {
        let _ = writeln!(out, "\n{}", words.depends());
        for depends in &answer.depends_on {
            out.push_str(&lines("  * ", &format!("{} ({})", depends.title, called.all(&depends.on))));
        }
        if answer.depends_more > 0 {
            let _ = writeln!(out, "  * … {} {}", answer.depends_more, words.more_of_it());
        }
    }
}

fn foot(answer: &AdviceAnswer, words: Headings, called: Called<'_>, out: &mut String) {
    out.push('\n');
    if !answer.assumptions.is_empty() {
        let plant = answer.asked["plant"].as_str().unwrap_or_default();
        let each: Vec<String> = answer
            .assumptions
            .iter()
            .map(|assumed| {
                let number = assumed.value.as_f64().unwrap_or(0.0);
                let value = match &assumed.value {
                    serde_json::Value::String(text) => called.choice(&assumed.name, plant, text),
                    serde_json::Value::Bool(yes) => if *yes { words.yes() } else { "no" }.to_owned(),
                    serde_json::Value::Number(_) => number.to_string(),
                    other => other.to_string(),
                };
                format!("{} {value} {}", assumed.words, called.unit(&assumed.unit, number)).trim_end().to_owned()
            })
            .collect();
        out.push_str(&lines(&format!("{}: ", words.assumed()), &each.join("; ")));
    }
    if let Some(weather) = answer.climate.weather.as_ref().filter(|weather| weather.used) {
        let spans = [(words.observed(), &weather.observed), (words.forecast(), &weather.forecast)];
        let known =
            spans.into_iter().filter_map(|(word, span)| Some(format!("{word} {}", words.day(span.as_ref()?.to))));
        let issued = weather.issued_on.map(|issued| format!("{} {}", words.issued(), words.date(issued)));
        let text = known.chain(issued).collect::<Vec<_>>().join(", ");
        out.push_str(&lines(&format!("{}: ", words.weather()), &text));
    }
    if let Some(ask) = answer.climate.error.as_ref().and_then(|error| error.ask.as_ref()) {
        out.push_str(&lines("? ", &format!("{} {} ({}) `{}`", ask.text, ask.look, ask.narrows, ask.pointer)));
    }
    for source in answer.climate.sources.iter().flatten() {
        out.push_str(&lines("", &source.title));
    }
    let then =
        answer.next_change.as_ref().map(|next| format!("; {}: {}", words.then(), next.because)).unwrap_or_default();
    out.push_str(&lines("", &format!("{} {}{then}", words.holds_until(), words.date(answer.valid_until))));
    for set in &answer.rule_sets {
        let _ = writeln!(out, "{} {} ({})", set.name, set.version, set.sha256.get(..12).unwrap_or_default());
    }
    out.push_str(&lines("", &answer.notice));
}

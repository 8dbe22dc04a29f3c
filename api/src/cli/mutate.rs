//! `lammas scenarios --mutate`: which changes of a rule no scenario would notice.

use std::io::Write;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use anyhow::Result;
use indicatif::{ProgressBar, ProgressStyle};
use lammas_engine::compile::set::Set;
use lammas_engine::nearest;
use lammas_engine::scenario::mutate::bench::percent;
use lammas_engine::scenario::mutate::{Bench, Score, Subject};
use serde_json::json;

use super::exit::{BadInput, Exit};
use super::scenarios::differing;
use super::wrapped;

/// Less than so many in a hundred is too little where work can hurt.
const ENOUGH_PCT: f64 = 80.0;

/// Tries the mutants of every rule and material, of the hazardous ones, or of one.
pub(super) fn run(set: &Set, id: Option<&str>, hazardous: bool, json: bool, out: &mut dyn Write) -> Result<Exit> {
    let bench = match Bench::new(set) {
        Ok(bench) => bench,
        Err(failed) => {
            for outcome in &failed {
                writeln!(out, "{}", differing(outcome))?;
            }
            writeln!(out, "{} scenarios differ already: put them right first", failed.len())?;
            return Ok(Exit::Found);
        }
    };
    let subjects = match id {
        None if hazardous => bench.hazardous(),
        None => bench.subjects(),
        Some(id) => vec![bench.subject(id).ok_or_else(|| unknown(id, set))?],
    };
    let mut scores = scored(&bench, &subjects);
    scores.retain(|score| score.mutants > 0);
    let poor = |score: &Score| {
        score.hazardous && score.entry == "rule" && score.percent().is_some_and(|percent| percent < ENOUGH_PCT)
    };
    let found = scores.iter().any(poor);
    if json {
        let totals: Vec<_> = totals(&scores).iter().map(Total::json).collect();
        writeln!(out, "{:#}", json!({"totals": totals, "entries": scores}))?;
    } else {
        // The dangerous ones first, and of those the least watched.
        scores.sort_by(|a, b| {
            let key = |score: &Score| (!score.hazardous, score.percent().unwrap_or(100.0));
            key(a).partial_cmp(&key(b)).unwrap_or(std::cmp::Ordering::Equal)
        });
        scores.iter().try_for_each(|score| out.write_all(shown(score).as_bytes()))?;
        writeln!(
            out,
            "\n{:<34} {:>7} {:>8} {:>8} {:>7} {:>7}",
            "", "entries", "changes", "noticed", "score", "< 80 %"
        )?;
        for total in totals(&scores) {
            writeln!(out, "{}", total.row())?;
        }
    }
    Ok(if found { Exit::Found } else { Exit::Well })
}

fn unknown(id: &str, set: &Set) -> BadInput {
    let rules = set.pack.rules.iter().map(|rule| rule.entry.id.value.as_str());
    let known = rules.chain(set.pack.materials.iter().map(|material| material.entry.id.value.as_str()));
    match nearest::nearest(id, known) {
        Some(near) => BadInput(format!("there is no rule or material `{id}`: did you mean `{near}`?")),
        None => BadInput(format!("there is no rule or material `{id}`")),
    }
}

/// The scores in the order of the subjects, worked out on all cores.
fn scored(bench: &Bench<'_>, subjects: &[Subject]) -> Vec<Score> {
    let bar = ProgressBar::new(subjects.len() as u64);
    if let Ok(style) = ProgressStyle::with_template("{bar:40} {pos} of {len} rules and materials, {eta} left") {
        bar.set_style(style);
    }
    let next = AtomicUsize::new(0);
    let done = Mutex::new(Vec::new());
    thread::scope(|scope| {
        for _ in 0..thread::available_parallelism().map_or(1, usize::from).min(subjects.len()) {
            scope.spawn(|| {
                while let Some(subject) = subjects.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let score = bench.score(*subject);
                    bar.inc(1);
                    let mut done = done.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
                    done.extend(score.map(|score| (*subject, score)));
                }
            });
        }
    });
    bar.finish_and_clear();
    let mut done = done.into_inner().unwrap_or_else(std::sync::PoisonError::into_inner);
    done.sort_by_key(|(subject, _)| match subject {
        Subject::Rule(at) => (0, *at),
        Subject::Material(at) => (1, *at),
    });
    done.into_iter().map(|(_, score)| score).collect()
}

fn shown(score: &Score) -> String {
    let percent = score.percent().unwrap_or(100.0);
    let danger = if score.hazardous { "  HAZARDOUS" } else { "" };
    let mut out = format!(
        "{percent:>3.0} %  {:>3} of {:<3}  {}  {}{danger}\n",
        score.noticed, score.mutants, score.id, score.place
    );
    for survivor in &score.survivors {
        out.push_str(&wrapped::lines(&format!("       {}  ", survivor.place), &survivor.change));
    }
    out
}

/// A row of the table.
struct Total {
    what: &'static str,
    entries: usize,
    mutants: usize,
    noticed: usize,
    poor: usize,
}

impl Total {
    fn row(&self) -> String {
        let score = percent(self.noticed, self.mutants).map_or_else(String::new, |percent| format!("{percent:.0} %"));
        format!(
            "{:<34} {:>7} {:>8} {:>8} {:>7} {:>7}",
            self.what, self.entries, self.mutants, self.noticed, score, self.poor
        )
    }

    fn json(&self) -> serde_json::Value {
        json!({"of": self.what, "entries": self.entries, "changes": self.mutants, "noticed": self.noticed, "below_80_pct": self.poor})
    }
}

fn totals(scores: &[Score]) -> Vec<Total> {
    let of = |what, counts: &dyn Fn(&&Score) -> bool| {
        let list: Vec<&Score> = scores.iter().filter(counts).collect();
        Total {
            what,
            entries: list.len(),
            mutants: list.iter().map(|score| score.mutants).sum(),
            noticed: list.iter().map(|score| score.noticed).sum(),
            poor: list.iter().filter(|score| score.percent().is_some_and(|percent| percent < ENOUGH_PCT)).count(),
        }
    };
    vec![
        of("rules", &|score| score.entry == "rule"),
        of("of these hazardous, or guards so", &|score| score.entry == "rule" && score.hazardous),
        of("materials", &|score| score.entry == "material"),
        of("of these hazardous", &|score| score.entry == "material" && score.hazardous),
    ]
}

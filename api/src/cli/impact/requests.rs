//! Real requests, a line each, asked of both sets as the service would.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use lammas_engine::compile::set::Set;
use lammas_engine::impact::requests::Requests;
use lammas_engine::question::Question;

use crate::cli::exit::BadInput;
use crate::cli::request::in_words;
use crate::cli::{side_by_side, source};
use crate::problem::Problem;
use crate::problem::extractors::body::parsed;
use crate::sets::rules::Rules;
use crate::settings::limits::Limits;
use crate::settings::rules::RuleSettings;
use crate::v1::advice::reply;
use crate::v1::advice::request::AdviceRequest;
use crate::v1::question::today;

/// So many lines are a portion of work.
const PORTION: usize = 200;

/// What came of a file of requests. Every line that is not blank is counted: answered by a set, or bad.
pub(super) struct Asked {
    /// The file.
    pub(super) file: String,
    /// Lines that are not blank.
    pub(super) lines: u64,
    /// The requests that could be asked.
    pub(super) requests: Requests,
    /// The lines that could not be asked of either set, in order.
    pub(super) bad: Vec<Bad>,
}

/// A line that can't be asked.
pub(super) struct Bad {
    /// From 1.
    pub(super) line: u64,
    /// Why not: of the set as it would be.
    pub(super) detail: String,
}

/// Asks every line of a file of both sets.
///
/// # Errors
/// [`BadInput`] when the file can't be read or holds no line.
pub(super) fn ask(file: &str, before: &Set, after: &Set) -> Result<Asked, BadInput> {
    let text = source::text(file)?;
    let lines: Vec<(u64, &str)> = (1..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty()).collect();
    if lines.is_empty() {
        return Err(BadInput(format!("`{file}` holds no request, expected one a line")));
    }
    let serve = |set: &Set| Rules::of(Arc::new(set.clone()), &RuleSettings::default());
    let (before, after) = (serve(before), serve(after));
    let now = today::now();
    let portions: Vec<&[(u64, &str)]> = lines.chunks(PORTION).collect();
    let bar = side_by_side::bar(lines.len() as u64, "requests");
    let parts = side_by_side::run(portions.len(), |at| {
        let (mut requests, mut bad) = (Requests::default(), Vec::new());
        for (number, line) in portions[at].iter().copied() {
            one(number, line, (&before, &after), now, (&mut requests, &mut bad));
        }
        bar.inc(portions[at].len() as u64);
        (requests, bad)
    });
    bar.finish_and_clear();
    let mut asked =
        Asked { file: file.to_owned(), lines: lines.len() as u64, requests: Requests::default(), bad: Vec::new() };
    for (requests, bad) in parts {
        asked.requests.add(requests);
        asked.bad.extend(bad);
    }
    Ok(asked)
}

fn one(
    number: u64,
    line: &str,
    (before, after): (&Rules, &Rules),
    now: DateTime<Utc>,
    (requests, bad): (&mut Requests, &mut Vec<Bad>),
) {
    let request: AdviceRequest = match parsed(line.as_bytes(), Limits::default().nesting) {
        Ok(request) => request,
        Err(problem) => {
            bad.push(Bad { line: number, detail: in_words(&problem) });
            return;
        }
    };
    let (was, is) = (before.set(), after.set());
    let ask = |rules: &Rules, set: &Set| -> Result<Question, Problem> {
        let faults = request.faults();
        reply::question(request.clone(), faults, true, rules, set, now).map(|(question, _)| question)
    };
    let (by_before, by_after) = (ask(before, &was), ask(after, &is));
    let question = by_after.as_ref().map(|question| (question, &*is)).or(by_before.as_ref().map(|q| (q, &*was)));
    let plant = question.map_or("", |(question, set)| set.names.plants.name(question.plant)).to_owned();
    let is_asked = requests.look(number, &plant, (&was, by_before.as_ref().ok()), (&is, by_after.as_ref().ok()));
    if let (false, Err(problem)) = (is_asked, &by_after) {
        bad.push(Bad { line: number, detail: in_words(problem) });
    }
}

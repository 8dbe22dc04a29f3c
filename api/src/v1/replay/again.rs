//! From what was kept of an answer to the answer, given again.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use lammas_engine::pack::layer::Layer;
use lammas_engine::version::digest::DECISION_VERSION;
use serde_json::Value;
use serde_json::value::RawValue;

use super::answer::{ReplayFrom, ReplaySame, ReplayVersions, Written};
use super::decided::{Decided, ReplayDiffers};
use super::recalled::{Recalled, RecalledSet};
use super::reference::Reference;
use super::request::ReplayRequest;
use crate::library::Release;
use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::{INVALID_REQUEST, UNKNOWN_RULE_SET};
use crate::problem::wire::FieldError;
use crate::sets::pick::{Picked, Wanted, pick};
use crate::sets::rules::Rules;
use crate::v1::advice::answer::{AdviceRuleSet, AdviceWithdrawn};
use crate::v1::advice::reply::{self, Reply};
use crate::v1::advice::request::AdviceRequest;
use crate::v1::question::choices::Language;
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::date::Date;
use crate::v1::question::plant::PlantGiven;
use crate::weather::board::Board;
use crate::weather::sent;

/// How many releases are tried for the digest of an answer.
const MOST_TRIED: usize = 50;

/// An answer given again, before it is told how it stands to the one that was given.
struct Again {
    from: ReplayFrom,
    reply: Reply,
    releases: Vec<Arc<Release>>,
    /// The decision version then, if it is known.
    version: Option<u32>,
    /// Whether it is known to be the same, or another.
    same: Option<ReplaySame>,
    /// What was decided then, if it is known.
    decided: Option<Decided>,
}

/// The answer that was given, given again: as JSON, and its language.
///
/// # Errors
/// The problem that names every wrong place.
pub fn replay(
    asked: &ReplayRequest,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<(String, Language), Problem> {
    let of_answer = |member: &str| asked.answer.as_ref().and_then(|answer| answer.get(member)).and_then(Value::as_str);
    let (at_recall, at_reference) = if asked.recall.is_some() || asked.reference.is_some() {
        ("/recall", "/reference")
    } else {
        ("/answer/recall", "/answer/reference")
    };
    let again = if let Some(recall) = asked.recall.as_deref().or_else(|| of_answer("recall")) {
        from_recall(recall, at_recall, rules, now)?
    } else if let Some(request) = &asked.request {
        let digest = asked.digest.as_deref().or_else(|| of_answer("digest"));
        let digest =
            digest.ok_or_else(|| wrong("/digest", "expected the `digest` of the answer beside its request"))?;
        from_request(request, digest, asked.answer.as_ref(), accepted, rules, now)?
    } else if let Some(reference) = asked.reference.as_deref().or_else(|| of_answer("reference")) {
        from_reference(reference, at_reference, accepted, rules, now)?
    } else if asked.answer.is_some() {
        let detail = "this answer has neither `recall` nor `reference`: give the `request` it was given to as well";
        return Err(wrong("/request", detail));
    } else {
        return Err(wrong("/recall", "expected `recall`, `answer`, `request` with its `digest`, or `reference`"));
    };
    told(&again, asked.answer.as_ref())
}

fn wrong(at: &str, detail: impl Into<String>) -> Problem {
    let mut faults = Faults::default();
    faults.add(at, detail);
    faults.or_problem(INVALID_REQUEST).err().unwrap_or_else(|| Problem::broken("a fault is no problem"))
}

fn from_recall(text: &str, at: &str, rules: &Rules, now: DateTime<Utc>) -> Result<Again, Problem> {
    let recalled = Recalled::read(text).map_err(|error| wrong(at, error.to_string()))?;
    let broken = || wrong(at, "this recall text holds a question that can't be read");
    let request: AdviceRequest = serde_json::from_value(recalled.request).map_err(|_| broken())?;
    let (releases, picked) = by_hash(&recalled.rule_sets, at, rules)?;
    let kept = recalled.weather.map(|weather| sent::read(weather.text.as_bytes(), &picked.set)).transpose();
    let board = Board::of(kept.map_err(|_| broken())?.map(Arc::new));
    let faults = request.faults();
    let then = recalled.at.unwrap_or(now);
    let reply = reply::from(request, None, &picked, faults, &rules.with_weather(board), then)
        .map_err(|problem| moved(&problem, |_| at.to_owned()))?;
    let is_same = reply.plain_sha256 == recalled.text_sha256;
    Ok(Again {
        from: ReplayFrom::Recall,
        reply,
        releases,
        version: Some(recalled.decision_version),
        same: Some(if is_same { ReplaySame::Same } else { ReplaySame::Differs }),
        decided: Some(recalled.decided),
    })
}

/// The releases of these hashes, laid over each other.
fn by_hash(sets: &[RecalledSet], at: &str, rules: &Rules) -> Result<(Vec<Arc<Release>>, Picked), Problem> {
    let served = rules.served();
    let mut faults = Faults::default();
    let mut releases = Vec::new();
    for set in sets {
        match served.library.of_hash(&set.sha256) {
            Some(release) => releases.push(Arc::clone(release)),
            None => {
                let short = set.sha256.get(..12).unwrap_or_default();
                let detail = format!("the release `{}@{}` ({short}) is not kept here", set.name, set.version);
                faults.add_as(UNKNOWN_RULE_SET, at, detail);
            }
        }
    }
    faults.or_problem(INVALID_REQUEST)?;
    if releases.is_empty() {
        return Err(wrong(at, "this names no rule set"));
    }
    let set = rules.stacks().of(&releases, &served).map_err(|error| {
        let mut faults = Faults::default();
        faults.add_as(UNKNOWN_RULE_SET, at, error.to_string());
        faults.or_problem(INVALID_REQUEST).err().unwrap_or_else(|| Problem::broken("a fault is no problem"))
    })?;
    Ok((releases, Picked { set, withdrawn: Vec::new() }))
}

/// Of a request its digest says which release answered it: that of the answer, where it is there, else each that was the newest
/// at some time is tried, the last one first.
fn from_request(
    request: &AdviceRequest,
    digest: &str,
    answer: Option<&Value>,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<Again, Problem> {
    let mut request = request.clone();
    if request.date.is_none() {
        let date = answer.and_then(|answer| answer.pointer("/asked/date")).and_then(Value::as_str);
        let date = date.and_then(|date| date.parse().ok()).map(Date);
        request.date = Some(date.ok_or_else(|| wrong("/request/date", "expected the date for which it was answered"))?);
    }
    let named: Option<Vec<RecalledSet>> =
        answer.and_then(|answer| answer.get("rule_sets")).and_then(|sets| serde_json::from_value(sets.clone()).ok());
    let served = rules.served();
    let mut tries: Vec<(Vec<Arc<Release>>, Picked)> = Vec::new();
    if let Some(sets) = named {
        tries.push(by_hash(&sets, "/answer/rule_sets", rules)?);
    } else {
        let mut faults = request.faults();
        let wanted = Wanted { sets: &request.rule_sets, as_of: request.as_of, climate: Some(&request.climate) };
        let picked = pick(wanted, rules, now, &mut faults);
        faults.or_problem(INVALID_REQUEST).map_err(|problem| moved(&problem, in_request))?;
        let releases =
            |set: &[Layer]| set.iter().filter_map(|layer| served.library.of_hash(&layer.sha256).cloned()).collect();
        tries.push((releases(&picked.set.layers), picked));
        let sets: Vec<String> =
            if request.rule_sets.is_empty() { served.standard.clone() } else { request.rule_sets.clone() };
        let is_open = request.as_of.is_none() && !sets.iter().any(|set| set.contains('@'));
        let all = sets.iter().filter(|_| is_open).flat_map(|set| served.library.releases(set));
        let mut moments: Vec<DateTime<Utc>> = all.filter_map(|release| release.published_at).collect();
        moments.sort_unstable();
        moments.dedup();
        for moment in moments.into_iter().rev().take(MOST_TRIED) {
            let then: Result<Vec<Arc<Release>>, _> =
                sets.iter().map(|set| served.library.as_of(set, moment).cloned()).collect();
            let Ok(then) = then else { continue };
            if let Ok(set) = rules.stacks().fitting(then, &served.library, &served) {
                tries.push((releases(&set.layers), Picked { set, withdrawn: Vec::new() }));
            }
        }
    }
    // The sets have been picked; what was pinned is no part of the question.
    request.rule_sets.clear();
    request.as_of = None;
    let mut newest = None;
    for (releases, picked) in tries {
        let faults = request.faults();
        let reply = match reply::from(request.clone(), accepted, &picked, faults, rules, now) {
            Ok(reply) => reply,
            // An earlier release need not know what the question names.
            Err(_) if newest.is_some() => continue,
            Err(problem) => return Err(moved(&problem, in_request)),
        };
        let is_it = reply.text.contains(&format!("\"digest\":\"{digest}\""));
        let same = Some(if is_it { ReplaySame::SameDecision } else { ReplaySame::Differs });
        let again = Again { from: ReplayFrom::Request, reply, releases, version: None, same, decided: None };
        if is_it {
            return Ok(again);
        }
        newest.get_or_insert(again);
    }
    newest.ok_or_else(|| Problem::broken("a request was answered from no release"))
}

fn from_reference(
    text: &str,
    at: &str,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<Again, Problem> {
    let expected = "expected a reference such as `hot-dry-valley/rose/2026-09-15/core@2026.11.1`";
    let reference = Reference::read(text).ok_or_else(|| wrong(at, expected))?;
    let request = AdviceRequest {
        climate: ClimateGiven { id: Some(reference.climate), ..ClimateGiven::default() },
        plant: PlantGiven { kind: reference.plant, ..PlantGiven::default() },
        date: Some(Date(reference.date)),
        ..AdviceRequest::default()
    };
    let mut faults = request.faults();
    let wanted = Wanted { sets: &reference.sets, as_of: None, climate: Some(&request.climate) };
    let picked = Picked { withdrawn: Vec::new(), ..pick(wanted, rules, now, &mut faults) };
    let served = rules.served();
    let of_layer = |layer: &Layer| served.library.of_hash(&layer.sha256).cloned();
    let releases = picked.set.layers.iter().filter_map(of_layer).collect();
    // No weather was kept for it then, or it would have no reference.
    let rules = rules.with_weather(Board::default());
    let reply = reply::from(request, accepted, &picked, faults, &rules, now)
        .map_err(|problem| moved(&problem, |_| at.to_owned()))?;
    Ok(Again { from: ReplayFrom::Reference, reply, releases, version: None, same: None, decided: None })
}

/// A place of the question, as a place of the request in which it stands.
fn in_request(pointer: &str) -> String {
    format!("/request{pointer}")
}

/// The same problem with its places elsewhere.
fn moved(problem: &Problem, to: impl Fn(&str) -> String) -> Problem {
    if problem.errors().is_empty() {
        return problem.clone();
    }
    let moved = |error: &FieldError| FieldError { pointer: to(&error.pointer), detail: error.detail.clone() };
    Problem::invalid(problem.kind(), problem.errors().iter().map(moved).collect())
}

/// The answer with how it stands to the one that was given.
fn told(again: &Again, answer: Option<&Value>) -> Result<(String, Language), Problem> {
    let now: Value = serde_json::from_str(&again.reply.text).map_err(Problem::broken)?;
    let mut same = again.same.unwrap_or(ReplaySame::NotCompared);
    let mut decided = again.decided.clone();
    if let Some(then) = answer {
        decided = Some(Decided::of(then));
        same = match (bare(then) == bare(&now), then.get("digest") == now.get("digest")) {
            (true, _) => ReplaySame::Same,
            (false, true) if again.from != ReplayFrom::Recall => ReplaySame::SameDecision,
            _ => ReplaySame::Differs,
        };
    }
    let is_other = same == ReplaySame::Differs;
    let differs: Vec<ReplayDiffers> =
        decided.filter(|_| is_other).map(|then| then.differing(&Decided::of(&now), &now)).unwrap_or_default();
    let rule_set = |layer: &Layer| AdviceRuleSet {
        name: layer.name.clone(),
        version: layer.version.clone(),
        sha256: layer.sha256.clone(),
    };
    let withdrawn = again.releases.iter().filter_map(|release| reply::withdrawn(release)).map(|taken| {
        AdviceWithdrawn { name: taken.name, version: taken.version, since: taken.since, because: taken.because }
    });
    let raw = RawValue::from_string(again.reply.text.clone()).map_err(Problem::broken)?;
    let written = Written {
        from: again.from,
        same,
        rule_sets: again.reply.set.layers.iter().map(rule_set).collect(),
        withdrawn: withdrawn.collect(),
        decision_version: ReplayVersions { then: again.version, now: DECISION_VERSION },
        differs,
        then: answer.filter(|_| is_other),
        answer: &raw,
    };
    Ok((serde_json::to_string(&written).map_err(Problem::broken)?, again.reply.language))
}

/// An answer without what says nothing of the decision: its recall text and what was taken back since.
fn bare(answer: &Value) -> Value {
    let mut answer = answer.clone();
    if let Some(members) = answer.as_object_mut() {
        members.shift_remove("recall");
        members.shift_remove("withdrawn");
    }
    answer
}

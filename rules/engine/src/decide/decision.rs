//! The decision: every rule of the plant that comes out as more than *no*.

use super::blocks;
use super::causes::{self, Cause};
use super::emergency;
use super::moment::Moment;
use super::opposed::{opposed, safety};
use super::outcome::{Block, Could, Hangs, Outcome, Verdict};
use super::short;
use super::truth::{Curve, judge, unknown_atoms, unknown_in};
use super::window::{self, State};
use crate::compile::rule::{JobKind, PlantRule, RuleInfo};
use crate::compile::term::Condition;
use crate::fact::value::Truth;
use crate::pack::rule::Kind;
use crate::rank;

/// What was decided.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decision {
    /// In the order of the rules.
    pub verdicts: Vec<Verdict>,
    /// Causes of the signs.
    pub causes: Vec<Cause>,
    /// The emergency before which all else waits, by its rule's number in the set.
    pub emergency: Option<u32>,
}

/// Decides every rule of the plant at the moment.
#[must_use]
pub fn decide(moment: &Moment<'_>) -> Decision {
    if moment.question.plant_is_unknown {
        return emergencies_only(moment);
    }
    let causes = causes::rank(moment);
    let sifted = short::sift(moment);
    let mut verdicts = Vec::with_capacity(sifted.count());
    let mut all_alone = true;
    for at in sifted.possible() {
        let Some(short) = moment.book.shorts.get(at) else { continue };
        let condition = sifted.condition(at);
        if condition == Some(Truth::True) && short.stands_alone {
            verdicts.push(short::proven(at, short, sifted.marks(at)));
            continue;
        }
        let Some(rule) = moment.book.rules.get(at) else { continue };
        let Some(info) = moment.set.rules.get(rule.rule as usize) else { continue };
        let number = u32::try_from(at).unwrap_or(u32::MAX);
        let verdict = alone(number, rule, info, condition, &causes, moment);
        all_alone &= verdict.is_none();
        verdicts.extend(verdict);
    }
    if !all_alone {
        together(&mut verdicts, moment);
        leave_alone(&mut verdicts, moment);
    }
    let emergency = emergency::foremost(&mut verdicts, moment);
    Decision { verdicts, causes, emergency }
}

/// The decision where only emergencies are judged: of a plant that nobody knows, or without a climate.
#[must_use]
pub fn emergencies_only(moment: &Moment<'_>) -> Decision {
    let mut verdicts = emergency::all(moment);
    let emergency = emergency::foremost(&mut verdicts, moment);
    Decision { verdicts, causes: Vec::new(), emergency }
}

/// What is to be left alone comes out as held.
fn leave_alone(verdicts: &mut [Verdict], moment: &Moment<'_>) {
    for verdict in verdicts.iter_mut().filter(|verdict| verdict.outcome == Outcome::Applies) {
        if let Some(held) = avoided(verdict.rule, moment) {
            verdict.outcome = held;
        }
    }
}

/// What becomes of one rule, by its number among the plant's, with the rules that may clash with it and those that may
/// clash with these; none: it is not there.
#[must_use]
pub fn one(at: u32, moment: &Moment<'_>) -> Option<Outcome> {
    let own = verdict(at, moment)?;
    let rivals = moment.book.rules.get(at as usize).map(|rule| rule.rivals.as_slice()).unwrap_or_default();
    let rivals = rivals.iter().filter(|rival| **rival != at).filter_map(|rival| verdict(*rival, moment));
    let rule = own.rule;
    let outcome = settled(own, rivals, moment);
    match emergency::first(moment) {
        Some(first) if first != rule => emergency::before(first, rule, outcome, moment),
        _ => Some(outcome),
    }
}

/// What becomes of a rule beside these others, each judged by itself before.
pub fn settled(own: Verdict, others: impl Iterator<Item = Verdict>, moment: &Moment<'_>) -> Outcome {
    if !matches!(own.outcome, Outcome::Applies | Outcome::Depends { .. }) {
        return own.outcome;
    }
    let rule = own.rule;
    let mut verdicts: Vec<Verdict> = std::iter::once(own).chain(others).collect();
    if verdicts.len() > 1 {
        together(&mut verdicts, moment);
    }
    let outcome = verdicts.into_iter().next().map_or(Outcome::No, |own| own.outcome);
    if outcome == Outcome::Applies { avoided(rule, moment).unwrap_or(outcome) } else { outcome }
}

/// What becomes of one rule before others are looked at; none: it is not there.
#[must_use]
pub fn by_itself(at: u32, moment: &Moment<'_>) -> Option<Outcome> {
    let own = verdict(at, moment)?;
    let has_rivals = moment.book.rules.get(at as usize).is_some_and(|rule| !rule.rivals.is_empty());
    let avoided = if has_rivals || own.outcome != Outcome::Applies { None } else { avoided(own.rule, moment) };
    Some(avoided.unwrap_or(own.outcome))
}

/// What is to be left alone is held.
fn avoided(rule: u32, moment: &Moment<'_>) -> Option<Outcome> {
    let info = moment.set.rules.get(rule as usize)?;
    (info.kind == Kind::Avoid).then(|| Outcome::Held(vec![Block::Avoid]))
}

/// The verdict on one rule by itself; none: it is not there.
#[must_use]
pub fn verdict(at: u32, moment: &Moment<'_>) -> Option<Verdict> {
    let rule = moment.book.rules.get(at as usize)?;
    let info = moment.set.rules.get(rule.rule as usize)?;
    let causes = if rule.problem.is_some() { causes::rank(moment) } else { Vec::new() };
    alone(at, rule, info, None, &causes, moment)
}

/// What becomes of a rule before others are looked at; `condition` is what its conditions say, if that is known already.
/// Where it would come at all, a rule that is withheld is held.
fn alone(
    at: u32,
    rule: &PlantRule,
    info: &RuleInfo,
    condition: Option<Truth>,
    causes: &[Cause],
    moment: &Moment<'_>,
) -> Option<Verdict> {
    let mut verdict = as_written(at, rule, info, condition, causes, moment)?;
    if info.withheld {
        verdict.outcome = Outcome::Held(vec![Block::Withheld]);
        verdict.check_first.clear();
        verdict.score = rank::Score::default();
    }
    Some(verdict)
}

/// The same as if no set above withheld it.
fn as_written(
    at: u32,
    rule: &PlantRule,
    info: &RuleInfo,
    condition: Option<Truth>,
    causes: &[Cause],
    moment: &Moment<'_>,
) -> Option<Verdict> {
    let mut hangs = Vec::new();
    let of = |part: &Condition| condition.unwrap_or_else(|| judge(part, moment, Curve::Counts));
    let whom = of(&rule.whom);
    let when = if whom == Truth::False { whom } else { of(&rule.when) };
    let mut truth = whom.and(when);
    if let Some(problem) = rule.problem
        && truth != Truth::False
    {
        truth = truth.and(has_problem(problem, info, causes, moment, &mut hangs));
    }
    if truth == Truth::False {
        return None;
    }
    let window = window::of_rule(at, moment);
    let is_guard = info.blocks.is_some();
    // What is held is not ranked.
    let score = |outcome: &Outcome, own: &blocks::Own, window: &State| match outcome {
        Outcome::Held(_) => rank::Score::default(),
        _ => rank::score(rule, info, window, own.overdue, moment),
    };
    let verdict = |outcome: Outcome, own: blocks::Own, window: State| Verdict {
        at,
        rule: rule.rule,
        score: score(&outcome, &own, &window),
        outcome,
        window,
        check_first: own.check_first,
        overdue: own.overdue,
    };
    if let State::Closed { before, next } = &window {
        if truth != Truth::True || !rule.reads_given {
            return None;
        }
        let block = out_of_season(*before, *next, moment);
        let outside = &moment.set.pack.rules.get(rule.rule as usize)?.entry.outside;
        let text = match block {
            Block::Early => &outside.early,
            Block::Late => &outside.late,
            _ => &outside.never,
        };
        return (!text.is_empty()).then(|| verdict(Outcome::Held(vec![block]), blocks::Own::default(), window));
    }
    for (part, judged) in [(&rule.whom, whom), (&rule.when, when)] {
        let mut hang = |atom: u32| hangs.extend(moment.book.atoms.get(atom as usize).map(|a| Hangs::Probe(a.probe)));
        match (judged, condition) {
            (Truth::Unknown, None) => unknown_in(part, moment, Curve::Counts, &mut hang),
            (Truth::Unknown, Some(_)) => unknown_atoms(part, moment, Curve::Counts, &mut hang),
            _ => {}
        }
    }
    let window_unknown = window == State::Unknown;
    if window_unknown {
        hangs.push(Hangs::Window);
    }
    let own = blocks::own(rule, info, moment);
    let known = truth == Truth::True && !window_unknown;
    if known && own.holding.is_empty() && own.hangs.is_empty() {
        return Some(verdict(Outcome::Applies, own, window));
    }
    if known && !own.holding.is_empty() {
        return Some(verdict(Outcome::Held(own.holding.clone()), own, window));
    }
    // What is left hangs on something. A guard by itself asks nothing: its words stand with the tasks that it may hold.
    if is_guard {
        return None;
    }
    let could = if own.holding.is_empty() { Could::Apply } else { Could::BeHeld };
    if own.holding.is_empty() {
        hangs.extend(&own.hangs);
    }
    hangs.sort_unstable();
    hangs.dedup();
    Some(verdict(Outcome::Depends { on: hangs, could }, own, window))
}

/// Whether the plant has the problem that a rule treats, and, for a treatment, enough of it.
fn has_problem(problem: u16, info: &RuleInfo, causes: &[Cause], moment: &Moment<'_>, hangs: &mut Vec<Hangs>) -> Truth {
    let has = causes::has(problem, causes, moment);
    if has == Truth::Unknown {
        hangs.push(Hangs::Problem(problem));
    }
    let treats = info.job_kind == JobKind::Treat;
    let threshold = moment.book.problems.iter().find(|p| p.problem == problem).and_then(|p| p.threshold.as_ref());
    match threshold.filter(|_| treats && info.is_hazardous()) {
        None => has,
        Some(threshold) => {
            let enough = judge(threshold, moment, Curve::Counts);
            if has != Truth::False {
                unknown_atoms(threshold, moment, Curve::Counts, &mut |atom| {
                    hangs.extend(moment.book.atoms.get(atom as usize).map(|a| Hangs::Probe(a.probe)));
                });
            }
            has.and(enough)
        }
    }
}

/// Late up to half-way to the next opening, early from there on.
fn out_of_season(
    before: Option<lammas_agronomy::calendar::Day>,
    next: Option<lammas_agronomy::calendar::Day>,
    moment: &Moment<'_>,
) -> Block {
    match (before, next) {
        (None, None) => Block::Never,
        (None, Some(_)) => Block::Early,
        (Some(_), None) => Block::Late,
        (Some(before), Some(next)) => {
            if moment.day - before <= next - moment.day {
                Block::Late
            } else {
                Block::Early
            }
        }
    }
}

/// Clashes and separations, from the safest and highest rule down.
fn together(verdicts: &mut [Verdict], moment: &Moment<'_>) {
    let info = |verdict: &Verdict| moment.set.rules.get(verdict.rule as usize);
    let mut order: Vec<usize> = verdicts
        .iter()
        .enumerate()
        .filter(|(_, v)| matches!(v.outcome, Outcome::Applies | Outcome::Depends { could: Could::Apply, .. }))
        // A rule without rivals holds none and is held by none.
        .filter(|(_, v)| moment.book.rules.get(v.at as usize).is_some_and(|rule| !rule.rivals.is_empty()))
        .filter(|(_, v)| info(v).is_some_and(|i| i.kind != Kind::Know && i.blocks.is_none()))
        .map(|(at, _)| at)
        .collect();
    let key = |at: &usize| {
        let verdict = verdicts.get(*at);
        let info = verdict.and_then(info);
        (
            info.map_or(9, safety),
            std::cmp::Reverse(verdict.map_or(0, |v| v.score.total)),
            info.map_or("", |i| i.id.as_str()),
        )
    };
    order.sort_by_cached_key(key);
    first_things_first(&mut order, verdicts, moment);
    let mut standing: Vec<usize> = Vec::new();
    let mut maybe: Vec<usize> = Vec::new();
    for at in order {
        let Some(verdict) = verdicts.get(at) else { continue };
        let beaten = |by: &[usize]| -> Vec<(usize, Block)> {
            let meets =
                moment.book.rules.get(verdict.at as usize).map(|rule| rule.meets.as_slice()).unwrap_or_default();
            let met = |other: &&Verdict| meets.binary_search(&other.at).is_ok();
            let others = by.iter().filter_map(|at| Some((*at, verdicts.get(*at).filter(met)?)));
            others.filter_map(|(at, other)| Some((at, beats(other, verdict, moment)?))).collect()
        };
        let sure = beaten(&standing);
        let perhaps = beaten(&maybe);
        let depends = matches!(verdict.outcome, Outcome::Depends { .. });
        if let Some(verdict_hangs) = (!perhaps.is_empty() && sure.is_empty()).then(|| {
            let mut on: Vec<Hangs> = perhaps
                .iter()
                .filter_map(|(other, _)| verdicts.get(*other))
                .flat_map(|other| match &other.outcome {
                    Outcome::Depends { on, .. } => on.clone(),
                    _ => Vec::new(),
                })
                .collect();
            if let Outcome::Depends { on: own, .. } = &verdict.outcome {
                on.extend(own);
            }
            on.sort_unstable();
            on.dedup();
            on
        }) {
            if let Some(verdict) = verdicts.get_mut(at) {
                verdict.outcome = Outcome::Depends { on: verdict_hangs, could: Could::Apply };
            }
            maybe.push(at);
            continue;
        }
        let Some(verdict) = verdicts.get_mut(at) else { continue };
        match (sure.is_empty(), depends) {
            (true, false) => standing.push(at),
            (true, true) => maybe.push(at),
            (false, false) => verdict.outcome = Outcome::Held(sure.into_iter().map(|(_, block)| block).collect()),
            (false, true) => {
                if let Outcome::Depends { could, .. } = &mut verdict.outcome {
                    *could = Could::BeHeld;
                }
            }
        }
    }
}

/// A rule that must come some days after another is judged after it.
fn first_things_first(order: &mut Vec<usize>, verdicts: &[Verdict], moment: &Moment<'_>) {
    let waits = |at: &usize| {
        let info = verdicts.get(*at).and_then(|v| moment.set.rules.get(v.rule as usize));
        info.is_some_and(|info| info.after.iter().any(|(_, days)| *days > 0))
    };
    if !order.iter().any(waits) {
        return;
    }
    let mut at = 0;
    let mut moves = 0;
    while at < order.len() {
        let firsts = order
            .get(at)
            .and_then(|o| verdicts.get(*o))
            .and_then(|v| moment.set.rules.get(v.rule as usize))
            .map(|info| info.after.iter().filter(|(_, days)| *days > 0).map(|(rule, _)| *rule).collect::<Vec<u32>>())
            .unwrap_or_default();
        let place = order.iter().rposition(|o| verdicts.get(*o).is_some_and(|v| firsts.contains(&v.rule)));
        match place {
            Some(place) if place > at && moves < order.len() * order.len() => {
                let moved = order.remove(at);
                order.insert(place, moved);
                moves += 1;
            }
            _ => at += 1,
        }
    }
}

/// Why `other`, which is done today, holds `verdict`, if it does.
fn beats(other: &Verdict, verdict: &Verdict, moment: &Moment<'_>) -> Option<Block> {
    let infos = &moment.set.rules;
    let (theirs, ours) = (infos.get(other.rule as usize)?, infos.get(verdict.rule as usize)?);
    if opposed((other.rule, theirs), (verdict.rule, ours), moment) {
        return Some(Block::Clash(other.rule));
    }
    if theirs.kind == Kind::Avoid {
        return None;
    }
    let after = ours.after.iter().filter(|(rule, _)| *rule == other.rule).map(|(_, days)| *days);
    let mine = ours.apart.iter().filter(|apart| theirs.is(apart.from, other.rule)).map(|apart| apart.days);
    let yours = theirs.apart.iter().filter(|apart| ours.is(apart.from, verdict.rule)).map(|apart| apart.days);
    let days = after.chain(mine).chain(yours).max().filter(|days| *days > 0)?;
    Some(Block::Apart { rule: Some(other.rule), until: moment.day + i32::from(days) })
}

//! What stands between a rule and the day: parts each of which must change before the rule can be there, with the levers
//! that could move it. A part without levers can't be moved by the caller.

use std::collections::BTreeSet;

use super::ground::Ground;
use super::lever::{self, Lever};
use crate::compile::rule::PlantRule;
use crate::compile::term::Condition;
use crate::compile::window::Window;
use crate::decide::blocks::{Unknown, blocked, guard_blocks};
use crate::decide::causes;
use crate::decide::emergency;
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, Blocked, Hangs, Outcome};
use crate::decide::truth::{Curve, judge};
use crate::decide::window::{self, State};
use crate::fact::value::Truth;

/// The levers of one part; it must be moved, and only these move it.
pub(super) type Part = BTreeSet<Lever>;

/// Every part that stands in the way at a moment. None stand there although the rule does not: other rules do.
pub(super) fn parts(ground: &Ground<'_>, moment: &Moment<'_>) -> Vec<Part> {
    let Some(rule) = moment.book.rules.get(ground.at as usize) else { return Vec::new() };
    let mut out = Vec::new();
    wanted(&rule.whom, true, ground, moment, &mut out);
    wanted(&rule.when, true, ground, moment, &mut out);
    problem(rule, ground, moment, &mut out);
    if matches!(window::of_rule(ground.at, moment), State::Closed { .. } | State::Unknown) {
        out.push(of_windows(&rule.windows, ground));
    }
    blocks(rule, ground, moment, &mut out);
    // In danger nothing that is told of the plant brings other work.
    if emergency::first(moment).is_some_and(|first| first != rule.rule) {
        out.push(Part::new());
    }
    if out.is_empty() && !ground.is_there(moment) {
        out.push(of_rivals(rule, ground));
    }
    out
}

/// The parts of a condition that are not as they should be: of what must all be so each by itself.
fn wanted(condition: &Condition, so: bool, ground: &Ground<'_>, moment: &Moment<'_>, out: &mut Vec<Part>) {
    let now = judge(condition, moment, Curve::Counts);
    if now == Truth::known(so) {
        return;
    }
    match (condition, so) {
        (Condition::And(parts), true) | (Condition::Or(parts), false) => {
            parts.iter().for_each(|part| wanted(part, so, ground, moment, out));
        }
        (Condition::Not(inner), _) => wanted(inner, !so, ground, moment, out),
        _ => out.push(of_condition(condition, ground)),
    }
}

fn of_condition(condition: &Condition, ground: &Ground<'_>) -> Part {
    let mut levers = Vec::new();
    condition.atoms(&mut |atom| of_atom(atom, ground, &mut levers));
    closed(levers, ground)
}

fn of_atom(atom: u32, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    let probe = ground.book.atoms.get(atom as usize).map(|atom| atom.probe);
    if let Some(term) = probe.and_then(|probe| ground.book.probes.get(probe as usize)) {
        lever::of_term(term, ground, out);
    }
}

/// Where a list is not said at all, the first entry of it says that all else is not so: every sign, or every work, that
/// bears on the rule then moves the part.
fn closed(levers: Vec<Lever>, ground: &Ground<'_>) -> Part {
    let mut part: Part = levers.into_iter().collect();
    if part.contains(&Lever::NoSigns) || part.contains(&Lever::NoHistory) {
        let (signs, works) = (part.contains(&Lever::NoSigns), part.contains(&Lever::NoHistory));
        let Some(rule) = ground.book.rules.get(ground.at as usize) else { return part };
        let mut all = Vec::new();
        everything(rule, ground, &mut all);
        part.extend(all.into_iter().filter(|lever| match lever {
            Lever::Sign(_) => signs,
            Lever::Done(_) | Lever::DoneRule(_) => works,
            _ => false,
        }));
    }
    part
}

/// Whether the plant has the problem that the rule treats, and enough of it.
fn problem(rule: &PlantRule, ground: &Ground<'_>, moment: &Moment<'_>, out: &mut Vec<Part>) {
    let Some(number) = rule.problem else { return };
    if causes::has(number, &causes::rank(moment), moment) != Truth::True {
        let mut levers = Vec::new();
        of_problem(number, ground, &mut levers);
        out.push(closed(levers, ground));
    }
    let info = ground.set.rules.get(rule.rule as usize);
    let treats = info.is_some_and(|info| info.job_kind == crate::compile::rule::JobKind::Treat && info.is_hazardous());
    let threshold = ground.book.problems.iter().find(|p| p.problem == number).and_then(|p| p.threshold.as_ref());
    if let Some(threshold) = threshold.filter(|_| treats) {
        wanted(threshold, true, ground, moment, out);
    }
}

/// A problem is named, or its own signs show it and those of the others don't.
fn of_problem(number: u16, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    out.push(Lever::Problem(number));
    for problem in &ground.book.problems {
        for (sign, ..) in &problem.signs {
            out.push(Lever::Sign(*sign));
        }
        for favour in &problem.favours {
            favour.atoms(&mut |atom| of_atom(atom, ground, out));
        }
    }
    if ground.said.condition.as_ref().is_none_or(|condition| condition.signs.is_none()) {
        out.push(Lever::NoSigns);
    }
    out.push(Lever::LookedClosely);
}

fn of_windows(windows: &[Window], ground: &Ground<'_>) -> Part {
    let mut levers = Vec::new();
    windows_into(windows, ground, &mut levers);
    closed(levers, ground)
}

fn windows_into(windows: &[Window], ground: &Ground<'_>, out: &mut Vec<Lever>) {
    for at in windows.iter().flat_map(|w| [&w.opens, &w.closes]).flatten().flatten() {
        lever::of_marker(&at.marker, ground, out);
    }
}

/// The holds and guards that block, and what the history says against it.
fn blocks(rule: &PlantRule, ground: &Ground<'_>, moment: &Moment<'_>, out: &mut Vec<Part>) {
    let Some(info) = ground.set.rules.get(rule.rule as usize) else { return };
    let stands = |blocked: &Blocked| matches!(blocked, Blocked::Yes | Blocked::Depends(_));
    for hold in &rule.holds {
        if stands(&blocked(&hold.condition, Unknown::of(hold.strict || info.strict), moment)) {
            out.push(of_condition(&hold.condition, ground));
        }
    }
    for at in &rule.guards {
        let Some(guard) = ground.book.rules.get(*at as usize) else { continue };
        if stands(&guard_blocks(*at, guard, Unknown::of_guard(guard, info, moment), moment)) {
            let mut levers = Vec::new();
            own_into(guard, ground, &mut levers);
            out.push(closed(levers, ground));
        }
    }
    let own = crate::decide::blocks::own(rule, info, moment);
    let is_history = |block: &Block| matches!(block, Block::Apart { .. } | Block::Done { .. } | Block::Turn(_));
    let hangs = own.hangs.contains(&Hangs::History);
    if own.holding.iter().any(is_history) || (hangs && moment.question.history.is_none()) {
        let mut levers = Vec::new();
        history_into(rule, ground, &mut levers);
        out.push(closed(levers, ground));
    }
}

/// The works that repeats, separations and turns of a rule look for.
fn history_into(rule: &PlantRule, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    lever::of_history(ground, out);
    out.extend((0..ground.said.history.as_ref().map_or(0, Vec::len)).map(Lever::NotDone));
    if let Some((other, ..)) = ground.set.rules.get(rule.rule as usize).and_then(|info| info.alternate) {
        out.extend([Lever::DoneRule(other), Lever::DoneRule(rule.rule)]);
    }
}

/// All that a rule reads by itself.
fn own_into(rule: &PlantRule, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    for condition in [&rule.whom, &rule.when].into_iter().chain(rule.holds.iter().map(|hold| &hold.condition)) {
        condition.atoms(&mut |atom| of_atom(atom, ground, out));
    }
    windows_into(&rule.windows, ground, out);
    if let Some(problem) = rule.problem {
        of_problem(problem, ground, out);
        let threshold = ground.book.problems.iter().find(|p| p.problem == problem).and_then(|p| p.threshold.as_ref());
        if let Some(threshold) = threshold {
            threshold.atoms(&mut |atom| of_atom(atom, ground, out));
        }
    }
}

/// All that a rule reads, its guards and its history among it.
fn everything(rule: &PlantRule, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    own_into(rule, ground, out);
    for guard in rule.guards.iter().filter_map(|at| ground.book.rules.get(*at as usize)) {
        own_into(guard, ground, out);
    }
    history_into(rule, ground, out);
}

/// All that the rules read which may clash with it, and those which may with these.
fn of_rivals(rule: &PlantRule, ground: &Ground<'_>) -> Part {
    let mut levers = Vec::new();
    everything(rule, ground, &mut levers);
    for rival in rule.rivals.iter().filter_map(|at| ground.book.rules.get(*at as usize)) {
        everything(rival, ground, &mut levers);
    }
    levers.into_iter().collect()
}

/// Every lever that bears on the rule in any way.
pub(super) fn all(ground: &Ground<'_>) -> Part {
    let Some(rule) = ground.book.rules.get(ground.at as usize) else { return Part::new() };
    of_rivals(rule, ground)
}

/// Whether something stands there that no lever moves.
pub(super) fn is_fixed(parts: &[Part]) -> bool {
    parts.iter().any(Part::is_empty)
}

/// What an outcome is called.
pub(super) const fn name(outcome: &Outcome) -> &'static str {
    match outcome {
        Outcome::No => "no",
        Outcome::Applies => "applies",
        Outcome::Held(_) => "held",
        Outcome::Depends { .. } => "depends",
    }
}

//! Blocks that a rule meets by itself: its holds, guards, works done, separations from the history.

use lammas_agronomy::calendar::Day;

use super::causes;
use super::history;
use super::moment::Moment;
use super::outcome::{Block, Blocked, CheckFirst, Hangs};
use super::truth::{Curve, judge, unknown_atoms};
use super::window::{self, State};
use crate::compile::rule::{PlantRule, RuleInfo, Subject};
use crate::compile::set::Set;
use crate::compile::term::Condition;
use crate::fact::value::Truth;
use crate::question::WorkDone;

/// The blocks of a rule.
#[derive(Clone, Debug, Default)]
pub struct Own {
    /// Those that hold it, in order.
    pub holding: Vec<Block>,
    /// What the unknown ones hang on.
    pub hangs: Vec<Hangs>,
    /// Conditions of the day.
    pub check_first: Vec<CheckFirst>,
    /// Whether it is past the longest time between two.
    pub overdue: bool,
}

/// How what is unknown in a block counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unknown {
    /// What lasts is asked for, what the day brings stands before the work.
    Usual,
    /// Everything is asked for.
    Strict,
    /// As usual, but where nobody told the region the law's words stand before the work.
    OfLaw,
}

impl Unknown {
    /// How it counts in a hold.
    pub(crate) const fn of(strict: bool) -> Self {
        if strict { Self::Strict } else { Self::Usual }
    }

    /// How it counts in a guard that binds a rule.
    pub(crate) fn of_guard(guard: &PlantRule, bound: &RuleInfo, moment: &Moment<'_>) -> Self {
        match moment.set.rules.get(guard.rule as usize) {
            Some(own) if own.of_law => Self::OfLaw,
            own => Self::of(bound.strict || own.is_some_and(|own| own.strict)),
        }
    }
}

/// A condition as a block: true blocks; unknown, or false only by the curve, becomes a condition of the day unless it is strict.
#[must_use]
pub fn blocked(condition: &Condition, unknown: Unknown, moment: &Moment<'_>) -> Blocked {
    // What is known although the curve counts for nothing stays so when it counts.
    match judge(condition, moment, Curve::IsUnknown) {
        Truth::False => return Blocked::No,
        Truth::True => return Blocked::Yes,
        Truth::Unknown => {}
    }
    let counts = judge(condition, moment, Curve::Counts);
    if counts == Truth::True {
        return Blocked::Yes;
    }
    let mut hangs = Vec::new();
    let mut collect = |curve: Curve, lasting_only: bool| {
        unknown_atoms(condition, moment, curve, &mut |atom| {
            if let Some(atom) = moment.book.atoms.get(atom as usize)
                && !(lasting_only && moment.hangs_on_the_day(atom.probe))
                && !(unknown == Unknown::OfLaw && moment.is_region(atom.probe))
            {
                hangs.push(Hangs::Probe(atom.probe));
            }
        });
    };
    if unknown == Unknown::Strict {
        collect(Curve::IsUnknown, false);
        return Blocked::Depends(hangs);
    }
    // False by the curve alone: the day decides, whatever else is unknown.
    if counts == Truth::Unknown {
        collect(Curve::Counts, true);
    }
    if hangs.is_empty() { Blocked::CheckFirst } else { Blocked::Depends(hangs) }
}

/// A guard, by its number among the plant's rules, as a block: its window and its conditions.
#[must_use]
pub fn guard_blocks(at: u32, guard: &PlantRule, unknown: Unknown, moment: &Moment<'_>) -> Blocked {
    let state = window::of_rule(at, moment);
    if matches!(state, State::Closed { .. }) {
        return Blocked::No;
    }
    let whom = judge(&guard.whom, moment, Curve::Counts);
    let mut hangs = Vec::new();
    let has = guard.problem.map_or(Truth::True, |problem| {
        let has = causes::has(problem, &causes::rank(moment), moment);
        if has == Truth::Unknown {
            hangs.push(Hangs::Problem(problem));
        }
        has
    });
    if whom.and(has) == Truth::False {
        return Blocked::No;
    }
    if state == State::Unknown {
        hangs.push(Hangs::Window);
    }
    if whom == Truth::Unknown {
        unknown_atoms(&guard.whom, moment, Curve::Counts, &mut |atom| {
            hangs.extend(moment.book.atoms.get(atom as usize).map(|a| Hangs::Probe(a.probe)));
        });
    }
    match blocked(&guard.when, unknown, moment) {
        Blocked::Yes if hangs.is_empty() => Blocked::Yes,
        Blocked::No => Blocked::No,
        // What lasts is asked for before the day is, but where the guard is false by the curve alone.
        Blocked::CheckFirst if hangs.is_empty() || judge(&guard.when, moment, Curve::Counts) == Truth::False => {
            Blocked::CheckFirst
        }
        Blocked::CheckFirst => Blocked::Depends(hangs),
        Blocked::Yes => Blocked::Depends(hangs),
        Blocked::Depends(more) => {
            hangs.extend(more);
            Blocked::Depends(hangs)
        }
    }
}

/// Everything that blocks a rule by itself.
#[must_use]
pub fn own(rule: &PlantRule, info: &RuleInfo, moment: &Moment<'_>) -> Own {
    // Nothing stands in the way of an emergency.
    if info.emergency {
        return Own::default();
    }
    let mut own = Own::default();
    let mut take = |blocked: Blocked, block: Block, check: CheckFirst| match blocked {
        Blocked::Yes => own.holding.push(block),
        Blocked::No => {}
        Blocked::CheckFirst => own.check_first.push(check),
        Blocked::Depends(hangs) => own.hangs.extend(hangs),
    };
    for (at, hold) in rule.holds.iter().enumerate() {
        let unknown = Unknown::of(hold.strict || info.strict);
        take(blocked(&hold.condition, unknown, moment), Block::Hold(at), CheckFirst::Hold(at));
    }
    for guard in &rule.guards {
        if let Some(written) = moment.book.rules.get(*guard as usize) {
            let unknown = Unknown::of_guard(written, info, moment);
            take(guard_blocks(*guard, written, unknown, moment), Block::Guard(*guard), CheckFirst::Guard(*guard));
        }
    }
    from_history(rule, info, moment, &mut own);
    own.hangs.sort_unstable();
    own.hangs.dedup();
    own
}

/// Separations from works done, repeats and turns.
fn from_history(rule: &PlantRule, info: &RuleInfo, moment: &Moment<'_>, own: &mut Own) {
    let Some(works) = &moment.question.history else {
        // A spray on top of another that nobody mentioned could do harm; a second feed could not.
        let could_harm = |from: Subject| info.is_hazardous() || moment.set.is_hazardous(from);
        let apart = info.apart.iter().any(|apart| apart.days > 0 && could_harm(apart.from));
        if apart || info.after.iter().any(|(rule, days)| *days > 0 && could_harm(Subject::Rule(*rule))) {
            own.hangs.push(Hangs::History);
        }
        // Nothing reported counts as nothing done: of two that take turns the one named first is due.
        if let Some((other, _, false)) = info.alternate
            && moment.book.rules.iter().any(|rule| rule.rule == other)
        {
            own.holding.push(Block::Turn(other));
        }
        return;
    };
    let before = |done: &&WorkDone| done.day <= moment.day;
    for apart in &info.apart {
        let latest =
            works.iter().filter(before).filter(|done| is_subject(done, apart.from, moment)).map(|done| done.day).max();
        let until = latest.map(|day| day + i32::from(apart.days));
        if let Some(until) = until.filter(|until| *until > moment.day) {
            own.holding.push(Block::Apart { rule: None, until });
        }
    }
    for (other, days) in &info.after {
        let latest = works.iter().filter(before).filter(|done| done.rule == Some(*other)).map(|done| done.day).max();
        if let Some(until) = latest.map(|day| day + i32::from(*days)).filter(|until| *until > moment.day) {
            own.holding.push(Block::Apart { rule: Some(*other), until });
        }
    }
    let repeats = info.repeat.every.is_some() || info.repeat.at_most.is_some();
    let own_works =
        works.iter().filter(|_| repeats).filter(before).filter(|done| is_this(done, rule, info, moment.set));
    let done: Vec<Day> = own_works.map(|done| done.day).collect();
    if let (Some((least, most)), Some(last)) = (info.repeat.every, done.iter().max()) {
        let due = *last + i32::from(least);
        if due > moment.day {
            own.holding.push(Block::Done { until: due, at_most: false });
        }
        own.overdue = *last + i32::from(most) < moment.day;
    }
    if let Some((times, within)) = info.repeat.at_most {
        let from = moment.day - i32::from(within);
        let mut recent: Vec<Day> = done.iter().copied().filter(|day| *day > from).collect();
        recent.sort_unstable();
        if times > 0 && recent.len() >= usize::from(times) {
            let frees =
                recent.get(recent.len() - usize::from(times)).map_or(moment.day, |day| *day + i32::from(within));
            own.holding.push(Block::Done { until: frees, at_most: true });
        }
    }
    if let Some((other, gap, named_first)) = info.alternate {
        turn(rule, info, moment, own, works, (other, gap, named_first));
    }
}

/// Of two that take turns the one that was not done last is due; of two that were never done the one named first.
fn turn(
    rule: &PlantRule,
    info: &RuleInfo,
    moment: &Moment<'_>,
    own: &mut Own,
    works: &[WorkDone],
    (other, gap, named_first): (u32, u16, bool),
) {
    let Some(partner) = moment.book.rules.iter().find(|r| r.rule == other) else { return };
    let Some(partner_info) = moment.set.rules.get(other as usize) else { return };
    let last = |rule: &PlantRule, info: &RuleInfo| {
        works
            .iter()
            .filter(|done| done.day <= moment.day && is_this(done, rule, info, moment.set))
            .map(|done| done.day)
            .max()
    };
    let (mine, theirs) = (last(rule, info), last(partner, partner_info));
    match (mine, theirs) {
        (None, None) => {
            if !named_first {
                own.holding.push(Block::Turn(other));
            }
        }
        (Some(day), theirs) if theirs.is_none_or(|t| t <= day) && !(theirs == Some(day) && named_first) => {
            own.holding.push(Block::Turn(other));
        }
        (_, Some(day)) => {
            let until = day + i32::from(gap);
            if until > moment.day {
                own.holding.push(Block::Apart { rule: Some(other), until });
            }
        }
        (_, None) => {}
    }
}

fn is_subject(done: &WorkDone, subject: Subject, moment: &Moment<'_>) -> bool {
    match subject {
        Subject::Job(job) => done.job == Some(job),
        Subject::Material(material) => history::has_material(done, material, moment.set),
        Subject::Class(class) => history::has_class(done, class, moment.set),
        Subject::Rule(rule) => done.rule == Some(rule),
    }
}

/// Whether a work done is this rule's: the same rule; or the same job and, where the rule has materials, one of them, or
/// one of their classes if the history names no more than a class. A work of another rule is this one's only by its
/// materials: a second cut may be another cut, a second spray of the same oil is the same.
fn is_this(done: &WorkDone, rule: &PlantRule, info: &RuleInfo, set: &Set) -> bool {
    if done.rule == Some(rule.rule) {
        return true;
    }
    if info.job.is_none() || done.job != info.job {
        return false;
    }
    if info.materials.is_empty() {
        return done.rule.is_none();
    }
    info.materials.iter().any(|material| history::has_material(done, *material, set))
        || done.class.is_some_and(|class| info.classes.contains(&class))
}

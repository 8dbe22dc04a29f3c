//! Validity: the largest run of days around the day with the same decision, all else equal.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;

use crate::compile::book::PlantBook;
use crate::compile::rule::PlantRule;
use crate::decide::decision::{Decision, decide};
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, CheckFirst, Could, Outcome, Verdict};
use crate::decide::turns::{self, Turns};
use crate::decide::window::State;
use crate::explain::amounts;
use crate::fact::value::Value;
use crate::pack::rule::Kind;
use crate::rank::{Band, band, order};

/// How far it is looked, either way.
const FURTHEST: i32 = 60;

/// How long a decision holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Validity {
    /// First day.
    pub from: Day,
    /// Last day.
    pub until: Day,
    /// The first rule, in order, that differs on the day after, and what becomes of it; none at the end of what was looked at.
    pub change: Option<(u32, &'static str)>,
}

/// One rule in a decision, without what moves every day.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    at: u32,
    rule: u32,
    outcome: &'static str,
    blocks: Vec<(&'static str, u64)>,
    could: Option<Could>,
    band: Option<Band>,
    window: Option<(Day, Day, Day)>,
    check_first: Vec<CheckFirst>,
    amounts: Vec<amounts::Number>,
}

/// How long the decision of a moment holds.
#[must_use]
pub fn of(decision: &Decision, moment: &Moment<'_>) -> Validity {
    // In danger nobody plans ahead: what comes after is asked when it is over.
    if decision.emergency.is_some() {
        return Validity { from: moment.day, until: moment.day, change: None };
    }
    let today = lines(decision, moment);
    let mut there = Moment::new(moment.set, moment.book, moment.question, moment.day);
    if reads_weather(decision, moment) {
        there.move_to(moment.day + 1);
        let change = differs(&today, &lines(&decide(&there), &there));
        return Validity { from: moment.day, until: moment.day, change };
    }
    let turns = Turns::of(turns::candidates(moment), moment);
    let mut watch = Watch::of(&today, moment);
    let (until, change) = ahead(&today, &turns, &mut watch, &mut there);
    there.move_to(moment.day);
    let from = back(&today, &turns, &mut watch, &mut there);
    Validity { from, until, change }
}

/// The last day with the same decision, and what differs on the day after it.
fn ahead(
    today: &[Line],
    turns: &Turns,
    watch: &mut Watch<'_>,
    there: &mut Moment<'_>,
) -> (Day, Option<(u32, &'static str)>) {
    let last = there.day + FURTHEST;
    loop {
        let turn = turns.next(there, last);
        // Between turns only amounts move.
        while there.day + 1 < turn {
            there.move_to(there.day + 1);
            if let Some(rule) = watch.moved(there) {
                return (there.day - 1, Some((rule, name(&Outcome::Applies))));
            }
        }
        if turn > last {
            return (last, None);
        }
        there.move_to(turn);
        let then = lines(&decide(there), there);
        if then != today {
            return (turn - 1, differs(today, &then));
        }
    }
}

/// The first day with the same decision.
fn back(today: &[Line], turns: &Turns, watch: &mut Watch<'_>, there: &mut Moment<'_>) -> Day {
    let first = there.day - FURTHEST;
    loop {
        let turn = turns.previous(there, first);
        while there.day - 1 > turn {
            there.move_to(there.day - 1);
            if watch.moved(there).is_some() {
                return there.day + 1;
            }
        }
        if turn < first {
            return first;
        }
        there.move_to(turn);
        if lines(&decide(there), there) != today {
            return turn + 1;
        }
    }
}

/// The amounts of the tasks of a day, watched over other days.
struct Watch<'m> {
    tasks: Vec<Watched<'m>>,
}

struct Watched<'m> {
    rule: &'m PlantRule,
    /// What it is reckoned from, on the day looked at last that shows the same.
    inputs: Vec<Value>,
    /// What is shown.
    shown: Vec<amounts::Number>,
}

impl<'m> Watch<'m> {
    fn of(today: &[Line], moment: &Moment<'m>) -> Self {
        let book: &'m PlantBook = moment.book;
        let tasks = today.iter().filter(|line| line.outcome == name(&Outcome::Applies)).filter_map(|line| {
            let rule = book.rules.get(line.at as usize).filter(|rule| !rule.amounts.is_empty())?;
            Some(Watched { rule, inputs: amounts::inputs(rule, moment), shown: line.amounts.clone() })
        });
        Self { tasks: tasks.collect() }
    }

    /// The first rule whose amounts are others on this day; what is reckoned from the same is the same.
    fn moved(&mut self, there: &Moment<'_>) -> Option<u32> {
        self.tasks.iter_mut().find_map(|task| {
            let inputs = amounts::inputs(task.rule, there);
            if inputs == task.inputs {
                return None;
            }
            if amounts::numbers(task.rule, there) != task.shown {
                return Some(task.rule.rule);
            }
            // Only what shows the same is kept: on the other side of a summer the same need comes back.
            task.inputs = inputs;
            None
        })
    }
}

/// Whether a rule that came out read something measured or forecast: that is only for the day.
#[must_use]
pub fn reads_weather(decision: &Decision, moment: &Moment<'_>) -> bool {
    decision
        .verdicts
        .iter()
        .filter_map(|verdict| moment.book.rules.get(verdict.at as usize))
        .flat_map(|rule| {
            let guards = rule.guards.iter().filter_map(|guard| moment.book.rules.get(*guard as usize));
            rule.reads.iter().chain(guards.flat_map(|guard| &guard.reads))
        })
        .filter_map(|atom| moment.book.atoms.get(*atom as usize))
        .any(|atom| matches!(moment.reading(atom.probe).origin, Origin::Measured | Origin::Forecast))
}

/// A decision as it is compared: tasks in their order first, then the others in the order of the rules.
#[must_use]
pub fn lines(decision: &Decision, moment: &Moment<'_>) -> Vec<Line> {
    let kind = |verdict: &Verdict| moment.set.rules.get(verdict.rule as usize).map(|info| info.kind);
    let mut tasks: Vec<&Verdict> = decision
        .verdicts
        .iter()
        .filter(|verdict| verdict.outcome == Outcome::Applies && kind(verdict) == Some(Kind::Task))
        .collect();
    order::put(&mut tasks, moment);
    let rest = decision.verdicts.iter().filter(|v| !(v.outcome == Outcome::Applies && kind(v) == Some(Kind::Task)));
    tasks.iter().copied().chain(rest).map(|verdict| line(verdict, moment)).collect()
}

fn line(verdict: &Verdict, moment: &Moment<'_>) -> Line {
    let applies = verdict.outcome == Outcome::Applies;
    let (blocks, could) = match &verdict.outcome {
        Outcome::Held(blocks) => (blocks.iter().map(block).collect(), None),
        Outcome::Depends { could, .. } => (Vec::new(), Some(*could)),
        _ => (Vec::new(), None),
    };
    let rule = moment.book.rules.get(verdict.at as usize);
    let info = moment.set.rules.get(verdict.rule as usize);
    Line {
        at: verdict.at,
        rule: verdict.rule,
        outcome: name(&verdict.outcome),
        blocks,
        could,
        band: info.filter(|_| applies).map(|info| band(info, &verdict.window, moment)),
        window: match verdict.window {
            State::Open(o) if applies => Some((o.opens, o.best, o.closes)),
            _ => None,
        },
        check_first: verdict.check_first.clone(),
        amounts: rule.filter(|_| applies).map(|rule| amounts::numbers(rule, moment)).unwrap_or_default(),
    }
}

/// A block without the day on which it ends.
fn block(block: &Block) -> (&'static str, u64) {
    match block {
        Block::Hold(at) => ("hold", *at as u64),
        Block::Guard(at) => ("guard", u64::from(*at)),
        Block::Clash(rule) => ("clash", u64::from(*rule)),
        Block::Apart { rule, .. } => ("apart", rule.map_or(u64::MAX, u64::from)),
        Block::Done { at_most, .. } => ("done", u64::from(*at_most)),
        Block::Turn(rule) => ("turn", u64::from(*rule)),
        Block::Early => ("early", 0),
        Block::Late => ("late", 0),
        Block::Never => ("never", 0),
        Block::Avoid => ("avoid", 0),
        Block::Emergency(rule) => ("emergency", u64::from(*rule)),
        Block::Withheld => ("withheld", 0),
    }
}

const fn name(outcome: &Outcome) -> &'static str {
    match outcome {
        Outcome::No => "no",
        Outcome::Applies => "applies",
        Outcome::Held(_) => "held",
        Outcome::Depends { .. } => "depends",
    }
}

/// The first rule that differs, and what becomes of it.
fn differs(today: &[Line], then: &[Line]) -> Option<(u32, &'static str)> {
    for line in today {
        match then.iter().find(|other| other.rule == line.rule) {
            None => return Some((line.rule, "no")),
            Some(other) if other != line => return Some((line.rule, other.outcome)),
            Some(_) => {}
        }
    }
    let new = then.iter().find(|line| !today.iter().any(|old| old.rule == line.rule));
    // The same rules, in another order.
    new.or_else(|| then.iter().zip(today).find(|(a, b)| a.rule != b.rule).map(|(a, _)| a))
        .map(|line| (line.rule, line.outcome))
}

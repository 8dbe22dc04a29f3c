//! What is decided of a plant on every day of a year, as if each were asked.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;

use crate::compile::set::Set;
use crate::decide::decision::{Decision, decide};
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, Outcome, Verdict};
use crate::decide::turns::{self, Turns};
use crate::pack::rule::Kind;
use crate::question::pointer::Trouble;
use crate::question::said::Said;
use crate::question::understand::understand;
use crate::question::{Climate, Question};
use crate::rank::{Band, band, order};

/// Days of a year that is rehearsed.
pub const DAYS: i32 = 366;

/// A plant of the basket, in the state it is in all year.
#[derive(Clone, Debug)]
pub struct Member {
    /// What it is called.
    pub name: String,
    /// What is told of it; climate and date are not read.
    pub said: Said,
    /// Where it stands.
    pub climate: Arc<Climate>,
}

/// What is decided on a day; rules by their numbers in the set.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Decided {
    /// The tasks, in their order, each with how soon.
    pub tasks: Vec<(u32, Band)>,
    /// What is held or to be left alone, each with the rule of the day that goes before, if that alone holds it.
    pub held: Vec<(u32, Option<Before>)>,
    /// What hangs on something not told.
    pub depends: Vec<u32>,
    /// Notes.
    pub noted: Vec<u32>,
}

/// A rule that is done today and so holds another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Before {
    /// The rule.
    pub rule: u32,
    /// How many days later the other may be done: at least one.
    pub days: i32,
    /// clash, apart, turn.
    pub kind: &'static str,
}

/// Days on which the same is decided.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// The first.
    pub first: Day,
    /// The last.
    pub last: Day,
    /// What.
    pub decided: Decided,
}

/// The year of a plant from a day on, in stretches without a gap.
///
/// # Errors
/// Every field that can't be used on the first day.
pub fn of(member: &Member, set: &Set, from: Day) -> Result<Vec<Stretch>, Vec<Trouble>> {
    let last = from + (DAYS - 1);
    let first = asked(member, set, from)?;
    if grows(&member.said) {
        // Its size is another every day, and a rule may read it.
        let mut year = Vec::new();
        for day in (0..DAYS).map(|day| from + day) {
            let question = asked(member, set, day)?;
            let there = moment(set, &question, day);
            push(&mut year, day, day, there.map(|there| decided(&decide(&there), &there)).unwrap_or_default());
        }
        return Ok(year);
    }
    let mut year = Vec::new();
    let Some(mut there) = moment(set, &first, from) else { return Ok(year) };
    let turns = Turns::of(turns::candidates(&there), &there);
    while there.day <= last {
        let decided = decided(&decide(&there), &there);
        let turn = turns.next(&mut there, last).max(there.day + 1);
        push(&mut year, there.day, (turn - 1).min(last), decided);
        there.move_to(turn);
    }
    Ok(year)
}

fn push(year: &mut Vec<Stretch>, first: Day, last: Day, decided: Decided) {
    match year.last_mut() {
        Some(stretch) if stretch.decided == decided => stretch.last = last,
        _ => year.push(Stretch { first, last, decided }),
    }
}

fn asked(member: &Member, set: &Set, day: Day) -> Result<Question, Vec<Trouble>> {
    let said = Said { date: Some(day.date()), ..member.said.clone() };
    understand(&said, set, Arc::clone(&member.climate), None)
}

fn moment<'a>(set: &'a Set, question: &'a Question, day: Day) -> Option<Moment<'a>> {
    Some(Moment::new(set, set.plants.get(usize::from(question.plant))?, question, day))
}

/// Whether what is assumed of its size follows from the day of planting.
fn grows(said: &Said) -> bool {
    let plant = &said.plant;
    plant.planted_on.is_some() && (plant.height_m.is_none() || plant.canopy_diameter_m.is_none())
}

fn decided(decision: &Decision, moment: &Moment<'_>) -> Decided {
    let info = |verdict: &Verdict| moment.set.rules.get(verdict.rule as usize);
    let is_task = |v: &&Verdict| v.outcome == Outcome::Applies && info(v).is_some_and(|i| i.kind == Kind::Task);
    let mut order: Vec<&Verdict> = decision.verdicts.iter().filter(is_task).collect();
    order::put(&mut order, moment);
    let mut out = Decided {
        tasks: order.iter().filter_map(|v| Some((v.rule, band(info(v)?, &v.window, moment)))).collect(),
        ..Decided::default()
    };
    for verdict in decision.verdicts.iter().filter(|v| !is_task(v)) {
        match &verdict.outcome {
            Outcome::No => {}
            Outcome::Applies => out.noted.push(verdict.rule),
            Outcome::Held(blocks) => out.held.push((verdict.rule, goes_before(verdict.rule, blocks, moment))),
            Outcome::Depends { .. } => out.depends.push(verdict.rule),
        }
    }
    out
}

/// The rule of the day that holds another for the longest, where only rules of the day hold it.
fn goes_before(rule: u32, blocks: &[Block], moment: &Moment<'_>) -> Option<Before> {
    let before = |block: &Block| match block {
        Block::Clash(other) => Some(Before { rule: *other, days: 1, kind: "clash" }),
        Block::Apart { rule: Some(other), until } => {
            Some(Before { rule: *other, days: (*until - moment.day).max(1), kind: "apart" })
        }
        Block::Turn(other) => {
            let gap = moment.set.rules.get(rule as usize).and_then(|info| info.alternate).map_or(0, |(_, gap, _)| gap);
            Some(Before { rule: *other, days: i32::from(gap).max(1), kind: "turn" })
        }
        _ => None,
    };
    let all: Option<Vec<Before>> = blocks.iter().map(before).collect();
    all?.into_iter().max_by_key(|before| before.days)
}

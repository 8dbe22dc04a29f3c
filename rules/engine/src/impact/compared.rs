//! A decision as it is compared between two sets.

use chrono::NaiveDate;
use serde_json::Value as Json;

use crate::ask;
use crate::compile::set::Set;
use crate::decide::decision::decide;
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, CheckFirst, Could, Outcome, Verdict};
use crate::decide::window::State;
use crate::explain::amounts;
use crate::explain::answer::AmountShown;
use crate::explain::voice::Voice;
use crate::pack::rule::Kind;
use crate::question::Question;
use crate::rank::{Band, band, order};

/// A decision by ids: two of them are equal when the two answers decide the same.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared<'a> {
    /// The tasks, in their order.
    pub tasks: Vec<Task<'a>>,
    /// Notes, what is held, what depends: by id, since their order says nothing.
    pub others: Vec<Other<'a>>,
    /// What is asked, in its order.
    pub questions: Vec<Asked>,
}

/// A task.
#[derive(Clone, Debug, PartialEq)]
pub struct Task<'a> {
    /// The rule.
    pub rule: &'a str,
    /// How soon.
    pub band: Band,
    /// When.
    pub window: Window,
    /// To check on the day.
    pub check_first: Vec<Reason<'a>>,
    /// How much.
    pub amounts: Vec<Amount<'a>>,
}

/// The days of a window.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Window {
    /// Open on all days.
    AllYear,
    /// First day, best day, last day.
    Days(NaiveDate, NaiveDate, NaiveDate),
    /// A marker of it is unknown.
    Unknown,
}

/// An amount as it is shown, but for its words.
#[derive(Clone, Debug)]
pub struct Amount<'a>(pub AmountShown<'a>);

impl PartialEq for Amount<'_> {
    fn eq(&self, other: &Self) -> bool {
        let (a, b) = (&self.0, &other.0);
        let usual = |of: &AmountShown<'_>| of.typical.map(|range| (**range).clone());
        a.value == b.value
            && a.unit == b.unit
            && a.us == b.us
            && a.basis == b.basis
            && a.needs == b.needs
            && a.capped == b.capped
            && usual(a) == usual(b)
    }
}

/// What becomes of a rule, as an answer shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stands {
    /// It is not there.
    Absent,
    /// A task.
    Advised,
    /// A note.
    Noted,
    /// Held, or to be left alone.
    Held,
    /// It hangs on something, and could apply.
    Depends,
    /// It hangs on something, and could at most be held.
    MayBeHeld,
}

impl Stands {
    /// In a word.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Absent => "absent",
            Self::Advised => "advised",
            Self::Noted => "noted",
            Self::Held => "held",
            Self::Depends => "depends",
            Self::MayBeHeld => "may-be-held",
        }
    }
}

/// A rule that is no task.
#[derive(Clone, Debug, PartialEq)]
pub struct Other<'a> {
    /// The rule.
    pub rule: &'a str,
    /// What became of it.
    pub stands: Stands,
    /// What holds it, in order.
    pub reasons: Vec<Reason<'a>>,
}

/// A block by its kind, its rule, or its place among the holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reason<'a> {
    /// hold, guard, clash, apart, done, early, late, never, avoid.
    pub kind: &'static str,
    /// The guard, or the rule that goes before.
    pub rule: Option<&'a str>,
    /// The hold, from 0.
    pub hold: Option<usize>,
}

/// A question.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// The fact.
    pub fact: String,
    /// What can be answered.
    pub answers: Vec<Json>,
}

/// What a set decides on a question; none: it has no book of the plant, or no language.
#[must_use]
pub fn of<'a>(set: &'a Set, question: &'a Question) -> Option<Compared<'a>> {
    let book = set.plants.get(usize::from(question.plant))?;
    let moment = Moment::new(set, book, question, question.day);
    let voice = Voice::new(&moment, "en")?;
    let decision = decide(&moment);
    let kind = |verdict: &Verdict| set.rules.get(verdict.rule as usize).map(|info| info.kind);
    let is_task = |verdict: &&Verdict| verdict.outcome == Outcome::Applies && kind(verdict) == Some(Kind::Task);
    let mut order: Vec<&Verdict> = decision.verdicts.iter().filter(is_task).collect();
    order::put(&mut order, &moment);
    let mut others: Vec<Other<'a>> =
        decision.verdicts.iter().filter(|v| !is_task(v)).filter_map(|verdict| other(verdict, &moment)).collect();
    others.sort_by_key(|other| other.rule);
    let questions = ask::next(&decision, voice);
    Some(Compared {
        tasks: order.iter().filter_map(|verdict| task(verdict, voice)).collect(),
        others,
        questions: questions
            .into_iter()
            .map(|question| Asked {
                fact: question.fact,
                answers: question.answers.into_iter().filter_map(|answer| answer.value).collect(),
            })
            .collect(),
    })
}

fn task<'a>(verdict: &Verdict, voice: Voice<'_, 'a>) -> Option<Task<'a>> {
    let moment = voice.moment;
    let rule = moment.book.rules.get(verdict.at as usize)?;
    let info = moment.set.rules.get(verdict.rule as usize)?;
    let checked = |check: &CheckFirst| match check {
        CheckFirst::Hold(at) => Some(Reason { kind: "hold", rule: None, hold: Some(*at) }),
        CheckFirst::Guard(at) => guard(*at, moment),
    };
    Some(Task {
        rule: &info.id,
        band: band(info, &verdict.window, moment),
        window: match verdict.window {
            State::AllYear => Window::AllYear,
            State::Open(open) => Window::Days(open.opens.date(), open.best.date(), open.closes.date()),
            State::Closed { .. } | State::Unknown => Window::Unknown,
        },
        check_first: verdict.check_first.iter().filter_map(checked).collect(),
        amounts: amounts::of(verdict.at, rule, voice).into_iter().map(Amount).collect(),
    })
}

fn guard<'a>(at: u32, moment: &Moment<'a>) -> Option<Reason<'a>> {
    let guard = moment.book.rules.get(at as usize)?;
    Some(Reason { kind: "guard", rule: Some(id(guard.rule, moment)?), hold: None })
}

fn id<'a>(rule: u32, moment: &Moment<'a>) -> Option<&'a str> {
    moment.set.rules.get(rule as usize).map(|info| info.id.as_str())
}

fn other<'a>(verdict: &Verdict, moment: &Moment<'a>) -> Option<Other<'a>> {
    let (stands, blocks) = match &verdict.outcome {
        Outcome::No => return None,
        Outcome::Applies => (Stands::Noted, [].as_slice()),
        Outcome::Held(blocks) => (Stands::Held, blocks.as_slice()),
        Outcome::Depends { could: Could::Apply, .. } => (Stands::Depends, [].as_slice()),
        Outcome::Depends { could: Could::BeHeld, .. } => (Stands::MayBeHeld, [].as_slice()),
    };
    let reasons = blocks.iter().filter_map(|block| reason(block, moment)).collect();
    Some(Other { rule: id(verdict.rule, moment)?, stands, reasons })
}

/// A block without the day on which it ends.
fn reason<'a>(block: &Block, moment: &Moment<'a>) -> Option<Reason<'a>> {
    let plain = |kind| Some(Reason { kind, rule: None, hold: None });
    let by = |kind, rule: u32| Some(Reason { kind, rule: id(rule, moment), hold: None });
    match block {
        Block::Hold(at) => Some(Reason { kind: "hold", rule: None, hold: Some(*at) }),
        Block::Guard(at) => guard(*at, moment),
        Block::Clash(rule) => by("clash", *rule),
        Block::Apart { rule: Some(rule), .. } | Block::Turn(rule) => by("apart", *rule),
        Block::Apart { rule: None, .. } => plain("apart"),
        Block::Done { .. } => plain("done"),
        Block::Early => plain("early"),
        Block::Late => plain("late"),
        Block::Never => plain("never"),
        Block::Avoid => plain("avoid"),
        Block::Emergency(rule) => by("emergency", *rule),
        Block::Withheld => plain("withheld"),
    }
}

impl<'a> Compared<'a> {
    /// What became of a rule.
    #[must_use]
    pub fn stands(&self, rule: &str) -> Stands {
        if self.task(rule).is_some() {
            return Stands::Advised;
        }
        self.other(rule).map_or(Stands::Absent, |other| other.stands)
    }

    /// A task by its rule.
    #[must_use]
    pub fn task(&self, rule: &str) -> Option<&Task<'a>> {
        self.tasks.iter().find(|task| task.rule == rule)
    }

    /// A rule that is no task.
    #[must_use]
    pub fn other(&self, rule: &str) -> Option<&Other<'a>> {
        self.others.iter().find(|other| other.rule == rule)
    }
}

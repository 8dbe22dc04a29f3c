//! A group of rules that may hold each other, followed from day to day: of each only what turns is judged again.

use lammas_agronomy::calendar::Day;

use super::decision::{settled, verdict};
use super::moment::Moment;
use super::outcome::{Outcome, Verdict};
use super::turns::Turns;

/// One rule of the group.
#[derive(Debug)]
struct Member {
    at: u32,
    turns: Turns,
    /// The next day on which something turns for it.
    next: Day,
    /// What becomes of it by itself; none: it is not there.
    alone: Option<Verdict>,
}

/// The group, on a day.
#[derive(Debug)]
pub struct Group {
    members: Vec<Member>,
    last: Day,
}

impl Group {
    /// These rules, by their numbers among the plant's, on the day of `there`, to be followed up to `last`.
    #[must_use]
    pub fn of(rules: impl Iterator<Item = u32>, there: &mut Moment<'_>, last: Day) -> Self {
        let mut members: Vec<Member> = Vec::new();
        for at in rules {
            let turns = Turns::of(vec![at], there);
            members.push(Member { at, next: turns.next(there, last), turns, alone: verdict(at, there) });
        }
        Self { members, last }
    }

    /// Goes to the next day on which one of them comes out another; false if there is none.
    pub fn go_on(&mut self, there: &mut Moment<'_>) -> bool {
        loop {
            let Some(day) = self.members.iter().map(|member| member.next).min().filter(|day| *day <= self.last) else {
                return false;
            };
            there.move_to(day);
            let mut changed = false;
            for member in self.members.iter_mut().filter(|member| member.next == day) {
                let alone = verdict(member.at, there);
                changed |= alone != member.alone;
                member.alone = alone;
                member.next = member.turns.next(there, self.last);
            }
            if changed {
                return true;
            }
        }
    }

    /// What becomes of one of them; none: it is not there.
    #[must_use]
    pub fn outcome(&self, at: u32, there: &Moment<'_>) -> Option<Outcome> {
        let own = self.members.iter().find(|member| member.at == at)?.alone.clone()?;
        let others = self.members.iter().filter(|member| member.at != at).filter_map(|member| member.alone.clone());
        Some(settled(own, others, there))
    }
}

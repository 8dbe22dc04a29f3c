//! Score, band and order.

use std::cmp::Reverse;

use lammas_agronomy::origin::Origin;
use lammas_engine::lang::ast::{Expr, ExprKind};
use lammas_engine::pack::RuleEntry;
use lammas_engine::pack::rule::{Evidence, Kind, Strength};

use super::outcome::{Outcome, Verdict, tree};
use super::tree::Names;
use super::value::Value;
use super::windows::State;
use super::world::World;

impl World<'_> {
    fn closes_in(&self, window: &State) -> Option<i32> {
        match window {
            State::Open(open) => Some(open.closes - self.day),
            _ => None,
        }
    }

    pub(crate) fn score(&self, rule: &RuleEntry, window: &State, overdue: bool) -> i32 {
        let mut time = 0;
        if let (State::Open(open), Some(left)) = (window, self.closes_in(window)) {
            for (within, points) in [(28, 5), (14, 9), (7, 12), (3, 16)] {
                if left <= within {
                    time = points;
                }
            }
            if self.day >= open.best {
                time = time.max(6);
            }
        }
        if overdue {
            time = 16;
        }
        let mut trees: Vec<(Expr, Names)> = Vec::new();
        trees.extend(rule.whom.traits.iter().map(|e| (tree(e.text()), Names::Short)));
        trees.extend(rule.when.iter().map(|e| (tree(e.text()), Names::Full)));
        trees.extend(rule.hold.iter().map(|hold| (tree(hold.condition.text()), Names::Full)));
        let mut reads = Vec::new();
        let mut worst = 0;
        for (tree, names) in &trees {
            self.reads(tree, *names, &mut reads);
            worst = worst.max(self.severity_of_signs(tree));
        }
        let weakest = reads.iter().filter(|read| read.known).map(|read| read.origin).max();
        let certainty = match weakest {
            None | Some(Origin::Given | Origin::Measured | Origin::Forecast) => 10,
            Some(Origin::Computed) => 7,
            Some(Origin::Estimated) => 4,
            Some(Origin::Assumed) => 2,
        };
        let mut minus = 0;
        if rule.strength == Strength::Consider {
            minus += 10;
        }
        if rule.evidence == Evidence::Doubtful {
            minus += 10;
        }
        let urgency = 8 * i32::from(rule.rank.urgency);
        let impact = 10 * i32::from(rule.rank.impact);
        (urgency + time + impact + worst + certainty - minus).clamp(0, 100)
    }

    /// Points of the worst severity among the signs that are true.
    fn severity_of_signs(&self, expr: &Expr) -> i32 {
        match &expr.kind {
            ExprKind::Or(parts) | ExprKind::And(parts) => {
                parts.iter().map(|part| self.severity_of_signs(part)).max().unwrap_or(0)
            }
            ExprKind::Not(inner) => self.severity_of_signs(inner),
            ExprKind::SignsHas(sign, _) if self.sign(sign).0 == Value::Yes(true) => match self.worst(sign) {
                Some(Value::Word(word)) if word == "slight" => 7,
                Some(Value::Word(word)) if word == "severe" => 20,
                _ => 13,
            },
            _ => 0,
        }
    }

    /// 0 now, 1 this week, 2 this month, 3 later.
    pub(crate) fn band(&self, rule: &RuleEntry, window: &State) -> u8 {
        let within = |days: i32| self.closes_in(window).is_some_and(|left| left <= days);
        let urgency = rule.rank.urgency;
        let band = if urgency == 3 || within(2) {
            0
        } else if urgency == 2 || within(9) {
            1
        } else if urgency == 1 || within(34) {
            2
        } else {
            3
        };
        match window {
            State::Open(open) if self.day < open.best && !within(21) => (band + 1).min(3),
            _ => band,
        }
    }

    /// The ids of the tasks that apply, in order.
    pub(crate) fn order(&self, verdicts: &[Verdict]) -> Vec<String> {
        let is_task = |v: &&Verdict| v.outcome == Outcome::Applies && self.rule(&v.rule).kind == Kind::Task;
        let mut tasks: Vec<&Verdict> = verdicts.iter().filter(is_task).collect();
        tasks.sort_by_key(|v| {
            let protects = self.rule(&v.rule).job.as_ref().is_some_and(|job| job.value.starts_with("protect-"));
            (!(protects && v.band == 0), v.band, Reverse(v.score), v.rule.clone())
        });
        let mut ids: Vec<String> = tasks.iter().map(|v| v.rule.clone()).collect();
        // From the top: what waits for a task further down goes directly behind it; then the same place again.
        let mut at = 0;
        while at < ids.len() {
            let waits_for = |other: &String| {
                let (task, other) = (self.rule(&ids[at]), self.rule(other));
                task.after.iter().any(|order| order.value.rule == other.id.value)
                    || other.before.iter().any(|order| order.value.rule == task.id.value)
            };
            match (at + 1..ids.len()).rev().find(|below| waits_for(&ids[*below])) {
                Some(below) => {
                    let task = ids.remove(at);
                    ids.insert(below, task);
                }
                None => at += 1,
            }
        }
        ids
    }
}
